package org.seamwright.cli;

import java.util.stream.Collectors;
import org.seamwright.basis.InputException;
import org.seamwright.job.MarkWords;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;

/** Lists and changes the marks of a job: says what stays bare and what is plated. */
@Command(
    name = "mark",
    description = "Lists and changes the marks of a job: what stays bare, what is plated.",
    mixinStandardHelpOptions = true,
    customSynopsis = "seamwright mark JOB [COMMAND] [OPTIONS]",
    footer = {
      "",
      "Marks apply in order; a later one overrides an earlier one. They are named by",
      "number, counted from 1, or by name. The version of the job before a change is",
      "kept beside it with .bak added to its name.",
      "",
      "Examples:",
      "  seamwright mark cup.json list",
      "  seamwright mark cup.json add near --help",
      "  seamwright mark cup.json add near --path 0,-63,190 --radius \"18 mm\"",
      "  seamwright mark cup.json rename 3 shield",
      "  seamwright mark cup.json set shield --radius \"20 mm\" --dry-run",
      "  seamwright mark cup.json move shield 1",
      "  seamwright mark cup.json drop shield underside"
    })
final class MarkCommand extends JobCommand {
  @Mixin private MarkOutput output;

  /** The command with its subcommands, those that follow from the kinds of marks included. */
  static CommandLine line() {
    CommandLine add = new CommandLine(new MarkAddCommand());
    for (MarkWords.Kind kind : MarkWords.kinds()) {
      add.addSubcommand(kind.word(), MarkAddKind.make(kind));
    }
    CommandLine line =
        new CommandLine(new MarkCommand())
            .addSubcommand("list", new MarkListCommand())
            .addSubcommand("add", add)
            .addSubcommand("set", MarkSetCommand.make())
            .addSubcommand("move", new MarkMoveCommand())
            .addSubcommand("rename", new MarkRenameCommand())
            .addSubcommand("treat", new MarkTreatCommand())
            .addSubcommand("drop", new MarkDropCommand())
            .addSubcommand("ground", new MarkGroundCommand());
    line.getSubcommands().values().forEach(MarkCommand::showJobInSynopsis);
    return line;
  }

  /** The job comes before the subcommand's word, which help leaves out by itself. */
  private static void showJobInSynopsis(CommandLine line) {
    CommandSpec spec = line.getCommandSpec();
    String own =
        " "
            + spec.name()
            + (line.getSubcommands().isEmpty() ? "" : " KIND")
            + " [OPTIONS]"
            + spec.positionalParameters().stream()
                .map(p -> " " + p.paramLabel() + (p.arity().isVariable() ? "..." : ""))
                .collect(Collectors.joining());
    spec.usageMessage().customSynopsis("seamwright mark JOB" + own);
    line.getSubcommands()
        .forEach(
            (kind, add) ->
                add.getCommandSpec()
                    .usageMessage()
                    .customSynopsis("seamwright mark JOB add " + kind + " [OPTIONS]"));
  }

  /** Without a subcommand the marks are listed. */
  @Override
  public Integer call() throws InputException {
    return output.list(this);
  }
}
