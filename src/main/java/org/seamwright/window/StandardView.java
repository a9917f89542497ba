package org.seamwright.window;

import java.util.Arrays;
import java.util.Optional;

/** Where to look at the piece from, its z axis pointing up; in the order of the keys 1 to 7. */
public enum StandardView {
  /** From the side of negative y, x to the right. */
  FRONT(1, 0, 0),
  /** From the side of positive y. */
  BACK(2, 180, 0),
  /** From the side of negative x. */
  LEFT(3, -90, 0),
  /** From the side of positive x. */
  RIGHT(4, 90, 0),
  /** From above, x to the right and y up. */
  TOP(5, 0, 90),
  /** From below, x to the right. */
  BOTTOM(6, 0, -90),
  /** From front right above. */
  CORNER(7, 35, 25);

  private final int key;
  private final double azimuthDegrees;
  private final double elevationDegrees;

  StandardView(int key, double azimuthDegrees, double elevationDegrees) {
    this.key = key;
    this.azimuthDegrees = azimuthDegrees;
    this.elevationDegrees = elevationDegrees;
  }

  /** The view of a digit key, if it has one. */
  public static Optional<StandardView> ofKey(int digit) {
    return Arrays.stream(values()).filter(view -> view.key == digit).findFirst();
  }

  /** The digit key that shows it. */
  public int key() {
    return key;
  }

  /** Turn of the viewer about the z axis, 0 in front, counter-clockwise seen from above. */
  public double azimuthDegrees() {
    return azimuthDegrees;
  }

  /** Height of the viewer above the horizontal plane, -90 to 90. */
  public double elevationDegrees() {
    return elevationDegrees;
  }
}
