package org.seamwright.bench;

import java.util.Locale;

/**
 * What a shop chose for its bench.
 *
 * @param key name of the one key, as the toolkit names keys: "SPACE", "PAGE_DOWN"
 * @param muted whether warnings make no sound
 */
public record BenchSettings(String key, boolean muted) {
  /** Until something else is chosen. */
  public static final BenchSettings FIRST = new BenchSettings("SPACE", false);

  /** The key's name for people: "Page down". */
  public String keyTitle() {
    String words = key.replace('_', ' ').toLowerCase(Locale.ROOT);
    return words.isEmpty()
        ? ""
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
