package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.job.Planner;
import org.seamwright.job.QuoteJson;
import org.seamwright.plating.Solution;
import org.seamwright.plating.Step;

class ShopCommandTest {
  @TempDir private Path folder;

  private Run shop(String book, String words, Object... more) {
    String[] first = words.split(" ");
    Object[] all = new Object[1 + first.length + more.length + 2];
    all[0] = "shop";
    System.arraycopy(first, 0, all, 1, first.length);
    System.arraycopy(more, 0, all, 1 + first.length, more.length);
    all[all.length - 2] = "--book";
    all[all.length - 1] = folder.resolve(book);
    Run run = Run.of(all);
    return run;
  }

  private void enterARun() {
    Run run =
        shop(
            "b.db",
            "run add --job cup --section 1 --usable 0.5 --date 2026-01-02",
            "--solution-used",
            "100 ml",
            "--strength",
            "20 g/l",
            "--time",
            "10 min",
            "--before",
            "50 g",
            "--after",
            "50.8 g",
            "--charge",
            "1.5 Ah",
            "--reading",
            "1.2 µm");
    assertThat(run.err()).isEmpty();
    assertThat(run.out().strip()).isEqualTo("Run 1 entered.");
  }

  /** 100 ml × 20 g/l × 0.5 = 1 g usable, 0.8 g gained: loss 0.25. */
  @Test
  void runsBecomeDefaultsOnRequest() throws Exception {
    Path job = folder.resolve("cup.json");
    Files.copy(Path.of("models/cup.json"), job);
    String before = Files.readString(job);
    assertThat(shop("b.db", "apply", job).code()).isEqualTo(ExitCode.REFUSED);
    enterARun();
    assertThat(shop("b.db", "defaults").out()).contains("Loss share: median 0.25", "of 1 run(s)");
    assertThat(shop("b.db", "defaults --json").out()).contains("\"runs\": 1");
    assertThat(shop("b.db", "defaults --operator nobody").out()).contains("no run tells it");
    assertThat(Files.readString(job)).isEqualTo(before);
    assertThat(shop("b.db", "apply", job).code()).isEqualTo(ExitCode.DONE);
    assertThat(JobFile.read(job).plating().lossShare()).isCloseTo(0.25, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(strings = {"json", "csv"})
  void theBookGoesOutAndIn(String format) throws Exception {
    enterARun();
    Path first = folder.resolve("1." + format);
    Path second = folder.resolve("2." + format);
    assertThat(shop("b.db", "export", first).code()).isEqualTo(ExitCode.DONE);
    assertThat(shop("c.db", "import", first).out()).contains("1 entries");
    assertThat(shop("c.db", "export", second).code()).isEqualTo(ExitCode.DONE);
    assertThat(Files.readString(second)).isEqualTo(Files.readString(first));
    assertThat(shop("c.db", "run list").out()).contains("cup, section 1, gold-hard");
    assertThat(shop("c.db", "check").out()).contains("sound");
  }

  /** Need 12 g, 4 g in stock. */
  /**
   * Invented figures; what the sheet says reaches the plan, and with a gel no place is too steep.
   */
  @Test
  void aSolutionGoesIntoAJobOnRequest() throws Exception {
    Path job = folder.resolve("cup.json");
    Files.copy(Path.of("models/cup.json"), job);
    String volts = "solution add --form GEL --volts-from 2.2 --volts-to 2.8 --usable 0.7 --name";
    Run added = shop("b.db", volts, "Demo gel", "--strength", "20 g/l", "--anode", "graphite");
    assertThat(added.out().strip())
        .isEqualTo("Demo gel (gold-hard), gel, 20.00 g/l, 70.0 % usable, 2.2–2.8 V at work.");
    assertThat(shop("b.db", "solution list").out()).contains("Demo gel", "2.2–2.8 V");
    assertThat(shop("b.db", "solution list --json").out()).contains("\"form\": \"gel\"");
    assertThat(shop("b.db", "apply", job, "--solution", "Other").err())
        .contains("no solution \"Other\"", "Demo gel");

    assertThat(shop("b.db", "apply", job, "--solution", "Demo gel").code())
        .isEqualTo(ExitCode.DONE);

    Job changed = JobFile.read(job);
    assertThat(changed.plating().solutionGPerL()).isEqualTo(20);
    assertThat(changed.plating().usableShare()).isEqualTo(0.7);
    assertThat(changed.plating().sheet().form()).isEqualTo(Solution.Form.GEL);
    assertThat(changed.plating().sheet().anode()).isEqualTo("graphite");
    assertThat(Planner.settings(changed, job).recipe().steps())
        .filteredOn(s -> s.kind() == Step.Kind.FLASH || s.kind() == Step.Kind.BUILD)
        .hasSize(2)
        .allSatisfy(s -> assertThat(s.volts()).isEqualTo("2.2–2.8 V at work"))
        .allSatisfy(s -> assertThat(s.purpose()).doesNotContain("4 V"));
    Path out = folder.resolve("book.csv");
    assertThat(shop("b.db", "export", out).code()).isEqualTo(ExitCode.DONE);
    assertThat(shop("c.db", "import", out).out()).contains("1 entries");
    assertThat(shop("c.db", "solution list").out()).contains("Demo gel", "2.2–2.8 V");
  }

  @Test
  void bottlesAreBoughtAfterStock() {
    shop("b.db", "bottle add --solution demo", "--full", "5 g", "--strength", "20 g/l");
    assertThat(shop("b.db", "bottle use 1 --volume", "50 ml").out()).contains("4.00 g left");
    assertThat(shop("b.db", "bottle list").out()).contains("demo", "4.00 g of 5.00 g");
    shop("b.db", "price add --what demo --price 40 --currency EUR --size", "5 g");
    shop("b.db", "price add --what demo --price 18 --currency EUR --size", "2 g");
    assertThat(shop("b.db", "price list").out()).contains("40.00 EUR");
    Run buy = shop("b.db", "buy --what demo --need", "12 g");
    // 4 × 2 g = 72 for 8 g beats 2 × 5 g = 80 and 5 + 2 + 2 = 76.
    assertThat(buy.out()).contains("4 × demo, 2.0 g", "72.00 EUR", "0 g left over");
  }

  /** Of 8 g/l only 0.8 can be laid down: 1.008 g need 1.26 g in bottles, one of 1.1 g won't do. */
  @Test
  void whatIsBoughtHoldsWhatCannotBeLaidDownToo() {
    shop("b.db", "price add --what demo --price 100 --currency EUR --size", "1.1 g");
    assertThat(shop("b.db", "buy --what demo --usable 0.8 --need", "1.008 g").out())
        .contains("Needed in bottles: 1.26 g", "2 × demo", "0.94 g left over");
    shop("b.db", "solution add --name demo --usable 0.8 --strength", "8 g/l");
    assertThat(shop("b.db", "buy --what demo --need", "1.008 g").out()).contains("2 × demo");
  }

  @Test
  void wrongEntriesCanBeDropped() {
    shop("b.db", "price add --what demo --price 100 --currency EUR --size", "1 g");
    shop("b.db", "price add --what demo --price 150 --currency EUR --size", "1 g");
    assertThat(shop("b.db", "price drop 1").code()).isEqualTo(ExitCode.DONE);
    assertThat(shop("b.db", "buy --what demo --need", "1 g").out()).contains("150.00 EUR");
    assertThat(shop("b.db", "price drop 1").err()).contains("no such entry");
    enterARun();
    assertThat(shop("b.db", "run drop 1").code()).isEqualTo(ExitCode.DONE);
    assertThat(shop("b.db", "run list").out()).isEmpty();
  }

  /** Prices that the book lacks stay as the job has them. */
  @Test
  void applyingPricesTakesNoneAway() throws Exception {
    Path job = folder.resolve("cup.json");
    Files.copy(Path.of("models/cup.json"), job);
    Job before = JobFile.read(job);
    JobFile.write(
        before.withQuote(
            Optional.of(
                QuoteJson.typed(
                    Map.of("currency", "EUR", "metalPerGram", "110", "labourPerHour", "50")))),
        job);
    shop("b.db", "set labourPerHour 60");
    assertThat(shop("b.db", "apply", job, "--prices").code()).isEqualTo(ExitCode.DONE);
    assertThat(JobFile.read(job).quote().orElseThrow().labourPerHour()).isEqualTo(60);
    assertThat(JobFile.read(job).quote().orElseThrow().goldPerG()).isEqualTo(110);
    assertThat(JobFile.read(job).quote().orElseThrow().currency()).isEqualTo("EUR");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          bottle add --solution x --full 0g --strength 20g/l      | it must be above 0
          bottle add --solution x --full 5 --strength 20g/l       | 5
          bottle use 9 --volume 5ml                               | no such bottle
          run add --job a --section b --charge 5                  | it is not a charge
          run add --job a --section b --deposit tin               | no such deposit
          solution add --name x --strength 20g/l --usable 1.2     | usable_share
          solution add --name x --strength 20g/l --usable 1 --volts-to 3 | no range of voltages
          buy --what x --need 5g                                  | no price
          export a.txt                                            | End it in .csv or .json
          import none.csv                                         | it cannot be read
          """)
  void refusals(String words, String says) {
    Run run = shop("b.db", words);
    assertThat(run.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains(says);
  }

  @Test
  void aDateThatIsNoneIsWrongUsage() {
    Run run = shop("b.db", "run add --job a --section b --date 2026-02-30");
    assertThat(run.code()).isEqualTo(ExitCode.USAGE);
    assertThat(run.err()).contains("\"2026-02-30\" is not a date", "2026-01-31");
    assertThat(run.err()).doesNotContain("java.");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "solution add",
        "solution drop",
        "bottle drop",
        "price drop",
        "run drop",
        "solution list",
        "bottle add",
        "bottle list",
        "bottle use",
        "price add",
        "price list",
        "buy",
        "run add",
        "run list",
        "defaults",
        "apply",
        "export",
        "import",
        "check"
      })
  void everyCommandHelpsWithAnExample(String words) {
    Run run = Run.of((Object[]) ("shop " + words + " --help").split(" "));
    assertThat(run.code()).isEqualTo(ExitCode.DONE);
    assertThat(run.out()).contains("Example", "  seamwright shop " + words);
  }

  @Test
  void aMissingSubcommandIsWrongUsage() {
    assertThat(Run.of("shop").code()).isEqualTo(ExitCode.USAGE);
    assertThat(Run.of("shop", "bottle").code()).isEqualTo(ExitCode.USAGE);
  }
}
