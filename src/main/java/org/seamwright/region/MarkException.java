package org.seamwright.region;

import org.seamwright.basis.InputException;

/** A mark that can't be carried out on this piece. */
public final class MarkException extends InputException {
  private static final long serialVersionUID = 1L;

  /**
   * Makes a refusal.
   *
   * @param index position of the mark in its list, from 0
   * @param mark the mark
   * @param detail which value of it; empty if the whole mark is meant
   * @param problem what is wrong, as a clause without a final stop
   * @param remedy what the user can do next, as a sentence
   */
  public MarkException(int index, Mark mark, String detail, String problem, String remedy) {
    super(
        mark.name().isEmpty() ? "mark " + (index + 1) : "mark \"" + mark.name() + "\"",
        "marks[" + index + "]" + (detail.isEmpty() ? "" : "." + detail),
        problem,
        remedy);
  }
}
