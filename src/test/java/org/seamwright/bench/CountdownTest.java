package org.seamwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamwright.bench.BenchState.Position;
import org.seamwright.bench.BenchState.Wet;
import org.seamwright.bench.Countdown.Level;

/**
 * The wet window as it runs. The fixture's figures: window 45 s, 22 cm² to keep wet, clean 0.5
 * s/cm² a pass, rinse 0.2 s/cm² a pass, flash 2 s/cm² on 24 cm² in 10 passes.
 */
class CountdownTest {
  private final BenchPlan plan = BenchFixture.plan(1, 0);

  private Countdown at(int step, double elapsedSeconds) {
    return at(plan, step, elapsedSeconds);
  }

  private static Countdown at(BenchPlan plan, int step, double elapsedSeconds) {
    BenchState start = BenchState.start(plan);
    BenchState state =
        new BenchState(
            start.cautions(),
            start.masks(),
            start.sections(),
            new Position(0, step, 1000, 0, -1, -1),
            new Wet(1000, List.of(-1L, -1L, 1000L), false),
            List.of(),
            List.of(),
            List.of(),
            false,
            List.of(),
            1000,
            1000);
    return Countdown.of(plan, state, 1000 + Math.round(1000 * elapsedSeconds)).orElseThrow();
  }

  @Test
  void tellsWhatIsLeftAndWhenAPassMustBegin() {
    Countdown rinse = at(BenchFixture.RINSE, 5);
    assertThat(rinse.leftMs()).isEqualTo(40_000);
    // 45 s − 22 cm² × max(0.5, 0.2) s/cm² = 34 s from the wetting, 5 of them gone.
    assertThat(rinse.beginMs()).isEqualTo(29_000);
    assertThat(rinse.level()).isEqualTo(Level.CALM);
    // 45 s − max(24 cm² × 0.2 s/cm², 22 cm² × 0.2 s/cm²) = 40.2 s.
    assertThat(at(BenchFixture.FLASH, 0).beginMs()).isEqualTo(40_200);
  }

  @Test
  void warnsThenSaysThatItIsOver() {
    assertThat(at(BenchFixture.RINSE, 34.9).level()).isEqualTo(Level.CALM);
    assertThat(at(BenchFixture.RINSE, 35).level()).isEqualTo(Level.SOON);
    assertThat(at(BenchFixture.RINSE, 44.9).level()).isEqualTo(Level.SOON);
    assertThat(at(BenchFixture.RINSE, 45).level()).isEqualTo(Level.OVER);
    assertThat(at(BenchFixture.RINSE, 3000).level()).isEqualTo(Level.OVER);
  }

  @Test
  void aStepOfManyPassesKeepsItselfWet() {
    // 7 s + 24 cm² × 2 s/cm² = 55 s, longer than the window; a pass takes 4.8 s.
    assertThat(at(BenchFixture.FLASH, 40).level()).isEqualTo(Level.SOON);
    assertThat(at(BenchFixture.FLASH, 45).level()).isEqualTo(Level.PASSES);
    assertThat(at(BenchFixture.FLASH, 45).passMs()).isEqualTo(4800);
  }

  @Test
  void saysWhereASectionIsTooLargeForItsWindow() {
    assertThat(at(BenchFixture.RINSE, 1).isTooLarge()).isFalse();
    // A pass of clean takes 22 cm² × 0.5 s/cm² = 11 s, of rinse 4.4 s.
    BenchPlan brief =
        new BenchPlan(
            plan.figures(),
            plan.display(),
            plan.steps(),
            plan.sections(),
            plan.masks(),
            4,
            plan.gPerL(),
            plan.usableShare(),
            plan.dipMl());
    assertThat(at(brief, BenchFixture.RINSE, 1).isTooLarge()).isTrue();
    assertThat(at(brief, BenchFixture.RINSE, 4).level()).isEqualTo(Level.OVER);
  }

  @Test
  void nothingRunsWhereNothingIsWet() {
    assertThat(Countdown.of(plan, BenchState.start(plan), 5000)).isEmpty();
  }

  @Test
  void aClockBeforeTheWettingShowsTheWholeWindow() {
    assertThat(at(BenchFixture.RINSE, -10).leftMs()).isEqualTo(45_000);
  }

  @Test
  void theLastSecondIsShownAsOne() {
    assertThat(BenchTexts.left(1)).isEqualTo("0:01");
    assertThat(BenchTexts.left(0)).isEqualTo("0:00");
    assertThat(BenchTexts.clock(3_727_999)).isEqualTo("1:02:07");
  }

  @Test
  void aClockThatJumpsOrSleepsNeverLosesTime() {
    long[] day = {1_000_000};
    long[] steady = {0};
    BenchClock clock = new BenchClock(() -> day[0], () -> steady[0]);
    assertThat(clock.getAsLong()).isEqualTo(1_000_000);
    day[0] -= 500_000; // set back, while two seconds pass
    steady[0] += 2_000_000_000L;
    assertThat(clock.getAsLong()).isEqualTo(1_002_000);
    day[0] += 60_000; // asleep: the steady clock stood still
    assertThat(clock.getAsLong()).isEqualTo(1_062_000);
    for (int i = 0; i < 1000; i++) { // half a millisecond a look adds up
      steady[0] += 500_000;
      clock.getAsLong();
    }
    assertThat(clock.getAsLong()).isEqualTo(1_062_500);
  }
}
