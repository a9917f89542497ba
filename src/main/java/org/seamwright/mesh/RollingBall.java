package org.seamwright.mesh;

/**
 * What a ball cuts into that rolls over a flat triangle from outside.
 *
 * <p>The middle of a ball that touches the triangle T runs over T moved out by the radius. So a
 * face is cut into, wherever the ball may be, if and only if its distance to that moved triangle is
 * below the radius; and one point of a face stops the ball all over T if it is that near to the
 * three corners of the moved triangle, since distance to a point is convex. A box of the tree is
 * left out if it does not rise over the plane of T, or rises by h and lies further from T than √(2
 * r h), where the ball is still above it.
 *
 * <p>Every face has a slack, mm: a cut up to the smaller one of two faces is let pass. One object
 * per thread; it is used again and again. Cost: the boxes near the ball, some microseconds on a
 * million faces.
 */
public final class RollingBall {
  /** What {@link #roll} finds. */
  public enum Finding {
    /** The ball cuts into nothing, wherever it touches the triangle. */
    CLEAR,
    /** One face is in its way wherever it touches the triangle. */
    STOPPED,
    /** Some faces are in its way here or there; they are listed. */
    SOME,
    /** As {@link #SOME}, but more than are listed. */
    MANY
  }

  /** Faces listed; with more a search of the tree is quicker than the list. */
  private static final int MOST = 64;

  /** Steps of two points towards each other; where they don't tell, the face counts as met. */
  private static final int MOST_STEPS = 12;

  private final double[] xyz;
  private final BoxTree boxes;
  private final float[] slack;
  private final double leastMm;
  private final Closest onFace = new Closest();
  private final Closest onMoved = new Closest();
  private final int[] stack = new int[BoxTree.STACK];
  private final int[] faces = new int[MOST];
  private final int[] corners = new int[3 * MOST];
  private int count;

  /** Per listed face the middle of its corners and how far they lie from it, mm. */
  private final double[] round = new double[4 * MOST];

  /** Whether only the triangle's corners and middle are looked at. */
  private boolean isSampled;

  /** Corners of the moved triangle, mm. */
  private final double[] moved = new double[9];

  /** Middles of the ball at the corners with other normals, mm, and what to add for in between. */
  private double[] others = {};

  private double othersMarginMm;
  private final double[] normal = new double[3];
  private final double[] centreMm = new double[3];
  private double flatMm;
  private double radiusMm;
  private double reachMm;
  private double ownSlackMm;
  private int own;

  /** A face that stopped the ball before, as places of its corners; -1 if none. */
  private int lastStop = -1;

  private final int[] lastCorners = new int[3];

  /** The triangle's middle and the ball's, and lengths, in box units. */
  private final double[] place = new double[3];

  private final double[] centre = new double[3];
  private double radius;
  private double reach;
  private double least;
  private double pad;

  RollingBall(double[] xyz, BoxTree boxes, float[] slack, double leastMm) {
    this.xyz = xyz;
    this.boxes = boxes;
    this.slack = slack;
    this.leastMm = leastMm;
  }

  /**
   * Rolls the ball over a triangle.
   *
   * @param face the face that the triangle is part of, and that is never in the way
   * @param triangle its corners, 9 numbers, mm
   * @param n unit normal
   * @param ballMm radius
   * @param others middles of the ball at the three corners with other normals, 9 numbers, that must
   *     be blocked too for {@link Finding#STOPPED}; empty if there are none
   * @param marginMm how far those in between may lie off the triangle between the three
   * @param moreSlackMm to be let pass beside the slack
   * @param sampled whether it is enough to look at the triangle's corners and its middle, which is
   *     quicker
   */
  public Finding roll(
      int face,
      double[] triangle,
      double[] n,
      double ballMm,
      double[] others,
      double marginMm,
      double moreSlackMm,
      boolean sampled) {
    isSampled = sampled;
    place(face, triangle, n, ballMm);
    this.others = others;
    this.othersMarginMm = marginMm;
    count = 0;
    if (lastStop >= 0 && lastStop != face && isStop(lastStop, lastCorners, moreSlackMm)) {
      return Finding.STOPPED;
    }
    return search(moreSlackMm);
  }

  private boolean isStop(int face, int[] at, double more) {
    double limit = limit(face, more);
    onFace.find(xyz, at[0], at[1], at[2], centreMm[0], centreMm[1], centreMm[2]);
    return onFace.squared < limit * limit && limit > 0 && stops(at[0], at[1], at[2], limit);
  }

  private void place(int face, double[] triangle, double[] n, double ballMm) {
    own = face;
    ownSlackMm = slack[face];
    radiusMm = ballMm;
    System.arraycopy(n, 0, normal, 0, 3);
    double scale = boxes.scale();
    double largest = 1;
    flatMm = 0;
    for (int axis = 0; axis < 3; axis++) {
      double middle = (triangle[axis] + triangle[3 + axis] + triangle[6 + axis]) / 3;
      centreMm[axis] = middle + ballMm * n[axis];
      flatMm += middle * n[axis];
      place[axis] = (middle - boxes.middle()[axis]) * scale;
      centre[axis] = (centreMm[axis] - boxes.middle()[axis]) * scale;
      largest = Math.max(largest, Math.max(Math.abs(place[axis]), Math.abs(centre[axis])));
      for (int k = 0; k < 3; k++) {
        moved[3 * k + axis] = triangle[3 * k + axis] + ballMm * n[axis];
      }
    }
    double square = 0;
    for (int k = 0; k < 3; k++) {
      square = Math.max(square, squared(moved, 3 * k, centreMm));
    }
    reachMm = Math.sqrt(square);
    pad = boxes.noise() + BoxTree.FINE_ROUNDING * largest;
    radius = ballMm * scale;
    reach = reachMm * scale;
    least = leastMm * scale;
  }

  private static double squared(double[] a, int i, double[] b) {
    double x = a[i] - b[0];
    double y = a[i + 1] - b[1];
    double z = a[i + 2] - b[2];
    return x * x + y * y + z * z;
  }

  /** Distance under which a face is cut into, mm. */
  private double limit(int face, double more) {
    return radiusMm - more - Math.max(leastMm, Math.min(ownSlackMm, slack[face]));
  }

  private Finding search(double more) {
    boolean many = false;
    int top = 0;
    stack[top++] = boxes.root();
    int[] node = boxes.node();
    int[] leaf = boxes.leaf();
    while (top > 0) {
      int at = stack[--top];
      if (at >= 0) {
        for (int k = BoxTree.CHILDREN - 1; k >= 0; k--) {
          int child = node[at + BoxTree.REFERENCES + k];
          if (child != BoxTree.NONE && meets(at, k)) {
            stack[top++] = child;
          }
        }
        continue;
      }
      for (int i = ~at; ; i += 4) {
        int face = leaf[i + 3] < 0 ? ~leaf[i + 3] : leaf[i + 3];
        if (face != own && isMet(face, leaf[i], leaf[i + 1], leaf[i + 2], more)) {
          if (isStopAfter(face, leaf, i, more)) {
            return Finding.STOPPED;
          }
          many |= count == MOST;
          keep(face, leaf, i);
        }
        if (leaf[i + 3] < 0) {
          break;
        }
      }
    }
    return many ? Finding.MANY : count > 0 ? Finding.SOME : Finding.CLEAR;
  }

  private boolean isStopAfter(int face, int[] leaf, int i, double more) {
    System.arraycopy(leaf, i, lastCorners, 0, 3);
    boolean stop = isStop(face, lastCorners, more);
    lastStop = stop ? face : -1;
    return stop;
  }

  private void keep(int face, int[] leaf, int i) {
    if (count < MOST) {
      faces[count] = face;
      System.arraycopy(leaf, i, corners, 3 * count, 3);
      double[] middle = new double[3];
      for (int axis = 0; axis < 3; axis++) {
        middle[axis] =
            (xyz[3 * leaf[i] + axis] + xyz[3 * leaf[i + 1] + axis] + xyz[3 * leaf[i + 2] + axis])
                / 3;
        round[4 * count + axis] = middle[axis];
      }
      double square = 0;
      for (int k = 0; k < 3; k++) {
        square = Math.max(square, squared(xyz, 3 * leaf[i + k], middle));
      }
      round[4 * count + 3] = Math.sqrt(square);
      count++;
    }
  }

  private boolean meets(int at, int k) {
    int[] node = boxes.node();
    double unit = Float.intBitsToFloat(node[at + 3]);
    double rise = 0;
    double toCentre = 0;
    double toPlace = 0;
    for (int axis = 0; axis < 3; axis++) {
      double corner = Float.intBitsToFloat(node[at + axis]);
      int low = BoxTree.part(node[at + BoxTree.BOUNDS + 2 * axis], k);
      int high = BoxTree.part(node[at + BoxTree.BOUNDS + 2 * axis + 1], k);
      double half = 0.5 * (high - low) * unit + pad;
      double middle = corner + 0.5 * (high + low) * unit;
      rise += normal[axis] * (middle - place[axis]) + Math.abs(normal[axis]) * half;
      double fromCentre = Math.max(0, Math.abs(middle - centre[axis]) - half);
      double fromPlace = Math.max(0, Math.abs(middle - place[axis]) - half);
      toCentre += fromCentre * fromCentre;
      toPlace += fromPlace * fromPlace;
    }
    if (!(rise > least) || toCentre > (radius + reach) * (radius + reach)) {
      return false;
    }
    double beside = reach + Math.sqrt(2 * radius * Math.min(rise, 2 * radius));
    return toPlace <= beside * beside;
  }

  /** Whether the ball cuts into a face somewhere. */
  private boolean isMet(int face, int a, int b, int c, double more) {
    double limit = limit(face, more);
    double rise =
        Math.max(along(xyz, a, normal), Math.max(along(xyz, b, normal), along(xyz, c, normal)));
    if (!(rise - flatMm > radiusMm - limit) || !(limit > 0)) {
      return false;
    }
    onFace.find(xyz, a, b, c, centreMm[0], centreMm[1], centreMm[2]);
    if (onFace.squared < limit * limit) {
      return true;
    }
    return onFace.squared < (limit + reachMm) * (limit + reachMm)
        && (isSampled ? isNearCorner(a, b, c, limit) : isNear(a, b, c, limit));
  }

  private boolean isNearCorner(int a, int b, int c, double limit) {
    for (int k = 0; k < 9; k += 3) {
      onFace.find(xyz, a, b, c, moved[k], moved[k + 1], moved[k + 2]);
      if (onFace.squared < limit * limit) {
        return true;
      }
    }
    return false;
  }

  private static double along(double[] p, int v, double[] n) {
    return p[3 * v] * n[0] + p[3 * v + 1] * n[1] + p[3 * v + 2] * n[2];
  }

  /**
   * Whether a face is nearer to the moved triangle than a limit: the nearest points of the two are
   * sought in turn until they are that near, or a plane between the two shows that none can be.
   */
  private boolean isNear(int a, int b, int c, double limit) {
    double[] q = new double[3];
    double[] way = new double[3];
    for (int step = 0; step < MOST_STEPS; step++) {
      point(onFace, xyz, a, b, c, q);
      onMoved.find(moved, 0, 1, 2, q[0], q[1], q[2]);
      if (onMoved.squared < limit * limit) {
        return true;
      }
      point(onMoved, moved, 0, 1, 2, way);
      double x = way[0];
      double y = way[1];
      double z = way[2];
      double length = Math.sqrt(onMoved.squared);
      for (int axis = 0; axis < 3; axis++) {
        way[axis] = (q[axis] - way[axis]) / length;
      }
      double face = Math.min(along(xyz, a, way), Math.min(along(xyz, b, way), along(xyz, c, way)));
      double ball =
          Math.max(along(moved, 0, way), Math.max(along(moved, 1, way), along(moved, 2, way)));
      if (face - ball >= limit) {
        return false;
      }
      onFace.find(xyz, a, b, c, x, y, z);
    }
    return true;
  }

  private static void point(Closest at, double[] p, int a, int b, int c, double[] into) {
    double w0 = 1 - at.w1 - at.w2;
    for (int axis = 0; axis < 3; axis++) {
      into[axis] = w0 * p[3 * a + axis] + at.w1 * p[3 * b + axis] + at.w2 * p[3 * c + axis];
    }
  }

  /** Whether the place found last on a face is in the way at all corners. */
  private boolean stops(int a, int b, int c, double limit) {
    double[] q = new double[3];
    point(onFace, xyz, a, b, c, q);
    for (int k = 0; k < 9; k += 3) {
      if (!(squared(moved, k, q) < limit * limit)) {
        return false;
      }
    }
    double nearer = limit - othersMarginMm;
    for (int k = 0; k < others.length; k += 3) {
      if (!(squared(others, k, q) < nearer * nearer && nearer > 0)) {
        return false;
      }
    }
    return true;
  }

  /**
   * Whether a listed face is in the way of a ball that touches a place of the triangle.
   *
   * @param p the place, mm
   * @param n the way from there to the ball's middle, a unit vector
   */
  public boolean isBlocked(double[] p, double[] n, double ballMm) {
    double x = p[0] + ballMm * n[0];
    double y = p[1] + ballMm * n[1];
    double z = p[2] + ballMm * n[2];
    for (int i = 0; i < count; i++) {
      double limit = ballMm - Math.max(leastMm, Math.min(ownSlackMm, slack[faces[i]]));
      double dx = round[4 * i] - x;
      double dy = round[4 * i + 1] - y;
      double dz = round[4 * i + 2] - z;
      double near = limit + round[4 * i + 3];
      if (dx * dx + dy * dy + dz * dz >= near * near) {
        continue;
      }
      onFace.find(xyz, corners[3 * i], corners[3 * i + 1], corners[3 * i + 2], x, y, z);
      if (onFace.squared < limit * limit) {
        toFront(i);
        return true;
      }
    }
    return false;
  }

  /** What is in the way here is likely to be in the next place, too. */
  private void toFront(int i) {
    int face = faces[0];
    faces[0] = faces[i];
    faces[i] = face;
    for (int k = 0; k < 3; k++) {
      int corner = corners[k];
      corners[k] = corners[3 * i + k];
      corners[3 * i + k] = corner;
    }
    for (int k = 0; k < 4; k++) {
      double number = round[k];
      round[k] = round[4 * i + k];
      round[4 * i + k] = number;
    }
  }
}
