package org.seamwright.cli;

import java.util.ArrayList;
import java.util.List;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.region.Mark;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Moves a mark to another place in the order. */
@Command(
    name = "move",
    description = "Moves a mark to another place in the order.",
    mixinStandardHelpOptions = true,
    footer = {"", "Example:", "  seamwright mark cup.json move shield 1"})
final class MarkMoveCommand extends MarkEdit {
  @Parameters(index = "0", paramLabel = "MARK", description = "Number or name of the mark.")
  private String which;

  @Parameters(index = "1", paramLabel = "N", description = "Its new position, from 1.")
  private String to;

  @Override
  MarkEditing.Change change(Job job, MarkList marks) throws InputException {
    int from = marks.index(which);
    int target = marks.position(to, job.marks().size());
    List<Mark> after = new ArrayList<>(job.marks());
    Mark moved = after.remove(from);
    after.add(target, moved);
    return new MarkEditing.Change(
        job.withMarks(after),
        "move",
        "Moved",
        MarkList.called(from, moved) + ", to position " + (target + 1));
  }
}
