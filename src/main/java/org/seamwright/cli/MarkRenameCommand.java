package org.seamwright.cli;

import java.util.List;
import java.util.Map;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.region.Mark;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Gives a mark another name. */
@Command(
    name = "rename",
    description = "Gives a mark another name.",
    mixinStandardHelpOptions = true,
    footer = {"", "Example:", "  seamwright mark cup.json rename 2 \"maker's mark\""})
final class MarkRenameCommand extends MarkEdit {
  @Parameters(index = "0", paramLabel = "MARK", description = "Number or name of the mark.")
  private String which;

  @Parameters(index = "1", paramLabel = "NAME", description = "Its new name; may be empty.")
  private String name;

  @Override
  MarkEditing.Change change(Job job, MarkList marks) throws InputException {
    int index = marks.index(which);
    List<Mark> after = marks.with(index, Map.of("name", name));
    return new MarkEditing.Change(
        job.withMarks(after),
        "rename",
        "Renamed",
        MarkList.called(index, job.marks().get(index)) + ", to \"" + name + "\"");
  }
}
