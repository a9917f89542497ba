package org.seamwright.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.job.MarkWords;
import org.seamwright.region.Mark;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;

/** Changes keys of a mark. */
@Command(
    name = "set",
    description = "Changes keys of a mark; those not named stay as they are.",
    mixinStandardHelpOptions = true,
    footer = {"", "Example:", "  seamwright mark cup.json set shield --radius \"20 mm\""})
final class MarkSetCommand extends MarkEdit {
  @Parameters(paramLabel = "MARK", description = "Number or name of the mark.")
  private String which;

  private final Map<String, String> keys = new LinkedHashMap<>();

  private MarkSetCommand() {
    MarkWords.kinds().forEach(kind -> kind.keys().forEach(keys::putIfAbsent));
  }

  /** The command, with an option for each key of any kind. */
  static CommandSpec make() {
    MarkSetCommand command = new MarkSetCommand();
    CommandSpec spec = CommandSpec.forAnnotatedObject(command);
    MarkKeys.add(spec, command.keys, "");
    return spec;
  }

  @Override
  MarkEditing.Change change(Job job, MarkList marks) throws InputException {
    Map<String, String> typed = MarkKeys.typed(spec(), keys.keySet());
    int index = marks.index(which);
    if (typed.isEmpty()) {
      String kind = MarkWords.kindOf(job.marks().get(index));
      List<String> options =
          MarkWords.kinds().stream()
              .filter(k -> k.word().equals(kind))
              .flatMap(k -> k.keys().keySet().stream())
              .map(key -> "--" + key)
              .toList();
      throw marks.wrong(
          "Name a key to change. A mark of the kind "
              + kind
              + " has "
              + String.join(", ", options)
              + ".");
    }
    List<Mark> after = marks.with(index, typed);
    return new MarkEditing.Change(
        job.withMarks(after), "change", "Changed", MarkList.called(index, after.get(index)));
  }
}
