package org.seamwright.cli;

import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.job.MarkWords;
import org.seamwright.region.Treatment;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Switches what becomes of every place that no mark covers. */
@Command(
    name = "ground",
    description = "Switches what becomes of every place that no mark covers.",
    mixinStandardHelpOptions = true,
    footer = {"", "Example:", "  seamwright mark cup.json ground bare"})
final class MarkGroundCommand implements Callable<Integer> {
  @Parameters(paramLabel = "TREATMENT", description = "plate, bare or outOfScope.")
  private String treatment;

  @Mixin private MarkEditing editing;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    return editing.run(
        spec,
        (job, marks) -> {
          Treatment ground = marks.read(() -> MarkWords.treatment(treatment));
          return new MarkEditing.Change(
              job.withGround(ground),
              "switch",
              "Switched",
              "what no mark covers, to " + MarkWords.word(ground));
        });
  }
}
