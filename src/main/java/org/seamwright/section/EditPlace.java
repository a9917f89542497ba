package org.seamwright.section;

/**
 * Where an edit stands, for messages.
 *
 * @param index its place in the list, from 0
 * @param edit the edit
 */
record EditPlace(int index, SectionEdit edit) {
  /** A refusal of the edit. */
  SectionException refuse(String key, String problem, String remedy) {
    String kind =
        switch (edit.getClass().getSimpleName()) {
          case "Merge" -> "merge";
          case "SplitAlong", "SplitEvenly" -> "split";
          case "MoveSeam" -> "move of a seam";
          case "Pin" -> "pin";
          case "Rename" -> "rename";
          default -> "renumber";
        };
    return new SectionException(
        "section edit " + (index + 1) + " (" + kind + ")",
        "sections.edits[" + index + "]." + key,
        problem,
        remedy);
  }
}
