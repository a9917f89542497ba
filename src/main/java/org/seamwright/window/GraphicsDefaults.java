package org.seamwright.window;

import java.util.Locale;
import java.util.logging.Logger;

/** What the graphics library is told before it starts, unless the user has told it already. */
final class GraphicsDefaults {
  private static final String FORCE_GRAPHICS = "prism.forceGPU";

  /** Held for good: a logger that nothing holds loses its filter. */
  private static final Logger LOGGER = Logger.getLogger("javafx");

  /** What the library says of every program that is no module, as this one; of no use to a user. */
  private static final String NO_MODULE =
      "Unsupported JavaFX configuration: classes were loaded from";

  private GraphicsDefaults() {}

  /**
   * On Linux the library draws in depth only with drivers on a list of its own, which leaves out
   * current ones and OpenGL in software. Without depth there is no piece to see, so the list is set
   * aside there; if OpenGL doesn't start at all the library still falls back to drawing flat, and
   * the window says what to do.
   */
  static void set() {
    boolean linux = System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("linux");
    if (linux && System.getProperty(FORCE_GRAPHICS) == null) {
      System.setProperty(FORCE_GRAPHICS, "true");
    }
    LOGGER.setFilter(record -> !String.valueOf(record.getMessage()).startsWith(NO_MODULE));
  }
}
