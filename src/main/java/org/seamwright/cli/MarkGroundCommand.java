package org.seamwright.cli;

import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.job.MarkWords;
import org.seamwright.region.Treatment;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Switches what becomes of every place that no mark covers. */
@Command(
    name = "ground",
    description = "Switches what becomes of every place that no mark covers.",
    mixinStandardHelpOptions = true,
    footer = {"", "Example:", "  seamwright mark cup.json ground bare"})
final class MarkGroundCommand extends MarkEdit {
  @Parameters(paramLabel = "TREATMENT", description = "plate, bare or outOfScope.")
  private String treatment;

  @Override
  MarkEditing.Change change(Job job, MarkList marks) throws InputException {
    Treatment ground = marks.read(() -> MarkWords.treatment(treatment));
    return new MarkEditing.Change(
        job.withGround(ground),
        "switch",
        "Switched",
        "what no mark covers, to " + MarkWords.word(ground));
  }
}
