package org.seamwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.region.Mark;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Drops marks. */
@Command(
    name = "drop",
    description = "Drops marks.",
    mixinStandardHelpOptions = true,
    footer = {"", "Example:", "  seamwright mark cup.json drop shield 2"})
final class MarkDropCommand implements Callable<Integer> {
  @Parameters(
      arity = "1..*",
      paramLabel = "MARK",
      description = "Number or name of each mark to drop.")
  private List<String> which;

  @Mixin private MarkEditing editing;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    return editing.run(
        spec,
        (job, marks) -> {
          TreeSet<Integer> dropped = new TreeSet<>();
          which.forEach(word -> dropped.add(marks.index(word)));
          List<Mark> after = new ArrayList<>(job.marks());
          List<String> told = new ArrayList<>();
          for (int index : dropped) {
            told.add(MarkList.called(index, job.marks().get(index)));
          }
          dropped.descendingSet().forEach(index -> after.remove((int) index));
          return new MarkEditing.Change(
              job.withMarks(after), "drop", "Dropped", String.join("; ", told));
        });
  }
}
