package org.seamwright.bench;

import java.util.Optional;
import java.util.function.Function;
import org.seamwright.bench.BenchEvent.What;

/**
 * What is told at the bench as an event of the run as it stands by then; none where it means
 * nothing.
 */
final class BenchTelling {
  private BenchTelling() {}

  /** The one key: ticks what is to be ticked, or says that a step is done. */
  static Function<BenchState, Optional<BenchEvent>> key(long now) {
    return s ->
        switch (s.phase()) {
          case CAUTIONS ->
              event(now, What.CAUTION_SEEN, 0, BenchState.unticked(s.cautions()).getAsInt());
          case MASKS -> event(now, What.MASK_TICKED, 0, BenchState.unticked(s.masks()).getAsInt());
          case WORK ->
              s.wet().asked()
                  ? Optional.empty()
                  : event(now, What.NEXT, s.sectionId(), s.at().step());
          case THROUGH, ENDED -> Optional.empty();
        };
  }

  private static Optional<BenchEvent> event(long now, What what, int section, int step) {
    return Optional.of(BenchEvent.of(now, what, section, step));
  }

  /** Something of the section and step in hand. */
  static Function<BenchState, Optional<BenchEvent>> here(long now, What what) {
    return s ->
        s.at().section() < 0 ? Optional.empty() : event(now, what, s.sectionId(), s.at().step());
  }

  /** Something of a section or of a list. */
  static Function<BenchState, Optional<BenchEvent>> of(long now, What what, int section, int step) {
    return s -> event(now, what, section, step);
  }

  /** The last dip or figure was wrong. */
  static Function<BenchState, Optional<BenchEvent>> undo(long now) {
    return s -> s.entries().isEmpty() ? Optional.empty() : event(now, What.UNDONE, 0, 0);
  }

  /** A figure of a section; 0 for the whole piece. */
  static Function<BenchState, Optional<BenchEvent>> note(
      long now, int section, What what, NumberPad pad) {
    return s ->
        pad.value().isEmpty() || !what.isEntry()
            ? Optional.empty()
            : Optional.of(
                new BenchEvent(
                    now,
                    what,
                    section,
                    s.at().step(),
                    pad.value().getAsDouble(),
                    pad.resolution()));
  }

  /** The run is over. */
  static Function<BenchState, Optional<BenchEvent>> end(long now) {
    return s -> s.ended() || s.at().section() < 0 ? Optional.empty() : event(now, What.ENDED, 0, 0);
  }
}
