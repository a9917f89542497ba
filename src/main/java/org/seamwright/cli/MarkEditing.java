package org.seamwright.cli;

import java.io.PrintWriter;
import java.util.Optional;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.job.MarkedJob;
import org.seamwright.region.Treatment;
import org.seamwright.units.UnitFormat;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** Changes the marks of a job: tries the change out, writes the job, tells what came of it. */
final class MarkEditing {
  @Option(names = "--dry-run", description = "Tell what would change and write nothing.")
  private boolean dryRun;

  @Mixin private MarkOutput output;

  /**
   * A change.
   *
   * @param job the job after it
   * @param verb "add"
   * @param past "Added"
   * @param what what it is done to
   */
  record Change(Job job, String verb, String past, String what) {}

  /** Works a change out. */
  @FunctionalInterface
  interface Edit {
    Change of(Job job, MarkList marks) throws InputException;
  }

  int run(CommandSpec spec, Edit edit) throws InputException {
    MarkCommand command = JobCommand.above(spec, MarkCommand.class);
    Job before = command.job();
    Change change =
        edit.of(before, new MarkList(before.marks(), command.jobFile(), spec.commandLine()));
    Job after = output.recorded(change.job(), command);
    Optional<MarkedJob> done = output.tryOut(after, command);
    boolean differs = !after.equals(before);
    if (differs && !dryRun) {
      JobFile.write(after, command.jobFile());
    }
    PrintWriter out = spec.commandLine().getOut();
    if (!output.isJson()) {
      MeasureCommand.row(out, dryRun ? "Would " + change.verb() : change.past(), change.what());
    }
    output.print(after, done, differs && !dryRun, out);
    if (!output.isJson()) {
      end(before, done, differs, command, out);
    }
    out.flush();
    return ExitCode.DONE;
  }

  private void end(
      Job before, Optional<MarkedJob> done, boolean differs, MarkCommand command, PrintWriter out)
      throws InputException {
    if (!differs) {
      MeasureCommand.row(out, "Written", "nothing: the marks are so already");
    } else if (dryRun) {
      if (done.isPresent()) {
        MarkedJob now = output.tryOut(before, command).orElseThrow();
        MeasureCommand.row(out, "Now to plate", now(now, before));
      }
      MeasureCommand.row(out, "Written", "nothing");
    } else {
      MeasureCommand.row(
          out,
          "Written",
          command.jobFile() + "; as it was before: " + command.jobFile().getFileName() + ".bak");
    }
  }

  private static String now(MarkedJob now, Job job) {
    UnitFormat in = Figures.in(job.display());
    return in.area(now.map().areaMm2(Treatment.PLATE))
        + "; "
        + in.area(now.map().areaMm2(Treatment.BARE))
        + " stays bare, "
        + in.area(now.map().areaMm2(Treatment.OUT_OF_SCOPE))
        + " out of scope";
  }
}
