package org.seamwright.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Adds a mark; each kind is a command of its own, whose options are its keys in the job file. */
@Command(
    name = "add",
    description = "Adds a mark.",
    mixinStandardHelpOptions = true,
    synopsisSubcommandLabel = "KIND",
    commandListHeading = "%nKinds of marks:%n",
    footer = {
      "",
      "docs/marks.md shows what each kind does; --help after a kind its options.",
      "",
      "Example:",
      "  seamwright mark cup.json add near --path 40,0,150 --radius \"4 mm\""
    })
final class MarkAddCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new CommandLine.ParameterException(
        spec.commandLine(),
        "Name a kind of mark: " + String.join(", ", spec.subcommands().keySet()) + ".");
  }
}
