package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Every version of a value since it was opened, with one of them current: undo and redo without
 * limit. Versions are immutable and share what did not change, so that a version costs little.
 *
 * @param <T> type of the value, immutable
 */
final class History<T> {
  private final List<T> versions = new ArrayList<>();
  private int current;

  History(T first) {
    versions.add(Objects.requireNonNull(first, "first"));
  }

  /** The current version. */
  T now() {
    return versions.get(current);
  }

  /** Goes on to a new version; those that were undone are dropped. Equal versions are one. */
  void push(T next) {
    if (next.equals(now())) {
      return;
    }
    versions.subList(current + 1, versions.size()).clear();
    versions.add(next);
    current++;
  }

  /** Replaces the current version without a step to undo. */
  void amend(T same) {
    versions.set(current, Objects.requireNonNull(same, "same"));
  }

  boolean canUndo() {
    return current > 0;
  }

  boolean canRedo() {
    return current + 1 < versions.size();
  }

  /** Goes back one version, if there is one. */
  void undo() {
    current = Math.max(0, current - 1);
  }

  /** Goes forward again, if there is something to go forward to. */
  void redo() {
    current = Math.min(versions.size() - 1, current + 1);
  }
}
