package org.seamwright.section;

import org.seamwright.basis.InputException;

/** A way of making sections, or an edit of them, that can't be carried out on this piece. */
public final class SectionException extends InputException {
  private static final long serialVersionUID = 1L;

  /**
   * Makes a refusal.
   *
   * @param source what is refused, such as {@code section edit 3, merge}
   * @param place its keys in the job, such as {@code sections.edits[2].points}
   * @param problem what is wrong, as a clause without a final stop
   * @param remedy what the user can do next, as a sentence
   */
  public SectionException(String source, String place, String problem, String remedy) {
    super(source, place, problem, remedy);
  }
}
