package org.seamwright.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.seamwright.measure.Revolution;
import org.seamwright.picture.Background;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Unrolled;
import org.seamwright.picture.View;
import org.seamwright.section.Section;
import org.seamwright.units.UnitSystem;

/**
 * A turned piece on one page: its outer and inner sides rolled out, all to one scale, and the piece
 * seen along its axis, so that every section can be found at a glance.
 */
final class UnrolledPage {
  private static final int PIXELS_PER_POINT = 3;

  /** Radius of the circles with numbers, points. */
  private static final double LABEL_RADIUS = 7.5;

  private static final double GUTTER = 8;
  private static final double CAPTION = 17;

  /** Room for the pictures along the axis with their caption, points. */
  private static final double ENDS = 200;

  private static final double RULER = 22;

  /** Steps of the scale: 1, 2 and 5 times a power of ten. */
  private static final double[] STEPS = {5, 2, 1};

  private static final double MM_PER_IN = 25.4;

  /** Smaller pictures show nothing; the scale is not lowered further, points to the mm. */
  private static final double LEAST_SCALE = 0.02;

  private final Sheet sheet;
  private final Brief brief;
  private final Set<Integer> seen = new TreeSet<>();
  private final Set<Integer> numbered = new TreeSet<>();

  private UnrolledPage(Sheet sheet, Brief brief) {
    this.sheet = sheet;
    this.brief = brief;
  }

  /** A side and its picture. */
  private record Placed(Unrolled.Side side, Pictures.Labelled picture) {
    double width() {
      return picture.image().width() / (double) PIXELS_PER_POINT;
    }

    double height() {
      return picture.image().height() / (double) PIXELS_PER_POINT + CAPTION;
    }
  }

  /** Adds the page if the piece shows an axis and most of it goes round that. */
  static void write(Sheet sheet, Brief brief) throws IOException {
    Revolution axis = Revolution.of(brief.planned.mesh());
    if (brief.sections().isEmpty() || !axis.isSure()) {
      return;
    }
    Unrolled unrolled = Unrolled.of(brief.sectionScene(), axis.point(), axis.direction());
    List<Unrolled.Side> sides = unrolled.sides().stream().filter(UnrolledPage::goesRound).toList();
    if (unrolled.isWorthShowing() && !sides.isEmpty()) {
      new UnrolledPage(sheet, brief).page(sides, axis);
    }
  }

  /** Faces that look along the axis are seen whole and to scale from its ends. */
  private static boolean goesRound(Unrolled.Side side) {
    return side.hasRegions()
        && (side.facing() == Unrolled.Facing.OUTWARD || side.facing() == Unrolled.Facing.INWARD);
  }

  private void page(List<Unrolled.Side> sides, Revolution axis) throws IOException {
    sheet.newPage();
    sheet.heading("Rolled out: all sections on one page", 400);
    sheet.paragraph(
        "Each side as one sees it who stands before it: to the right round the axis, down along the"
            + " profile. Every row is as wide as the piece is round there, so that areas, widths and"
            + " heights are to scale. Left and right end meet at the back. White gaps: holes, or"
            + " where something is joined on.",
        Style.LABEL);
    sheet.gap(6);
    double room = sheet.roomLeft() - ENDS - RULER - 3 * Style.LABEL.leading();
    double widest = sides.stream().mapToDouble(Unrolled.Side::widthMm).max().orElse(1);
    double scale = (sheet.width() - margins()) / widest;
    List<Placed> placed = drawn(sides, scale);
    while (rows(placed, false) > room && scale > LEAST_SCALE) {
      scale *= Math.max(0.7, Math.min(0.97, room / rows(placed, false)));
      placed = drawn(sides, scale);
    }
    sheet.y += rows(placed, true);
    ruler(scale);
    ends(axis);
    rest();
  }

  /** What the columns of labels take at both sides of a picture, points. */
  private static double margins() {
    return 2 * 3.4 * LABEL_RADIUS + 1;
  }

  private static List<Placed> drawn(List<Unrolled.Side> sides, double scale) {
    List<Placed> placed = new ArrayList<>();
    for (Unrolled.Side side : sides) {
      placed.add(
          new Placed(
              side, side.picture(scale * PIXELS_PER_POINT, LABEL_RADIUS * PIXELS_PER_POINT)));
    }
    return placed;
  }

  /** Sets sides in rows, or only finds the height that takes. */
  private double rows(List<Placed> placed, boolean draw) throws IOException {
    double x = sheet.left();
    double y = 0;
    double row = 0;
    for (Placed p : placed) {
      String caption =
          facing(p.side.facing())
              + ", "
              + brief.format.length(p.side.widthMm() / Math.PI)
              + " across where widest";
      double width = Math.max(p.width(), margins() / 2 + sheet.width(caption, Style.LABEL));
      if (x > sheet.left() && x + width > sheet.right() + 0.5) {
        y += row;
        x = sheet.left();
        row = 0;
      }
      if (draw) {
        double top = sheet.y + y;
        sheet.line(caption, Style.LABEL.in(Style.INK), x + margins() / 2, top + Style.LABEL.rise());
        sheet.picture(
            p.picture.image(),
            caption + ", rolled out, with numbered sections",
            x,
            top + CAPTION,
            p.width(),
            p.height() - CAPTION);
        note(p.picture);
      }
      x += width + GUTTER;
      row = Math.max(row, p.height() + 4);
    }
    return y + row;
  }

  private void note(Pictures.Labelled picture) {
    seen.addAll(picture.labelled());
    seen.addAll(picture.unlabelled());
    numbered.addAll(picture.labelled());
  }

  private static String facing(Unrolled.Facing facing) {
    return switch (facing) {
      case OUTWARD -> "Outer side";
      case INWARD -> "Inner side";
      case UP -> "Face towards the upper end";
      case DOWN -> "Face towards the lower end";
    };
  }

  /** A length to measure with, about a sixth of the page wide. */
  private void ruler(double scale) throws IOException {
    double unit = brief.planned.job().display() == UnitSystem.INCH ? MM_PER_IN : 1;
    double wanted = sheet.width() / 6 / scale / unit;
    double power = Math.pow(10, Math.floor(Math.log10(wanted)));
    double mm = power * unit;
    for (double step : STEPS) {
      if (step * power <= wanted) {
        mm = step * power * unit;
        break;
      }
    }
    double x = sheet.left() + margins() / 2;
    double y = sheet.y + 8;
    sheet.rule(x, y, mm * scale, 1.4, Style.INK);
    sheet.fill(x, y - 4, 1.2, 8, Style.INK);
    sheet.fill(x + mm * scale - 1.2, y - 4, 1.2, 8, Style.INK);
    sheet.line(
        brief.format.length(mm) + ", for all sides above",
        Style.LABEL.in(Style.INK),
        x + mm * scale + 8,
        y + 3);
    sheet.y += RULER;
  }

  private void ends(Revolution axis) throws IOException {
    double width = (sheet.width() - GUTTER) / 2;
    double height = ENDS - Style.LABEL.leading() - 6;
    var d = axis.direction();
    View[] views = {
      new View("the upper end of the axis", d.getX(), d.getY(), d.getZ()),
      new View("the lower end of the axis", -d.getX(), -d.getY(), -d.getZ())
    };
    double x = sheet.left();
    for (View view : views) {
      Pictures.Labelled picture =
          Pictures.numbered(
              brief.sectionScene(),
              view,
              (int) (width * PIXELS_PER_POINT),
              (int) (height * PIXELS_PER_POINT),
              Background.WHITE);
      sheet.picture(
          picture.image(),
          "Numbered sections, seen from: " + view.name(),
          x,
          sheet.y,
          width,
          height);
      sheet.block(
          "Seen from: " + view.name(), Style.LABEL.in(Style.INK), x, sheet.y + height, width, 1);
      note(picture);
      x += width + GUTTER;
    }
    sheet.y += ENDS;
  }

  private void rest() throws IOException {
    List<String> missing = new ArrayList<>();
    List<String> unnumbered = new ArrayList<>();
    for (Section section : brief.sections()) {
      if (!seen.contains(section.id())) {
        missing.add(String.valueOf(section.id()));
      } else if (!numbered.contains(section.id())) {
        unnumbered.add(String.valueOf(section.id()));
      }
    }
    if (!missing.isEmpty()) {
      sheet.paragraph("Not on this page: " + Words.list(missing) + ".", Style.LABEL);
    }
    if (!unnumbered.isEmpty()) {
      sheet.paragraph("Shown without a number: " + Words.list(unnumbered) + ".", Style.LABEL);
    }
  }
}
