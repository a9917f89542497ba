package org.seamwright.cli;

/** JSON on standard output. */
final class Json {
  private Json() {}

  /**
   * The same JSON in ASCII alone, which any terminal and any reader of a pipe takes alike: signs
   * beyond it stand only inside strings, where JSON allows them as escapes.
   */
  static String forTerminal(String json) {
    StringBuilder out = new StringBuilder(json.length());
    for (int i = 0; i < json.length(); i++) {
      char c = json.charAt(i);
      if (c < 0x80) {
        out.append(c);
      } else {
        out.append(String.format("\\u%04x", (int) c));
      }
    }
    return out.toString();
  }
}
