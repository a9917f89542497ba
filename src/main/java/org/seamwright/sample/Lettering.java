package org.seamwright.sample;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/** Outlines of a line of text in the project's own font, flattened to straight pieces. */
final class Lettering {
  /** Largest distance between a curve and its flattened outline, mm. */
  private static final double FLATNESS_MM = 0.04;

  private static final String FONT = "/org/seamwright/fonts/LiberationSans-Bold.ttf";

  private Lettering() {}

  /**
   * Loops of a line of text centred on a place.
   *
   * @param text the line
   * @param capHeightMm height of capitals, mm
   * @param centreX middle of the line, mm
   * @param baselineY height of the baseline, mm
   * @return loops of points (x, y), y upwards; none repeats its first point
   */
  static List<List<double[]>> outlines(
      String text, double capHeightMm, double centreX, double baselineY) {
    Font font = load().deriveFont(1000f);
    FontRenderContext context = new FontRenderContext(null, true, true);
    double cap = -font.createGlyphVector(context, "H").getVisualBounds().getMinY();
    double scale = capHeightMm / cap;
    Shape shape = font.createGlyphVector(context, text).getOutline();
    double middle = shape.getBounds2D().getCenterX();
    AffineTransform place = AffineTransform.getTranslateInstance(centreX, baselineY);
    place.scale(scale, -scale);
    place.translate(-middle, 0);
    return loops(shape.getPathIterator(place, FLATNESS_MM));
  }

  private static List<List<double[]>> loops(PathIterator path) {
    List<List<double[]>> loops = new ArrayList<>();
    double[] at = new double[6];
    for (; !path.isDone(); path.next()) {
      int kind = path.currentSegment(at);
      if (kind == PathIterator.SEG_MOVETO) {
        loops.add(new ArrayList<>());
      }
      if (kind != PathIterator.SEG_CLOSE) {
        addUnlessSame(loops.get(loops.size() - 1), at[0], at[1]);
      }
    }
    for (List<double[]> loop : loops) {
      double[] first = loop.get(0);
      double[] last = loop.get(loop.size() - 1);
      if (same(first, last[0], last[1])) {
        loop.remove(loop.size() - 1);
      }
    }
    loops.removeIf(loop -> loop.size() < 3);
    return loops;
  }

  private static void addUnlessSame(List<double[]> loop, double x, double y) {
    // Rounded to 1 µm, so that the model is the same whatever the platform's font code rounds.
    double rx = Math.rint(x * 1000) / 1000;
    double ry = Math.rint(y * 1000) / 1000;
    if (loop.isEmpty() || !same(loop.get(loop.size() - 1), rx, ry)) {
      loop.add(new double[] {rx, ry});
    }
  }

  private static boolean same(double[] p, double x, double y) {
    return p[0] == x && p[1] == y;
  }

  private static Font load() {
    try (InputStream in = Lettering.class.getResourceAsStream(FONT)) {
      return Font.createFont(Font.TRUETYPE_FONT, in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (FontFormatException e) {
      throw new IllegalStateException("The program's own font is damaged", e);
    }
  }
}
