package org.seamwright.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The bare piece, for the place where its size and faults are told: clicks go to whoever asked for
 * them, such as the two ends of a known length or a place on the table.
 */
final class PlainShowing implements Showing {
  private static final int METAL = 0xB9BEC4;
  private static final int CLOSED_PALE = 0xD8DCE0;

  private final List<double[]> dots = new ArrayList<>();
  private Optional<Consumer<Vector3D>> asked = Optional.empty();
  private Runnable changed = () -> {};

  @Override
  public void onChange(Runnable listener) {
    changed = listener;
  }

  /** Sends clicks on the piece to someone from now on. */
  void ask(Consumer<Vector3D> place) {
    asked = Optional.of(place);
  }

  /** Sends clicks nowhere, and forgets the places shown. */
  void askNoMore() {
    asked = Optional.empty();
    dots.clear();
    changed.run();
  }

  /** Shows places that were clicked, joined by a line. */
  void showPlaces(List<Vector3D> places) {
    dots.clear();
    places.forEach(p -> dots.add(new double[] {p.getX(), p.getY(), p.getZ()}));
    changed.run();
  }

  @Override
  public int[] colours() {
    return new int[] {CLOSED_PALE, METAL};
  }

  @Override
  public double shine() {
    return 0.25;
  }

  @Override
  public Sketch sketch() {
    double[] line = new double[3 * dots.size()];
    for (int i = 0; i < dots.size(); i++) {
      System.arraycopy(dots.get(i), 0, line, 3 * i, 3);
    }
    return new Sketch(List.of(), new double[0], line, false, List.copyOf(dots));
  }

  @Override
  public void pointAt(Optional<Pick> pick) {
    // Nothing is told of single places here.
  }

  @Override
  public void click(Optional<Pick> pick) {
    pick.ifPresent(p -> asked.ifPresent(a -> a.accept(p.point())));
  }
}
