package org.seamwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.bench.BenchEvent.What;
import org.seamwright.bench.BenchState.Phase;
import org.seamwright.bench.BenchState.Status;

/** What events make of a run. */
class BenchRulesTest {
  private final BenchPlan plan = BenchFixture.plan(2, 2);
  private final BenchRules rules = new BenchRules(plan);
  private BenchState state = BenchState.start(plan);
  private long now = 1_000_000;

  private void tell(What what, int section, int step) {
    state = rules.apply(state, BenchEvent.of(now, what, section, step));
  }

  private void here(What what) {
    tell(what, state.sectionId(), state.at().step());
  }

  /** The one key after some seconds. */
  private void key(long seconds) {
    now += 1000 * seconds;
    switch (state.phase()) {
      case CAUTIONS -> tell(What.CAUTION_SEEN, 0, state.cautions().indexOf(false));
      case MASKS -> tell(What.MASK_TICKED, 0, state.masks().indexOf(false));
      default -> here(What.NEXT);
    }
  }

  private void toWork() {
    while (state.phase() != Phase.WORK) {
      key(1);
    }
  }

  @Test
  void cautionsAndMasksComeFirst() {
    here(What.NEXT);
    here(What.DIP);
    assertThat(state.phase()).isEqualTo(Phase.CAUTIONS);
    assertThat(state.entries()).isEmpty();
    for (int i = 0; i < state.cautions().size(); i++) {
      key(1);
    }
    assertThat(state.phase()).isEqualTo(Phase.MASKS);
    key(1);
    assertThat(state.masks()).containsExactly(true, false);
    tell(What.MASK_CLEARED, 0, 0);
    assertThat(state.masks()).containsExactly(false, false);
    key(1);
    key(1);
    assertThat(state.phase()).isEqualTo(Phase.WORK);
    assertThat(state.sectionId()).isEqualTo(1);
    assertThat(state.at().isWorking()).isFalse();
  }

  @Test
  void allSectionsAreFlashedBeforeTheBuild() {
    toWork();
    key(5);
    for (int step = 0; step <= BenchFixture.FLASH; step++) {
      assertThat(state.at().step()).isEqualTo(step);
      key(10);
    }
    assertThat(state.sections().get(0).status()).isEqualTo(Status.FLASHED);
    assertThat(state.sectionId()).isEqualTo(2);
    assertThat(state.sections().get(0).spentMs())
        .containsExactly(10_000L, 10_000L, 10_000L, 10_000L, 0L, 0L);
    key(5);
    for (int step = 0; step <= BenchFixture.FLASH; step++) {
      key(10);
    }
    assertThat(state.sectionId()).isEqualTo(1);
    key(5);
    assertThat(state.at().step()).isEqualTo(BenchFixture.BUILD);
    key(10);
    key(10);
    assertThat(state.sections().get(0).status()).isEqualTo(Status.DONE);
    assertThat(state.sectionId()).isEqualTo(2);
    key(5);
    key(10);
    key(10);
    assertThat(state.phase()).isEqualTo(Phase.THROUGH);
    tell(What.ENDED, 0, 0);
    assertThat(state.phase()).isEqualTo(Phase.ENDED);
    BenchState over = state;
    here(What.DIP);
    assertThat(state.entries()).isEqualTo(over.entries());
  }

  @Test
  void theWindowRunsFromTheEndOfEachWetStep() {
    toWork();
    key(5);
    key(60);
    assertThat(state.at().step()).isEqualTo(BenchFixture.CLEAN);
    assertThat(state.wet().sinceMs()).isEqualTo(-1);
    key(20);
    assertThat(state.wet().sinceMs()).isEqualTo(now);
    key(8);
    assertThat(state.wet().sinceMs()).isEqualTo(now);
    long rinsed = now;
    now += 3000;
    here(What.DIP);
    assertThat(state.wet().sinceMs()).isEqualTo(rinsed);
    key(20);
    assertThat(state.wet().sinceMs()).as("covered: may dry").isEqualTo(-1);
  }

  @Test
  void driedOutBeginsAgainAndIsLogged() {
    toWork();
    key(5);
    key(60);
    key(20);
    now += 50_000;
    here(What.DRIED_OUT);
    assertThat(state.at().step()).isZero();
    assertThat(state.at().isWorking()).isTrue();
    assertThat(state.wet().sinceMs()).isEqualTo(-1);
    assertThat(state.mishaps()).containsExactly(new BenchState.Mishap(1, BenchFixture.RINSE, now));
  }

  @Test
  void whatIsCoveredCannotDryOut() {
    toWork();
    key(5);
    for (int step = 0; step <= BenchFixture.FLASH; step++) {
      key(10);
    }
    tell(What.DRIED_OUT, 1, 0);
    assertThat(state.mishaps()).isEmpty();
  }

  @Test
  void goingBackBringsTheEarlierWetting() {
    toWork();
    key(5);
    key(60);
    key(20);
    long cleaned = now;
    key(8);
    assertThat(state.at().step()).isEqualTo(BenchFixture.FLASH);
    now += 2000;
    here(What.BACK);
    assertThat(state.at().step()).isEqualTo(BenchFixture.RINSE);
    assertThat(state.wet().sinceMs()).isEqualTo(cleaned);
    here(What.BACK);
    here(What.BACK);
    assertThat(state.at().step()).isZero();
    here(What.BACK);
    assertThat(state.at().isWorking()).isFalse();
    assertThat(state.sectionId()).isEqualTo(1);
  }

  @Test
  void aKeyTooManyAtTheEndOfASectionCanBeTakenBack() {
    toWork();
    key(5);
    key(60);
    key(20);
    key(8);
    long rinsed = now;
    key(10);
    assertThat(state.sectionId()).isEqualTo(2);
    now += 1000;
    here(What.BACK);
    assertThat(state.sectionId()).isEqualTo(1);
    assertThat(state.at().step()).isEqualTo(BenchFixture.FLASH);
    assertThat(state.sections().get(0).status()).isEqualTo(Status.WAITING);
    assertThat(state.wet().sinceMs()).isEqualTo(rinsed);
  }

  @Test
  void anotherSectionCanBeChosenAndAWetOneBeginsAgain() {
    toWork();
    key(5);
    key(60);
    key(20);
    tell(What.CHOSEN, 2, 0);
    assertThat(state.sectionId()).isEqualTo(2);
    tell(What.CHOSEN, 1, 0);
    key(1);
    assertThat(state.at().step()).isZero();
    tell(What.CHOSEN, 99, 0);
    assertThat(state.sectionId()).isEqualTo(1);
  }

  @Test
  void afterAnOutageInTheWetChainTheQuestionComesFirst() {
    toWork();
    key(5);
    key(60);
    key(20);
    long wet = now;
    BenchState before = state;
    now += 30_000;
    tell(What.REOPENED, 0, 0);
    assertThat(state.wet().asked()).isTrue();
    assertThat(state.wet().sinceMs()).as("the outage counts").isEqualTo(wet);
    assertThat(state.at().step()).isEqualTo(before.at().step());
    assertThat(state.at().sinceMs()).isEqualTo(before.at().sinceMs());
    assertThat(state.at().awayMs()).isEqualTo(30_000);
    here(What.NEXT);
    here(What.BACK);
    assertThat(state.at().step()).as("not before the answer").isEqualTo(before.at().step());
    here(What.STILL_WET);
    assertThat(state.wet().asked()).isFalse();
    key(4);
    assertThat(state.at().step()).isEqualTo(BenchFixture.FLASH);
    assertThat(state.sections().get(0).spentMs().get(BenchFixture.RINSE))
        .as("without the outage")
        .isEqualTo(4000);
  }

  @Test
  void anOutageInTheFlashMakesItsTimeUnknown() {
    toWork();
    key(5);
    key(60);
    key(20);
    key(8);
    now += 9000;
    tell(What.REOPENED, 0, 0);
    here(What.STILL_WET);
    key(8);
    assertThat(state.sections().get(0).gaps()).isTrue();
    assertThat(new BenchRuns(plan, state, java.time.ZoneOffset.UTC).minutes(1)).isNaN();
  }

  @Test
  void undoTakesTheLastEntryBack() {
    toWork();
    here(What.DIP);
    here(What.DIP);
    state = rules.apply(state, new BenchEvent(now, What.VOLTS, 1, 0, 2.75, 0.01));
    assertThat(state.dips(1)).isEqualTo(2);
    tell(What.UNDONE, 0, 0);
    assertThat(state.told(1, What.VOLTS)).isEmpty();
    tell(What.UNDONE, 0, 0);
    assertThat(state.dips(1)).isEqualTo(1);
    tell(What.UNDONE, 0, 0);
    tell(What.UNDONE, 0, 0);
    assertThat(state.entries()).isEmpty();
  }

  @Test
  void aSecondPressThatWasMeantForAnotherStepChangesNothing() {
    toWork();
    key(5);
    BenchEvent next = BenchEvent.of(now, What.NEXT, 1, 0);
    state = rules.apply(state, next);
    state = rules.apply(state, next);
    assertThat(state.at().step()).isEqualTo(1);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void anySequenceKeepsWhatAlwaysHolds(long seed) {
    List<BenchEvent> events = BenchFixture.random(plan, seed, 400);
    BenchState was = BenchState.start(plan);
    for (BenchEvent event : events) {
      BenchState is = rules.apply(was, event);
      assertThat(is.lastMs()).as("seed %d", seed).isGreaterThanOrEqualTo(was.lastMs());
      assertThat(is.at().step()).isBetween(-1, plan.steps().size() - 1);
      assertThat(is.at().section()).isBetween(-1, plan.sections().size() - 1);
      assertThat(is.sections()).allMatch(s -> s.spentMs().stream().allMatch(ms -> ms >= 0));
      assertThat(is.mishaps().size()).isGreaterThanOrEqualTo(was.mishaps().size());
      if (is.wet().sinceMs() >= 0) {
        assertThat(is.at().isWorking()).isTrue();
        assertThat(is.sections().get(is.at().section()).status()).isEqualTo(Status.WAITING);
        assertThat(is.at().step()).isLessThanOrEqualTo(BenchFixture.FLASH);
      }
      assertThat(is.phase()).isNotNull();
      // What is shown can always be shown.
      BenchWords words = new BenchWords(plan, is);
      assertThat(words.key()).isNotEmpty();
      words.step();
      words.caution();
      words.question(is.lastMs());
      words.figures();
      words.undo();
      words.planned();
      Countdown.of(plan, is, is.lastMs()).ifPresent(c -> assertThat(words.wet(c)).isNotEmpty());
      was = is;
    }
    assertThat(rules.replay(events)).isEqualTo(was);
  }
}
