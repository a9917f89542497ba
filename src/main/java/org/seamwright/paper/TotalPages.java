package org.seamwright.paper;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.seamwright.mask.MaskPlan;
import org.seamwright.mask.TapeKind;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.plating.PlatingSettings;
import org.seamwright.plating.Solution;
import org.seamwright.section.Section;

/** Sums, what to have ready, and how each number came about. */
final class TotalPages {
  private TotalPages() {}

  static List<Figure> headline(Brief brief) {
    PlatingPlan.Totals totals = brief.planned.plating().totals();
    PlatingPlan.Bands bands = brief.planned.plating().bands();
    return List.of(
        new Figure(
            Words.capital(brief.laid()) + " to have ready",
            brief.format.mass(totals.goldG()),
            brief.range(bands.goldG(), brief.format::mass)),
        new Figure(
            "Solution",
            brief.format.volume(totals.solutionMl()),
            brief.range(bands.solutionMl(), brief.format::volume)),
        new Figure("Sections", String.valueOf(brief.sections().size()), ""),
        new Figure(
            "Work at the piece",
            brief.format.time(totals.seconds()),
            brief.range(bands.seconds(), brief.format::time)));
  }

  static void write(Sheet sheet, Brief brief) throws IOException {
    sheet.part("Have ready", 220);
    for (String[] item : shopping(brief)) {
      double width = sheet.width() - 36 - 130;
      double height =
          Math.max(30, Style.STRONG.leading() + sheet.height(item[2], Style.SMALL, width) + 8);
      sheet.need(height);
      sheet.tick(sheet.left(), sheet.y + 2, 20);
      double y = sheet.y + sheet.block(item[0], Style.STRONG, sheet.left() + 36, sheet.y, width, 1);
      sheet.block(item[2], Style.SMALL, sheet.left() + 36, y, width);
      sheet.lineRight(item[1], Style.FIGURE, sheet.right(), sheet.y + 18);
      sheet.y += height;
    }
    overview(sheet, brief);
  }

  private static List<String[]> shopping(Brief brief) {
    PlatingSettings settings = brief.planned.settings();
    PlatingPlan.Totals totals = brief.planned.plating().totals();
    double flash = 0;
    double build = 0;
    double loss = 0;
    for (PlatingPlan.SectionAmounts a : brief.planned.plating().sections()) {
      flash += a.flashG();
      build += a.buildG();
      loss += a.lossG();
    }
    List<String[]> items = new ArrayList<>();
    items.add(
        new String[] {
          settings.deposit().name(),
          brief.format.mass(totals.goldG()),
          "Flash "
              + brief.format.mass(flash)
              + ", build "
              + brief.format.mass(build)
              + ", loss "
              + brief.format.mass(loss)
        });
    items.add(
        new String[] {
          solution(brief),
          brief.format.volume(totals.solutionMl()),
          "That holds it, at "
              + number(settings.solutionGPerL())
              + " g/l of which "
              + number(100 * settings.usableShare())
              + " % can be laid down"
              + dips(settings, totals)
        });
    brief
        .planned
        .steep()
        .filter(steep -> steep.areaMm2() > 0 && !isGel(brief))
        .ifPresent(
            steep ->
                items.add(
                    new String[] {
                      "of it as gel",
                      brief.format.volume(totals.solutionMl() * steep.areaMm2() / totals.netMm2()),
                      "For walls and overhangs, "
                          + brief.format.area(steep.areaMm2())
                          + " as the piece is held, off which liquid runs"
                    }));
    items.add(
        new String[] {
          "Charge", brief.format.charge(totals.chargeAh()), "For the A·h meter, flash and build"
        });
    double lacquer =
        brief.planned.masks().masks().stream().mapToDouble(MaskPlan.Mask::lacquerMl).sum();
    for (MaskPlan.TapeUse use :
        brief.planned.masks().tapes(brief.planned.job().masking().kinds())) {
      TapeKind tape = use.tape();
      items.add(
          new String[] {
            "Tape"
                + (tape.name().isEmpty() ? "" : " \u201c" + tape.name() + "\u201d")
                + ", "
                + brief.format.length(tape.widthMm())
                + " wide",
            brief.format.length(use.lengthMm()),
            Words.count(use.rolls(), "roll", "rolls")
                + ", overlaps included"
                + (tape.resists().isEmpty() ? "" : "; stands " + tape.resists())
          });
    }
    if (lacquer > 0) {
      items.add(
          new String[] {
            "Stop-off lacquer", brief.format.volume(lacquer), "All coats, loss included"
          });
    }
    brief
        .planned
        .masks()
        .dipped()
        .ifPresent(
            dipped ->
                items.add(
                    new String[] {
                      "Bath of stop-off lacquer",
                      brief.format.volume(dipped.bathMl()),
                      brief.format.volume(dipped.usedMl())
                          + " of it is used up; the rest goes back into its tin"
                    }));
    return items;
  }

  private static String solution(Brief brief) {
    String name = brief.planned.job().plating().sheet().name();
    return Words.capital(brief.laid())
        + (isGel(brief) ? " gel" : " solution")
        + (name.isEmpty() ? "" : " \u201c" + name + "\u201d");
  }

  /** Whether all of the solution is a gel, so that steep places need no other. */
  static boolean isGel(Brief brief) {
    return brief.planned.job().plating().sheet().form() == Solution.Form.GEL;
  }

  private static String dips(PlatingSettings settings, PlatingPlan.Totals totals) {
    OptionalDouble dips = settings.tool().dips(totals.solutionMl());
    return dips.isPresent() ? "; " + Words.count((long) dips.getAsDouble(), "dip", "dips") : "";
  }

  static String number(double value) {
    return BigDecimal.valueOf(value).round(new MathContext(4)).stripTrailingZeros().toPlainString();
  }

  private static void overview(Sheet sheet, Brief brief) throws IOException {
    sheet.part("All sections", 120);
    Table table =
        new Table(
            sheet,
            Style.BODY,
            new Table.Column("Section", 0.8, false),
            new Table.Column("Net", 1.2, true),
            new Table.Column("Laps", 1.1, true),
            new Table.Column("Worked", 1.2, true),
            new Table.Column(Words.capital(brief.laid()), 1, true),
            new Table.Column("Solution", 1, true),
            new Table.Column("Time", 1.5, true));
    List<List<String>> rows = new ArrayList<>();
    for (Section s : brief.sections()) {
      PlatingPlan.SectionAmounts a = brief.amounts(s.id());
      rows.add(
          List.of(
              s.id()
                  + (s.name().isBlank() ? "" : " " + s.name())
                  + (brief.overLimit(s) ? " over" : ""),
              brief.format.area(s.netMm2()),
              brief.format.area(s.workedMm2() - s.netMm2()),
              brief.format.area(s.workedMm2()),
              brief.format.mass(a.goldG()),
              brief.format.volume(a.solutionMl()),
              brief.format.time(a.seconds())));
    }
    PlatingPlan.Totals t = brief.planned.plating().totals();
    rows.add(
        List.of(
            "Total",
            brief.format.area(t.netMm2()),
            brief.format.area(t.workedMm2() - t.netMm2()),
            brief.format.area(t.workedMm2()),
            brief.format.mass(t.goldG()),
            brief.format.volume(t.solutionMl()),
            brief.format.time(t.seconds())));
    table.rows(rows);
    sheet.gap(4);
    sheet.paragraph(
        "Time is work at the piece; fetching, masking and drying are not in it.", Style.LABEL);
  }

  /** How each number came about. */
  static void trace(Sheet sheet, Brief brief) throws IOException {
    sheet.part("How each number came about", 220);
    List<PlatingPlan.Trace> all = new ArrayList<>(areas(brief));
    all.addAll(brief.planned.plating().trace());
    Flow flow = new Flow(sheet);
    for (PlatingPlan.Trace trace : all) {
      traced(flow, sheet, trace);
    }
    flow.set();
  }

  private static void traced(Flow flow, Sheet sheet, PlatingPlan.Trace trace) throws IOException {
    double x = sheet.left() + 150;
    double width = sheet.right() - x;
    Style plain = Style.BODY.sized(10);
    double height =
        Math.max(
                sheet.height(trace.figure(), Style.STRONG.sized(10.5), 138),
                sheet.height(trace.formula(), plain, width)
                    + sheet.height(trace.inputs(), plain, width)
                    + sheet.height("Source: " + trace.source(), Style.SMALL, width))
            + 4;
    flow.add(
        height,
        7,
        () -> {
          sheet.block(trace.figure(), Style.STRONG.sized(10.5), sheet.left(), sheet.y, 138);
          double y = sheet.y;
          y += sheet.block(trace.formula(), plain, x, y, width);
          y += sheet.block(trace.inputs(), plain, x, y, width);
          sheet.block("Source: " + trace.source(), Style.SMALL, x, y, width);
          sheet.rule(sheet.left(), sheet.y + height, sheet.width(), 0.4, Style.HAIRLINE);
        });
  }

  private static List<PlatingPlan.Trace> areas(Brief brief) {
    var survey = brief.planned.survey();
    var rules = brief.planned.job().sections();
    List<PlatingPlan.Trace> rows = new ArrayList<>();
    rows.add(
        new PlatingPlan.Trace(
            "Area of the piece",
            "sum of the areas of all facets, in mm; the smooth surface is estimated from them",
            brief.format.area(survey.areaMm2())
                + " facets; smooth "
                + brief.format.area(survey.smooth().areaMm2())
                + " ("
                + brief.format.area(survey.smooth().lowMm2())
                + " to "
                + brief.format.area(survey.smooth().highMm2())
                + ")",
            "measured on the model; 1 unit of its file = "
                + brief.format.length(brief.planned.mmPerUnit())));
    rows.add(
        new PlatingPlan.Trace(
            "Laps",
            "area of earlier neighbours within the lap width of a seam, along the surface; worked ="
                + " net + the wider lap",
            "activation lap "
                + brief.format.width(rules.activationLapMm())
                + ", flash lap "
                + brief.format.width(rules.flashLapMm()),
            "measured on the model; lap widths: shop setting"));
    rows.add(
        new PlatingPlan.Trace(
            "Limit of a section",
            brief.planned.limitIsSet()
                ? "set directly; the wet window is shown beside it"
                : "limit = least of (wet window − handling) / slower pace of two steps in a row",
            brief.planned.wetLimit().map(w -> w.explanation() + " → ").orElse("")
                + (brief.planned.limitIsSet()
                    ? brief
                            .planned
                            .wetLimit()
                            .map(w -> brief.format.area(w.limitMm2()) + "; ")
                            .orElse("")
                        + "set: "
                    : "")
                + brief.format.area(brief.planned.limitMm2()),
            "wet window, paces and handling: shop setting"));
    return rows;
  }
}
