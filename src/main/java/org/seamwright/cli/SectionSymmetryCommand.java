package org.seamwright.cli;

import java.util.Map;
import java.util.Optional;
import org.seamwright.job.Job;
import org.seamwright.job.SectionWords;
import org.seamwright.section.SectionChoices;
import org.seamwright.section.SectionSymmetry;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** Says how sections repeat round an axis. */
@Command(
    name = "symmetry",
    description = "Lets sections repeat round an axis; made the automatic way.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "Examples:",
      "  seamwright section rim.json symmetry --axis found",
      "  seamwright section rim.json symmetry --axis 0,0,1 --count 5",
      "  seamwright section rim.json symmetry --none"
    })
final class SectionSymmetryCommand extends SectionChange {
  @Option(names = "--none", description = "Sections need not repeat.")
  private boolean none;

  private SectionSymmetryCommand() {}

  static CommandSpec make() {
    CommandSpec spec = CommandSpec.forAnnotatedObject(new SectionSymmetryCommand());
    MarkKeys.add(spec, SectionWayCommand.labels(SectionWords.symmetryKeys()), "");
    return spec;
  }

  @Override
  SectionChoices change(Job job) {
    SectionChoices choices = job.sections().choices();
    if (none) {
      return new SectionChoices(choices.way(), Optional.empty(), choices.edits());
    }
    Map<String, String> typed = MarkKeys.typed(spec(), SectionWords.symmetryKeys());
    SectionSymmetry symmetry = read(() -> SectionWords.symmetry(typed));
    return new SectionChoices(Optional.empty(), Optional.of(symmetry), choices.edits());
  }

  @Override
  String told() {
    return none ? "let sections be as they are found" : "let sections repeat";
  }
}
