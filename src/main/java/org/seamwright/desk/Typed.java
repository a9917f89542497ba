package org.seamwright.desk;

import org.seamwright.basis.InputException;
import org.seamwright.job.Job;

/** A setting of the job that is typed. */
public interface Typed {
  /** Its word in keys of texts. */
  String key();

  /** What it is in a job, as it could be typed; empty if it is not told. */
  String text(Job job);

  /**
   * The job with what was typed.
   *
   * @throws InputException if that can't be: the problem and the remedy are for people
   */
  Job typed(Job job, String text) throws InputException;
}
