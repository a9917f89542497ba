package org.seamwright.bench;

import java.nio.file.Path;
import java.util.List;

/**
 * Goes on with a run from where its file ends, and says how many events are kept once each is; made
 * to be killed.
 */
final class KilledBench {
  static final long SEED = 7;
  static final int EVENTS = 20_000;

  private KilledBench() {}

  public static void main(String[] args) throws Exception {
    BenchPlan plan = BenchFixture.plan(3, 2);
    List<BenchEvent> events = BenchFixture.random(plan, SEED, EVENTS);
    try (BenchLog log = BenchLog.open(Path.of(args[0]), plan.fingerprint())) {
      for (int i = log.events().size(); i < events.size(); i++) {
        log.append(events.get(i));
        System.out.println(i + 1);
        System.out.flush();
      }
    }
  }
}
