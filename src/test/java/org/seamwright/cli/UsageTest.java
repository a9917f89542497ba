package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UsageTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "measure",
        "new",
        "mark",
        "section",
        "plan",
        "picture",
        "template",
        "shop",
        "window"
      })
  void everyCommandHelpsWithAnExample(String command) {
    Run run = Run.of(command, "--help");

    assertThat(run.code()).isEqualTo(ExitCode.DONE);
    assertThat(run.out()).startsWith("Usage: seamwright " + command);
    assertThat(run.out()).contains("Example", "  seamwright " + command + " ");
    assertThat(run.err()).isEmpty();
  }

  @Test
  void theProgramHelpsAndTellsItsVersion() {
    assertThat(Run.of("--help").out())
        .contains("measure", "new", "mark", "plan", "window", "Exit codes");
    assertThat(Run.of("--version").out()).startsWith("seamwright ");
    assertThat(Run.of("--version").code()).isEqualTo(ExitCode.DONE);
  }

  @Test
  void aJobFileAloneIsForTheWindow() {
    assertThat(Main.opened("a cup.seamwright")).containsExactly("window", "a cup.seamwright");
    assertThat(Main.opened("measure", "x.seamwright")).containsExactly("measure", "x.seamwright");
    assertThat(Main.opened("plam")).containsExactly("plam");
    assertThat(Main.opened()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          ``                                        | Name a command.
          plam a.job                                | Did you mean: seamwright plan
          plan                                      | Missing required
          plan a.job                                | Missing required option: '--out=DIR'
          plan a.job --out d --date yesterday       | --date
          plan a.job --out d --frobnicate           | Unknown option: '--frobnicate'
          measure                                   | Missing required parameter: 'FILE'
          measure a.stl --unit furlong              | Use um, mm, cm, m, in, ft.
          measure a.stl --unit mm --known-length 1in | exclude each other
          measure a.stl --unit mm --along x         | --along goes with --known-length
          measure a.stl --known-length 17           | --known-length
          measure a.stl --known-length 0mm          | it must be above 0
          measure a.stl --known-length 1in --along w | --along
          new a.stl --unit mm                       | Missing required option: '--out=JOB'
          picture a.job                             | Missing required option: '--out=FILE.png'
          picture a.job --out a.png --view inside   | --view
          picture a.job --out a.png --width 10      | --width must be from 64 to 8192.
          new a.stl --unit mm --out a.job --recipe x | There is no recipe "x". Known:
          """)
  void wrongUsageIsCode2AndSaysWhatToTry(String args, String says) {
    Run run = args.isBlank() ? Run.of() : Run.of((Object[]) args.strip().split("\\s+"));

    assertThat(run.code()).isEqualTo(ExitCode.USAGE);
    assertThat(run.err()).contains(says).contains("--help.");
    assertThat(run.out()).isEmpty();
  }

  @Test
  void theWindowThatIsStartedByNameIsThere() throws Exception {
    assertThat(Class.forName(WindowCommand.LAUNCHER).getMethod("main", String[].class)).isNotNull();
  }

  @Test
  void aTerminalWithoutMicroSignsGetsAscii() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PrintWriter out = PlainWriter.on(bytes, StandardCharsets.US_ASCII);
    out.println("12.4 in², 0.5 µm, 1 × 2, 1–2, 3\u00a0A·h");
    out.flush();
    assertThat(bytes.toString(StandardCharsets.US_ASCII).strip())
        .isEqualTo("12.4 in2, 0.5 um, 1 x 2, 1-2, 3 A.h");

    bytes.reset();
    out = PlainWriter.on(bytes, StandardCharsets.UTF_8);
    out.print("0.5 µm 🏆");
    out.flush();
    assertThat(bytes.toString(StandardCharsets.UTF_8)).isEqualTo("0.5 µm 🏆");
  }
}
