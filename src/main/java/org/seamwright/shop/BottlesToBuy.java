package org.seamwright.shop;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * The cheapest bottles that cover what is needed, from the user's own price list.
 *
 * <p>Exact: dynamic programming over amounts, in thousandths of the list's unit divided by what the
 * sizes have in common; sizes finer than a thousandth are refused. Of equally cheap choices the one
 * with least left over is taken.
 *
 * @param counts how many of each line of the list, in its order
 * @param hundredths price of all, in hundredths of the currency
 * @param amount what is bought, in the list's unit
 * @param left what is left over of it
 */
public record BottlesToBuy(List<Integer> counts, long hundredths, double amount, double left) {
  private static final BigDecimal STEPS_PER_UNIT = new BigDecimal(1000);

  /** Table size that takes a second and 200 MB: far above any shop's order. */
  private static final long LARGEST_TABLE = 10_000_000;

  /**
   * Chooses.
   *
   * @param needed what is needed after stock, in the unit of the list; 0 or less buys nothing
   * @param list at least one line, all in the same unit and currency
   * @throws ShopException if units or currencies differ, or a size is too fine
   */
  public static BottlesToBuy cheapest(double needed, List<Price> list) throws ShopException {
    if (list.isEmpty()) {
      throw refused("there is no price to choose from", "Enter one with \"shop price add\".");
    }
    if (list.stream().map(p -> p.unit() + " " + p.currency()).distinct().count() > 1) {
      throw refused(
          "lines differ in unit or currency", "Enter all sizes in one unit and one currency.");
    }
    long[] size = new long[list.size()];
    long common = 0;
    for (int i = 0; i < size.length; i++) {
      size[i] = steps(list.get(i).size());
      common = BigInteger.valueOf(common).gcd(BigInteger.valueOf(size[i])).longValue();
    }
    double unit = common / STEPS_PER_UNIT.doubleValue();
    long largest = Arrays.stream(size).max().orElseThrow() / common;
    double cells = Math.max(0, Math.ceil(needed / unit));
    // Rounding of the division must not leave the need uncovered by a last bit.
    cells += cells * unit < needed ? 1 : 0;
    if (!(cells + largest <= LARGEST_TABLE)) {
      throw refused(
          "the amount is too large for sizes this fine", "Round the sizes, or ask for less.");
    }
    int[] chosen = new int[(int) (cells + largest)];
    long[] cost = costs(size, common, list, chosen);
    int best = (int) cells;
    for (int a = best; a < cost.length; a++) {
      best = cost[a] < cost[best] ? a : best;
    }
    List<Integer> counts = new ArrayList<>(Collections.nCopies(size.length, 0));
    for (int a = best; a > 0; a -= (int) (size[chosen[a]] / common)) {
      counts.set(chosen[a], counts.get(chosen[a]) + 1);
    }
    double amount = best * unit;
    return new BottlesToBuy(List.copyOf(counts), cost[best], amount, amount - Math.max(0, needed));
  }

  /** Cheapest price of exactly each amount, and the last bottle of it. */
  private static long[] costs(long[] size, long common, List<Price> list, int[] chosen) {
    long[] cost = new long[chosen.length];
    Arrays.fill(cost, Long.MAX_VALUE);
    cost[0] = 0;
    for (int a = 1; a < cost.length; a++) {
      for (int i = 0; i < size.length; i++) {
        long from = a - size[i] / common;
        if (from >= 0 && cost[(int) from] < Long.MAX_VALUE) {
          long price = cost[(int) from] + list.get(i).hundredths();
          if (price < cost[a]) {
            cost[a] = price;
            chosen[a] = i;
          }
        }
      }
    }
    return cost;
  }

  private static long steps(double size) throws ShopException {
    try {
      return BigDecimal.valueOf(size)
          .multiply(STEPS_PER_UNIT)
          .setScale(0, RoundingMode.UNNECESSARY)
          .longValueExact();
    } catch (ArithmeticException e) {
      throw refused("a size is finer than a thousandth", "Round " + size + " to thousandths.");
    }
  }

  private static ShopException refused(String problem, String remedy) {
    return new ShopException("Price list", "", problem, remedy);
  }
}
