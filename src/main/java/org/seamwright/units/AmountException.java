package org.seamwright.units;

import org.seamwright.basis.InputException;

/** An amount that cannot be read. The source is the text that was typed. */
public final class AmountException extends InputException {
  private static final long serialVersionUID = 1L;

  /**
   * Makes a refusal.
   *
   * @param text what was typed
   * @param problem what is wrong, as a clause
   * @param remedy what to type instead, as a sentence
   */
  public AmountException(String text, String problem, String remedy) {
    super(text.isBlank() ? "Empty amount" : "\"" + text.strip() + "\"", "", problem, remedy);
  }
}
