package org.seamwright.basis;

import java.util.concurrent.CancellationException;

/**
 * How a long computation tells how far it is and learns that it is no longer wanted.
 *
 * <p>Computations call {@link #at} at least every 50 ms of work.
 */
@FunctionalInterface
public interface Progress {
  /** Ignores progress and never cancels. */
  Progress NONE = fraction -> {};

  /**
   * Reports the share of work done.
   *
   * @param fraction from 0 to 1
   * @throws CancellationException if the result is no longer wanted; let it pass
   */
  void at(double fraction);

  /** The part of this progress between two fractions, for a step of a longer computation. */
  default Progress between(double from, double to) {
    return fraction -> at(from + (to - from) * fraction);
  }
}
