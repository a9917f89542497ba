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

/** Gives a mark another name. */
@Command(
    name = "rename",
    description = "Gives a mark another name.",
    mixinStandardHelpOptions = true,
    footer = {"", "Example:", "  seamwright mark cup.json rename 2 \"maker's mark\""})
final class MarkRenameCommand implements Callable<Integer> {
  @Parameters(index = "0", paramLabel = "MARK", description = "Number or name of the mark.")
  private String which;

  @Parameters(index = "1", paramLabel = "NAME", description = "Its new name; may be empty.")
  private String name;

  @Mixin private MarkEditing editing;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    return editing.run(
        spec,
        (job, marks) -> {
          int index = marks.index(which);
          List<Mark> after = marks.with(index, Map.of("name", name));
          return new MarkEditing.Change(
              job.withMarks(after),
              "rename",
              "Renamed",
              MarkList.called(index, job.marks().get(index)) + ", to \"" + name + "\"");
        });
  }
}
