package org.seamwright.bench;

import java.util.Optional;
import org.seamwright.plating.Step;

/**
 * How the wet window stands: time runs from when every place was last known to be wet, which is the
 * end of each wet step or when the plater says so.
 *
 * <p>Until the window is over the next step must have gone once over every place. At the planned
 * pace a pass must begin early enough for its last place: window − area × the slower of the two
 * passes (see {@code plating.WetLimits}), which {@code beginMs} tells. A step whose passes together
 * take longer than the window keeps wetting the section itself; after its first window it is no
 * longer an alarm, but a pass must stay below the window.
 *
 * @param level how urgent it is
 * @param leftMs until the window is over, ms; below 0 after it
 * @param windowMs the window, ms
 * @param beginMs until the tool must be on the piece, ms; below 0 after it
 * @param passMs planned time of a pass of this step, ms
 */
public record Countdown(Level level, long leftMs, long windowMs, long beginMs, long passMs) {
  /** Enough to notice and to finish a stroke: a setting of the program, no source. */
  static final long WARN_MS = 10_000;

  private static final double MS_PER_S = 1000;

  /** How urgent. */
  public enum Level {
    /** Time is left. */
    CALM,
    /** Little is left. */
    SOON,
    /** The window is over: what was not gone over since has dried. */
    OVER,
    /** The step itself keeps the section wet, as long as no pass takes longer than the window. */
    PASSES
  }

  /** Whether a pass takes longer than the window, so that places dry at the planned pace. */
  public boolean isTooLarge() {
    return windowMs - (leftMs - beginMs) < 0;
  }

  /** How the window stands; empty where nothing must stay wet. */
  static Optional<Countdown> of(BenchPlan plan, BenchState state, long nowMs) {
    BenchState.Position at = state.at();
    if (!at.isWorking() || state.wet().sinceMs() < 0) {
      return Optional.empty();
    }
    long window = Math.round(plan.windowSeconds() * MS_PER_S);
    long left = window - Math.max(0, nowMs - state.wet().sinceMs());
    double pass = plan.passSeconds(at.section(), at.step());
    double before =
        at.step() > 0 && plan.steps().get(at.step() - 1).kind() == Step.Kind.WET
            ? plan.passSeconds(at.section(), at.step() - 1)
            : 0;
    long begin = left - Math.round(Math.max(pass, before) * MS_PER_S);
    double planned = plan.sections().get(at.section()).seconds().get(at.step());
    boolean manyPasses =
        plan.steps().get(at.step()).passes() > 1
            && planned > plan.windowSeconds()
            && pass < plan.windowSeconds();
    Level level = Level.CALM;
    if (left <= 0) {
      level = manyPasses && !state.wet().asked() ? Level.PASSES : Level.OVER;
    } else if (left <= Math.min(WARN_MS, window / 2)) {
      level = Level.SOON;
    }
    return Optional.of(new Countdown(level, left, window, begin, Math.round(pass * MS_PER_S)));
  }
}
