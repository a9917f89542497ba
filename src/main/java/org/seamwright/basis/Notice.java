package org.seamwright.basis;

import java.util.Objects;

/**
 * Something that was repaired, assumed or left out, told along with a result instead of being done
 * silently.
 *
 * @param code stable identifier in lower-case words joined by hyphens, for scripts to act on, for
 *     example {@code duplicate-triangles}
 * @param count how many things it concerns; 1 where counting makes no sense
 * @param text one sentence for a person, with units where it holds a figure
 */
public record Notice(String code, long count, String text) {
  /** Checks that nothing is missing. */
  public Notice {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(text, "text");
    if (!code.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      throw new IllegalArgumentException("Notice code must be lower-case-with-hyphens: " + code);
    }
  }
}
