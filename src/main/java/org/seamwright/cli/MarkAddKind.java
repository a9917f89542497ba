package org.seamwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.job.MarkWords;
import org.seamwright.region.Mark;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** Adds a mark of one kind. */
@Command(mixinStandardHelpOptions = true)
final class MarkAddKind extends MarkEdit {
  private final MarkWords.Kind kind;

  @Option(
      names = "--at",
      paramLabel = "N",
      description = "Position of the new mark, from 1; the last if left out.")
  private String at;

  private MarkAddKind(MarkWords.Kind kind) {
    this.kind = kind;
  }

  /** The command that adds a mark of a kind. */
  static CommandSpec make(MarkWords.Kind kind) {
    CommandSpec spec = CommandSpec.forAnnotatedObject(new MarkAddKind(kind)).name(kind.word());
    MarkKeys.add(spec, kind.keys(), kind.usual());
    spec.usageMessage()
        .description(kind.does())
        .footer(
            "",
            "Example:",
            "  seamwright mark cup.json add " + kind.word() + " \\",
            "    " + kind.example());
    return spec;
  }

  @Override
  MarkEditing.Change change(Job job, MarkList marks) throws InputException {
    Map<String, String> keys = MarkKeys.typed(spec(), kind.keys().keySet());
    Mark mark = marks.read(() -> MarkWords.read(kind.word(), keys));
    List<Mark> after = new ArrayList<>(job.marks());
    int index = at == null ? after.size() : marks.position(at, after.size() + 1);
    after.add(index, mark);
    return new MarkEditing.Change(
        job.withMarks(after), "add", "Added", MarkList.called(index, mark));
  }
}
