package org.seamwright.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.function.IntFunction;

/** Draws planned labels: leaders first, then white circles with bold numbers. */
final class LabelInk {
  private static final Color INK = new Color(0x14181D);

  /** Largest height of the letters over the radius of the circle. */
  private static final double HEIGHT = 1.25;

  /** Largest width of the text over the radius of the circle. */
  private static final double WIDTH = 1.45;

  private LabelInk() {}

  /**
   * Draws labels into a copy of a picture.
   *
   * @param text what to write for a region
   */
  static Image draw(Image image, List<LabelPlan.Label> labels, IntFunction<String> text) {
    BufferedImage canvas = image.toBufferedImage();
    Graphics2D g = canvas.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    for (LabelPlan.Label l : labels) {
      if (l.leader()) {
        leader(g, l);
      }
    }
    for (LabelPlan.Label l : labels) {
      circle(g, l, text.apply(l.region()));
    }
    g.dispose();
    int[] argb = canvas.getRGB(0, 0, image.width(), image.height(), null, 0, image.width());
    return new Image(image.width(), image.height(), argb, image.region());
  }

  private static void leader(Graphics2D g, LabelPlan.Label l) {
    Line2D line = new Line2D.Double(l.anchorX(), l.anchorY(), l.portX(), l.y());
    float width = (float) (l.radius() * 0.09);
    g.setStroke(new BasicStroke(2.4f * width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    g.setColor(Color.WHITE);
    g.draw(line);
    g.setStroke(new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    g.setColor(INK);
    g.draw(line);
    double dot = l.radius() * 0.17;
    g.fill(new Ellipse2D.Double(l.anchorX() - dot, l.anchorY() - dot, 2 * dot, 2 * dot));
  }

  private static void circle(Graphics2D g, LabelPlan.Label l, String text) {
    double r = l.radius();
    g.setColor(Color.WHITE);
    g.fill(new Ellipse2D.Double(l.x() - r, l.y() - r, 2 * r, 2 * r));
    g.setColor(INK);
    g.setStroke(new BasicStroke((float) (r * 0.10)));
    double inner = r * 0.95;
    g.draw(new Ellipse2D.Double(l.x() - inner, l.y() - inner, 2 * inner, 2 * inner));
    float size = (float) (r * HEIGHT);
    double wide = Typeface.inkWidth(text, size);
    if (wide > r * WIDTH) {
      size *= (float) (r * WIDTH / wide);
    }
    g.fill(Typeface.centred(text, size, l.x(), l.y()));
  }
}
