package org.seamwright.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.plating.Step;
import org.seamwright.section.Seam;
import org.seamwright.section.Section;

/** One block per section in working order, then what is done to the whole piece. */
final class SectionPages {
  private static final double PICTURE_WIDTH = 158;

  /** Largest share of the page's width for the picture: where type is large it is less. */
  private static final double PICTURE_SHARE = 0.318;

  /** Beside less room than this figures take one more line, and blanks two rows. */
  private static final double NARROW = 290;

  private static final double PICTURE_HEIGHT = 136;
  private static final int PIXELS_PER_POINT = 3;

  /** Room for the badge beside the text on laps. */
  private static final double LAPS_INDENT = 50;

  private static final double FIGURES = 62;
  private static final double BLANK_ROW = 24;
  private static final double TICK = 15;
  private static final double TICK_ROW = 22;

  private SectionPages() {}

  static void write(Sheet sheet, Brief brief, Progress progress) throws IOException {
    if (brief.sections().isEmpty()) {
      return;
    }
    sheet.newPage();
    sheet.heading("Work the sections in this order", 200);
    int done = 0;
    for (Section section : brief.sections()) {
      progress.at(done++ / (double) brief.sections().size());
      section(sheet, brief, section);
    }
    wholePiece(sheet, brief);
  }

  private static void section(Sheet sheet, Brief brief, Section section) throws IOException {
    PlatingPlan.SectionAmounts amounts = brief.amounts(section.id());
    double pictureWidth = Math.min(PICTURE_WIDTH, PICTURE_SHARE * sheet.width());
    double x = sheet.left() + pictureWidth + 18;
    double width = sheet.right() - x;
    boolean narrow = width < NARROW;
    double figures = narrow ? FIGURES + Style.SMALL.leading() : FIGURES;
    String laps =
        (section.name().isBlank() ? "" : "\u201c" + section.name() + "\u201d. ")
            + laps(brief, section);
    List<List<Tick>> rows = tickRows(sheet, ticks(brief, amounts, true), width);
    double lapsHeight = sheet.height(laps, Style.STRONG, width - LAPS_INDENT);
    double right = Math.max(42, lapsHeight + 8) + figures + rows.size() * TICK_ROW + 20;
    right += narrow ? BLANK_ROW : 0;
    double height = Math.max(right, PICTURE_HEIGHT + 14);
    sheet.need(height);
    double top = sheet.y;
    if (brief.canBeSeen(section.id())) {
      sheet.picture(
          brief.whereItIs(
              section.id(),
              (int) (pictureWidth * PIXELS_PER_POINT),
              (int) (PICTURE_HEIGHT * PIXELS_PER_POINT)),
          "Where section "
              + section.id()
              + " is, seen from: "
              + brief.bestView(section.id()).name(),
          sheet.left(),
          top,
          pictureWidth,
          PICTURE_HEIGHT);
      sheet.block(
          "from: " + brief.bestView(section.id()).name(),
          Style.SMALL,
          sheet.left(),
          top + PICTURE_HEIGHT,
          pictureWidth,
          1);
    } else {
      sheet.block(
          "Hidden from every side that pictures are taken from.",
          Style.BODY,
          sheet.left(),
          top + 20,
          pictureWidth);
    }
    sheet.badge(String.valueOf(section.id()), x + 20, top + 20, 20);
    sheet.block(laps, Style.STRONG, x + LAPS_INDENT, top + 4, width - LAPS_INDENT);
    double y = top + Math.max(42, lapsHeight + 8);
    figures(sheet, brief, section, amounts, x, y, width);
    y += figures;
    y = drawTicks(sheet, rows, x, y);
    blanks(sheet, brief, x, y + 11, width);
    sheet.y = top + height;
    sheet.rule(sheet.left(), sheet.y, sheet.width(), 0.7, Style.HAIRLINE);
    sheet.gap(10);
  }

  private static void figures(
      Sheet sheet,
      Brief brief,
      Section section,
      PlatingPlan.SectionAmounts amounts,
      double x,
      double y,
      double width)
      throws IOException {
    boolean over = brief.overLimit(section);
    Style value = new Style(true, 15, Style.INK);
    double column = (width - 12 * 3) / 4;
    Figure.row(
        sheet,
        List.of(
            new Figure(Words.capital(brief.laid()), brief.format.mass(amounts.goldG()), ""),
            new Figure("Solution", brief.format.volume(amounts.solutionMl()), ""),
            new Figure("To the flash", brief.format.time(seconds(brief, amounts, true)), "")),
        value,
        x,
        y,
        3 * column + 24);
    Figure.row(
        sheet,
        List.of(new Figure("Worked area", brief.format.area(section.workedMm2()), "")),
        over ? value.in(Style.ALARM) : value,
        x + 3 * (column + 12),
        y,
        column);
    String areas =
        Words.capital(brief.laid())
            + ": flash "
            + brief.format.mass(amounts.flashG())
            + ", build "
            + brief.format.mass(amounts.buildG())
            + ", loss "
            + brief.format.mass(amounts.lossG())
            + ". Area: net "
            + brief.format.area(section.netMm2())
            + " + laps "
            + brief.format.area(section.workedMm2() - section.netMm2())
            + ", limit "
            + brief.format.area(brief.planned.limitMm2())
            + (over ? ": OVER THE LIMIT" : "")
            + hints(brief, section, amounts);
    sheet.block(
        areas,
        over ? Style.SMALL.in(Style.ALARM) : Style.SMALL,
        x,
        y + 35,
        width,
        width < NARROW ? 3 : 2);
  }

  /** Dips to count, and how much of the section wants gel, as far as the job knows. */
  private static String hints(Brief brief, Section section, PlatingPlan.SectionAmounts amounts) {
    OptionalDouble dips = brief.planned.settings().tool().dips(amounts.solutionMl());
    double steep =
        brief.planned.steep().map(s -> s.shareOf().getOrDefault(section.id(), 0.0)).orElse(0.0);
    long percent = Math.round(100 * steep);
    return (dips.isPresent() ? ". " + Words.count((long) dips.getAsDouble(), "dip", "dips") : "")
        + (percent > 0 && !TotalPages.isGel(brief) ? ". Steep, for gel: " + percent + " %" : "");
  }

  private static String laps(Brief brief, Section section) {
    List<String> onto = new ArrayList<>();
    for (Seam seam : brief.laps(section.id())) {
      onto.add(String.valueOf(seam.earlier()));
    }
    if (onto.isEmpty()) {
      return "No lap: nothing beside it is plated yet.";
    }
    Job.SectionRules rules = brief.planned.job().sections();
    return "Lap onto "
        + Words.list(onto)
        + ": activate "
        + brief.format.width(rules.activationLapMm())
        + ", flash "
        + brief.format.width(rules.flashLapMm())
        + " beyond the seam."
        + ring(brief, section);
  }

  /** Said of a section that closes a ring: its far end meets the edge that has waited longest. */
  private static String ring(Brief brief, Section section) {
    return brief.planned.sections().rings().stream()
        .filter(r -> r.section() == section.id())
        .map(
            r ->
                " Closes a ring: laps at "
                    + (r.onto().size() == 1 ? "both ends onto " : "its ends onto ")
                    + Words.list(r.onto().stream().map(String::valueOf).toList())
                    + "; the edge of "
                    + r.onto().get(0)
                    + " has waited longest.")
        .findFirst()
        .orElse("");
  }

  /** A step to tick off. */
  private record Tick(String text) {}

  private static boolean perSection(Step step) {
    return switch (step.kind()) {
      case DRY_PREPARATION, WET, FLASH -> true;
      case BUILD, FINISH -> false;
    };
  }

  private static double seconds(
      Brief brief, PlatingPlan.SectionAmounts amounts, boolean perSection) {
    double seconds = 0;
    List<Step> steps = brief.planned.settings().recipe().steps();
    for (int i = 0; i < steps.size(); i++) {
      seconds += perSection(steps.get(i)) == perSection ? amounts.steps().get(i) : 0;
    }
    return seconds;
  }

  private static List<Tick> ticks(
      Brief brief, PlatingPlan.SectionAmounts amounts, boolean perSection) {
    List<Tick> ticks = new ArrayList<>();
    List<Step> steps = brief.planned.settings().recipe().steps();
    for (int i = 0; i < steps.size(); i++) {
      if (perSection(steps.get(i)) == perSection) {
        ticks.add(new Tick(steps.get(i).name() + " " + brief.format.time(amounts.steps().get(i))));
      }
    }
    return ticks;
  }

  /** Fills rows with ticks, in order. */
  private static List<List<Tick>> tickRows(Sheet sheet, List<Tick> ticks, double width)
      throws IOException {
    List<List<Tick>> rows = new ArrayList<>();
    double used = width + 1;
    for (Tick tick : ticks) {
      double w = tickWidth(sheet, tick);
      if (used + w > width) {
        rows.add(new ArrayList<>());
        used = 0;
      }
      rows.get(rows.size() - 1).add(tick);
      used += w;
    }
    return rows;
  }

  private static double tickWidth(Sheet sheet, Tick tick) throws IOException {
    return TICK + 5 + sheet.width(tick.text, Style.BODY) + 14;
  }

  private static double drawTicks(Sheet sheet, List<List<Tick>> rows, double x, double top)
      throws IOException {
    double y = top;
    for (List<Tick> row : rows) {
      double at = x;
      for (Tick tick : row) {
        sheet.tick(at, y, TICK);
        sheet.line(tick.text, Style.BODY, at + TICK + 5, y + 11.5);
        at += tickWidth(sheet, tick);
      }
      y += TICK_ROW;
    }
    return y;
  }

  private static void blanks(Sheet sheet, Brief brief, double x, double baseline, double width)
      throws IOException {
    String used = Words.capital(brief.laid()) + " used";
    if (width < NARROW) {
      double half = (width - 10) / 2;
      sheet.blank(used, x, baseline, half);
      sheet.blank("Solution", x + half + 10, baseline, half);
      sheet.blank("Time", x, baseline + BLANK_ROW, half);
      return;
    }
    double third = (width - 20) / 3;
    sheet.blank(used, x, baseline, third);
    sheet.blank("Solution", x + third + 10, baseline, third);
    sheet.blank("Time", x + 2 * (third + 10), baseline, third);
  }

  private static void wholePiece(Sheet sheet, Brief brief) throws IOException {
    List<Step> steps = brief.planned.settings().recipe().steps();
    List<String[]> rows = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      double seconds = 0;
      for (PlatingPlan.SectionAmounts amounts : brief.planned.plating().sections()) {
        seconds += amounts.steps().get(i);
      }
      if (!perSection(steps.get(i)) && seconds > 0) {
        rows.add(
            new String[] {steps.get(i).name(), steps.get(i).done(), brief.format.time(seconds)});
      }
    }
    if (rows.isEmpty()) {
      return;
    }
    sheet.subheading("Then the whole piece", 120);
    if (brief.planned.settings().buildUm() > 0) {
      sheet.paragraph(
          "Once every section is flashed there are no seams left: lay the build over all of it, "
              + brief.format.thickness(brief.planned.settings().buildUm())
              + " on "
              + brief.format.area(brief.planned.plating().totals().netMm2())
              + ".",
          Style.BODY);
      sheet.gap(6);
    }
    for (String[] row : rows) {
      double width = sheet.width() - 34 - 110;
      double height = Math.max(28, sheet.height(row[1], Style.BODY, width) + 20);
      sheet.need(height);
      sheet.tick(sheet.left(), sheet.y + 2, 20);
      sheet.block(row[0], Style.STRONG, sheet.left() + 34, sheet.y, width, 1);
      sheet.block(row[1], Style.BODY, sheet.left() + 34, sheet.y + Style.STRONG.leading(), width);
      sheet.lineRight(row[2], Style.FIGURE, sheet.right(), sheet.y + 18);
      sheet.y += height + 4;
    }
  }
}
