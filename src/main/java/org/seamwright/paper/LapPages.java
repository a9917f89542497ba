package org.seamwright.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.job.Job;
import org.seamwright.picture.Background;
import org.seamwright.picture.Image;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Scene;
import org.seamwright.picture.View;
import org.seamwright.plating.PlatingException;
import org.seamwright.plating.WetLimit;
import org.seamwright.plating.WetLimits;
import org.seamwright.section.Junction;
import org.seamwright.section.Junctions;
import org.seamwright.section.SectionPlan;

/** How often places are activated, where three sections meet, and how long a place stays wet. */
final class LapPages {
  private static final double PICTURE_HEIGHT = 190;
  private static final double GUTTER = 12;
  private static final int PIXELS_WIDE = 900;

  private LapPages() {}

  static void write(Sheet sheet, Brief brief) throws IOException {
    if (!brief.planned.sections().seams().isEmpty()) {
      activated(sheet, brief);
    }
    wetChain(sheet, brief);
  }

  private static void activated(Sheet sheet, Brief brief) throws IOException {
    SectionPlan plan = brief.planned.sections();
    Junctions junctions = plan.junctions();
    sheet.part("Laps", 120);
    double net = plan.onceMm2() + plan.twiceMm2() + plan.moreMm2();
    Style value = new Style(true, 14, Style.INK);
    sheet.y +=
        Figure.row(
                sheet,
                List.of(
                    figure(brief, "Activated once", plan.onceMm2(), net),
                    figure(brief, "Twice", plan.twiceMm2(), net),
                    figure(brief, "Three times or more", plan.moreMm2(), net),
                    new Figure(
                        "Three sections meet",
                        Words.count(junctions.places().size(), "place", "places"),
                        apart(brief, junctions))),
                value,
                sheet.left(),
                sheet.y,
                sheet.width())
            + 8;
    if (!junctions.close().isEmpty()) {
      sheet.paragraph(close(brief, junctions), Style.BODY);
      sheet.gap(6);
    }
    if (!junctions.places().isEmpty()) {
      pictures(sheet, brief);
      places(sheet, brief, junctions);
    }
  }

  /** The places from the side that shows most of them, and from one that shows most of the rest. */
  private static void pictures(Sheet sheet, Brief brief) throws IOException {
    SectionPlan plan = brief.planned.sections();
    List<Pictures.Callout> callouts = Pictures.junctions(plan);
    Scene scene = Pictures.lapScene(plan, brief.planned.map());
    double width = (sheet.width() - GUTTER) / 2;
    int high = (int) (PIXELS_WIDE * PICTURE_HEIGHT / width);
    sheet.need(PICTURE_HEIGHT + 2 * Style.LABEL.leading());
    double top = sheet.y;
    double x = sheet.left();
    for (View view : views(plan, callouts)) {
      Image image =
          Pictures.withCallouts(scene, callouts, view, PIXELS_WIDE, high, Background.WHITE).image();
      sheet.picture(
          image,
          "Where laps make "
              + brief.laid()
              + " be activated twice or more, seen from: "
              + view.name(),
          x,
          top,
          width,
          PICTURE_HEIGHT);
      sheet.block(
          "Seen from: " + view.name(), Style.LABEL.in(Style.INK), x, top + PICTURE_HEIGHT, width);
      x += width + GUTTER;
    }
    sheet.y = top + PICTURE_HEIGHT + Style.LABEL.leading() + 2;
    sheet.paragraph(
        "Blue, dotted: activated twice. Red, crossed: three times or more. Numbers: places where"
            + " three sections meet.",
        Style.LABEL);
    sheet.gap(6);
  }

  private static List<View> views(SectionPlan plan, List<Pictures.Callout> callouts) {
    List<List<Vector3D>> points = callouts.stream().map(Pictures.Callout::points).toList();
    List<View> all = View.around();
    int[][] seen = new int[all.size()][];
    for (int v = 0; v < seen.length; v++) {
      seen[v] = Pictures.pointsInView(plan.mesh(), points, all.get(v));
    }
    boolean[] shown = new boolean[points.size()];
    List<View> chosen = new ArrayList<>();
    for (int i = 0; i < 2; i++) {
      int best = 0;
      int most = 0;
      for (int v = 0; v < seen.length; v++) {
        int fresh = 0;
        for (int p = 0; p < shown.length; p++) {
          fresh += !shown[p] && seen[v][p] > 0 ? 1 : 0;
        }
        if (fresh > most) {
          most = fresh;
          best = v;
        }
      }
      if (most > 0 || chosen.isEmpty()) {
        chosen.add(all.get(best));
      }
      for (int p = 0; p < shown.length; p++) {
        shown[p] |= seen[best][p] > 0;
      }
    }
    return chosen;
  }

  private static Figure figure(Brief brief, String label, double mm2, double net) {
    return new Figure(
        label, brief.format.area(mm2), String.format(Locale.ROOT, "%.2g %%", 100 * mm2 / net));
  }

  private static String apart(Brief brief, Junctions junctions) {
    return Double.isInfinite(junctions.nearestMm())
        ? ""
        : "at least " + brief.format.length(junctions.nearestMm()) + " apart";
  }

  private static String close(Brief brief, Junctions junctions) {
    Job.SectionRules rules = brief.planned.job().sections();
    double lap = Math.max(rules.activationLapMm(), rules.flashLapMm());
    List<String> pairs = new ArrayList<>();
    for (Junctions.Close pair : junctions.close()) {
      pairs.add(
          (pair.first() + 1)
              + " and "
              + (pair.second() + 1)
              + " ("
              + brief.format.length(pair.distanceMm())
              + ")");
    }
    return "Nearer to each other than the wider lap of "
        + brief.format.width(lap)
        + ": places "
        + String.join("; ", pairs)
        + ". Activate sparingly there.";
  }

  private static void places(Sheet sheet, Brief brief, Junctions junctions) throws IOException {
    Table table =
        new Table(
            sheet,
            Style.BODY.sized(10),
            new Table.Column("Place", 0.5, false),
            new Table.Column("Sections that meet", 1.6, false),
            new Table.Column("x", 1, true),
            new Table.Column("y", 1, true),
            new Table.Column("z, of the model", 1, true));
    List<List<String>> rows = new ArrayList<>();
    for (Junction place : junctions.places()) {
      rows.add(
          List.of(
              String.valueOf(rows.size() + 1),
              Words.list(place.sections().stream().map(String::valueOf).toList()),
              brief.format.length(place.xMm()),
              brief.format.length(place.yMm()),
              brief.format.length(place.zMm())));
    }
    table.rows(rows);
    sheet.gap(4);
  }

  private static void wetChain(Sheet sheet, Brief brief) throws IOException {
    List<WetLimit> chain;
    try {
      chain =
          WetLimits.each(
              brief.planned.settings(), brief.planned.job().sections().limit().windowSeconds());
    } catch (PlatingException e) {
      // A limit set directly needs no wet chain that can be told.
      return;
    }
    if (brief.planned.wetLimit().isEmpty()) {
      return;
    }
    WetLimit least = brief.planned.wetLimit().get();
    sheet.part("How long a place stays wet", 160);
    sheet.paragraph(summary(brief, least), Style.BODY);
    sheet.gap(6);
    Table table =
        new Table(
            sheet,
            Style.BODY.sized(10),
            new Table.Column("From one step to the next", 2.6, false),
            new Table.Column("Handling", 0.9, true),
            new Table.Column("Left of window", 1.1, true),
            new Table.Column("Slower pass", 1.1, true),
            new Table.Column("Stays wet", 1, true));
    List<List<String>> rows = new ArrayList<>();
    for (WetLimit pair : chain) {
      rows.add(
          List.of(
              pair.governedBy() + (pair.limitMm2() == least.limitMm2() ? ": sets the limit" : ""),
              brief.format.time(pair.handlingSeconds()),
              brief.format.time(pair.leftSeconds()),
              TotalPages.number(pair.secondsPerCm2()) + " s/cm²",
              brief.format.area(pair.limitMm2())));
    }
    table.rows(rows);
  }

  private static String summary(Brief brief, WetLimit least) {
    String window =
        "A wetted place stays wet for "
            + brief.format.time(least.windowSeconds())
            + ". "
            + least.governedBy()
            + " leaves "
            + brief.format.time(least.leftSeconds())
            + " of it, enough for "
            + brief.format.area(least.limitMm2())
            + ". ";
    String limit =
        brief.planned.limitIsSet()
            ? "The limit set in the job is "
                + brief.format.area(brief.planned.limitMm2())
                + (brief.planned.limitMm2() > least.limitMm2() ? ", which is more. " : ". ")
            : "That is the limit of a section, laps included. ";
    return window + limit + "Measure window, handling and passes as the trial sheet says.";
  }
}
