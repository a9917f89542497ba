package org.seamwright.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.File;
import java.io.InputStreamReader;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What was kept is there again, whatever befell the program. */
class BenchLogTest {
  /** Raised by -Dseamwright.kills=200 for a campaign. */
  private static final int KILLS = Integer.getInteger("seamwright.kills", 6);

  private static final long SEED = 20260102;

  @TempDir private Path dir;

  private final BenchPlan plan = BenchFixture.plan(3, 2);

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14, 15})
  void anyRunReadAgainIsTheSame(long seed) throws Exception {
    Path file = dir.resolve("cup.json.bench");
    List<BenchEvent> events = BenchFixture.random(plan, seed, 60);
    BenchRules rules = new BenchRules(plan);
    BenchState state = BenchState.start(plan);
    Random random = new Random(seed);
    BenchLog log = BenchLog.open(file, plan.fingerprint());
    for (BenchEvent event : events) {
      if (random.nextInt(8) == 0) {
        log.close();
        log = BenchLog.open(file, "another");
        assertThat(rules.replay(log.events())).as("seed %d", seed).isEqualTo(state);
      }
      log.append(event);
      state = rules.apply(state, event);
    }
    log.close();
    try (BenchLog again = BenchLog.open(file, "another")) {
      assertThat(again.events()).isEqualTo(events);
      assertThat(again.fingerprint()).isEqualTo(plan.fingerprint());
      assertThat(rules.replay(again.events())).isEqualTo(state);
    }
  }

  @Test
  void aFileCutAnywhereGivesTheLinesThatAreWhole() throws Exception {
    Path file = dir.resolve("run");
    List<BenchEvent> events = BenchFixture.random(plan, 5, 12);
    List<Integer> ends = new ArrayList<>();
    try (BenchLog log = BenchLog.open(file, plan.fingerprint())) {
      ends.add((int) Files.size(file));
      for (BenchEvent event : events) {
        log.append(event);
        ends.add((int) Files.size(file));
      }
    }
    byte[] all = Files.readAllBytes(file);
    BenchEvent more = events.get(0);
    for (int cut = 0; cut <= all.length; cut++) {
      Files.write(file, Arrays.copyOf(all, cut));
      int end = cut;
      int whole = (int) ends.stream().filter(e -> e <= end).count() - 1;
      try (BenchLog log = BenchLog.open(file, plan.fingerprint())) {
        assertThat(log.events())
            .as("cut at %d", cut)
            .isEqualTo(events.subList(0, Math.max(0, whole)));
        // The next line stands where the torn one did.
        log.append(more);
      }
      try (BenchLog log = BenchLog.open(file, plan.fingerprint())) {
        assertThat(log.events()).hasSize(Math.max(0, whole) + 1).endsWith(more);
      }
    }
  }

  @Test
  void aTailOfZerosIsATornLine() throws Exception {
    Path file = dir.resolve("run");
    List<BenchEvent> events = BenchFixture.random(plan, 5, 3);
    try (BenchLog log = BenchLog.open(file, plan.fingerprint())) {
      for (BenchEvent event : events) {
        log.append(event);
      }
    }
    byte[] all = Files.readAllBytes(file);
    Files.write(file, Arrays.copyOf(all, all.length + 512));
    try (BenchLog log = BenchLog.open(file, plan.fingerprint())) {
      assertThat(log.events()).isEqualTo(events);
    }
  }

  @Test
  void damageBeforeWholeLinesIsRefusedAndNamed() throws Exception {
    Path file = dir.resolve("run");
    try (BenchLog log = BenchLog.open(file, plan.fingerprint())) {
      for (BenchEvent event : BenchFixture.random(plan, 5, 5)) {
        log.append(event);
      }
    }
    byte[] all = Files.readAllBytes(file);
    int second = new String(all, StandardCharsets.US_ASCII).indexOf('\n') + 12;
    all[second] ^= 1;
    Files.write(file, all);
    assertThatThrownBy(() -> BenchLog.open(file, plan.fingerprint()))
        .isInstanceOfSatisfying(
            BenchException.class, e -> assertThat(e.place()).isEqualTo("line 2"));
    assertThat(Files.readAllBytes(file)).as("left as it was").isEqualTo(all);
  }

  @Test
  void anotherFileIsNotTakenForARun() throws Exception {
    Path file = dir.resolve("run");
    String text = "notes of somebody\nand more\n";
    Files.writeString(file, text);
    assertThatThrownBy(() -> BenchLog.open(file, "x")).isInstanceOf(BenchException.class);
    assertThat(Files.readString(file)).isEqualTo(text);
  }

  @Test
  void onlyOneIsAtTheBench() throws Exception {
    Path file = dir.resolve("run");
    try (BenchLog log = BenchLog.open(file, "x")) {
      assertThat(log.events()).isEmpty();
      assertThatThrownBy(() -> BenchLog.open(file, "x"))
          .isInstanceOf(BenchException.class)
          .hasMessageContaining("another window");
    }
    BenchLog.open(file, "x").close();
  }

  @Test
  void nothingConfirmedIsLostToAKill() throws Exception {
    Path file = dir.resolve("run");
    Random random = new Random(SEED);
    List<BenchEvent> events = BenchFixture.random(plan, KilledBench.SEED, KilledBench.EVENTS);
    BenchRules rules = new BenchRules(plan);
    int confirmed = 0;
    for (int kill = 0; kill < KILLS; kill++) {
      Process bench =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-Xshare:auto",
                  "-XX:TieredStopAtLevel=1",
                  "-cp",
                  classPath(),
                  KilledBench.class.getName(),
                  file.toString())
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      try (BufferedReader said =
          new BufferedReader(
              new InputStreamReader(bench.getInputStream(), StandardCharsets.US_ASCII))) {
        int enough = 1 + random.nextInt(20);
        for (int i = 0; i < enough; i++) {
          confirmed = Integer.parseInt(said.readLine());
        }
        Thread.sleep(0, random.nextInt(1_000_000));
        bench.toHandle().destroyForcibly();
        String line = said.readLine();
        while (line != null && line.matches("\\d+")) {
          confirmed = Integer.parseInt(line);
          line = said.readLine();
        }
      }
      bench.waitFor();
      try (BenchLog log = BenchLog.open(file, plan.fingerprint())) {
        int kept = log.events().size();
        // One may have been written and not yet said.
        assertThat(kept).as("seed %d, kill %d", SEED, kill).isBetween(confirmed, confirmed + 1);
        assertThat(log.events()).isEqualTo(events.subList(0, kept));
        assertThat(rules.replay(log.events())).isEqualTo(rules.replay(events.subList(0, kept)));
      }
    }
    assertThat(confirmed).isGreaterThanOrEqualTo(KILLS);
  }

  /** Where the program and its tests were loaded from, however the tests are run. */
  private static String classPath() throws URISyntaxException {
    Set<String> places = new TreeSet<>();
    for (Class<?> needed : List.of(KilledBench.class, BenchLog.class)) {
      places.add(
          Path.of(needed.getProtectionDomain().getCodeSource().getLocation().toURI()).toString());
    }
    return String.join(File.pathSeparator, places);
  }
}
