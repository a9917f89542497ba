package org.seamwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;

/** {@code docs/commands.md}, written from what the commands say of themselves. */
final class CommandPage {
  static final Path FILE = Path.of("docs", "commands.md");

  /** Columns of the page's usage texts. */
  private static final int WIDTH = 100;

  private CommandPage() {}

  /** Writes the page anew. */
  public static void main(String[] args) throws IOException {
    Files.writeString(FILE, text());
  }

  /** All commands that do something, each after the one that it belongs to. */
  static List<CommandLine> commands() {
    List<CommandLine> found = new ArrayList<>();
    Main.line(new Seamwright(), "").getSubcommands().values().forEach(c -> collect(c, found));
    return found;
  }

  private static void collect(CommandLine line, List<CommandLine> found) {
    found.add(line.setUsageHelpWidth(WIDTH));
    line.getSubcommands().values().stream().distinct().forEach(c -> collect(c, found));
  }

  static String text() {
    StringBuilder page =
        new StringBuilder(
            """
            # Commands

            What each command says with `--help`. This page is written from the program by
            `org.seamwright.cli.CommandPage`, and a test compares the two.
            """);
    for (CommandLine command : commands()) {
      page.append("\n## ").append(command.getCommandSpec().qualifiedName()).append("\n\n```text\n");
      page.append(command.getUsageMessage(CommandLine.Help.Ansi.OFF).replace("\r\n", "\n").strip());
      page.append("\n```\n");
    }
    return page.toString();
  }
}
