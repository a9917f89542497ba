package org.seamwright.cli;

import java.io.PrintWriter;
import java.util.Optional;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.MarkBodies;
import org.seamwright.job.MarkedJob;
import org.seamwright.job.MarksJson;
import org.seamwright.job.Planner;
import picocli.CommandLine.Option;

/** How much is worked out and how it is told: shared by all that lists marks. */
final class MarkOutput {
  @Option(
      names = "--quick",
      description = "Leave the mesh unread: no areas, and marks are not tried out on the piece.")
  private boolean quick;

  @Option(names = "--json", description = "Print the marks as JSON.")
  private boolean json;

  boolean isJson() {
    return json;
  }

  /** Carries out the marks of a job, unless that is not wanted. */
  Optional<MarkedJob> tryOut(Job job, MarkCommand command) throws InputException {
    if (quick) {
      return Optional.empty();
    }
    return Optional.of(
        Planner.mark(
            job,
            command.jobFile(),
            Planner.piece(job, command.jobFile(), Progress.NONE),
            Progress.NONE));
  }

  /** The job with the files of bodies recorded that were not yet, unless no mesh is to be read. */
  Job recorded(Job job, MarkCommand command) throws InputException {
    return quick ? job : MarkBodies.recordedIn(job, command.jobFile(), false);
  }

  /** Lists the marks of a job as it is. */
  int list(MarkCommand command) throws InputException {
    Job job = command.job();
    Optional<MarkedJob> done = tryOut(job, command);
    PrintWriter out = command.spec().commandLine().getOut();
    print(job, done, false, out);
    return ExitCode.DONE;
  }

  void print(Job job, Optional<MarkedJob> done, boolean written, PrintWriter out) {
    if (json) {
      out.print(Json.forTerminal(MarksJson.text(job, done, written)));
    } else {
      MarkTable.print(job, done, out);
    }
    out.flush();
  }
}
