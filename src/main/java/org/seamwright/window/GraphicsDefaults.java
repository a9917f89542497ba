package org.seamwright.window;

import java.util.Locale;

/** What the graphics library is told before it starts, unless the user has told it already. */
final class GraphicsDefaults {
  private static final String FORCE_GRAPHICS = "prism.forceGPU";

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
  }
}
