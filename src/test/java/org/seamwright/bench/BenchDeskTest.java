package org.seamwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.bench.BenchEvent.What;
import org.seamwright.bench.BenchState.Phase;
import org.seamwright.desk.Desk;
import org.seamwright.desk.NextStep;
import org.seamwright.job.Job;
import org.seamwright.meshfile.StlWriter;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;
import org.seamwright.shop.Run;
import org.seamwright.shop.ShopBook;
import org.seamwright.testsupport.Shapes;

/** The bench without a window: a fake clock, and everything on one thread. */
class BenchDeskTest {
  @TempDir private Path dir;

  private final Deque<Runnable> todo = new ArrayDeque<>();
  private long now = 1_750_000_000_000L;
  private Desk desk;
  private BenchDesk bench;
  private Path jobFile;

  @BeforeEach
  void planACube() throws Exception {
    Path mesh = dir.resolve("block.stl");
    StlWriter.writeBinary(Shapes.cube(40, 8), mesh, "A test block");
    jobFile = dir.resolve("block.json");
    desk = new Desk(todo::add, todo::add, todo::add, todo::add);
    desk.open(mesh);
    work();
    desk.chooseScale(new Job.Scale.Unit("mm"));
    work();
    desk.saveAs(jobFile);
    work();
    assertThat(desk.state().get().isPlanned()).isTrue();
    bench = bench(desk);
  }

  private BenchDesk bench(Desk of) {
    return new BenchDesk(
        of, todo::add, todo::add, () -> now, dir.resolve("book.db"), ZoneOffset.UTC);
  }

  private void work() {
    while (!todo.isEmpty()) {
      todo.poll().run();
    }
  }

  private BenchState state() {
    return bench.run().get().orElseThrow().state();
  }

  private void key(long seconds) {
    now += 1000 * seconds;
    bench.key();
    work();
  }

  private void enter() {
    bench.enter();
    work();
  }

  private void toWork() {
    enter();
    while (state().phase() != Phase.WORK) {
      key(2);
    }
  }

  /** As a power cut leaves it: nothing is closed in order, but the lock goes with the process. */
  private BenchState comeBack() {
    bench.leave();
    work();
    now += 90_000;
    bench = bench(desk);
    enter();
    return state();
  }

  /** As another window would find it. */
  private boolean underWay() {
    BenchDesk other = bench(desk);
    work();
    return other.underWay().get();
  }

  private List<Run> booked() throws Exception {
    try (ShopBook book = ShopBook.open(dir.resolve("book.db"))) {
      return book.runs("", "", "", 100);
    }
  }

  @Test
  void saysWhatIsMissing() {
    BenchDesk empty = bench(new Desk(todo::add, todo::add, todo::add, todo::add));
    assertThat(empty.missing())
        .map(NextStep::deed)
        .contains(java.util.Optional.of(NextStep.Deed.OPEN));
    empty.enter();
    work();
    assertThat(empty.run().get()).isEmpty();
    assertThat(bench.missing()).isEmpty();
  }

  @Test
  void goesThroughARunByOneKeyIntoTheShopBook() throws Exception {
    toWork();
    assertThat(underWay()).isTrue();
    int presses = 0;
    while (state().phase() == Phase.WORK) {
      if (state().at().step() == state().sections().get(0).resume() + 1) {
        bench.dip();
      }
      key(9);
      assertThat(presses++).isLessThan(500);
    }
    assertThat(state().phase()).isEqualTo(Phase.THROUGH);
    int sections = state().sections().size();
    bench.note(1, What.CHARGE_AH, NumberPad.EMPTY.type('0').type(',').type('1'));
    bench.end();
    work();
    assertThat(state().phase()).isEqualTo(Phase.ENDED);
    assertThat(bench.isBooked()).isTrue();
    assertThat(underWay()).isFalse();
    assertThat(booked()).hasSize(sections);
    Run first = booked().stream().filter(r -> r.section().equals("1")).findFirst().orElseThrow();
    assertThat(first.ampHours()).isEqualTo(0.1);
    // A flash and a build, nine seconds each.
    assertThat(first.minutes()).isEqualTo(0.3);
    assertThat(bench.summary()).hasSize(sections);
    assertThat(bench.summary().get(0).thickness()).contains("±", "charge");
    bench.end();
    work();
    assertThat(booked()).as("once").hasSize(sections);
    bench.beginAnew();
    work();
    assertThat(state().phase()).isEqualTo(Phase.CAUTIONS);
    try (Stream<Path> files = Files.list(dir)) {
      assertThat(files.filter(f -> f.toString().contains(".json.bench-"))).hasSize(1);
    }
  }

  @Test
  void aKeyThatBouncesCountsOnce() {
    enter();
    bench.key();
    now += BenchDesk.BOUNCE_MS - 1;
    bench.key();
    work();
    assertThat(state().cautions().stream().filter(c -> c)).hasSize(1);
    now += BenchDesk.BOUNCE_MS;
    bench.key();
    work();
    assertThat(state().cautions().stream().filter(c -> c)).hasSize(2);
  }

  @Test
  void comesBackExactlyThereAndAsks() {
    toWork();
    key(5);
    while (state().wet().sinceMs() < 0) {
      key(10);
    }
    bench.dip();
    work();
    BenchState before = state();
    BenchState after = comeBack();
    assertThat(after.at().step()).isEqualTo(before.at().step());
    assertThat(after.sections()).isEqualTo(before.sections());
    assertThat(after.entries()).isEqualTo(before.entries());
    assertThat(after.wet().asked()).isTrue();
    assertThat(bench.run().get().orElseThrow().words().question(now)).isPresent();
    key(1);
    assertThat(state().at().step()).as("the question first").isEqualTo(before.at().step());
    bench.driedOut();
    work();
    assertThat(state().at().step()).isZero();
    assertThat(state().mishaps()).hasSize(1);
  }

  @Test
  void onlyOneIsAtTheBenchOfAJob() throws Exception {
    toWork();
    BenchState before = state();
    bench.leave();
    work();
    Path file = BenchLog.of(jobFile);
    try (BenchLog other = BenchLog.open(file, "x")) {
      enter();
      assertThat(bench.run().get()).isEmpty();
      assertThat(bench.halt().get().orElseThrow().why()).contains("nother window");
      assertThat(bench.halt().get().orElseThrow().canSetAside()).isFalse();
      assertThat(other.events()).isNotEmpty();
    }
    enter();
    assertThat(state().sections()).isEqualTo(before.sections());
  }

  @Test
  void aPlanThatChangedIsNotMixedWithTheRun() {
    toWork();
    bench.leave();
    work();
    desk.change(
        job ->
            job.withMarks(
                List.of(
                    new Mark.HalfSpace(
                        "foot", Treatment.BARE, Vector3D.of(0, 0, 10), Vector3D.of(0, 0, -1)))));
    work();
    assertThat(desk.state().get().isPlanned()).isTrue();
    enter();
    assertThat(bench.run().get()).isEmpty();
    assertThat(bench.halt().get().orElseThrow().canSetAside()).isTrue();
    desk.undo();
    work();
    enter();
    assertThat(state().phase()).isEqualTo(Phase.WORK);
  }

  @Test
  void warnsOnceForEachWetting() {
    toWork();
    List<BenchDesk.Alarm> heard = new ArrayList<>();
    bench
        .alarm()
        .watch(
            a -> {
              if (a.sounds()) {
                heard.add(a);
              }
            });
    key(5);
    while (state().wet().sinceMs() < 0) {
      key(10);
    }
    for (int i = 0; i < 600; i++) {
      now += 100;
      bench.tick();
    }
    assertThat(heard)
        .extracting(BenchDesk.Alarm::level)
        .containsExactly(Countdown.Level.SOON, Countdown.Level.OVER);
    bench.stillWet();
    work();
    for (int i = 0; i < 400; i++) {
      now += 100;
      bench.tick();
    }
    assertThat(heard).hasSize(3);
  }

  @Test
  void remembersItsKeyAndItsSilence() {
    enter();
    bench.chooseKey("PAGE_DOWN");
    bench.mute(true);
    work();
    bench.leave();
    work();
    bench = bench(desk);
    enter();
    assertThat(bench.settings().get()).isEqualTo(new BenchSettings("PAGE_DOWN", true));
    assertThat(bench.settings().get().keyTitle()).isEqualTo("Page down");
  }

  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23})
  void anyHandlingComesBackTheSame(long seed) {
    toWork();
    Random random = new Random(seed);
    for (int i = 0; i < 120; i++) {
      now += random.nextInt(20_000);
      switch (random.nextInt(12)) {
        case 0 -> bench.back();
        case 1 -> bench.dip();
        case 2 -> bench.driedOut();
        case 3 -> bench.stillWet();
        case 4 -> bench.undo();
        case 5 -> bench.choose(1 + random.nextInt(3));
        case 6 -> bench.note(1, What.VOLTS, NumberPad.EMPTY.type('3'));
        default -> bench.key();
      }
      work();
      if (random.nextInt(15) == 0) {
        BenchState before = state();
        BenchState after = comeBack();
        BenchEvent reopened = BenchEvent.of(now, What.REOPENED, 0, 0);
        BenchPlan plan = bench.run().get().orElseThrow().plan();
        assertThat(after)
            .as("seed %d", seed)
            .isEqualTo(new BenchRules(plan).apply(before, reopened));
      }
    }
  }
}
