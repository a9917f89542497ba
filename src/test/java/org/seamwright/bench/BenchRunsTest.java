package org.seamwright.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamwright.bench.BenchEvent.What;
import org.seamwright.shop.LaidDown;
import org.seamwright.shop.Run;

/** What a run comes to in the shop book. */
class BenchRunsTest {
  private final BenchPlan plan = BenchFixture.plan(2, 0);
  private final BenchRules rules = new BenchRules(plan);
  private BenchState state = BenchState.start(plan);
  private long now = 1_750_000_000_000L;

  private void note(int section, What what, double value, double resolution) {
    state = rules.apply(state, new BenchEvent(now, what, section, 0, value, resolution));
  }

  private void keys(int count, long seconds) {
    for (int i = 0; i < count; i++) {
      now += 1000 * seconds;
      BenchEvent event =
          state.phase() == BenchState.Phase.CAUTIONS
              ? BenchEvent.of(now, What.CAUTION_SEEN, 0, state.cautions().indexOf(false))
              : BenchEvent.of(now, What.NEXT, state.sectionId(), state.at().step());
      state = rules.apply(state, event);
    }
  }

  private BenchRuns runs() {
    return new BenchRuns(plan, state, ZoneOffset.UTC);
  }

  @Test
  void figuresOfASectionAddUpOrReplace() {
    keys(state.cautions().size(), 1);
    keys(5, 30);
    for (int i = 0; i < 4; i++) {
      state = rules.apply(state, BenchEvent.of(now, What.DIP, 1, 3));
    }
    note(1, What.VOLTS, 2.5, 0.1);
    note(1, What.VOLTS, 2.8, 0.1);
    note(1, What.CHARGE_AH, 0.01, 0.001);
    note(1, What.CHARGE_AH, 0.02, 0.001);
    note(1, What.READING_UM, 0.5, 0.01);
    note(1, What.READING_UM, 0.6, 0.01);
    Run run = runs().run(1);
    assertThat(run.section()).isEqualTo("1");
    assertThat(run.job()).isEqualTo("test piece");
    assertThat(run.date()).isEqualTo("2025-06-15");
    assertThat(run.ampHours()).isEqualTo(0.03, within(1e-15));
    assertThat(run.solutionMl()).as("4 dips of 0.5 ml").isEqualTo(2);
    assertThat(run.minutes()).as("30 s of flash").isEqualTo(0.5);
    assertThat(run.readingsUm()).isEqualTo("0.5 0.6");
    assertThat(run.notes()).contains("2.8 V", "4 dips", runs().mark());
    note(1, What.SOLUTION_ML, 3, 1);
    note(1, What.SOLUTION_ML, 2, 1);
    assertThat(runs().run(1).solutionMl()).as("told, so not by dips").isEqualTo(5);
    assertThat(runs().sections()).containsExactly(1);
  }

  /** t = Δm / (ρ A): 0.0193 g on 20 cm² of 19.3 g/cm³ is 0.5 µm. */
  @Test
  void thicknessByWeightIsThatOfTheFormula() throws Exception {
    keys(state.cautions().size() + 5, 30);
    note(1, What.BEFORE_G, 812.4, 0.0001);
    note(1, What.AFTER_G, 812.4193, 0.0001);
    LaidDown laid = runs().laidDown(1);
    assertThat(laid.ways()).hasSize(1);
    LaidDown.Way way = laid.ways().get(0);
    assertThat(way.by()).isEqualTo("weight");
    assertThat(way.thickness().um()).isCloseTo(0.5, within(1e-9));
    // Two readings of d = 0.1 mg: u = d/√6 = 0.0408 mg of 19.3 mg, area 1 %: in squares.
    double u = 0.5 * Math.hypot(0.0001 / Math.sqrt(6) / 0.0193, 0.01);
    assertThat(way.thickness().standardUm()).isCloseTo(u, within(1e-9));
  }

  @Test
  void thePieceWeighedWholeIsAnEntryOfItsOwn() throws Exception {
    keys(state.cautions().size() + 5, 30);
    note(0, What.BEFORE_G, 812.40, 0.01);
    note(0, What.AFTER_G, 812.45, 0.01);
    note(1, What.CHARGE_AH, 0.03, 0.01);
    assertThat(runs().sections()).isEqualTo(List.of(0, 1));
    assertThat(runs().run(0).gainG()).isCloseTo(0.05, within(1e-9));
    // Two sections of 20 cm²: 0.05 g / (19.3 g/cm³ · 40 cm²).
    assertThat(runs().laidDown(0).ways().get(0).thickness().um())
        .isCloseTo(1e4 * 0.05 / 19.3 / 40, within(1e-9));
  }
}
