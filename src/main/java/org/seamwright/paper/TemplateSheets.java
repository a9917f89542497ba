package org.seamwright.paper;

import java.awt.geom.Path2D;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seamwright.flatten.Template;
import org.seamwright.flatten.Templates;
import org.seamwright.mesh.Mesh;

/**
 * Templates on paper, 1:1: a list first, then each template on as many pages as it needs. Pages
 * join edge to edge along thin frames; what lies a little beyond a frame is printed too, to glue
 * on. Every page has a bar of 50 mm to check the printer by.
 */
public final class TemplateSheets {
  private static final double POINTS_PER_MM = 72 / 25.4;
  private static final double HEAD = 20;
  private static final double FOOT = 40;

  /** Printed beyond the frame, points: enough to glue and to see the lines meet. */
  private static final double BEYOND = 14;

  private static final double BAR_MM = 50;

  /** Places without template that are listed one by one, the largest first. */
  private static final int MOST_PLACES = 12;

  private final Sheet sheet;
  private final TemplateWords words;

  private TemplateSheets(Sheet sheet, TemplateWords words) {
    this.sheet = sheet;
    this.words = words;
  }

  /**
   * Writes the sheets as PDF.
   *
   * @param templates what to draw
   * @param rest the faces of the piece that no film is for, for pictures
   * @param file replaced if it exists
   * @throws IOException if the file can't be written
   */
  public static void write(
      Templates templates,
      Mesh rest,
      TemplateWords words,
      Path file,
      PaperSize paper,
      double stretchShare)
      throws IOException {
    try (Sheet sheet = new Sheet(paper, "Cut templates, 1:1", words.piece(), words.what())) {
      TemplateSheets sheets = new TemplateSheets(sheet, words);
      sheets.list(templates, stretchShare);
      sheet.gap(14);
      sheet.heading("Where they go", 290);
      TemplatePlaces.draw(sheet, templates, rest);
      for (Template template : templates.templates()) {
        sheets.draw(template);
      }
      sheet.save(file);
    }
  }

  private void list(Templates templates, double stretchShare) throws IOException {
    sheet.heading("Cut templates", 60);
    sheet.paragraph(
        "Print at 100%, without fitting to the page. Measure the bar on each page before cutting:"
            + " it must be 50 mm long. The templates show the surface from outside.",
        Style.WARNING);
    sheet.gap(6);
    bar(sheet.left(), sheet.y + 8);
    sheet.gap(34);
    sheet.paragraph(
        String.format(
            Locale.ROOT,
            "Film may be longer or shorter than the surface by %s (shop setting); the figure of each"
                + " piece holds for all but a thousandth of its area. Solid lines are cut. Dashed"
                + " lines show the surface's own edge where film laps over a piece laid before."
                + " Ticks of the same number meet. Lay the pieces in the order of their numbers.",
            TemplateWords.percent(stretchShare)),
        Style.BODY);
    sheet.gap(8);
    for (Template t : templates.templates()) {
      int pages = tiles(t, turned(t)).size();
      sheet.paragraph(
          String.format(
              Locale.ROOT,
              "%s: %s, %.0f × %.0f mm, %d %s",
              t.id(),
              words.figures(t).replace("cm2", "cm²"),
              t.widthMm(),
              t.heightMm(),
              pages,
              pages == 1 ? "page" : "pages"),
          Style.BODY);
    }
    int told = Math.min(MOST_PLACES, templates.byHand().size());
    for (Templates.ByHand place : templates.byHand().subList(0, told)) {
      double[] at = place.atMm();
      sheet.paragraph(
          String.format(
              Locale.ROOT,
              "By hand: %s, %s, at x %.0f, y %.0f, z %.0f mm",
              String.format(Locale.ROOT, "%.2f cm²", place.areaMm2() / 100),
              switch (place.why()) {
                case NARROW -> "too narrow for film";
                case STRETCHED -> "too round for its size";
                case FOLDED -> "too rough to lie flat";
              },
              at[0],
              at[1],
              at[2]),
          Style.BODY);
    }
    if (told < templates.byHand().size()) {
      sheet.paragraph(
          "By hand: " + (templates.byHand().size() - told) + " smaller places", Style.BODY);
    }
    for (var notice : templates.notices()) {
      sheet.gap(6);
      sheet.paragraph(notice.text(), Style.WARNING);
    }
  }

  /** A tile: column and row from the lower left. */
  private record Tile(int column, int row) {}

  private double tileWidth() {
    return sheet.width() - 2 * BEYOND;
  }

  private double tileHeight() {
    return sheet.bottom() - sheet.top() - HEAD - FOOT - 2 * BEYOND;
  }

  /** Whether fewer pages are needed with the template turned by a quarter. */
  private boolean turned(Template t) {
    return tiles(t, true).size() < tiles(t, false).size();
  }

  /** The pages that hold some of a template, row by row from the top. */
  private List<Tile> tiles(Template t, boolean turned) {
    Path2D path = new Path2D.Double(Path2D.WIND_EVEN_ODD);
    for (double[] loop : t.cut()) {
      double[] at = placed(t, loop, turned);
      path.moveTo(at[0], at[1]);
      for (int i = 2; i < at.length; i += 2) {
        path.lineTo(at[i], at[i + 1]);
      }
      path.closePath();
    }
    double width = turned ? t.heightMm() : t.widthMm();
    double height = turned ? t.widthMm() : t.heightMm();
    int columns = Math.max(1, (int) Math.ceil(width * POINTS_PER_MM / tileWidth() - 1e-9));
    int rows = Math.max(1, (int) Math.ceil(height * POINTS_PER_MM / tileHeight() - 1e-9));
    List<Tile> tiles = new ArrayList<>();
    for (int row = rows - 1; row >= 0; row--) {
      for (int column = 0; column < columns; column++) {
        if (path.intersects(column * tileWidth(), row * tileHeight(), tileWidth(), tileHeight())) {
          tiles.add(new Tile(column, row));
        }
      }
    }
    return tiles;
  }

  /** Points in printer's points from the template's lower left corner, y up. */
  private static double[] placed(Template t, double[] xy, boolean turned) {
    double[] out = new double[xy.length];
    for (int i = 0; i < xy.length; i += 2) {
      out[i] = POINTS_PER_MM * (turned ? t.heightMm() - xy[i + 1] : xy[i]);
      out[i + 1] = POINTS_PER_MM * (turned ? xy[i] : xy[i + 1]);
    }
    return out;
  }

  private void draw(Template t) throws IOException {
    boolean turned = turned(t);
    List<Tile> tiles = tiles(t, turned);
    int firstPage = sheet.pageCount() + 1;
    for (int i = 0; i < tiles.size(); i++) {
      sheet.newPage();
      sheet.line(words.title(t), Style.SUBHEADING, sheet.left(), sheet.top() + 10);
      sheet.lineRight(
          tiles.size() == 1 ? "one page" : "part " + (i + 1) + " of " + tiles.size(),
          Style.LABEL,
          sheet.right(),
          sheet.top() + 10);
      tile(t, tiles, i, turned, firstPage);
      bar(sheet.left(), sheet.bottom() - 18);
      sheet.lineRight(
          words.figures(t).replace("cm2", "cm²"), Style.LABEL, sheet.right(), sheet.bottom() - 6);
    }
  }

  private void tile(Template t, List<Tile> tiles, int index, boolean turned, int firstPage)
      throws IOException {
    Tile tile = tiles.get(index);
    double left = sheet.left() + BEYOND;
    double top = sheet.top() + HEAD + BEYOND;
    double x0 = left - tile.column() * tileWidth();
    double y0 = top + tileHeight() + tile.row() * tileHeight();
    sheet.clip(left - BEYOND, top - BEYOND, tileWidth() + 2 * BEYOND, tileHeight() + 2 * BEYOND);
    if (t.hasAllowance()) {
      for (double[] loop : t.net()) {
        sheet.path(onPage(placed(t, loop, turned), x0, y0), true, 0.4, Style.SOFT, true);
      }
    }
    for (double[] loop : t.cut()) {
      sheet.path(onPage(placed(t, loop, turned), x0, y0), true, 0.5, Style.INK, false);
    }
    marks(t, turned, x0, y0);
    sheet.endClip();
    if (tiles.size() > 1) {
      frame(tiles, tile, left, top, firstPage);
    }
  }

  private void marks(Template t, boolean turned, double x0, double y0) throws IOException {
    for (Template.MatchMark m : t.marks()) {
      double half = TemplateTicks.HALF_MM;
      double in = TemplateTicks.NUMBER_MM;
      double[] tick = {
        m.x() - half * m.dx(),
        m.y() - half * m.dy(),
        m.x() + half * m.dx(),
        m.y() + half * m.dy(),
        m.x() - in * m.dx(),
        m.y() - in * m.dy()
      };
      double[] at = onPage(placed(t, tick, turned), x0, y0);
      sheet.path(new double[] {at[0], at[1], at[2], at[3]}, false, 0.6, Style.ACCENT, false);
      sheet.lineCentred(
          Integer.toString(m.number()), Style.LABEL.in(Style.ACCENT).sized(7), at[4], at[5] + 2.5);
    }
    double[] label = onPage(placed(t, t.labelAt(), turned), x0, y0);
    double size = Math.max(8, Math.min(26, Math.min(t.widthMm(), t.heightMm()) / 2));
    sheet.lineCentred(t.id(), Style.TITLE.sized(size), label[0], label[1] + size / 3);
  }

  private static double[] onPage(double[] placed, double x0, double y0) {
    double[] out = new double[placed.length];
    for (int i = 0; i < placed.length; i += 2) {
      out[i] = x0 + placed[i];
      out[i + 1] = y0 - placed[i + 1];
    }
    return out;
  }

  /** The frame that pages are joined along, crosses at its corners, and which page comes next. */
  private void frame(List<Tile> tiles, Tile tile, double left, double top, int firstPage)
      throws IOException {
    double w = tileWidth();
    double h = tileHeight();
    sheet.path(
        new double[] {left, top, left + w, top, left + w, top + h, left, top + h},
        true,
        0.25,
        Style.SOFT,
        true);
    for (double x : new double[] {left, left + w}) {
      for (double y : new double[] {top, top + h}) {
        sheet.path(new double[] {x - 7, y, x + 7, y}, false, 0.6, Style.INK, false);
        sheet.path(new double[] {x, y - 7, x, y + 7}, false, 0.6, Style.INK, false);
      }
    }
    next(tiles, new Tile(tile.column() - 1, tile.row()), left + 24, top + h / 2, firstPage);
    next(tiles, new Tile(tile.column() + 1, tile.row()), left + w - 24, top + h / 2, firstPage);
    next(tiles, new Tile(tile.column(), tile.row() + 1), left + w / 2, top + 10, firstPage);
    next(tiles, new Tile(tile.column(), tile.row() - 1), left + w / 2, top + h - 5, firstPage);
  }

  private void next(List<Tile> tiles, Tile neighbour, double x, double y, int firstPage)
      throws IOException {
    int index = tiles.indexOf(neighbour);
    if (index >= 0) {
      sheet.lineCentred("to page " + (firstPage + index), Style.SMALL.sized(7), x, y);
    }
  }

  private void bar(double x, double y) throws IOException {
    double end = x + BAR_MM * POINTS_PER_MM;
    sheet.path(new double[] {x, y, end, y}, false, 0.8, Style.INK, false);
    sheet.path(new double[] {x, y - 4, x, y + 4}, false, 0.8, Style.INK, false);
    sheet.path(new double[] {end, y - 4, end, y + 4}, false, 0.8, Style.INK, false);
    sheet.line(TemplateWords.CHECK, Style.LABEL, x, y + 13);
  }
}
