package org.seamwright.testsupport;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

/** Programs that tests compare with: skipped aloud where one is missing, a failure under CI. */
public final class Reference {
  private Reference() {}

  /**
   * Goes on only if a program is there.
   *
   * @param name the program
   * @param found whether it is there
   * @param from what installs it
   */
  public static void require(String name, boolean found, String from) {
    if ("true".equals(System.getenv("CI"))) {
      assertThat(found).as("%s must be installed under CI", name).isTrue();
    }
    if (!found) {
      System.err.println("SKIPPED: " + name + " is not installed; .ci/run gets it with " + from);
    }
    assumeTrue(found, name + " is not installed");
  }
}
