package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import org.seamwright.region.Mark;

/**
 * Marks to try out.
 *
 * @param marks all marks of the job as they would be
 * @param from the first one of which the effect is told
 * @param to the one after the last of these
 */
public record Trial(List<Mark> marks, int from, int to) {
  /** Copies the list. */
  public Trial {
    marks = List.copyOf(marks);
  }

  /** Marks after those of a job. */
  static Trial added(List<Mark> marks, List<Mark> more) {
    List<Mark> all = new ArrayList<>(marks);
    all.addAll(more);
    return new Trial(all, marks.size(), all.size());
  }

  /** A mark in place of one of a job. */
  static Trial replaced(List<Mark> marks, int index, Mark mark) {
    return new Trial(MarkEdits.replaced(marks, index, mark), index, index + 1);
  }

  /** The first mark that is tried out. */
  Mark first() {
    return marks.get(from);
  }
}
