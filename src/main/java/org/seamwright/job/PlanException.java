package org.seamwright.job;

import org.seamwright.basis.InputException;

/** A piece that cannot be planned as it is. */
public final class PlanException extends InputException {
  private static final long serialVersionUID = 1L;

  /**
   * Makes a refusal.
   *
   * @param source the mesh or job file
   * @param place the key of the job that the trouble hangs on; empty for the whole
   * @param problem what is wrong
   * @param remedy what the user can do next
   */
  public PlanException(String source, String place, String problem, String remedy) {
    super(source, place, problem, remedy);
  }
}
