package org.seamwright.shop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.File;
import java.io.InputStreamReader;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteConfig;

/** A writer is killed in the middle of it; what it had confirmed must be in the book. */
class PowerLossTest {
  /** Raised by -Dseamwright.kills=200 for a campaign. */
  private static final int KILLS = Integer.getInteger("seamwright.kills", 10);

  private static final long SEED = 20260101;

  @Test
  void nothingConfirmedIsLost(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("book.db");
    Random random = new Random(SEED);
    Set<Long> confirmed = new TreeSet<>();
    for (int kill = 0; kill < KILLS; kill++) {
      Process writer =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-Xshare:auto",
                  "-XX:TieredStopAtLevel=1",
                  "-cp",
                  classPath(),
                  KilledWriter.class.getName(),
                  file.toString())
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      int before = confirmed.size();
      try (BufferedReader said =
          new BufferedReader(
              new InputStreamReader(writer.getInputStream(), StandardCharsets.US_ASCII))) {
        int enough = 1 + random.nextInt(20);
        for (int i = 0; i < enough; i++) {
          confirmed.add(Long.valueOf(said.readLine()));
        }
        Thread.sleep(0, random.nextInt(1_000_000));
        // On Unix this is SIGKILL. By the handle, since the process itself would close its output
        // unread.
        writer.toHandle().destroyForcibly();
        String line = said.readLine();
        while (line != null && line.matches("\\d+")) {
          confirmed.add(Long.valueOf(line));
          line = said.readLine();
        }
      }
      writer.waitFor();
      assertThat(confirmed.size()).isGreaterThan(before);
      try (ShopBook book = ShopBook.open(file)) {
        assertThat(book.faults()).isEmpty();
        List<Long> there = book.runs("", "", "", Integer.MAX_VALUE).stream().map(Run::id).toList();
        assertThat(there).as("seed %d, kill %d", SEED, kill).containsAll(confirmed);
        // At most one a kill was written and not yet said.
        assertThat(there.size()).isLessThanOrEqualTo(confirmed.size() + kill + 1);
      }
    }
  }

  /** Where the writer and what it needs were loaded from, however the tests are run. */
  private static String classPath() throws URISyntaxException {
    Set<String> places = new TreeSet<>();
    for (Class<?> needed : List.of(KilledWriter.class, ShopBook.class, SQLiteConfig.class)) {
      places.add(
          Path.of(needed.getProtectionDomain().getCodeSource().getLocation().toURI()).toString());
    }
    return String.join(File.pathSeparator, places);
  }
}
