package org.seamwright.job;

import com.fasterxml.jackson.core.io.NumberOutput;
import java.math.BigDecimal;

/**
 * Numbers as text: the fewest digits that read back to the same double, never with an exponent.
 *
 * <p>Digits by R. Giulietti, "The Schubfach way to render doubles" (2020), as Jackson has it:
 * {@code Double.toString} gives more digits than needed before Java 19, so files would differ
 * between Java versions.
 */
public final class PlainNumber {
  private PlainNumber() {}

  /**
   * The number as plain decimal text: {@code 5}, {@code 0.0762}, {@code -0.5}. Negative zero is
   * written {@code -0.0} so that it survives a round trip.
   *
   * @throws IllegalArgumentException if it is not finite, which neither JSON nor CSV can hold
   */
  public static String of(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("Only finite numbers can be written: " + value);
    }
    if (value == 0) {
      return 1 / value > 0 ? "0" : "-0.0";
    }
    return new BigDecimal(NumberOutput.toString(value, true)).stripTrailingZeros().toPlainString();
  }
}
