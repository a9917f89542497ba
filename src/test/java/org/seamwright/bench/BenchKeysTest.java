package org.seamwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.bench.BenchEvent.What;
import org.seamwright.bench.BenchKeys.Deed;
import org.seamwright.bench.BenchKeys.Panel;
import org.seamwright.bench.BenchState.Phase;
import org.seamwright.desk.Desk;
import org.seamwright.job.Job;
import org.seamwright.meshfile.StlWriter;
import org.seamwright.testsupport.Shapes;

/** Keys and buttons of the bench, without a window. */
class BenchKeysTest {
  @TempDir private Path dir;

  private final Deque<Runnable> todo = new ArrayDeque<>();
  private long now = 1_750_000_000_000L;
  private Desk desk;
  private BenchDesk bench;
  private BenchKeys keys;

  @BeforeEach
  void planACube() throws Exception {
    Path mesh = dir.resolve("block.stl");
    StlWriter.writeBinary(Shapes.cube(40, 4), mesh, "A test block");
    desk = new Desk(todo::add, todo::add, todo::add, todo::add);
    bench =
        new BenchDesk(
            desk, todo::add, todo::add, () -> now, dir.resolve("book.db"), ZoneOffset.UTC);
    keys = new BenchKeys(bench);
    desk.open(mesh);
    work();
    desk.chooseScale(new Job.Scale.Unit("mm"));
    work();
    desk.saveAs(dir.resolve("block.json"));
    work();
  }

  private void work() {
    while (!todo.isEmpty()) {
      todo.poll().run();
    }
  }

  private BenchState state() {
    return bench.run().get().orElseThrow().state();
  }

  private boolean press(String code, String text) {
    now += 1000;
    boolean means = keys.pressed(code, text);
    keys.released(code);
    work();
    return means;
  }

  private void toWork() {
    keys.enter();
    work();
    while (state().phase() != Phase.WORK) {
      press("SPACE", " ");
    }
  }

  @Test
  void aKeyThatIsHeldDownCountsOnce() {
    keys.enter();
    work();
    for (int i = 0; i < 20; i++) {
      now += 500;
      assertThat(keys.pressed("SPACE", " ")).isTrue();
      work();
    }
    assertThat(state().cautions().stream().filter(c -> c)).hasSize(1);
    keys.released("SPACE");
    press("SPACE", " ");
    assertThat(state().cautions().stream().filter(c -> c)).hasSize(2);
  }

  @Test
  void anyKeyCanBeTheOneKeyAndGoesBeforeLetters() {
    toWork();
    press("K", "k");
    assertThat(keys.panel().get()).isEqualTo(Panel.KEY);
    press("D", "d");
    assertThat(bench.settings().get().key()).isEqualTo("D");
    press("D", "d");
    assertThat(state().at().step()).isZero();
    assertThat(state().dips(1)).isZero();
    press("SPACE", " ");
    assertThat(state().at().step()).isZero();
    press("K", "k");
    press("ESCAPE", "");
    assertThat(bench.settings().get().key()).as("left as it was").isEqualTo("D");
  }

  @Test
  void figuresAreTypedAndOnlyThen() {
    toWork();
    press("N", "n");
    assertThat(keys.panel().get()).isEqualTo(Panel.PAD);
    press("DOWN", "");
    assertThat(keys.quantity().get()).isEqualTo(What.VOLTS);
    press("DIGIT2", "2");
    press("COMMA", ",");
    press("SPACE", " ");
    press("D", "d");
    press("DIGIT7", "7");
    assertThat(keys.pad().get().text()).isEqualTo("2,7");
    assertThat(state().at().isWorking()).as("the one key waits").isFalse();
    press("ENTER", "\r");
    assertThat(keys.panel().get()).isEqualTo(Panel.NONE);
    assertThat(state().told(1, What.VOLTS))
        .extracting(BenchState.Entry::value)
        .containsExactly(2.7);
    press("N", "n");
    press("DIGIT0", "0");
    press("ENTER", "\r");
    assertThat(keys.panel().get()).as("nought is no figure").isEqualTo(Panel.PAD);
    press("ESCAPE", "");
    assertThat(state().entries()).hasSize(1);
    press("N", "n");
    press("P", "p");
    assertThat(keys.subject()).isZero();
    press("ESCAPE", "");
  }

  @Test
  void theRunEndsByTwoPressesOfTheOneKey() {
    toWork();
    while (state().phase() == Phase.WORK) {
      press("SPACE", " ");
    }
    press("SPACE", " ");
    assertThat(keys.panel().get()).isEqualTo(Panel.END);
    assertThat(state().phase()).isEqualTo(Phase.THROUGH);
    press("SPACE", " ");
    assertThat(state().phase()).isEqualTo(Phase.ENDED);
    assertThat(bench.isBooked()).isTrue();
  }

  @Test
  void everythingHasALetterOfItsOwn() {
    Set<String> letters =
        EnumSet.allOf(Deed.class).stream().map(Deed::letter).collect(Collectors.toSet());
    assertThat(letters).hasSize(Deed.values().length).doesNotContain("P");
    toWork();
    assertThat(press("F5", "")).isFalse();
    press("D", "d");
    assertThat(state().dips(1)).isEqualTo(1);
    press("U", "u");
    assertThat(state().dips(1)).isZero();
    press("SPACE", " ");
    press("B", "b");
    assertThat(state().at().isWorking()).isFalse();
    press("L", "l");
    assertThat(keys.panel().get()).isEqualTo(Panel.SECTIONS);
    press("ESCAPE", "");
    press("S", "s");
    assertThat(bench.settings().get().muted()).isTrue();
    press("Q", "q");
    assertThat(keys.open().get()).isFalse();
    assertThat(bench.run().get()).isEmpty();
  }

  @Test
  void opensAsSoonAsThePlanIsThere() {
    desk.change(
        job ->
            job.withPlating(
                job.plating()
                    .with(org.seamwright.plating.Spread.point(0.5), job.plating().pace())));
    keys.enter();
    assertThat(bench.missing()).isPresent();
    assertThat(bench.run().get()).isEmpty();
    work();
    assertThat(bench.run().get()).isPresent();
  }
}
