package org.seamwright.window;

import java.util.List;
import java.util.Optional;

/**
 * What the picture shows at one place of the window, and what the pointer means there. Knows no
 * toolkit. Called on the user interface's thread.
 */
interface Showing {
  /** Calls when colours or the sketch have changed; the last one set is called. */
  void onChange(Runnable changed);

  /** Colours by class of face, 0xRRGGBB. */
  int[] colours();

  /** Strength of highlights, 0 to 1. */
  double shine();

  /** Where numbers of sections stand for a viewer; in order of the sections. */
  default List<Optional<OrbitCamera.OnScreen>> numbers(OrbitCamera camera) {
    return List.of();
  }

  /** What is drawn over the picture: the brush, corners, the stroke under way. */
  default Sketch sketch() {
    return Sketch.NONE;
  }

  /** Whether a drag that starts on the piece draws instead of turning it. */
  default boolean isBrush() {
    return false;
  }

  /** The pointer is on a place, or off the piece. */
  void pointAt(Optional<Pick> pick);

  /** A drag that draws begins. */
  default void press(Pick pick) {}

  /** A drag that draws ends. */
  default void release() {}

  /** A click on a place, or beside the piece. */
  void click(Optional<Pick> pick);

  /**
   * The wheel was turned with the control key held.
   *
   * @param steps away from the user above 0
   */
  default void wheel(int steps) {}

  /** Enter was pressed; false if it means nothing here. */
  default boolean confirm() {
    return false;
  }

  /** Escape was pressed; false if it means nothing here. */
  default boolean escape() {
    return false;
  }

  /**
   * The next thing that the tool can take is chosen by key, or the one before; false if there is
   * none.
   */
  default boolean next(int step) {
    return false;
  }

  /**
   * An arrow key moves what is taken; false if nothing is, so that the arrow turns the piece.
   *
   * @param byMm the movement
   */
  default boolean nudge(double[] byMm) {
    return false;
  }
}
