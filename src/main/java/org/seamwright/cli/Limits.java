package org.seamwright.cli;

import java.io.PrintWriter;
import org.seamwright.basis.Notice;
import org.seamwright.job.PlannedJob;

/** Limits and wishes for the order that a plan was given and could not keep. */
final class Limits {
  private Limits() {}

  /** Says each broken limit in a line; returns the exit code of a command that was done. */
  static int code(PlannedJob planned, PrintWriter err) {
    for (Notice notice : planned.notices()) {
      if (PlannedJob.tellsOfBreach(notice)) {
        err.println("seamwright: " + notice.text());
      }
    }
    return planned.breaksLimit() ? ExitCode.LIMIT_BROKEN : ExitCode.DONE;
  }
}
