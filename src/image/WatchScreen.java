import java.awt.GraphicsEnvironment;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.image.BufferedImage;
import java.io.File;
import java.util.HashSet;
import java.util.Set;
import javax.imageio.ImageIO;

/**
 * Waits until a window with a drawing in it is on the display, and keeps what the screen shows
 * then.
 *
 * <p>usage: java src/image/WatchScreen.java FILE.png SECONDS; exit code 1 if nothing appears
 */
final class WatchScreen {
  /** Pixels between the places looked at. */
  private static final int STEP = 3;

  /** An empty display has a handful of colours, a window without a piece some tens. */
  private static final int COLOURS = 300;

  private WatchScreen() {}

  public static void main(String[] args) throws Exception {
    Robot robot = new Robot();
    Rectangle screen =
        GraphicsEnvironment.getLocalGraphicsEnvironment()
            .getDefaultScreenDevice()
            .getDefaultConfiguration()
            .getBounds();
    long start = System.nanoTime();
    int most = 0;
    while (System.nanoTime() - start < Integer.parseInt(args[1]) * 1_000_000_000L) {
      BufferedImage seen = robot.createScreenCapture(screen);
      int colours = colours(seen);
      most = Math.max(most, colours);
      if (colours >= COLOURS) {
        ImageIO.write(seen, "png", new File(args[0]));
        System.out.printf(
            "A window with %d colours after %.1f s%n", colours, (System.nanoTime() - start) / 1e9);
        return;
      }
      Thread.sleep(200);
    }
    System.err.println("No window appeared; at most " + most + " colours were seen.");
    System.exit(1);
  }

  private static int colours(BufferedImage image) {
    Set<Integer> colours = new HashSet<>();
    for (int y = 0; y < image.getHeight(); y += STEP) {
      for (int x = 0; x < image.getWidth(); x += STEP) {
        colours.add(image.getRGB(x, y));
      }
    }
    return colours.size();
  }
}
