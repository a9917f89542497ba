package org.seamwright.mend;

import org.seamwright.basis.InputException;

/** A step of cleaning that can't be carried out on this piece. */
public final class MendException extends InputException {
  private static final long serialVersionUID = 1L;

  /**
   * Makes a refusal.
   *
   * @param index position of the step in its list, from 0
   * @param repair the step
   * @param problem what is wrong, as a clause without a final stop
   * @param remedy what the user can do next, as a sentence
   */
  MendException(int index, Repair repair, String problem, String remedy) {
    super("cleaning step " + repair.kind(), "cleaning[" + index + "]", problem, remedy);
  }
}
