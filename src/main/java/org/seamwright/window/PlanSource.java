package org.seamwright.window;

import java.nio.file.Path;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Progress;
import org.seamwright.job.PlannedJob;

/** Where planned jobs come from: the planner, or a test's own. */
@FunctionalInterface
public interface PlanSource {
  /**
   * Reads and plans a job.
   *
   * @param jobFile the job
   * @param progress told how far it is; cancels by throwing
   * @throws InputException if the job or its mesh is refused
   */
  PlannedJob plan(Path jobFile, Progress progress) throws InputException;
}
