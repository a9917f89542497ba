package org.seamwright.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.desk.MarkTool;
import org.seamwright.desk.Marking;
import org.seamwright.desk.SurfaceFoot;
import org.seamwright.region.Mark;

/** The piece while it is marked: the pointer is the tool that is taken. */
final class MarkShowing implements Showing {
  /** Radius of the ring about a handle, as a share of the diagonal. */
  private static final double HANDLE_SHARE = 0.012;

  private final Marking marking;
  private final PieceModel model;

  /** Rings that the stroke under way has passed over. */
  private final List<double[]> swath = new ArrayList<>();

  private Optional<Pick> under = Optional.empty();
  private Runnable changed = () -> {};

  MarkShowing(Marking marking, PieceModel model) {
    this.marking = marking;
    this.model = model;
    marking.editing().over(new SurfaceFoot(model.mesh(), model.tree()));
  }

  /** The tool, its settings or its places have changed. */
  void refresh() {
    if (!marking.isDrawing()) {
      swath.clear();
    }
    changed.run();
  }

  /** Places were added or dropped. */
  void changedPlaces() {
    changed.run();
  }

  @Override
  public void onChange(Runnable listener) {
    changed = listener;
  }

  @Override
  public int[] colours() {
    return MarkClasses.colours();
  }

  @Override
  public double shine() {
    return 0.3;
  }

  @Override
  public boolean isBrush() {
    return isPainting() || marking.editing().grabs();
  }

  private boolean isPainting() {
    return marking.tool().get().use() == MarkTool.Use.DRAG;
  }

  @Override
  public Sketch sketch() {
    if (marking.editing().isActive()) {
      return handles();
    }
    List<double[]> dots = new ArrayList<>();
    double[] line = new double[0];
    MarkTool.Use use = marking.tool().get().use();
    if (use == MarkTool.Use.CORNERS || use == MarkTool.Use.TWO_CLICKS) {
      List<Vector3D> places = marking.places().get();
      line = new double[use == MarkTool.Use.CORNERS ? 3 * places.size() : 0];
      for (int i = 0; i < places.size(); i++) {
        double[] p = {places.get(i).getX(), places.get(i).getY(), places.get(i).getZ()};
        dots.add(p);
        if (line.length > 0) {
          System.arraycopy(p, 0, line, 3 * i, 3);
        }
      }
    }
    double[] ring = isPainting() ? under.map(this::ring).orElse(new double[0]) : new double[0];
    return new Sketch(List.copyOf(swath), ring, line, marking.closed().get(), dots);
  }

  /** The places of a mark that is changed, a ring about the one that is taken. */
  private Sketch handles() {
    List<Vector3D> handles = marking.editing().handles();
    List<double[]> dots = new ArrayList<>();
    handles.forEach(h -> dots.add(h.toArray()));
    double[] line = new double[3 * marking.editing().joined()];
    for (int i = 0; i < line.length / 3; i++) {
      System.arraycopy(dots.get(i), 0, line, 3 * i, 3);
    }
    boolean closed =
        marking.editing().mark().get().filter(m -> m instanceof Mark.Outline).isPresent();
    OptionalInt taken = marking.editing().handle().get();
    double[] ring = new double[0];
    if (taken.isPresent() && taken.getAsInt() < dots.size()) {
      double[] at = dots.get(taken.getAsInt());
      ring =
          Sketch.ring(model, at, new double[] {0, 0, 1}, HANDLE_SHARE * model.bounds().diagonal());
    }
    return new Sketch(List.of(), ring, line, closed, dots);
  }

  private double[] ring(Pick at) {
    Vector3D n = at.touch(model).normal();
    double[] normal = {n.getX(), n.getY(), n.getZ()};
    return Sketch.ring(model, at.xyz(), normal, marking.settings().get().radiusMm());
  }

  @Override
  public void pointAt(Optional<Pick> pick) {
    under = pick;
    int before = marking.places().get().size();
    marking.pointAt(pick.map(p -> p.touch(model)));
    if (marking.isDrawing() && marking.places().get().size() > before) {
      pick.ifPresent(p -> swath.add(ring(p)));
    }
    changed.run();
  }

  @Override
  public void press(Pick pick) {
    swath.clear();
    under = Optional.of(pick);
    marking.press(pick.touch(model));
    if (marking.isDrawing()) {
      swath.add(ring(pick));
    }
    changed.run();
  }

  @Override
  public void release() {
    marking.release();
    // The swath stays until the exact edge takes its place.
  }

  /** The exact edge is there: the sketch of the stroke goes. */
  void settled() {
    if (!marking.isDrawing() && !swath.isEmpty()) {
      swath.clear();
      changed.run();
    }
  }

  @Override
  public void click(Optional<Pick> pick) {
    pick.ifPresent(p -> marking.click(p.touch(model)));
    changed.run();
  }

  @Override
  public void wheel(int steps) {
    marking.set(marking.settings().get().widened(steps));
    changed.run();
  }

  @Override
  public boolean confirm() {
    boolean means = marking.isActive();
    marking.confirm();
    changed.run();
    return means;
  }

  @Override
  public boolean escape() {
    boolean means = marking.isActive();
    if (means) {
      marking.escape();
      swath.clear();
      changed.run();
    }
    return means;
  }

  @Override
  public boolean next(int step) {
    boolean means = marking.editing().next(step);
    changed.run();
    return means;
  }

  @Override
  public boolean nudge(double[] byMm) {
    boolean means = marking.editing().nudge(Vector3D.of(byMm));
    changed.run();
    return means;
  }
}
