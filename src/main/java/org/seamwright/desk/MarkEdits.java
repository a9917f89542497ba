package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.seamwright.basis.InputException;
import org.seamwright.job.MarkWords;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;

/** Lists of marks with one thing changed. */
public final class MarkEdits {
  private MarkEdits() {}

  /** With a mark after the others. */
  public static List<Mark> added(List<Mark> marks, Mark mark) {
    List<Mark> after = new ArrayList<>(marks);
    after.add(mark);
    return after;
  }

  /** With a mark in place of another. */
  public static List<Mark> replaced(List<Mark> marks, int index, Mark mark) {
    List<Mark> after = new ArrayList<>(marks);
    after.set(index, mark);
    return after;
  }

  /** Without a mark. */
  public static List<Mark> dropped(List<Mark> marks, int index) {
    List<Mark> after = new ArrayList<>(marks);
    after.remove(index);
    return after;
  }

  /** With a mark in another place of the order; as it is where that place is not there. */
  public static List<Mark> moved(List<Mark> marks, int from, int to) {
    List<Mark> after = new ArrayList<>(marks);
    if (to >= 0 && to < marks.size()) {
      after.add(to, after.remove(from));
    }
    return after;
  }

  /** With a mark switched on or off. */
  public static List<Mark> switched(List<Mark> marks, int index, boolean on) {
    List<Mark> after = new ArrayList<>(marks);
    Mark is = marks.get(index);
    if (is instanceof Mark.Off off) {
      after.set(index, on ? off.mark() : is);
    } else {
      after.set(index, on ? is : new Mark.Off(is));
    }
    return after;
  }

  /** With a mark under another name. */
  public static List<Mark> renamed(List<Mark> marks, int index, String name) {
    return with(marks, index, Map.of("name", name));
  }

  /** With another treatment of what a mark covers. */
  public static List<Mark> treated(List<Mark> marks, int index, Treatment treatment) {
    return with(marks, index, Map.of("treatment", MarkWords.word(treatment)));
  }

  private static List<Mark> with(List<Mark> marks, int index, Map<String, String> keys) {
    List<Mark> after = new ArrayList<>(marks);
    try {
      after.set(index, MarkWords.changed(marks.get(index), keys));
    } catch (InputException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
    return after;
  }
}
