package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** Pages and help that name commands: the commands must be there and take those words. */
class CommandPageTest {
  private static final Pattern EXAMPLE =
      Pattern.compile(
          "^ *(?:java -jar target/seamwright\\.jar|seamwright) (.*?)(?: {2,}#.*| \\|.*)?$",
          Pattern.MULTILINE);

  @Test
  void thePageIsWhatTheProgramSays() throws IOException {
    assertThat(Files.readString(CommandPage.FILE))
        .as("run org.seamwright.cli.CommandPage to write it anew")
        .isEqualTo(CommandPage.text());
  }

  static Stream<CommandLine> commands() {
    return CommandPage.commands().stream()
        .filter(c -> !(c.getCommand() instanceof ShopCommand.Group));
  }

  @ParameterizedTest
  @MethodSource("commands")
  void examplesOfHelpAreTaken(CommandLine command) {
    String help = command.getUsageMessage(CommandLine.Help.Ansi.OFF);
    String footer = String.join("\n", command.getCommandSpec().usageMessage().footer());
    List<List<String>> examples = examples(footer);
    assertThat(help).contains("Usage:");
    assertThat(examples).as("examples of %s", command.getCommandName()).isNotEmpty();
    examples.forEach(CommandPageTest::parse);
  }

  static Stream<Path> pages() throws IOException {
    try (Stream<Path> pages = Files.list(Path.of("docs"))) {
      return Stream.concat(
          pages.filter(p -> p.toString().endsWith(".md") && !p.equals(CommandPage.FILE)).sorted(),
          Stream.of(Path.of("README.md"), Path.of("DEVELOPERS.md")))
          .toList()
          .stream();
    }
  }

  @ParameterizedTest
  @MethodSource("pages")
  void commandsOfPagesAreTaken(Path page) throws IOException {
    examples(indented(Files.readString(page))).forEach(CommandPageTest::parse);
  }

  /**
   * Runs what README and docs show, but for what needs a display or files of the reader's own (the
   * page of marks has a test of its own).
   */
  @ParameterizedTest
  @MethodSource("pages")
  void commandsOfPagesRun(Path page) throws IOException {
    for (List<String> words : examples(indented(Files.readString(page)))) {
      boolean files =
          words.stream()
              .filter(w -> w.matches(".*\\.(json|stl|obj|seamwright)"))
              .allMatch(w -> w.startsWith("target/") || Files.exists(Path.of(w)));
      if (files && !words.get(0).equals("window") && !words.get(0).equals("shop")) {
        if (words.get(0).equals("new")) {
          Files.deleteIfExists(Path.of(words.get(words.indexOf("--out") + 1)));
        }
        Run run = Run.of(words.toArray());
        assertThat(run.code()).as("%s: %s: %s", page, words, run.err()).isEqualTo(ExitCode.DONE);
      }
    }
  }

  private static String indented(String page) {
    return String.join("\n", page.lines().filter(l -> l.startsWith("    ")).toList());
  }

  private static List<List<String>> examples(String text) {
    List<List<String>> examples = new ArrayList<>();
    EXAMPLE
        .matcher(text.replaceAll("\\\\\n\\s*", " "))
        .results()
        .map(m -> MarkPage.split(m.group(1)))
        .forEach(examples::add);
    return examples;
  }

  private static void parse(List<String> words) {
    CommandLine line = Main.line(new Seamwright(), "");
    assertThat(words).isNotEmpty();
    try {
      line.parseArgs(words.toArray(String[]::new));
    } catch (CommandLine.ParameterException e) {
      throw new AssertionError("seamwright " + String.join(" ", words) + ": " + e.getMessage(), e);
    }
  }
}
