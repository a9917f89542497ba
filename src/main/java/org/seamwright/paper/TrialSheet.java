package org.seamwright.paper;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.seamwright.job.PlannedJob;
import org.seamwright.plating.BenchPace;
import org.seamwright.plating.PlatingSettings;
import org.seamwright.plating.Step;
import org.seamwright.plating.WetLimit;
import org.seamwright.units.UnitSystem;

/**
 * How to measure on scrap what the wet limit hangs on: the wet window, the handling before each
 * step and the speed of a pass, with a form to fill in and what becomes of the figures.
 */
public final class TrialSheet {
  private static final double CELL = 26;
  private static final double ROW = 25;
  private static final int TRIES = 3;
  private static final Style TEXT = Style.BODY.sized(10.5);

  private TrialSheet() {}

  /**
   * Writes the sheet as PDF, for the steps of the job's recipe.
   *
   * @param planned the job
   * @param file replaced if it exists
   * @param paper size of the pages
   * @param date shown on each page
   * @throws IOException if the file can't be written
   */
  public static void write(PlannedJob planned, Path file, PaperSize paper, LocalDate date)
      throws IOException {
    Brief brief = new Brief(planned, date);
    try (Sheet sheet = new Sheet(paper, "Trial sheet", brief.piece(), brief.dateText())) {
      sheet.y +=
          sheet.block(
              "Trial on scrap: how long it stays wet, how fast you are",
              Style.HEADING,
              sheet.left(),
              sheet.y,
              sheet.width());
      sheet.gap(4);
      sheet.paragraph(
          "Take scrap of the same metal with the same finish, cleaned as the piece will be, and mark"
              + " off a square of "
              + side(brief)
              + ". Work at the same bench, in the same air, with the tools and solutions of the job,"
              + " and let somebody else hold the watch. Do everything three times. Read the cautions"
              + " of the bench sheet first.",
          TEXT);
      window(sheet);
      steps(sheet, brief);
      result(sheet, brief);
      sheet.save(file);
    }
  }

  /** Side of the square; its area stands in {@link #area}. */
  private static String side(Brief brief) {
    return brief.format.system() == UnitSystem.INCH ? "4 in by 4 in" : "10 cm by 10 cm";
  }

  /** Area of the square, cm². */
  private static int area(Brief brief) {
    // 4 in by 4 in is 103.2 cm²; nobody marks off a square to better than a hundredth.
    return brief.format.system() == UnitSystem.INCH ? 103 : 100;
  }

  private static void window(Sheet sheet) throws IOException {
    sheet.gap(10);
    sheet.subheading("1  Wet window", 90);
    sheet.paragraph(
        "Wet the whole square as the rinse does, and start the watch when it is covered. Look along"
            + " the metal against the light. Stop when the first place runs dry or the film breaks."
            + " The shortest time counts.",
        TEXT);
    sheet.gap(8);
    double x = sheet.left();
    for (int i = 1; i <= TRIES; i++) {
      sheet.blank(i + ".", x, sheet.y + 10, 90);
      sheet.line("s", Style.LABEL, x + 93, sheet.y + 10);
      x += 112;
    }
    sheet.blank("Shortest, W =", x, sheet.y + 10, sheet.right() - x - 12);
    sheet.line("s", Style.LABEL, sheet.right() - 8, sheet.y + 10);
    sheet.gap(18);
    sheet.paragraph("In the job file: sections, wetWindow.", Style.LABEL);
  }

  private static void steps(Sheet sheet, Brief brief) throws IOException {
    sheet.gap(10);
    sheet.subheading("2  Handling and passes", 150);
    sheet.paragraph(
        "Handling h: from the last stroke of the step before until the first stroke of this one, with"
            + " everything laid out as in the work. Pass p: once over the square, all of it wetted,"
            + " at the speed that you can keep up; divide the seconds by "
            + area(brief)
            + " cm². The longest times count.",
        TEXT);
    sheet.gap(8);
    double name = sheet.width() - 2 * (TRIES + 1) * CELL - 2 * 46 - 16;
    double handling = sheet.left() + name + 8;
    double pass = handling + TRIES * CELL + 46 + 8;
    head(sheet, handling, "Handling, s", "h =");
    head(sheet, pass, "One pass, s", "longest");
    sheet.lineRight("÷ " + area(brief), Style.LABEL, sheet.right(), sheet.y + 10);
    sheet.lineRight("p =", Style.LABEL, sheet.right(), sheet.y + 21);
    sheet.gap(27);
    List<String> wet = BenchPace.wetSteps(brief.planned.settings().recipe());
    boolean first = true;
    for (Step step : brief.planned.settings().recipe().steps()) {
      if (wet.contains(step.name())) {
        row(sheet, step, first, name, handling, pass);
        first = false;
      }
    }
    sheet.gap(4);
    sheet.paragraph(
        "In the job file: plating, bench: handling and secondsPerCm2 for tools, rinseHandling and"
            + " rinseSecondsPerCm2 for rinses, or a step of its own under steps. The flash's pass"
            + " follows from the rate: count the passes until it is opaque (flashPasses).",
        Style.LABEL);
  }

  private static void head(Sheet sheet, double x, String title, String last) throws IOException {
    sheet.line(title, Style.LABEL.in(Style.INK), x, sheet.y + 10);
    for (int i = 0; i < TRIES; i++) {
      sheet.line((i + 1) + ".", Style.LABEL, x + i * CELL + 2, sheet.y + 21);
    }
    sheet.line(last, Style.LABEL, x + TRIES * CELL + 4, sheet.y + 21);
  }

  private static void row(
      Sheet sheet, Step step, boolean first, double name, double handling, double pass)
      throws IOException {
    sheet.need(ROW);
    double y = sheet.y;
    sheet.fitted(step.name(), TEXT, sheet.left(), y + 15, name);
    if (first) {
      sheet.line("begins the chain", Style.LABEL, handling, y + 15);
    } else {
      cells(sheet, handling, y);
    }
    if (step.kind() == Step.Kind.FLASH) {
      sheet.blank("passes", pass, y + 15, TRIES * CELL);
    } else {
      cells(sheet, pass, y);
      sheet.frame(sheet.right() - 42, y, 42, ROW - 4, 1.1, Style.INK);
    }
    sheet.gap(ROW);
  }

  private static void cells(Sheet sheet, double x, double y) throws IOException {
    for (int i = 0; i < TRIES; i++) {
      sheet.frame(x + i * CELL, y, CELL - 3, ROW - 4, 0.6, Style.SOFT);
    }
    sheet.frame(x + TRIES * CELL, y, 42, ROW - 4, 1.1, Style.INK);
  }

  private static void result(Sheet sheet, Brief brief) throws IOException {
    sheet.gap(10);
    sheet.subheading("3  The largest section", 130);
    PlatingSettings settings = brief.planned.settings();
    sheet.paragraph(
        "For each step and the next: area = (W − h of the next) ÷ the larger p of the two. The least"
            + " area is the limit of a section, laps included: a larger one has a place that dries"
            + " between two wettings. The flash's p is rate × thickness ÷ passes, now "
            + TotalPages.number(settings.secondsPerCm2PerUm())
            + " × "
            + TotalPages.number(settings.flashUm())
            + " µm ÷ its passes.",
        TEXT);
    sheet.gap(6);
    if (brief.planned.wetLimit().isPresent()) {
      WetLimit now = brief.planned.wetLimit().get();
      sheet.paragraph(
          "With the figures of the job as it is, "
              + now.governedBy()
              + " governs: ("
              + TotalPages.number(now.windowSeconds())
              + " − "
              + TotalPages.number(now.handlingSeconds())
              + ") ÷ "
              + TotalPages.number(now.secondsPerCm2())
              + " = "
              + TotalPages.number(now.leftSeconds() / now.secondsPerCm2())
              + " cm²"
              + (brief.format.system() == UnitSystem.INCH
                  ? " = " + brief.format.area(now.limitMm2())
                  : "")
              + ".",
          Style.STRONG.sized(10.5));
      sheet.gap(10);
    }
    double third = (sheet.width() - 20) / 3;
    sheet.blank("Limit, cm²", sheet.left(), sheet.y + 10, third);
    sheet.blank("Set by", sheet.left() + third + 10, sheet.y + 10, third);
    sheet.blank("Date, by whom", sheet.left() + 2 * (third + 10), sheet.y + 10, third);
    sheet.gap(26);
    sheet.paragraph(
        "Measured warm, dry or in a draught it dries sooner: measure again when the season or the"
            + " bench changes.",
        Style.LABEL);
  }
}
