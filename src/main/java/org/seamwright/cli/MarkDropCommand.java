package org.seamwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.region.Mark;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Drops marks. */
@Command(
    name = "drop",
    description = "Drops marks.",
    mixinStandardHelpOptions = true,
    footer = {"", "Example:", "  seamwright mark cup.json drop shield 2"})
final class MarkDropCommand extends MarkEdit {
  @Parameters(
      arity = "1..*",
      paramLabel = "MARK",
      description = "Number or name of each mark to drop.")
  private List<String> which;

  @Override
  MarkEditing.Change change(Job job, MarkList marks) throws InputException {
    TreeSet<Integer> dropped = new TreeSet<>();
    which.forEach(word -> dropped.add(marks.index(word)));
    List<Mark> after = new ArrayList<>(job.marks());
    List<String> told = new ArrayList<>();
    for (int index : dropped) {
      told.add(MarkList.called(index, job.marks().get(index)));
    }
    dropped.descendingSet().forEach(index -> after.remove((int) index));
    return new MarkEditing.Change(job.withMarks(after), "drop", "Dropped", String.join("; ", told));
  }
}
