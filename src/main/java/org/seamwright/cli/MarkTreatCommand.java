package org.seamwright.cli;

import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.region.Mark;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Switches what becomes of a marked place. */
@Command(
    name = "treat",
    description = "Switches what becomes of a marked place.",
    mixinStandardHelpOptions = true,
    footer = {"", "Example:", "  seamwright mark cup.json treat shield plate"})
final class MarkTreatCommand implements Callable<Integer> {
  @Parameters(index = "0", paramLabel = "MARK", description = "Number or name of the mark.")
  private String which;

  @Parameters(index = "1", paramLabel = "TREATMENT", description = "plate, bare or outOfScope.")
  private String treatment;

  @Mixin private MarkEditing editing;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    return editing.run(
        spec,
        (job, marks) -> {
          int index = marks.index(which);
          List<Mark> after = marks.with(index, Map.of("treatment", treatment));
          return new MarkEditing.Change(
              job.withMarks(after),
              "switch",
              "Switched",
              MarkList.called(index, after.get(index)) + ", to " + treatment);
        });
  }
}
