package org.seamwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import org.seamwright.basis.Notice;
import org.seamwright.job.MaskTotals;
import org.seamwright.job.Piece;
import org.seamwright.job.PlannedJob;
import org.seamwright.plating.Band;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.region.Treatment;
import org.seamwright.section.Junctions;
import org.seamwright.section.RingClosing;
import org.seamwright.section.SectionPlan;
import org.seamwright.units.UnitFormat;

/** A plan in a dozen lines for the terminal. */
final class PlanSummary {
  private PlanSummary() {}

  /** What lies between P10 and P90 holds eight times in ten. */
  private static String band(Band band, DoubleFunction<String> shown) {
    return band.isWide()
        ? "; eight times in ten " + shown.apply(band.p10()) + " to " + shown.apply(band.p90())
        : "";
  }

  static void print(PlannedJob planned, Path folder, List<String> files, PrintWriter out) {
    UnitFormat in = Figures.in(planned.job().display());
    PlatingPlan.Totals totals = planned.plating().totals();
    SectionPlan sections = planned.sections();
    MaskTotals masks = MaskTotals.of(planned.masks());
    MeasureCommand.row(
        out, "Piece", planned.job().piece() + ", " + Piece.size(planned.survey().bounds()));
    MeasureCommand.row(
        out,
        "Area",
        in.area(totals.netMm2())
            + " to plate, "
            + in.area(planned.map().areaMm2(Treatment.BARE))
            + " stays bare");
    MeasureCommand.row(
        out,
        "Sections",
        Figures.count(sections.sections().size(), "section")
            + " of at most "
            + in.area(planned.limitMm2())
            + (planned.limitIsSet() ? ", set in the job" : ", from the wet window")
            + "; worked area with laps "
            + in.area(totals.workedMm2()));
    planned
        .wetLimit()
        .ifPresent(limit -> MeasureCommand.row(out, "Wet limit", limit.explanation()));
    MeasureCommand.row(
        out,
        "Activated",
        in.area(sections.onceMm2())
            + " once, "
            + in.area(sections.twiceMm2())
            + " twice, "
            + in.area(sections.moreMm2())
            + " more often");
    MeasureCommand.row(out, "Junctions", junctions(sections, in));
    for (RingClosing ring : sections.rings()) {
      MeasureCommand.row(
          out,
          "Ring",
          "section "
              + ring.section()
              + " closes one, onto "
              + ring.onto().stream().map(String::valueOf).collect(Collectors.joining(", ")));
    }
    MeasureCommand.row(
        out,
        capital(planned.settings().deposit().metal()),
        in.mass(totals.goldG())
            + " in "
            + in.volume(totals.solutionMl())
            + " of solution, loss of "
            + Math.round(100 * planned.settings().lossShare())
            + "% included"
            + band(planned.plating().bands().goldG(), in::mass));
    MeasureCommand.row(
        out,
        "Time",
        in.time(totals.seconds())
            + " at the piece"
            + band(planned.plating().bands().seconds(), in::time));
    planned
        .quote()
        .ifPresent(
            q ->
                MeasureCommand.row(
                    out,
                    "Price",
                    q.total().toPlainString()
                        + " "
                        + q.currency()
                        + (q.tax().signum() > 0 ? ", tax included" : "")
                        + band(q.range(), m -> String.format(Locale.ROOT, "%.2f", m))));
    MeasureCommand.row(
        out,
        "Masking",
        planned.masks().masks().isEmpty()
            ? "none"
            : Figures.count(planned.masks().masks().size(), "mask")
                + ": tape "
                + in.length(masks.tapeMm())
                + ", lacquer "
                + in.volume(masks.lacquerMl())
                + planned
                    .masks()
                    .dipped()
                    .map(d -> " from a bath of " + in.volume(d.bathMl()))
                    .orElse(""));
    for (Notice notice : planned.notices()) {
      if (!PlannedJob.tellsOfBreach(notice)) {
        MeasureCommand.row(out, "Note", notice.text());
      }
    }
    MeasureCommand.row(out, "Written", folder + ": " + String.join(", ", files));
  }

  /** Where three sections meet: how many places, and how near to one another. */
  private static String junctions(SectionPlan sections, UnitFormat in) {
    Junctions found = sections.junctions();
    if (found.places().isEmpty()) {
      return "none: no three sections meet";
    }
    String count = Figures.count(found.places().size(), "place") + " where three sections meet";
    return Double.isInfinite(found.nearestMm())
        ? count
        : count
            + ", at least "
            + in.length(found.nearestMm())
            + " apart; "
            + Figures.count(found.close().size(), "pair")
            + " nearer than a lap is wide";
  }

  private static String capital(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }
}
