package org.seamwright.meshfile;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.nio.charset.StandardCharsets;

/**
 * Reads decimal numbers from bytes, always with a point as decimal mark.
 *
 * <p>Accepts what C and Fortran write: {@code 1}, {@code -1.5}, {@code .5}, {@code 1.}, {@code
 * 1e-3}, {@code 0.1D+01} and the exponent without a letter of long Fortran numbers, {@code
 * 0.1-100}. The result is the nearest double: up to 2^53 and powers of ten up to 22 by one exact
 * operation, all else by a library for it.
 *
 * <p>Source of the short way: W. D. Clinger, "How to read floating point numbers accurately", PLDI
 * 1990.
 */
final class Decimals {
  private static final double[] POWER = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22
  };
  private static final long EXACT = 1L << 53;

  /** Digits that surely fit a long. */
  private static final int LONG_DIGITS = 18;

  private Decimals() {}

  /** Reads a whole text; NaN if it is no number. */
  static double parse(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
    return parse(bytes, 0, bytes.length);
  }

  /**
   * Reads the bytes {@code from … to - 1}.
   *
   * @return NaN if they are no decimal number; infinite if it is too large for a double
   */
  static double parse(byte[] bytes, int from, int to) {
    int i = from;
    boolean negative = false;
    if (i < to && (bytes[i] == '-' || bytes[i] == '+')) {
      negative = bytes[i++] == '-';
    }
    long digits = 0;
    int significant = 0;
    int scale = 0;
    boolean any = false;
    boolean exact = true;
    for (; i < to && isDigit(bytes[i]); i++) {
      any = true;
      if (significant < LONG_DIGITS) {
        digits = 10 * digits + (bytes[i] - '0');
        significant += digits != 0 ? 1 : 0;
      } else {
        exact = false;
      }
    }
    if (i < to && bytes[i] == '.') {
      for (i++; i < to && isDigit(bytes[i]); i++) {
        any = true;
        if (significant < LONG_DIGITS) {
          digits = 10 * digits + (bytes[i] - '0');
          significant += digits != 0 ? 1 : 0;
          scale--;
        } else {
          exact = false;
        }
      }
    }
    int mantissaEnd = i;
    if (!any) {
      return Double.NaN;
    }
    int exponent = 0;
    if (i < to) {
      int e = exponentStart(bytes, i);
      if (e < 0) {
        return Double.NaN;
      }
      boolean down = e < to && bytes[e] == '-';
      if (e < to && (bytes[e] == '-' || bytes[e] == '+')) {
        e++;
      }
      if (e == to) {
        return Double.NaN;
      }
      for (; e < to; e++) {
        if (!isDigit(bytes[e])) {
          return Double.NaN;
        }
        exponent = Math.min(100_000, 10 * exponent + (bytes[e] - '0'));
      }
      exponent = down ? -exponent : exponent;
    }
    int power = scale + exponent;
    if (exact && digits <= EXACT && power >= -22 && power <= 22) {
      double value = power < 0 ? digits / POWER[-power] : digits * POWER[power];
      return negative ? -value : value;
    }
    if (power == scale && mantissaEnd == to) {
      return JavaDoubleParser.parseDouble(bytes, from, to - from);
    }
    String mantissa = new String(bytes, from, mantissaEnd - from, StandardCharsets.ISO_8859_1);
    return JavaDoubleParser.parseDouble(mantissa + "e" + exponent);
  }

  /** Where the exponent begins if the byte at i can open one, else -1. */
  private static int exponentStart(byte[] bytes, int i) {
    return switch (bytes[i]) {
      case 'e', 'E', 'd', 'D' -> i + 1;
      case '+', '-' -> i;
      default -> -1;
    };
  }

  private static boolean isDigit(byte b) {
    return b >= '0' && b <= '9';
  }
}
