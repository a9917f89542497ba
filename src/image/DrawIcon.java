import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/**
 * Draws the program's icon: a round piece seen from the front, gilt in sections that meet in seams,
 * one section still bare.
 *
 * <p>usage: java src/image/DrawIcon.java FOLDER, which gets icon-16.png to icon-512.png
 */
final class DrawIcon {
  /** Sides that desktops ask for, pixels. */
  private static final int[] SIDES = {16, 32, 48, 64, 128, 256, 512};

  /** The drawing is laid out on a square of this side. */
  private static final double UNITS = 64;

  /** Below this many pixels a side, fine lines would blur: they are left out, others made wider. */
  private static final int SMALL = 32;

  private static final Color GROUND = new Color(0x22303C);
  private static final Color[] GOLD = {
    new Color(0xF0C355), new Color(0xD9A233), new Color(0xE6B445), new Color(0xC98E22)
  };
  private static final Color BARE = new Color(0x9FB0BD);
  private static final Color SEAM = new Color(0x22303C);
  private static final Color LAP = new Color(255, 246, 214, 150);

  private DrawIcon() {}

  public static void main(String[] args) throws IOException {
    System.setProperty("java.awt.headless", "true");
    Path folder = Files.createDirectories(Path.of(args[0]));
    for (int side : SIDES) {
      ImageIO.write(draw(side), "png", folder.resolve("icon-" + side + ".png").toFile());
    }
  }

  private static BufferedImage draw(int side) {
    BufferedImage image = new BufferedImage(side, side, BufferedImage.TYPE_INT_ARGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.scale(side / UNITS, side / UNITS);
    boolean small = side < SMALL;
    g.setColor(GROUND);
    g.fill(small ? new RoundRectangle2D.Double(0, 0, 64, 64, 12, 12) : plate());
    double[] turn = {100, 172, 244, 316, 28};
    double radius = small ? 29 : 26;
    for (int i = 0; i < turn.length; i++) {
      g.setColor(i == 3 ? BARE : GOLD[i % GOLD.length]);
      g.fill(new Arc2D.Double(32 - radius, 32 - radius, 2 * radius, 2 * radius, turn[i], 72.5, 2));
    }
    for (int i = 0; i < turn.length; i++) {
      // A seam that borders on bare metal is an edge: nothing laps there.
      boolean laps = !small && i != 3 && i != 4;
      if (laps) {
        g.setColor(LAP);
        g.setStroke(new BasicStroke(5, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
        g.draw(spoke(turn[i], radius));
      }
      g.setColor(SEAM);
      g.setStroke(new BasicStroke(small ? 4 : 1.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
      g.draw(spoke(turn[i], radius));
    }
    double hub = small ? 11 : 9.5;
    g.setColor(SEAM);
    g.fill(new Ellipse2D.Double(32 - hub, 32 - hub, 2 * hub, 2 * hub));
    if (!small) {
      g.setColor(GOLD[0]);
      g.setStroke(new BasicStroke(1.6f));
      g.draw(new Ellipse2D.Double(32 - 6.5, 32 - 6.5, 13, 13));
    }
    g.dispose();
    return image;
  }

  private static RoundRectangle2D plate() {
    return new RoundRectangle2D.Double(1, 1, 62, 62, 14, 14);
  }

  private static Line2D spoke(double degrees, double radius) {
    double angle = Math.toRadians(degrees);
    return new Line2D.Double(32, 32, 32 + radius * Math.cos(angle), 32 - radius * Math.sin(angle));
  }
}
