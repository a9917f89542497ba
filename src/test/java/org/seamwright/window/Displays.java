package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

/** Whether tests that open a window can run. */
final class Displays {
  private Displays() {}

  /** Skips the calling test aloud where there is no display; fails it on a build server. */
  static void required() {
    boolean display = System.getenv("DISPLAY") != null || !isLinux();
    if ("true".equals(System.getenv("CI"))) {
      assertThat(display)
          .as("a build server must give the window tests a display (DISPLAY; see .ci/run)")
          .isTrue();
    }
    assumeTrue(
        display,
        "SKIPPED: no display (DISPLAY is not set), so no window was opened; run under xvfb-run");
    GraphicsDefaults.set();
  }

  private static boolean isLinux() {
    return System.getProperty("os.name", "").startsWith("Linux");
  }
}
