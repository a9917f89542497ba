package org.seamwright.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import org.seamwright.job.PlanFile;
import org.seamwright.plating.Deposit;
import org.seamwright.plating.Spread;
import org.seamwright.plating.Step;
import org.seamwright.units.UnitSystem;

/** A small plan for the bench; all of it invented, in round figures. */
final class BenchFixture {
  /** 19.3 g/cm³ of a metal of 197 g/mol with one electron: round figures near those of gold. */
  static final Deposit METAL = new Deposit("test", "test", 19.3, 197, 1, "invented");

  static final double WINDOW_S = 45;

  /** Each section has 20 cm² net and 22 cm² that must stay wet. */
  static final double NET_MM2 = 2000;

  static final int CLEAN = 1;
  static final int RINSE = 2;
  static final int FLASH = 3;
  static final int BUILD = 4;
  static final int DRY = 5;

  private BenchFixture() {}

  static BenchPlan plan(int sections, int masks) {
    List<Step> steps =
        List.of(
            step("Degrease", Step.Kind.DRY_PREPARATION, 0.3, 2, 30),
            step("Clean", Step.Kind.WET, 0.5, 2, 7),
            step("Rinse after clean", Step.Kind.WET, 0.2, 2, 4),
            step("Flash", Step.Kind.FLASH, 2, 10, 7),
            step("Build", Step.Kind.BUILD, 10, 1, 7),
            step("Dry", Step.Kind.FINISH, 0.1, 1, 4));
    List<BenchPlan.Task> tasks = new ArrayList<>();
    Map<Integer, Double> net = new LinkedHashMap<>();
    for (int id = 1; id <= sections; id++) {
      List<Double> seconds = new ArrayList<>();
      double[] cm2 = {23, 22, 22, 24, 20, 20};
      for (int i = 0; i < steps.size(); i++) {
        Step s = steps.get(i);
        boolean thickness = s.kind() == Step.Kind.FLASH || s.kind() == Step.Kind.BUILD;
        double perCm2 = thickness ? s.secondsPerCm2() : s.dwellSecondsPerCm2();
        seconds.add(s.handlingSeconds() + cm2[i] * perCm2);
      }
      tasks.add(new BenchPlan.Task(id, NET_MM2, 2200, 2400, seconds, 5, 0.02));
      net.put(id, NET_MM2);
    }
    List<String> lines = new ArrayList<>();
    for (int m = 1; m <= masks; m++) {
      lines.add("M" + m);
    }
    return new BenchPlan(
        new PlanFile("test piece", METAL, 0.5, new Spread(0.2, 0.3, 0.4), 20, 0.7, 0.01, net),
        UnitSystem.METRIC,
        steps,
        tasks,
        lines,
        WINDOW_S,
        8,
        0.8,
        OptionalDouble.of(0.5));
  }

  private static Step step(String name, Step.Kind kind, double pace, int passes, double handling) {
    return new Step(name, "why", kind, pace, passes, handling, "invented");
  }

  /** Events of all kinds, sensible or not; some lead the run on. */
  static List<BenchEvent> random(BenchPlan plan, long seed, int count) {
    Random random = new Random(seed);
    BenchRules rules = new BenchRules(plan);
    BenchState state = BenchState.start(plan);
    List<BenchEvent> events = new ArrayList<>();
    long now = 1_750_000_000_000L;
    BenchEvent.What[] all = BenchEvent.What.values();
    for (int i = 0; i < count; i++) {
      now += random.nextInt(20) == 0 ? -5000 : random.nextInt(40_000);
      BenchEvent.What what = all[random.nextInt(all.length)];
      boolean rare = what == BenchEvent.What.ENDED && random.nextInt(10) > 0;
      boolean on = random.nextBoolean() || rare;
      if (on && state.phase() == BenchState.Phase.CAUTIONS) {
        what = BenchEvent.What.CAUTION_SEEN;
      } else if (on && state.phase() == BenchState.Phase.MASKS) {
        what = BenchEvent.What.MASK_TICKED;
      } else if (on) {
        what = state.wet().asked() ? BenchEvent.What.STILL_WET : BenchEvent.What.NEXT;
      }
      boolean here = random.nextInt(4) > 0;
      boolean list =
          what == BenchEvent.What.CAUTION_SEEN
              || what == BenchEvent.What.MASK_TICKED
              || what == BenchEvent.What.MASK_CLEARED;
      BenchEvent event =
          new BenchEvent(
              now,
              what,
              here ? state.sectionId() : random.nextInt(plan.sections().size() + 3) - 1,
              list ? random.nextInt(12) - 1 : here ? state.at().step() : random.nextInt(8) - 2,
              what.isEntry() ? random.nextInt(1000) / 100.0 : 0,
              what.isEntry() ? 0.01 : 0);
      events.add(event);
      state = rules.apply(state, event);
    }
    return events;
  }
}
