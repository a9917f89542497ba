package org.seamwright.bench;

import java.util.OptionalDouble;

/**
 * A figure that is being typed with large keys: digits and one decimal comma or point.
 *
 * @param text what stands there
 */
public record NumberPad(String text) {
  /** More digits than any instrument at a bench shows. */
  private static final int MOST = 9;

  /** Nothing typed. */
  public static final NumberPad EMPTY = new NumberPad("");

  /** The same with a key added: a digit, a comma or a point; anything else changes nothing. */
  public NumberPad type(char key) {
    boolean mark = key == ',' || key == '.';
    boolean fits = mark ? mark() < 0 : key >= '0' && key <= '9';
    if (text.length() >= MOST || !fits) {
      return this;
    }
    return new NumberPad(mark && text.isEmpty() ? "0" + key : text + key);
  }

  /** The same without its last key. */
  public NumberPad erase() {
    return text.isEmpty() ? this : new NumberPad(text.substring(0, text.length() - 1));
  }

  private int mark() {
    return Math.max(text.indexOf(','), text.indexOf('.'));
  }

  /** The figure; empty while there is none. */
  public OptionalDouble value() {
    String plain = text.replace(',', '.');
    return plain.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(plain));
  }

  /** The step in which the figure is told: 0.01 for "2,75", 1 for "12". */
  public double resolution() {
    int decimals = mark() < 0 ? 0 : text.length() - 1 - mark();
    return Math.pow(10, -decimals);
  }
}
