package org.seamwright.job;

import org.seamwright.basis.InputException;

/** A job file that is refused, or cannot be read or written. */
public final class JobFileException extends InputException {
  private static final long serialVersionUID = 1L;

  /**
   * Makes a refusal.
   *
   * @param source the job file
   * @param place the key and line, such as {@code marks[2].radius (line 14)}; empty for the whole
   * @param problem what is wrong
   * @param remedy what the user can do next
   */
  public JobFileException(String source, String place, String problem, String remedy) {
    super(source, place, problem, remedy);
  }

  /** The same refusal with the exception that led to it. */
  public JobFileException(
      String source, String place, String problem, String remedy, Throwable cause) {
    super(source, place, problem, remedy, cause);
  }
}
