package org.seamwright.cli;

import java.util.stream.Collectors;
import org.seamwright.basis.InputException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;

/** Lists and edits the sections of a job, and says which way they are made. */
@Command(
    name = "section",
    description = "Lists and edits the sections of a job, and says which way they are made.",
    mixinStandardHelpOptions = true,
    customSynopsis = "seamwright section JOB [COMMAND] [OPTIONS]",
    footer = {
      "",
      "A section is named by its number as listed, or by a point [x,y,z] on it in mm. The",
      "job keeps points: they outlive a change of the limit, where numbers would not. Edits",
      "are carried out in order on the sections that are found. The version of the job",
      "before a change is kept beside it with .bak added to its name.",
      "",
      "Examples:",
      "  seamwright section rim.json list",
      "  seamwright section rim.json way sectors --axis found --count 10",
      "  seamwright section rim.json way rings --count 4 --by radius",
      "  seamwright section rim.json way naturalFaces --angle 40",
      "  seamwright section rim.json way automatic",
      "  seamwright section rim.json symmetry --axis found",
      "  seamwright section rim.json merge 3 4",
      "  seamwright section rim.json merge [40,0,10] [-40,0,10]",
      "  seamwright section rim.json split 5 --parts 2",
      "  seamwright section rim.json split 5 --path \"40,0,10; 90,0,10\"",
      "  seamwright section rim.json move 3 4 --path \"40,0,10; 60,5,10; 90,0,10\" --dry-run",
      "  seamwright section rim.json pin 3 4",
      "  seamwright section rim.json rename 3 \"show side\"",
      "  seamwright section rim.json renumber 3 1",
      "  seamwright section rim.json undo"
    })
final class SectionCommand extends JobCommand {
  @Mixin private SectionOutput output;

  /** The command with its subcommands. */
  static CommandLine line() {
    CommandLine line =
        new CommandLine(new SectionCommand())
            .addSubcommand("list", new SectionListCommand())
            .addSubcommand("way", SectionWayCommand.line())
            .addSubcommand("symmetry", SectionSymmetryCommand.make())
            .addSubcommand("merge", new SectionEditCommands.Merge())
            .addSubcommand("split", new SectionEditCommands.Split())
            .addSubcommand("move", new SectionEditCommands.Move())
            .addSubcommand("pin", new SectionEditCommands.Pin())
            .addSubcommand("rename", new SectionEditCommands.Rename())
            .addSubcommand("renumber", new SectionEditCommands.Renumber())
            .addSubcommand("undo", new SectionUndoCommand());
    line.getSubcommands().values().forEach(sub -> showJob(sub, ""));
    return line;
  }

  /** The job comes before the subcommand's word, which help leaves out by itself. */
  private static void showJob(CommandLine line, String above) {
    CommandSpec spec = line.getCommandSpec();
    String own =
        " "
            + above
            + spec.name()
            + (line.getSubcommands().isEmpty() ? "" : " KIND")
            + spec.positionalParameters().stream()
                .map(p -> " " + p.paramLabel())
                .collect(Collectors.joining())
            + " [OPTIONS]";
    spec.usageMessage().customSynopsis("seamwright section JOB" + own);
    line.getSubcommands().values().forEach(sub -> showJob(sub, spec.name() + " "));
  }

  /** Without a subcommand the sections are listed. */
  @Override
  public Integer call() throws InputException {
    return output.list(this);
  }
}
