package org.seamwright.paper;

import java.util.Locale;
import org.seamwright.flatten.Template;

/**
 * A template as SVG 1.1 for cutters: one user unit is 1 mm, groups CUT, MARK and TEXT. What to cut
 * is black without fill; the net edge under an allowance is dashed. Same template, same text.
 *
 * <p>Reference: W3C, Scalable Vector Graphics (SVG) 1.1 (Second Edition), 2011.
 */
public final class TemplateSvg {
  private static final double MARGIN = 6;
  private static final double FOOT = 20;
  private static final double BAR_MM = 50;

  /** Average width of a letter of a sans-serif face over its size; errs wide. */
  private static final double LETTER = 0.62;

  private static final double TEXT_MM = 3.2;

  private final Template template;
  private final StringBuilder out = new StringBuilder();

  private TemplateSvg(Template template) {
    this.template = template;
  }

  /** The template as text of an SVG file. */
  public static String text(Template template, TemplateWords words) {
    return new TemplateSvg(template).write(words);
  }

  private String write(TemplateWords words) {
    String title = words.title(template);
    String figures = words.figures(template);
    double longest = Math.max(title.length(), figures.length()) * LETTER * TEXT_MM;
    double width = 2 * MARGIN + Math.max(Math.max(template.widthMm(), longest), BAR_MM + 2);
    double height = 2 * MARGIN + template.heightMm() + FOOT;
    out.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    add(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"%smm\" height=\"%smm\""
            + " viewBox=\"0 0 %s %s\">\n",
        n(width), n(height), n(width), n(height));
    add("<title>%s</title>\n", escaped(title));
    out.append("<g id=\"CUT\" fill=\"none\" stroke=\"#000000\" stroke-width=\"0.1\">\n");
    for (double[] loop : template.cut()) {
      path(loop, "");
    }
    out.append("</g>\n<g id=\"MARK\" fill=\"none\" stroke=\"#0050b0\" stroke-width=\"0.1\">\n");
    if (template.hasAllowance()) {
      for (double[] loop : template.net()) {
        path(loop, " stroke-dasharray=\"1.5 1\"");
      }
    }
    for (Template.MatchMark m : template.marks()) {
      double half = TemplateTicks.HALF_MM;
      line(
          x(m.x() - half * m.dx()), y(m.y() - half * m.dy()),
          x(m.x() + half * m.dx()), y(m.y() + half * m.dy()));
    }
    double barY = MARGIN + template.heightMm() + 8;
    line(MARGIN, barY, MARGIN + BAR_MM, barY);
    line(MARGIN, barY - 1.5, MARGIN, barY + 1.5);
    line(MARGIN + BAR_MM, barY - 1.5, MARGIN + BAR_MM, barY + 1.5);
    out.append("</g>\n<g id=\"TEXT\" fill=\"#0050b0\" font-family=\"sans-serif\">\n");
    double[] at = template.labelAt();
    label(template.id(), x(at[0]), y(at[1]), labelSize(), "middle");
    for (Template.MatchMark m : template.marks()) {
      double in = TemplateTicks.NUMBER_MM;
      label(
          Integer.toString(m.number()),
          x(m.x() - in * m.dx()),
          y(m.y() - in * m.dy()) + 0.8,
          2.2,
          "middle");
    }
    label(TemplateWords.CHECK, MARGIN, barY + 5, 2.6, "start");
    label(title, MARGIN, barY + 9.5, TEXT_MM, "start");
    label(figures, MARGIN, barY + 14, TEXT_MM, "start");
    out.append("</g>\n</svg>\n");
    return out.toString();
  }

  private double labelSize() {
    return Math.max(2.5, Math.min(10, Math.min(template.widthMm(), template.heightMm()) / 6));
  }

  private double x(double mm) {
    return MARGIN + mm;
  }

  /** SVG's y runs down. */
  private double y(double mm) {
    return MARGIN + template.heightMm() - mm;
  }

  private void path(double[] loop, String more) {
    out.append("<path d=\"M");
    for (int i = 0; i < loop.length; i += 2) {
      out.append(i == 0 ? "" : "L").append(n(x(loop[i]))).append(' ').append(n(y(loop[i + 1])));
    }
    out.append("Z\"").append(more).append("/>\n");
  }

  private void line(double x1, double y1, double x2, double y2) {
    add("<path d=\"M%s %sL%s %s\"/>\n", n(x1), n(y1), n(x2), n(y2));
  }

  private void label(String text, double x, double y, double size, String anchor) {
    add(
        "<text x=\"%s\" y=\"%s\" font-size=\"%s\" text-anchor=\"%s\">%s</text>\n",
        n(x), n(y), n(size), anchor, escaped(text));
  }

  private void add(String format, Object... values) {
    out.append(String.format(Locale.ROOT, format, values));
  }

  /** Micrometres are finer than any cutter. */
  private static String n(double mm) {
    return String.format(Locale.ROOT, "%.3f", mm);
  }

  /** Text as XML allows it. */
  private static String escaped(String text) {
    StringBuilder safe = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                default -> {
                  boolean allowed =
                      (c >= 0x20 && c < 0xD800) || (c >= 0xE000 && c < 0xFFFE) || c > 0xFFFF;
                  safe.appendCodePoint(allowed ? c : ' ');
                }
              }
            });
    return safe.toString();
  }
}
