package org.seamwright.window;

import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.desk.SectionHands;
import org.seamwright.desk.SectionTool;
import org.seamwright.desk.SurfaceFoot;

/** The sections while they are changed by hand: the pointer is the tool that is taken. */
final class SectionShowing implements Showing {
  private static final double WHEEL = 1.25;

  private final PiecePresenter presenter;
  private final SectionHands hands;
  private Optional<Pick> under = Optional.empty();
  private Runnable changed = () -> {};

  SectionShowing(PiecePresenter presenter, SectionHands hands) {
    this.presenter = presenter;
    this.hands = hands;
    PieceModel model = presenter.piece().model();
    hands.over(new SurfaceFoot(model.mesh(), model.tree()));
  }

  /** What is shown of the plan. */
  PiecePresenter presenter() {
    return presenter;
  }

  /** The tool, its seam or its line has changed. */
  void refresh() {
    changed.run();
  }

  @Override
  public void onChange(Runnable listener) {
    changed = listener;
    presenter.onChange(listener);
  }

  @Override
  public int[] colours() {
    return presenter.colours();
  }

  @Override
  public double shine() {
    return presenter.shine();
  }

  @Override
  public List<Optional<OrbitCamera.OnScreen>> numbers(OrbitCamera camera) {
    return presenter.numbers(camera);
  }

  @Override
  public Sketch sketch() {
    List<Vector3D> line = hands.line().get();
    if (line.isEmpty()) {
      line = hands.seam().get().map(seam -> seam.points()).orElse(List.of());
    }
    double[] xyz = new double[3 * line.size()];
    for (int i = 0; i < line.size(); i++) {
      System.arraycopy(line.get(i).toArray(), 0, xyz, 3 * i, 3);
    }
    boolean corners = hands.tool().get() == SectionTool.LINE && !line.isEmpty();
    List<double[]> dots =
        corners ? List.of(line.get(0).toArray(), line.get(line.size() - 1).toArray()) : List.of();
    return new Sketch(List.of(), new double[0], xyz, false, dots);
  }

  @Override
  public boolean isBrush() {
    return hands.grabs();
  }

  private int section(Optional<Pick> pick) {
    return pick.flatMap(presenter.piece()::spot).map(Spot::section).orElse(0);
  }

  @Override
  public void pointAt(Optional<Pick> pick) {
    under = pick;
    if (!hands.isDrawing()) {
      presenter.pointAt(pick);
    }
    hands.pointAt(pick.map(p -> p.touch(presenter.piece().model())), section(pick));
  }

  @Override
  public void press(Pick pick) {
    under = Optional.of(pick);
    hands.press(pick.touch(presenter.piece().model()), section(under));
  }

  @Override
  public void release() {
    hands.release();
  }

  @Override
  public void click(Optional<Pick> pick) {
    if (hands.tool().get() == SectionTool.LOOK || hands.tool().get() == SectionTool.SEAM) {
      presenter.click(pick);
    } else {
      pick.ifPresent(p -> hands.click(p.touch(presenter.piece().model()), section(pick)));
    }
  }

  @Override
  public void wheel(int steps) {
    if (hands.tool().get() == SectionTool.SEAM) {
      hands.setShare(hands.share().get() * Math.pow(WHEEL, steps));
    } else if (hands.tool().get() == SectionTool.SPLIT) {
      hands.setParts(hands.parts().get() + steps);
    }
  }

  @Override
  public boolean confirm() {
    boolean means = hands.tool().get() != SectionTool.LOOK;
    hands.confirm();
    return means;
  }

  @Override
  public boolean escape() {
    return hands.escape() || presenter.escape();
  }

  @Override
  public boolean next(int step) {
    hands.nextSeam(step, presenter.selected().get().orElse(0));
    return true;
  }

  @Override
  public boolean nudge(double[] byMm) {
    return hands.nudge(Vector3D.of(byMm));
  }
}
