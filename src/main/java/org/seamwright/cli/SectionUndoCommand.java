package org.seamwright.cli;

import java.util.List;
import org.seamwright.job.Job;
import org.seamwright.job.SectionWords;
import org.seamwright.section.SectionChoices;
import org.seamwright.section.SectionEdit;
import picocli.CommandLine.Command;

/** Drops the last edit. */
@Command(
    name = "undo",
    description = "Drops the last edit of the sections.",
    mixinStandardHelpOptions = true,
    footer = {"", "Example:", "  seamwright section rim.json undo"})
final class SectionUndoCommand extends SectionChange {
  private String dropped = "";

  @Override
  SectionChoices change(Job job) {
    List<SectionEdit> edits = job.sections().choices().edits();
    if (edits.isEmpty()) {
      throw wrong("There is no edit to drop.");
    }
    dropped = SectionWords.kindOf(edits.get(edits.size() - 1));
    return job.sections().choices().withEdits(edits.subList(0, edits.size() - 1));
  }

  @Override
  String told() {
    return "drop the last edit, " + dropped;
  }
}
