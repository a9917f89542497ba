package org.seamwright.paper;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.mask.MaskBands;
import org.seamwright.mask.MaskEdge;
import org.seamwright.mask.MaskPlan;
import org.seamwright.mask.MaskSettings;
import org.seamwright.picture.Exposure;
import org.seamwright.picture.Finish;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Scene;
import org.seamwright.picture.View;
import org.seamwright.region.SurfaceMap;

/**
 * The piece dressed for masking: gold where it is plated, each strip of tape as a band of its own
 * with a line at its joins and its number, laps darker, lacquer hatched, and its own metal where
 * nothing covers it.
 *
 * @param scene for pictures
 * @param callouts numbers of strips, or of masks where strips are too many to number
 * @param numbered one entry per face: the callout it belongs to, 0 for none
 * @param numbersStrips whether they are of strips
 */
public record MaskScene(
    Scene scene, List<Pictures.Callout> callouts, int[] numbered, boolean numbersStrips) {
  /** More numbers than these can't be read round a picture. */
  private static final int MOST_NUMBERS = 24;

  /** Share of what its best side shows of a strip, from which a side shows it well. */
  private static final double WELL_SEEN = 0.5;

  /** Below this share it is seen on edge, and a number there would mislead. */
  private static final double BARELY_SEEN = 0.15;

  /** Points of a strip or an edge that may carry its number. */
  private static final int POINTS = 48;

  /** Copies the list. */
  public MaskScene {
    callouts = List.copyOf(callouts);
  }

  /** Dresses a piece. */
  public static MaskScene of(SurfaceMap map, MaskPlan plan, MaskSettings settings) {
    MaskBands bands = MaskBands.of(map, plan, settings, Progress.NONE);
    int faces = bands.cover().length;
    byte[] finish = new byte[faces];
    byte[] lap = new byte[faces];
    int[] region = new int[faces];
    for (int f = 0; f < faces; f++) {
      MaskBands.Cover cover = bands.cover()[f];
      finish[f] =
          switch (cover) {
            case PLATED -> Finish.GOLD.code();
            case OUT_OF_SCOPE -> Finish.GHOST.code();
            case NOTHING -> Finish.BARE.code();
            case LACQUER -> Finish.COVERED.code();
            case TAPE, LAP, TAPE_BEHIND -> Finish.TAPE.code();
          };
      lap[f] =
          switch (cover) {
            case LAP -> 2;
            case TAPE_BEHIND -> 1;
            default -> 0;
          };
      region[f] =
          switch (cover) {
            case NOTHING, OUT_OF_SCOPE -> 0;
            case PLATED -> 1;
            case LACQUER -> 2;
            case TAPE, LAP, TAPE_BEHIND -> 2 + bands.band()[f];
          };
    }
    Scene scene = Scene.of(bands.mesh(), finish, region, lap, new int[3 + bands.bands()]);
    boolean strips = bands.strips().size() <= MOST_NUMBERS;
    int[] numbered = new int[faces];
    for (int f = 0; f < faces; f++) {
      int strip = bands.strip()[f];
      numbered[f] = strip == 0 || strips ? strip : bands.strips().get(strip - 1).mask();
    }
    return new MaskScene(scene, strips ? strips(bands, plan) : masks(plan), numbered, strips);
  }

  /** Sides from which all that has a number can be seen about as well as it can be at all. */
  List<View> views(int most) {
    List<View> all = View.around();
    Exposure exposure = Exposure.of(scene.mesh(), numbered, all);
    List<Integer> ids = callouts.stream().map(Pictures.Callout::id).toList();
    List<View> views = exposure.cover(ids, WELL_SEEN, most).stream().map(all::get).toList();
    return views.isEmpty() ? List.of(View.THREE_QUARTER) : views;
  }

  /** The numbers of what is seen well enough from a side to carry one. */
  List<Pictures.Callout> seenFrom(View view) {
    List<View> all = View.around();
    Exposure exposure = Exposure.of(scene.mesh(), numbered, all);
    int side = all.indexOf(view);
    return callouts.stream()
        .filter(
            c ->
                side < 0
                    || exposure.seenMm2(side, c.id())
                        >= BARELY_SEEN * exposure.seenMm2(exposure.best(c.id()), c.id()))
        .toList();
  }

  private static List<Pictures.Callout> strips(MaskBands bands, MaskPlan plan) {
    List<Pictures.Callout> callouts = new ArrayList<>();
    for (MaskBands.Strip strip : bands.strips()) {
      String name = name(plan.masks().get(strip.mask() - 1), strip.number());
      callouts.add(new Pictures.Callout(callouts.size() + 1, name, some(strip.points())));
    }
    callouts.removeIf(c -> c.points().isEmpty());
    return callouts;
  }

  /** "M1" where a mask has one strip, else "1.2". */
  static String name(MaskPlan.Mask mask, int strip) {
    return mask.tape().size() == 1 ? "M" + mask.id() : mask.id() + "." + strip;
  }

  private static List<Pictures.Callout> masks(MaskPlan plan) {
    List<Pictures.Callout> callouts = new ArrayList<>();
    for (MaskPlan.Mask mask : plan.masks()) {
      List<Vector3D> points = new ArrayList<>();
      for (MaskEdge edge : mask.edges()) {
        double[] p = edge.points();
        for (int i = 0; i + 2 < p.length; i += 3) {
          points.add(Vector3D.of(p[i], p[i + 1], p[i + 2]));
        }
      }
      callouts.add(new Pictures.Callout(mask.id(), "M" + mask.id(), some(points)));
    }
    return callouts;
  }

  private static List<Vector3D> some(List<Vector3D> all) {
    List<Vector3D> some = new ArrayList<>();
    int step = Math.max(1, all.size() / POINTS);
    // From the middle of the strip outwards, not from its end.
    for (int i = 0; i < all.size(); i += step) {
      some.add(all.get((i + all.size() / 2) % all.size()));
    }
    return some;
  }
}
