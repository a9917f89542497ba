package org.seamwright.cli;

import java.util.List;
import java.util.Map;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.region.Mark;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Switches what becomes of a marked place. */
@Command(
    name = "treat",
    description = "Switches what becomes of a marked place.",
    mixinStandardHelpOptions = true,
    footer = {"", "Example:", "  seamwright mark cup.json treat shield plate"})
final class MarkTreatCommand extends MarkEdit {
  @Parameters(index = "0", paramLabel = "MARK", description = "Number or name of the mark.")
  private String which;

  @Parameters(index = "1", paramLabel = "TREATMENT", description = "plate, bare or outOfScope.")
  private String treatment;

  @Override
  MarkEditing.Change change(Job job, MarkList marks) throws InputException {
    int index = marks.index(which);
    List<Mark> after = marks.with(index, Map.of("treatment", treatment));
    return new MarkEditing.Change(
        job.withMarks(after),
        "switch",
        "Switched",
        MarkList.called(index, after.get(index)) + ", to " + treatment);
  }
}
