package org.seamwright.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.basis.Notice;
import org.seamwright.job.MaskOrder;
import org.seamwright.mask.Dip;
import org.seamwright.mask.Dipped;
import org.seamwright.mask.MaskPlan;
import org.seamwright.mask.MaskSettings;
import org.seamwright.picture.Background;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Scene;
import org.seamwright.picture.View;

/** What is covered before plating, with what, and where. */
final class MaskPages {
  private static final double PICTURE_HEIGHT = 250;
  private static final int PICTURE_PIXELS_WIDE = 1400;
  private static final int MOST_VIEWS = 4;

  /** A bend that any tape follows and no eye sees. */
  private static final double STRAIGHT_MM = 2000;

  private MaskPages() {}

  static void write(Sheet sheet, Brief brief) throws IOException {
    MaskPlan plan = brief.planned.masks();
    sheet.part("Mask", plan.masks().isEmpty() ? 40 : PICTURE_HEIGHT + 120);
    if (plan.masks().isEmpty()) {
      sheet.paragraph("Nothing bare borders on plating: there is nothing to mask.", Style.BODY);
      return;
    }
    sheet.paragraph(
        plan.dipped().isPresent()
            ? "Lay tape on the bare side, its edge on the line, lapping over itself at the join. Dip,"
                + " let it drain and dry, then cut along the tape's edge and peel the plated side"
                + " free."
            : "Lay tape on the bare side, its edge on the line, lapping over itself at the join."
                + " Lacquer beyond the tape, lapping onto its back edge only. Let it dry before"
                + " anything is wetted.",
        Style.BODY);
    sheet.gap(8);
    pictures(sheet, brief);
    MaskOrder order = MaskOrder.of(plan, brief.planned.sections());
    for (MaskPlan.Mask mask : plan.masks()) {
      mask(sheet, brief, mask, order);
    }
    if (plan.dipped().isPresent()) {
      dip(sheet, brief, plan.dipped().get());
    }
    time(sheet, brief);
    for (Notice notice : plan.notices()) {
      sheet.paragraph(notice.text(), Style.BODY);
    }
  }

  private static void pictures(Sheet sheet, Brief brief) throws IOException {
    MaskScene masks =
        MaskScene.of(brief.planned.map(), brief.planned.masks(), brief.planned.job().masking());
    Scene scene = masks.scene();
    int high = (int) (PICTURE_PIXELS_WIDE * PICTURE_HEIGHT / sheet.width());
    NumberedViews views = masks.views();
    for (View view : views.views(MOST_VIEWS)) {
      sheet.need(PICTURE_HEIGHT + 22);
      Pictures.Labelled picture =
          Pictures.withCallouts(
              scene, views.seenFrom(view), view, PICTURE_PIXELS_WIDE, high, Background.WHITE);
      sheet.picture(
          picture.image(),
          "What to cover, seen from: " + view.name(),
          sheet.left(),
          sheet.y,
          sheet.width(),
          PICTURE_HEIGHT);
      sheet.y += PICTURE_HEIGHT + 2;
      sheet.paragraph(
          "Seen from: "
              + view.name()
              + ". White: tape, grey where a strip lies over another or behind. Hatched: lacquer."
              + (masks.numbersStrips() ? "" : " Strips are too many to number here."),
          Style.LABEL.in(Style.INK));
      sheet.gap(8);
    }
  }

  private static void mask(Sheet sheet, Brief brief, MaskPlan.Mask mask, MaskOrder order)
      throws IOException {
    String tape = mask.tape().isEmpty() ? "No tape" : "Cut: " + strips(brief, mask);
    String more = bends(brief, mask) + when(brief, order.beside(mask.id()));
    double x = sheet.left() + 52;
    double width = sheet.right() - x - 40;
    double tapeHeight = sheet.height(tape, Style.BODY, width);
    double height = Math.max(64, 46 + tapeHeight + sheet.height(more, Style.BODY, width));
    sheet.need(height + 10);
    double top = sheet.y;
    sheet.badge("M" + mask.id(), sheet.left() + 20, top + 22, 20);
    Figure.row(
        sheet,
        List.of(
            new Figure("Edge", brief.format.length(mask.edgeMm()), ""),
            new Figure("Under tape", brief.format.area(mask.tapeMm2()), ""),
            new Figure(
                brief.planned.masks().dipped().isPresent() ? "To brush" : "Under lacquer",
                brief.format.area(mask.lacquerMm2()),
                ""),
            new Figure("Lacquer", brief.format.volume(mask.lacquerMl()), "")),
        new Style(true, 14, Style.INK),
        x,
        top,
        width);
    sheet.block(tape, Style.BODY, x, top + 36, width);
    sheet.block(more, Style.BODY, x, top + 36 + tapeHeight, width);
    sheet.tick(sheet.right() - 24, top + 8, 22);
    sheet.y += height;
    sheet.rule(sheet.left(), sheet.y, sheet.width(), 0.5, Style.HAIRLINE);
    sheet.gap(10);
  }

  /** Pieces alike are told once, after their numbers: "1.1, 1.3: 2 × 33 mm of 12 mm wide". */
  private static String strips(Brief brief, MaskPlan.Mask mask) {
    Map<String, Integer> count = new LinkedHashMap<>();
    Map<String, List<String>> names = new LinkedHashMap<>();
    for (int i = 0; i < mask.tape().size(); i++) {
      MaskPlan.TapeStrip strip = mask.tape().get(i);
      String name = strip.name().isEmpty() ? "tape" : "\u201c" + strip.name() + "\u201d";
      String what =
          brief.format.length(strip.lengthMm())
              + " of "
              + brief.format.length(strip.widthMm())
              + " "
              + name
              + (strip.row() > 0 ? " behind it" : "");
      count.merge(what, strip.pieces(), Integer::sum);
      names.computeIfAbsent(what, w -> new ArrayList<>()).add(MaskScene.name(mask, i + 1));
    }
    List<String> told = new ArrayList<>();
    count.forEach(
        (what, n) ->
            told.add(
                (mask.tape().size() == 1 ? "" : String.join(", ", names.get(what)) + ": ")
                    + (n == 1 ? what : n + " × " + what)));
    return String.join("; ", told);
  }

  private static String bends(Brief brief, MaskPlan.Mask mask) {
    List<String> told = new ArrayList<>();
    MaskPlan.Bends bends = mask.bends();
    if (bends.tightestMm() < STRAIGHT_MM) {
      told.add("Tightest bend " + brief.format.length(bends.tightestMm()));
    }
    if (bends.corners() > 0) {
      told.add(Words.count(bends.corners(), "corner", "corners") + " to cut at");
    }
    if (bends.wrapMm() > 0) {
      told.add(
          "a sharp edge of the piece runs under the tape for "
              + brief.format.length(bends.wrapMm())
              + ": press it down there, or slit it");
    }
    if (bends.byHandMm() > 0) {
      told.add("brush lacquer up to the line for " + brief.format.length(bends.byHandMm()));
    }
    return told.isEmpty() ? "" : String.join(", ", told) + ". ";
  }

  private static String when(Brief brief, List<Integer> beside) {
    if (beside.isEmpty()) {
      return "";
    }
    String first = String.valueOf(beside.get(0));
    String last = String.valueOf(beside.get(beside.size() - 1));
    boolean build = brief.planned.settings().buildUm() > 0;
    return "On before section "
        + first
        + "; look at its edge before "
        + (beside.size() == 1
            ? "it"
            : "each of " + Words.list(beside.stream().map(String::valueOf).toList()))
        + "; off after "
        + (build ? "the build." : "section " + last + ".");
  }

  /** The bath, and what becomes of it. */
  private static void dip(Sheet sheet, Brief brief, Dipped dipped) throws IOException {
    Dip dip = brief.planned.job().masking().dip().orElseThrow();
    sheet.need(90);
    sheet.paragraph("Dip", new Style(true, 11.5, Style.INK));
    Figure.row(
        sheet,
        List.of(
            new Figure("Bath to have ready", brief.format.volume(dipped.bathMl()), ""),
            new Figure("Used up", brief.format.volume(dipped.usedMl()), ""),
            new Figure("Goes under", brief.format.area(dipped.wettedMm2()), ""),
            new Figure("To peel free", brief.format.area(dipped.plateMm2()), "")),
        new Style(true, 14, Style.INK),
        sheet.left(),
        sheet.y,
        sheet.width());
    sheet.y += 40;
    sheet.paragraph(
        (dip.isWhole()
                ? "The whole piece goes under. "
                : "Hang it so that its lowest point is "
                    + brief.format.length(dip.depthMm())
                    + " below the surface; what is bare above is brushed. ")
            + "Fill the vessel to its mark with the piece in it: the piece takes up "
            + brief.format.volume(dipped.displacedMl())
            + ". Film "
            + brief.format.volume(dipped.filmMl())
            + ", drips "
            + brief.format.volume(dipped.drainedMl())
            + ", lost of what is left "
            + brief.format.volume(dipped.lostMl())
            + ". Losses: shop setting.",
        Style.BODY);
    sheet.gap(8);
  }

  /** What masking takes in all. */
  private static void time(Sheet sheet, Brief brief) throws IOException {
    MaskSettings settings = brief.planned.job().masking();
    double work = brief.planned.masks().workSeconds(settings);
    boolean lacquer = brief.planned.masks().lacquerMl() > 0;
    sheet.paragraph(
        "Masking takes about "
            + brief.format.time(work)
            + (lacquer
                ? "; lacquer dries "
                    + brief.format.time(60 * settings.pace().dryMinutesPerCoat())
                    + " after each of "
                    + Words.count(settings.lacquerCoats(), "coat", "coats")
                : "")
            + ". Paces and drying: shop setting; the lacquer's sheet goes before it.",
        Style.LABEL);
  }
}
