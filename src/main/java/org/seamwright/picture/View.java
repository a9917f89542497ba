package org.seamwright.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A side from which a piece is looked at. The piece's z axis points up; its front is the side that
 * looks towards −y, so that from the front x runs to the right.
 *
 * @param name in plain words, for captions: "front", "right, from above"
 * @param x part along x of the direction from the piece to the eye
 * @param y part along y
 * @param z part along z
 */
public record View(String name, double x, double y, double z) {
  /** Seen from −y: x to the right, z up. */
  public static final View FRONT = new View("front", 0, -1, 0);

  /** Seen from +y: x to the left, z up. */
  public static final View BACK = new View("back", 0, 1, 0);

  /** Seen from −x. */
  public static final View LEFT = new View("left", -1, 0, 0);

  /** Seen from +x. */
  public static final View RIGHT = new View("right", 1, 0, 0);

  /** Seen from +z: x to the right, y up. */
  public static final View TOP = new View("top", 0, 0, 1);

  /** Seen from −z: x to the right, y down. */
  public static final View BOTTOM = new View("bottom", 0, 0, -1);

  /** Seen from the front, a little from the right and from above. */
  public static final View THREE_QUARTER =
      new View("front, slightly from the right and above", 0.5, -0.77, 0.4);

  /** Makes the direction a unit vector. */
  public View {
    Objects.requireNonNull(name, "name");
    double length = Math.sqrt(x * x + y * y + z * z);
    if (!(length > 0) || Double.isInfinite(length)) {
      throw new IllegalArgumentException("A view needs a direction: " + x + " " + y + " " + z);
    }
    x /= length;
    y /= length;
    z /= length;
  }

  /** The six sides, front first. */
  public static List<View> sides() {
    return List.of(FRONT, BACK, LEFT, RIGHT, TOP, BOTTOM);
  }

  /**
   * The 26 directions to faces, edges and corners of a cube: the six sides first, then slanting
   * ones. Enough to see into most places, few enough to be named in words.
   */
  public static List<View> around() {
    List<View> views = new ArrayList<>(sides());
    String[] height = {"from below", "", "from above"};
    int[][] turns = {{0, -1}, {1, -1}, {1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}};
    String[] names = {
      "front", "front right", "right", "back right", "back", "back left", "left", "front left"
    };
    for (int z : new int[] {1, 0, -1}) {
      for (int i = 0; i < turns.length; i++) {
        boolean aSide = z == 0 && turns[i][0] * turns[i][1] == 0;
        if (!aSide) {
          String name = z == 0 ? names[i] : names[i] + ", " + height[z + 1];
          views.add(new View(name, turns[i][0], turns[i][1], z));
        }
      }
    }
    return List.copyOf(views);
  }

  /**
   * The picture's axes in the piece's coordinates, orthonormal: to the right (3 numbers), up (3),
   * towards the eye (3).
   */
  double[] axes() {
    double flat = Math.hypot(x, y);
    // Looked at straight from above or below, x stays to the right.
    double rx = flat > STRAIGHT ? -y / flat : 1;
    double ry = flat > STRAIGHT ? x / flat : 0;
    return new double[] {rx, ry, 0, -z * ry, z * rx, x * ry - y * rx, x, y, z};
  }

  /** A direction whose sine to the z axis is below this has no horizontal part worth the name. */
  private static final double STRAIGHT = 1e-9;
}
