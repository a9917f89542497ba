package org.seamwright.region;

import java.util.Arrays;
import org.seamwright.measure.ClosedBody;
import org.seamwright.mesh.Bounds;

/**
 * Which faces of a body one face of a surface meets, and where: the arithmetic of {@link BodyCut}.
 * Distances from planes that are within the snap distance count as 0, and so do those of a crossing
 * from the sides of the body's face, so that none slips through between two faces.
 */
final class BodyMeeting {
  private final EditableSurface surface;
  private final double[] xyz;
  private final int[] corner;
  private final ClosedBody body;
  private final double snapMm;

  /** Corners and unit normal of the face looked at. */
  private final double[] own = new double[9];

  private final double[] normal = new double[3];
  private int[] met = new int[64];
  private int count;

  /** Of the body's face looked at. */
  private final double[] other = new double[9];

  private final double[] otherNormal = new double[3];
  private final double[] distance = new double[3];
  private final double[] otherDistance = new double[3];
  private final double[] point = new double[3];

  BodyMeeting(EditableSurface surface, ClosedBody body, double snapMm) {
    this.surface = surface;
    this.body = body;
    this.xyz = body.mesh().xyz();
    this.corner = body.mesh().corner();
    this.snapMm = snapMm;
  }

  /** Looks at a face; gives how many of the body's faces it meets. */
  int meet(int face) {
    count = 0;
    if (!surface.hasEdges(face)) {
      return 0;
    }
    for (int k = 0; k < 3; k++) {
      System.arraycopy(surface.coordinates(), 3 * surface.from(3 * face + k), own, 3 * k, 3);
    }
    Bounds box = box();
    if (!overlaps(box, body.bounds()) || !unitNormal(own, normal)) {
      return 0;
    }
    body.tree()
        .inBox(
            box,
            t -> {
              if (meets(t)) {
                met = count == met.length ? Arrays.copyOf(met, 2 * count) : met;
                met[count++] = t;
              }
            });
    // The order that the tree gives them in must not decide where cuts begin.
    Arrays.sort(met, 0, count);
    return count;
  }

  /** Mean over the body's faces met of their longest side, mm. */
  double meanSize() {
    double sum = 0;
    for (int i = 0; i < count; i++) {
      load(met[i]);
      double longest = 0;
      for (int k = 0; k < 3; k++) {
        longest = Math.max(longest, length(other, k));
      }
      sum += longest;
    }
    return sum / count;
  }

  /**
   * Finds a place inside the face where an edge of the body passes through it.
   *
   * @param margin how far from its sides, mm
   * @param weight receives the weights of the corners
   */
  boolean pointInside(double margin, double[] weight) {
    for (int i = 0; i < count; i++) {
      load(met[i]);
      distances(other, own, normal, otherDistance);
      for (int k = 0; k < 3; k++) {
        int next = (k + 1) % 3;
        double a = otherDistance[k];
        double b = otherDistance[next];
        if (a == 0) {
          System.arraycopy(other, 3 * k, point, 0, 3);
        } else if ((a < 0 && b > 0) || (a > 0 && b < 0)) {
          between(other, k, next, a / (a - b));
        } else {
          continue;
        }
        if (weights(margin, weight)) {
          return true;
        }
      }
    }
    return false;
  }

  /**
   * Where the body's surface crosses an edge of the face.
   *
   * @param h a half-edge of the face
   * @param snapShare how near to an end, as a share of the length, doesn't count
   * @return share of the way along it, or -1
   */
  double crossing(int h, double snapShare) {
    int k = h % 3;
    int next = (k + 1) % 3;
    for (int i = 0; i < count; i++) {
      load(met[i]);
      distances(own, other, otherNormal, distance);
      double a = distance[k];
      double b = distance[next];
      if ((a < 0 && b > 0) || (a > 0 && b < 0)) {
        double share = a / (a - b);
        between(own, k, next, share);
        if (share > snapShare && share < 1 - snapShare && isInOther()) {
          return share;
        }
      }
    }
    return -1;
  }

  /** Whether the three pieces of the face, split at a place, keep an area and their side. */
  boolean splitsSoundly(double[] weight) {
    double[] m = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      m[axis] = weight[0] * own[axis] + weight[1] * own[3 + axis] + weight[2] * own[6 + axis];
    }
    for (int k = 0; k < 3; k++) {
      if (!(side(own, k, normal, m) > 0)) {
        return false;
      }
    }
    return true;
  }

  private Bounds box() {
    double[] low = new double[3];
    double[] high = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      low[axis] = Math.min(own[axis], Math.min(own[3 + axis], own[6 + axis])) - snapMm;
      high[axis] = Math.max(own[axis], Math.max(own[3 + axis], own[6 + axis])) + snapMm;
    }
    return new Bounds(low[0], low[1], low[2], high[0], high[1], high[2]);
  }

  private static boolean overlaps(Bounds a, Bounds b) {
    return a.minX() <= b.maxX()
        && a.maxX() >= b.minX()
        && a.minY() <= b.maxY()
        && a.maxY() >= b.minY()
        && a.minZ() <= b.maxZ()
        && a.maxZ() >= b.minZ();
  }

  private boolean load(int t) {
    for (int k = 0; k < 3; k++) {
      System.arraycopy(xyz, 3 * corner[3 * t + k], other, 3 * k, 3);
    }
    return unitNormal(other, otherNormal);
  }

  /** Whether the face and one of the body's have a place in common. */
  private boolean meets(int t) {
    if (!load(t)) {
      return false;
    }
    distances(own, other, otherNormal, distance);
    distances(other, own, normal, otherDistance);
    if (oneSided(distance) || oneSided(otherDistance)) {
      return false;
    }
    double dx = normal[1] * otherNormal[2] - normal[2] * otherNormal[1];
    double dy = normal[2] * otherNormal[0] - normal[0] * otherNormal[2];
    double dz = normal[0] * otherNormal[1] - normal[1] * otherNormal[0];
    double sine = Math.sqrt(dx * dx + dy * dy + dz * dz);
    if (!(sine > 0) || isFlat(distance) || isFlat(otherDistance)) {
      return true;
    }
    point[0] = dx / sine;
    point[1] = dy / sine;
    point[2] = dz / sine;
    double[] mine = span(own, distance);
    double[] its = span(other, otherDistance);
    // Nearly in one plane the line that they share is known less well.
    double room = snapMm / Math.min(1, sine);
    return mine[0] <= its[1] + room && its[0] <= mine[1] + room;
  }

  private static boolean isFlat(double[] d) {
    return d[0] == 0 && d[1] == 0 && d[2] == 0;
  }

  private static boolean oneSided(double[] d) {
    return (d[0] > 0 && d[1] > 0 && d[2] > 0) || (d[0] < 0 && d[1] < 0 && d[2] < 0);
  }

  /** Where a triangle meets the other's plane, as a span along the direction in {@link #point}. */
  private double[] span(double[] corners, double[] d) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      int next = (k + 1) % 3;
      double here = along(corners, k);
      double at;
      if (d[k] == 0) {
        at = here;
      } else if ((d[k] < 0 && d[next] > 0) || (d[k] > 0 && d[next] < 0)) {
        at = here + d[k] / (d[k] - d[next]) * (along(corners, next) - here);
      } else {
        continue;
      }
      low = Math.min(low, at);
      high = Math.max(high, at);
    }
    return new double[] {low, high};
  }

  private double along(double[] corners, int k) {
    return (corners[3 * k] - own[0]) * point[0]
        + (corners[3 * k + 1] - own[1]) * point[1]
        + (corners[3 * k + 2] - own[2]) * point[2];
  }

  /** Distances of corners from a plane through another triangle, 0 within the snap distance. */
  private void distances(double[] corners, double[] plane, double[] unit, double[] into) {
    for (int k = 0; k < 3; k++) {
      double d =
          (corners[3 * k] - plane[0]) * unit[0]
              + (corners[3 * k + 1] - plane[1]) * unit[1]
              + (corners[3 * k + 2] - plane[2]) * unit[2];
      into[k] = Math.abs(d) <= snapMm ? 0 : d;
    }
  }

  private void between(double[] corners, int from, int to, double share) {
    for (int axis = 0; axis < 3; axis++) {
      double p = corners[3 * from + axis];
      point[axis] = p + share * (corners[3 * to + axis] - p);
    }
  }

  /** Whether the point lies in the body's face or within the snap distance of its sides. */
  private boolean isInOther() {
    for (int k = 0; k < 3; k++) {
      if (!(side(other, k, otherNormal, point) >= -snapMm * length(other, k))) {
        return false;
      }
    }
    return true;
  }

  /** Weights of the point in the face; false unless it lies further inside than the margin. */
  private boolean weights(double margin, double[] weight) {
    double sum = 0;
    for (int k = 0; k < 3; k++) {
      double side = side(own, k, normal, point);
      if (!(side > margin * length(own, k))) {
        return false;
      }
      weight[(k + 2) % 3] = side;
      sum += side;
    }
    for (int k = 0; k < 3; k++) {
      weight[k] /= sum;
    }
    return true;
  }

  /** Twice the area between side k of a triangle and a point, above 0 towards its inside. */
  private static double side(double[] corners, int k, double[] unit, double[] at) {
    int a = 3 * k;
    int b = 3 * ((k + 1) % 3);
    double ux = corners[b] - corners[a];
    double uy = corners[b + 1] - corners[a + 1];
    double uz = corners[b + 2] - corners[a + 2];
    double vx = at[0] - corners[a];
    double vy = at[1] - corners[a + 1];
    double vz = at[2] - corners[a + 2];
    return (uy * vz - uz * vy) * unit[0]
        + (uz * vx - ux * vz) * unit[1]
        + (ux * vy - uy * vx) * unit[2];
  }

  private static double length(double[] corners, int k) {
    int a = 3 * k;
    int b = 3 * ((k + 1) % 3);
    double x = corners[b] - corners[a];
    double y = corners[b + 1] - corners[a + 1];
    double z = corners[b + 2] - corners[a + 2];
    return Math.sqrt(x * x + y * y + z * z);
  }

  private static boolean unitNormal(double[] p, double[] into) {
    double ux = p[3] - p[0];
    double uy = p[4] - p[1];
    double uz = p[5] - p[2];
    double vx = p[6] - p[0];
    double vy = p[7] - p[1];
    double vz = p[8] - p[2];
    into[0] = uy * vz - uz * vy;
    into[1] = uz * vx - ux * vz;
    into[2] = ux * vy - uy * vx;
    double norm = Math.sqrt(into[0] * into[0] + into[1] * into[1] + into[2] * into[2]);
    if (!(norm > 0)) {
      return false;
    }
    for (int axis = 0; axis < 3; axis++) {
      into[axis] /= norm;
    }
    return true;
  }
}
