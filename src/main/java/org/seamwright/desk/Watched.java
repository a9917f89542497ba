package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Consumer;

/**
 * A value that tells when it changes: the one way presenters notify views. Belongs to one thread
 * (the user interface's) and keeps its watchers for life; a view lives as long as its presenter.
 *
 * @param <T> type of the value, best immutable
 */
public final class Watched<T> {
  private final List<Consumer<? super T>> watchers = new ArrayList<>();
  private T value;

  /** Starts with a value. */
  public Watched(T value) {
    this.value = Objects.requireNonNull(value, "value");
  }

  /** The value now. */
  public T get() {
    return value;
  }

  /** Sets the value and tells the watchers, unless it equals the one before. */
  public void set(T next) {
    Objects.requireNonNull(next, "next");
    if (next.equals(value)) {
      return;
    }
    value = next;
    for (Consumer<? super T> watcher : List.copyOf(watchers)) {
      watcher.accept(next);
    }
  }

  /** Tells a watcher the value now and at each change. */
  public void watch(Consumer<? super T> watcher) {
    watchers.add(watcher);
    watcher.accept(value);
  }
}
