package org.seamwright.paper;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.Mesh;
import org.seamwright.picture.Exposure;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.View;

/** From which sides numbered places of a piece are drawn, and which numbers stand in each. */
final class NumberedViews {
  /** Share of what its best side shows of a place, from which a side shows it well. */
  private static final double WELL_SEEN = 0.5;

  /** Below this share it is seen on edge, and a number there would mislead. */
  private static final double BARELY_SEEN = 0.15;

  /** Points of a place that may carry its number. */
  private static final int POINTS = 64;

  private final List<View> sides = View.around();
  private final Exposure exposure;
  private final List<Pictures.Callout> callouts;

  /**
   * Looks at the places from all sides.
   *
   * @param numbered one entry per face: the callout it belongs to, other numbers for none
   */
  NumberedViews(Mesh mesh, int[] numbered, List<Pictures.Callout> callouts) {
    this.exposure = Exposure.of(mesh, numbered, sides);
    this.callouts = callouts;
  }

  /** Sides from which all that has a number can be seen about as well as it can be at all. */
  List<View> views(int most) {
    List<Integer> ids = callouts.stream().map(Pictures.Callout::id).toList();
    List<View> views = exposure.cover(ids, WELL_SEEN, most).stream().map(sides::get).toList();
    return views.isEmpty() ? List.of(View.THREE_QUARTER) : views;
  }

  /** The numbers of what is seen well enough from a side to carry one. */
  List<Pictures.Callout> seenFrom(View view) {
    int side = sides.indexOf(view);
    return callouts.stream().filter(c -> side < 0 || isSeen(side, c.id())).toList();
  }

  private boolean isSeen(int side, int id) {
    return exposure.seenMm2(side, id) >= BARELY_SEEN * exposure.seenMm2(exposure.best(id), id);
  }

  /** Some of many points, from the middle of a place on, not from its end. */
  static List<Vector3D> some(List<Vector3D> all) {
    List<Vector3D> some = new ArrayList<>();
    int step = Math.max(1, all.size() / POINTS);
    for (int i = 0; i < all.size(); i += step) {
      some.add(all.get((i + all.size() / 2) % all.size()));
    }
    return some;
  }
}
