package org.seamwright.meshfile;

import java.nio.charset.StandardCharsets;

/**
 * Walks over the words of a text held as bytes. Line ends are LF, CR LF or CR. The current word is
 * {@code bytes[start … stop - 1]}.
 */
final class TextCursor {
  private final byte[] bytes;
  private final int end;
  private int at;
  private int start;
  private int stop;

  TextCursor(byte[] bytes, int from) {
    this(bytes, from, bytes.length);
  }

  /** A cursor over a part of a text, that begins with a line and ends before one. */
  TextCursor(byte[] bytes, int from, int end) {
    this.bytes = bytes;
    this.at = from;
    this.end = end;
  }

  /** Line of the current word in the whole text, from 1; counted anew, since it is seldom asked. */
  int line() {
    int line = 1;
    for (int i = 0; i < start; i++) {
      boolean inPair = bytes[i] == '\r' && i + 1 < bytes.length && bytes[i + 1] == '\n';
      line += isLineEnd(bytes[i]) && !inPair ? 1 : 0;
    }
    return line;
  }

  /** Byte after the current word. */
  int position() {
    return at;
  }

  /** Goes to the next word on this or a later line; false at the end of the text. */
  boolean nextWord() {
    while (at < end && isSpace(bytes[at])) {
      if (!passLineEnd()) {
        at++;
      }
    }
    return takeWord();
  }

  /**
   * Goes to the next word on this line, also beyond a backslash at its end; false at the end of the
   * line or before a comment sign.
   */
  boolean nextWordOnLine() {
    while (at < end) {
      byte b = bytes[at];
      if (b == '\\' && at + 1 < end && isLineEnd(bytes[at + 1])) {
        at++;
        passLineEnd();
      } else if (isSpace(b) && !isLineEnd(b)) {
        at++;
      } else {
        break;
      }
    }
    if (at >= end || isLineEnd(bytes[at]) || bytes[at] == '#') {
      start = at;
      stop = at;
      return false;
    }
    return takeWord();
  }

  /**
   * The next word on this line if it is a number above 0 in at most nine digits and nothing else;
   * otherwise 0, and the cursor stays where it is.
   */
  int nextCount() {
    int i = at;
    while (i < end && (bytes[i] == ' ' || bytes[i] == '\t')) {
      i++;
    }
    int from = i;
    int value = 0;
    for (; i < end && i - from < 9 && bytes[i] >= '0' && bytes[i] <= '9'; i++) {
      value = 10 * value + (bytes[i] - '0');
    }
    if (i < end && !isSpace(bytes[i])) {
      return 0;
    }
    if (value > 0) {
      start = from;
      stop = i;
      at = i;
    }
    return value;
  }

  private boolean takeWord() {
    start = at;
    while (at < end && !isSpace(bytes[at]) && !continues(at)) {
      at++;
    }
    stop = at;
    return stop > start;
  }

  private boolean continues(int i) {
    return bytes[i] == '\\' && i > start && i + 1 < end && isLineEnd(bytes[i + 1]);
  }

  /** Goes to the beginning of the next line; false at the end of the text. */
  boolean nextLine() {
    while (at < end && !isLineEnd(bytes[at])) {
      at++;
    }
    passLineEnd();
    return at < end;
  }

  /** The rest of the line without the spaces around it; the cursor stays before the line's end. */
  String restOfLine() {
    int from = at;
    while (at < end && !isLineEnd(bytes[at])) {
      at++;
    }
    return new String(bytes, from, at - from, StandardCharsets.UTF_8).strip();
  }

  private boolean passLineEnd() {
    if (at >= end || !isLineEnd(bytes[at])) {
      return false;
    }
    if (bytes[at] == '\r' && at + 1 < end && bytes[at + 1] == '\n') {
      at++;
    }
    at++;
    return true;
  }

  /** Whether the current word is the given one, which is in lower case, in any case. */
  boolean is(String word) {
    if (stop - start != word.length()) {
      return false;
    }
    for (int i = 0; i < word.length(); i++) {
      int b = bytes[start + i];
      if (b >= 'A' && b <= 'Z') {
        b += 'a' - 'A';
      }
      if (b != word.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  /** Length of the current word in bytes. */
  int length() {
    return stop - start;
  }

  /** Byte of the current word, or 0 beyond its end. */
  byte byteAt(int i) {
    return start + i < stop ? bytes[start + i] : 0;
  }

  /** The current word as a number: see {@link Decimals#parse(byte[], int, int)}. */
  double number() {
    return Decimals.parse(bytes, start, stop);
  }

  /** The current word. */
  String word() {
    return new String(bytes, start, stop - start, StandardCharsets.UTF_8);
  }

  static boolean isSpace(byte b) {
    return b == ' ' || (b >= '\t' && b <= '\r');
  }

  static boolean isLineEnd(byte b) {
    return b == '\n' || b == '\r';
  }
}
