package org.seamwright.paper;

import java.util.Locale;
import org.seamwright.flatten.Template;

/**
 * A template as DXF for cutters: release 12 ASCII, which every cutter reads; one unit is 1 mm,
 * layers CUT, MARK and TEXT, closed polylines. The release has no field for units, so a comment and
 * a check bar say it. Letters beyond ASCII become underscores. Same template, same text.
 *
 * <p>Reference: Autodesk, "DXF Reference", release 12 (1992): group codes from memory.
 */
public final class TemplateDxf {
  private static final double BAR_MM = 50;
  private static final double BAR_BELOW = 10;

  private final StringBuilder out = new StringBuilder();

  private TemplateDxf() {}

  /** The template as text of a DXF file. */
  public static String text(Template template, TemplateWords words) {
    TemplateDxf dxf = new TemplateDxf();
    dxf.write(template, words);
    return dxf.out.toString();
  }

  private void write(Template t, TemplateWords words) {
    group(999, "1 unit = 1 mm");
    group(0, "SECTION");
    group(2, "HEADER");
    group(9, "$ACADVER");
    group(1, "AC1009");
    corner("$EXTMIN", 0, -BAR_BELOW - 16);
    corner("$EXTMAX", Math.max(t.widthMm(), BAR_MM), t.heightMm());
    group(0, "ENDSEC");
    tables();
    group(0, "SECTION");
    group(2, "ENTITIES");
    for (double[] loop : t.cut()) {
      polyline("CUT", loop);
    }
    if (t.hasAllowance()) {
      for (double[] loop : t.net()) {
        polyline("MARK", loop);
      }
    }
    for (Template.MatchMark m : t.marks()) {
      double half = TemplateTicks.HALF_MM;
      line(
          m.x() - half * m.dx(),
          m.y() - half * m.dy(),
          m.x() + half * m.dx(),
          m.y() + half * m.dy());
      double in = TemplateTicks.NUMBER_MM;
      label(Integer.toString(m.number()), m.x() - in * m.dx(), m.y() - in * m.dy(), 2);
    }
    double y = -BAR_BELOW;
    line(0, y, BAR_MM, y);
    line(0, y - 1.5, 0, y + 1.5);
    line(BAR_MM, y - 1.5, BAR_MM, y + 1.5);
    label(TemplateWords.CHECK, 0, y - 5, 2.5);
    label(words.title(t), 0, y - 10, 3);
    label(words.figures(t), 0, y - 15, 3);
    double[] at = t.labelAt();
    label(t.id(), at[0], at[1], 4);
    group(0, "ENDSEC");
    group(0, "EOF");
  }

  private void tables() {
    group(0, "SECTION");
    group(2, "TABLES");
    group(0, "TABLE");
    group(2, "LAYER");
    group(70, "3");
    layer("CUT", 7);
    layer("MARK", 5);
    layer("TEXT", 3);
    group(0, "ENDTAB");
    group(0, "ENDSEC");
  }

  private void layer(String name, int colour) {
    group(0, "LAYER");
    group(2, name);
    group(70, "0");
    group(62, Integer.toString(colour));
    group(6, "CONTINUOUS");
  }

  private void polyline(String layer, double[] loop) {
    group(0, "POLYLINE");
    group(8, layer);
    group(66, "1");
    point(0, 0);
    group(70, "1");
    for (int i = 0; i < loop.length; i += 2) {
      group(0, "VERTEX");
      group(8, layer);
      point(loop[i], loop[i + 1]);
    }
    group(0, "SEQEND");
    group(8, layer);
  }

  private void line(double x1, double y1, double x2, double y2) {
    group(0, "LINE");
    group(8, "MARK");
    point(x1, y1);
    group(11, n(x2));
    group(21, n(y2));
    group(31, n(0));
  }

  private void label(String text, double x, double y, double height) {
    group(0, "TEXT");
    group(8, "TEXT");
    point(x, y);
    group(40, n(height));
    group(1, text.replaceAll("[^\\x20-\\x7E]", "_"));
  }

  private void corner(String variable, double x, double y) {
    group(9, variable);
    point(x, y);
  }

  private void point(double x, double y) {
    group(10, n(x));
    group(20, n(y));
    group(30, n(0));
  }

  private void group(int code, String value) {
    out.append(String.format(Locale.ROOT, "%3d\n%s\n", code, value));
  }

  private static String n(double mm) {
    // No "-0.000".
    return String.format(Locale.ROOT, "%.4f", mm + 0.0 == 0 ? 0.0 : mm);
  }
}
