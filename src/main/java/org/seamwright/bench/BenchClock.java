package org.seamwright.bench;

import java.util.function.LongSupplier;

/**
 * A time of day that never runs slower than time does.
 *
 * <p>A wet surface dries whether the computer's clock is set back, forth, or the computer sleeps.
 * So each step forward is the larger of what the clock of the day and the steady clock of the
 * process tell: a clock set back changes nothing, sleep counts, and a clock set forth counts as
 * time, which is the safe side.
 */
public final class BenchClock implements LongSupplier {
  private static final long NANOS_PER_MS = 1_000_000;

  private final LongSupplier dayMs;
  private final LongSupplier steadyNanos;
  private long lastDayMs;
  private long lastSteadyNanos;
  private long now;

  /**
   * A clock.
   *
   * @param dayMs ms since 1970, may jump
   * @param steadyNanos ns, may stand still while the computer sleeps
   */
  public BenchClock(LongSupplier dayMs, LongSupplier steadyNanos) {
    this.dayMs = dayMs;
    this.steadyNanos = steadyNanos;
    lastDayMs = dayMs.getAsLong();
    lastSteadyNanos = steadyNanos.getAsLong();
    now = lastDayMs;
  }

  /** The computer's own. */
  public static BenchClock ofComputer() {
    return new BenchClock(System::currentTimeMillis, System::nanoTime);
  }

  /** Ms since 1970; never less than before. */
  @Override
  public synchronized long getAsLong() {
    long day = dayMs.getAsLong();
    long steady = (steadyNanos.getAsLong() - lastSteadyNanos) / NANOS_PER_MS;
    // What is below a millisecond stays for the next call.
    lastSteadyNanos += steady * NANOS_PER_MS;
    now += Math.max(0, Math.max(day - lastDayMs, steady));
    lastDayMs = day;
    return now;
  }
}
