package org.seamwright.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seamwright.plating.Notes;
import org.seamwright.plating.Recipe;
import org.seamwright.plating.Solution;
import org.seamwright.plating.Step;
import org.seamwright.units.UnitSystem;

/** The steps of the recipe, each with why, how, when it is done and what can go wrong. */
final class StepPages {
  private static final Style SOURCE = Style.SMALL.sized(8);

  private static final double CM2_PER_IN2 = 6.4516;

  private StepPages() {}

  static void write(Sheet sheet, Brief brief) throws IOException {
    Recipe recipe = brief.planned.settings().recipe();
    sheet.part("Steps for " + lowerFirst(recipe.base()), 260);
    bullets(sheet, recipe.notes());
    sheet.gap(10);
    int number = 1;
    for (Step step : recipe.steps()) {
      boolean leftOut = step.kind() == Step.Kind.BUILD && brief.planned.settings().buildUm() == 0;
      if (!leftOut) {
        step(sheet, step, letter(number++), brief);
      }
    }
    sheet.gap(8);
    solution(sheet, brief.planned.job().plating().sheet());
    watch(sheet, brief.planned.settings().deposit().isGold());
  }

  /** What the solution's sheet says, as far as the job holds it. */
  private static void solution(Sheet sheet, Solution solution) throws IOException {
    if (solution.equals(Solution.UNKNOWN)) {
      return;
    }
    sheet.subheading(
        "The solution" + (solution.name().isEmpty() ? "" : ", " + solution.name()), 80);
    List<String> said = new ArrayList<>();
    said.add(
        solution.form() == Solution.Form.GEL
            ? "A gel: it stays on walls and overhangs."
            : "A liquid: it runs off walls and overhangs.");
    add(said, "Voltage: ", solution.volts());
    add(said, "Anode: ", solution.anode());
    add(said, "Keep: ", solution.keep());
    bullets(sheet, said);
    sheet.paragraph("Source: the solution's sheet, as entered by the shop.", Style.SMALL);
    sheet.gap(8);
  }

  private static void add(List<String> said, String label, String text) {
    if (!text.isEmpty()) {
      said.add(label + text);
    }
  }

  /** What to watch for while working: common practice, and said so. */
  private static void watch(Sheet sheet, boolean gold) throws IOException {
    sheet.subheading("Watch for", 120);
    List<String> all = new ArrayList<>(Notes.rules());
    if (gold) {
      all.addAll(Notes.colour());
    }
    all.addAll(Notes.anode());
    Notes.storage().stream().filter(n -> gold || !n.startsWith("Gold ")).forEach(all::add);
    bullets(sheet, all);
    sheet.paragraph("Source: " + Notes.SOURCE + ", unless another is named.", Style.SMALL);
  }

  private static void bullets(Sheet sheet, List<String> notes) throws IOException {
    Flow flow = new Flow(sheet);
    for (String note : notes) {
      bullet(flow, sheet, note, Style.BODY);
    }
    flow.set();
  }

  /** Adds a text with a dot before it. */
  static void bullet(Flow flow, Sheet sheet, String text, Style style) throws IOException {
    double width = sheet.width() - 14;
    flow.add(
        sheet.height(text, style, width),
        3,
        () -> {
          sheet.disc(sheet.left() + 4, sheet.y + style.rise() - 4, 2, style.rgb());
          sheet.block(text, style, sheet.left() + 14, sheet.y, width);
        });
  }

  /** Steps carry letters, so that they are never taken for sections. */
  static String letter(int number) {
    return number <= 26 ? String.valueOf((char) ('A' + number - 1)) : "S" + number;
  }

  static String lowerFirst(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
  }

  private static String when(Step.Kind kind) {
    return switch (kind) {
      case DRY_PREPARATION -> "may dry afterwards";
      case WET -> "keep wet until the next step";
      case FLASH -> "ends the wet steps";
      case BUILD -> "once all sections are flashed";
      case FINISH -> "after plating";
    };
  }

  private static void step(Sheet sheet, Step step, String letter, Brief brief) throws IOException {
    double x = sheet.left() + 40;
    double side = 178;
    double width = sheet.width() - 40 - side - 14;
    String done = step.done().isEmpty() ? "" : "Done when: " + step.done();
    String wrong = step.wrong().isEmpty() ? "" : "If not: " + step.wrong();
    String source = "Source: " + step.source();
    double leftHeight =
        Style.SUBHEADING.leading()
            + sheet.height(step.purpose(), Style.BODY, width)
            + sheet.height(done, Style.BODY, width)
            + sheet.height(wrong, Style.BODY, width)
            + sheet.height(step.caution(), Style.WARNING, width);
    double sideHeight =
        sheet.height(volts(step), Style.SUBHEADING, side)
            + sheet.height(step.polarity(), Style.LABEL, side)
            + sheet.height(pace(step, brief), Style.LABEL, side)
            + sheet.height(when(step.kind()), Style.LABEL, side)
            + sheet.height(source, SOURCE, side);
    double height = Math.max(leftHeight, sideHeight) + 4;
    sheet.need(height);
    double y = sheet.y;
    sheet.badge(letter, sheet.left() + 15, y + 16, 15);
    y += sheet.block(step.name(), Style.SUBHEADING, x, y, width);
    y += sheet.block(step.purpose(), Style.BODY, x, y, width);
    y += sheet.block(done, Style.BODY, x, y, width);
    y += sheet.block(wrong, Style.BODY, x, y, width);
    sheet.block(step.caution(), Style.WARNING, x, y, width);
    double sideX = sheet.right() - side;
    double sideY = sheet.y;
    sideY += sheet.block(volts(step), Style.SUBHEADING, sideX, sideY, side);
    sideY += sheet.block(step.polarity(), Style.LABEL, sideX, sideY, side);
    sideY += sheet.block(pace(step, brief), Style.LABEL, sideX, sideY, side);
    sideY += sheet.block(when(step.kind()), Style.LABEL.in(Style.ACCENT), sideX, sideY, side);
    sheet.block(source, SOURCE, sideX, sideY, side);
    sheet.y += height;
    sheet.rule(sheet.left(), sheet.y, sheet.width(), 0.5, Style.HAIRLINE);
    sheet.gap(6);
  }

  private static String volts(Step step) {
    return step.volts().isEmpty() ? "no current" : step.volts();
  }

  private static String pace(Step step, Brief brief) {
    return switch (step.kind()) {
      case FLASH, BUILD -> "time by thickness";
      default ->
          Words.count(step.passes(), "pass", "passes")
              + " over the area, "
              + (brief.planned.job().display() == UnitSystem.INCH
                  ? TotalPages.number(step.secondsPerCm2() * CM2_PER_IN2) + " s per in² each"
                  : TotalPages.number(step.secondsPerCm2()) + " s per cm² each");
    };
  }
}
