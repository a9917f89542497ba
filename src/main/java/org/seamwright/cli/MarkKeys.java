package org.seamwright.cli;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** Keys of marks as options: the key with two dashes before it. */
final class MarkKeys {
  private MarkKeys() {}

  /**
   * Adds options to a command.
   *
   * @param keys each key with what help calls its value
   * @param usual treatment if none is said; empty where that is not told
   */
  static void add(CommandSpec spec, Map<String, String> keys, String usual) {
    keys.forEach(
        (key, label) ->
            spec.addOption(
                OptionSpec.builder("--" + key)
                    .paramLabel(label)
                    .type(String.class)
                    .description(description(key, usual))
                    .build()));
  }

  private static String description(String key, String usual) {
    return switch (key) {
      case "name" -> "What the mark is called.";
      case "treatment" ->
          "What becomes of the place: plate, bare or outOfScope"
              + (usual.isEmpty() ? "." : "; " + usual + " if left out.");
      default -> "As \"" + key + "\" in the job file.";
    };
  }

  /** Those of the keys that were typed, with their values. */
  static Map<String, String> typed(CommandSpec spec, Collection<String> keys) {
    Map<String, String> typed = new LinkedHashMap<>();
    for (String key : keys) {
      String value = spec.commandLine().getParseResult().matchedOptionValue("--" + key, null);
      if (value != null) {
        typed.put(key, value);
      }
    }
    return typed;
  }
}
