package org.seamwright.plating;

import org.seamwright.basis.InputException;

/** A choice of recipe, metal or limit that cannot be planned with. */
public final class PlatingException extends InputException {
  private static final long serialVersionUID = 1L;

  /**
   * Makes a refusal.
   *
   * @param source what was chosen: "Recipe brass"
   * @param place the step or setting; empty if the whole is meant
   * @param problem what is wrong, as a clause
   * @param remedy what to do next, as a sentence
   */
  public PlatingException(String source, String place, String problem, String remedy) {
    super(source, place, problem, remedy);
  }
}
