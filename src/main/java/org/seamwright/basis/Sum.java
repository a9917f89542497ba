package org.seamwright.basis;

import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Compensated summation: the error of a sum of n terms stays near one rounding of the result.
 *
 * <p>{@link #over} adds in blocks of fixed size and joins the partial sums in block order, so the
 * digits do not depend on the number of threads.
 *
 * <p>Source: A. Neumaier, "Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen",
 * ZAMM 54 (1974).
 */
public final class Sum {
  /** Terms per block: large enough to hide the cost of a task, fixed so that digits are. */
  private static final int BLOCK = 1 << 14;

  private double sum;
  private double compensation;

  /** An empty sum. */
  public Sum() {}

  /** Adds one term. */
  public void add(double term) {
    double next = sum + term;
    compensation += Math.abs(sum) >= Math.abs(term) ? (sum - next) + term : (term - next) + sum;
    sum = next;
  }

  /** Adds another sum, with what it carries beyond its digits. */
  public void add(Sum other) {
    add(other.sum);
    add(other.compensation);
  }

  /** The sum so far. */
  public double value() {
    return sum + compensation;
  }

  /**
   * Sums {@code term(0) … term(count - 1)}, in parallel where that pays.
   *
   * @param count number of terms
   * @param term pure function of the index, called once for each
   */
  public static double over(int count, IntToDoubleFunction term) {
    int blocks = (count + BLOCK - 1) / BLOCK;
    Sum[] parts = new Sum[blocks];
    IntStream range = IntStream.range(0, blocks);
    (blocks > 1 ? range.parallel() : range)
        .forEach(
            b -> {
              Sum part = new Sum();
              int end = (int) Math.min((long) (b + 1) * BLOCK, count);
              for (int i = b * BLOCK; i < end; i++) {
                part.add(term.applyAsDouble(i));
              }
              parts[b] = part;
            });
    Sum total = new Sum();
    for (Sum part : parts) {
      total.add(part);
    }
    return total.value();
  }
}
