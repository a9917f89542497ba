package org.seamwright.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.PlannedJob;
import org.seamwright.job.Planner;
import org.seamwright.job.SectionWords;
import org.seamwright.job.SectionsJson;
import org.seamwright.section.Section;
import org.seamwright.section.SectionChoices;
import org.seamwright.units.UnitFormat;
import picocli.CommandLine.Option;

/** How sections are worked out and told: shared by all that lists them. */
final class SectionOutput {
  @Option(
      names = "--quick",
      description = "Don't plan: no sections are told, and edits are not tried out on the piece.")
  private boolean quick;

  @Option(names = "--json", description = "Print the sections as JSON.")
  private boolean json;

  boolean isJson() {
    return json;
  }

  /** Plans a job, unless that is not wanted. */
  Optional<PlannedJob> tryOut(Job job, SectionCommand command) throws InputException {
    if (quick) {
      return Optional.empty();
    }
    return Optional.of(plan(job, command));
  }

  /** Plans a job. */
  static PlannedJob plan(Job job, SectionCommand command) throws InputException {
    return Planner.plan(job, command.jobFile(), Progress.NONE);
  }

  /** Lists the sections of a job as it is. */
  int list(SectionCommand command) throws InputException {
    Job job = command.job();
    Optional<PlannedJob> planned = tryOut(job, command);
    PrintWriter out = command.spec().commandLine().getOut();
    print(job, planned, false, out);
    return code(planned, command);
  }

  /** Says each broken limit; returns the exit code of a command that was done. */
  static int code(Optional<PlannedJob> planned, SectionCommand command) {
    return planned
        .map(done -> Limits.code(done, command.spec().commandLine().getErr()))
        .orElse(ExitCode.DONE);
  }

  void print(Job job, Optional<PlannedJob> planned, boolean written, PrintWriter out) {
    if (json) {
      out.print(Json.forTerminal(SectionsJson.text(job, planned, written)));
    } else {
      planned.ifPresent(done -> table(done, out));
      choices(job.sections().choices(), out);
    }
    out.flush();
  }

  private static void table(PlannedJob planned, PrintWriter out) {
    UnitFormat in = Figures.in(planned.job().display());
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("No.", "Net", "With laps", "Of limit", "Name"));
    for (Section section : planned.sections().sections()) {
      rows.add(
          List.of(
              Integer.toString(section.id()),
              in.area(section.netMm2()),
              in.area(section.workedMm2()),
              Math.round(100 * section.workedMm2() / planned.limitMm2()) + "%",
              section.name()));
    }
    MarkTable.print(rows, out);
    planned.notices().stream()
        .filter(n -> n.code().startsWith("section"))
        .forEach(n -> MeasureCommand.row(out, "Note", n.text()));
  }

  private static void choices(SectionChoices choices, PrintWriter out) {
    MeasureCommand.row(out, "Way", choices.way().map(SectionWords::kindOf).orElse("automatic"));
    choices
        .symmetry()
        .ifPresent(
            symmetry ->
                MeasureCommand.row(
                    out,
                    "Symmetry",
                    symmetry.count() > 0 ? symmetry.count() + "-fold" : "as often as found"));
    for (int i = 0; i < choices.edits().size(); i++) {
      MeasureCommand.row(out, "Edit " + (i + 1), SectionWords.kindOf(choices.edits().get(i)));
    }
  }
}
