package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.seamwright.basis.Notice;
import org.seamwright.job.Piece;
import org.seamwright.measure.Survey;
import org.seamwright.mend.HiddenArea;
import org.seamwright.mend.Repair;

/**
 * What is wrong with the model, each with the step of cleaning that mends it, in the order in which
 * steps help ({@code docs/job-file.md}).
 */
public final class FaultList {
  /** Parts below this share of the area are loose bits (common practice, no source). */
  private static final double LOOSE_SHARE = 0.01;

  /** Holes up to this share of the diagonal around are closed at one click. */
  private static final double HOLE_SHARE = 0.25;

  private FaultList() {}

  /**
   * A fault.
   *
   * @param key which, for names of controls
   * @param text what is wrong, with its count
   * @param button what mends it, for a button
   * @param repair the step of cleaning
   */
  public record Fault(String key, String text, String button, Repair repair) {}

  /** The faults of a piece as it is after the steps of cleaning it has had. */
  public static List<Fault> of(Piece piece) {
    Survey survey = piece.survey();
    List<Fault> faults = new ArrayList<>();
    if (survey.openEdges() > 0) {
      faults.add(fault("weld", survey.openEdges(), new Repair.Weld(OptionalDouble.empty())));
      faults.add(fault("split", survey.openEdges(), new Repair.SplitEdges(OptionalDouble.empty())));
    }
    int faulty = survey.duplicateTriangles() + survey.degenerateTriangles();
    if (faulty > 0) {
      faults.add(fault("faulty", faulty, new Repair.DropFaulty()));
    }
    if (survey.parts() > 1) {
      faults.add(fault("loose", survey.parts(), new Repair.KeepAbove(LOOSE_SHARE)));
      faults.add(fault("largest", survey.parts(), new Repair.KeepLargest(1)));
      faults.add(fault("inner", survey.parts(), new Repair.DropInner()));
    }
    if (survey.flippedEdges() > 0) {
      faults.add(fault("turn", survey.flippedEdges(), new Repair.TurnOutward()));
    }
    for (Notice notice : piece.notices()) {
      if (notice.code().equals(HiddenArea.CODE)) {
        faults.add(
            new Fault(
                "hidden",
                notice.text(),
                Messages.text("fault.hidden.button"),
                new Repair.DropHidden()));
      }
    }
    if (survey.openEdges() > 0) {
      faults.add(
          fault(
              "holes",
              survey.openEdges(),
              new Repair.FillHoles(Math.rint(10 * HOLE_SHARE * survey.bounds().diagonal()) / 10)));
    }
    // A step that is there already has done what it can.
    faults.removeIf(
        f -> piece.cleaned().done().stream().anyMatch(d -> d.kind().equals(f.repair().kind())));
    return faults;
  }

  private static Fault fault(String key, int count, Repair repair) {
    return new Fault(
        key,
        Messages.text("fault." + key, Integer.toString(count)),
        Messages.text("fault." + key + ".button"),
        repair);
  }
}
