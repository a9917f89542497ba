package org.seamwright.region;

import java.util.Arrays;
import org.seamwright.measure.TipReach;
import org.seamwright.mesh.RollingBall;

/**
 * Looks at faces of a surface, one after the other, and says how a round tip touches them: all
 * over, nowhere, on one side of a straight line that it finds, or in a way that takes smaller faces
 * to tell. One for each thread.
 *
 * <p>Where the tip's way is barred on one side of a face only, the line's ends on its edges are
 * halved down to {@link #END} of the radius; it counts as straight if the tip is free on one side
 * of it and barred on the other at every {@link #SPACING} of the radius, {@link #OFF} of the radius
 * aside.
 */
final class ReachLook {
  /** What is to be done with a face. */
  enum Verdict {
    /** It is free or barred as a whole. */
    WHOLE,
    /** It is cut along the line found. */
    LINE,
    /** It is halved. */
    HALVE,
    /** It is split at its middle. */
    MIDDLE
  }

  /** Longer faces than this share of the radius may hide something between middle and corners. */
  private static final double COARSE = 1 / 4.0;

  /** The same where facets stand for a hollow curve, and are looked at by corners and middle. */
  private static final double COARSE_ON_CURVE = 1 / 2.0;

  /** Shorter faces than this share of the radius are not split but for the line. */
  private static final double FINE = 1 / 12.0;

  /** Faces narrower than this share of that are not opened at their middle. */
  private static final double NEEDLE = 1 / 4.0;

  /**
   * The same where facets stand for a hollow curve, and the line is theirs more than the curve's.
   */
  private static final double FINE_ON_CURVE = 1 / 4.0;

  /** What rises by a smaller share of the radius hides a spot no larger than FINE at most. */
  private static final double HIDDEN = FINE * FINE / 2;

  /** How far off the line may be, and how far its ends, as shares of the radius. */
  private static final double OFF = 1e-3;

  /** The same where facets stand for a hollow curve. */
  private static final double OFF_ON_CURVE = 5e-3;

  private static final double END = 1e-4;

  private static final double END_ON_CURVE = 1e-3;

  /** How close places are that stand for all between them, as a share of the radius. */
  private static final double SPACING = 1 / 4.0;

  /** Most such places along a line, and across a barred side: larger faces are halved. */
  private static final int MOST_ALONG = 256;

  /**
   * How far inside a face its corners are judged: this share of the way to the middle, and no more
   * than END of the radius.
   */
  private static final double INSET = 1e-3;

  private final EditableSurface surface;
  private final TipReach reach;
  private final TipReach.Probe probe;
  private final double radiusMm;
  private final double[] normal;
  private final double[] triangle = new double[9];
  private final double[] part = new double[9];
  private final double[] tip = new double[12];
  private final double[] rest = new double[12];
  private final double[] middle = new double[3];
  private final double[] at = new double[3];
  private final boolean[] free = new boolean[3];

  /** Two places of the line, then the unit vector across it to the free side. */
  private final double[] line = new double[9];

  private boolean isFree;
  private double coarseMm;
  private double fineMm;
  private double endMm;
  private double offMm;

  ReachLook(EditableSurface surface, TipReach reach, double[] normal, double radiusMm) {
    this.surface = surface;
    this.normal = normal;
    this.radiusMm = radiusMm;
    this.reach = reach;
    this.probe = reach.probe();
  }

  /** Whether the face looked at last is free: all of it, or its middle. */
  boolean isFree() {
    return isFree;
  }

  /** A place on the line, 3 numbers, and the unit vector across it to the free side. */
  double[] line() {
    return new double[] {line[0], line[1], line[2], line[6], line[7], line[8]};
  }

  /** A face without area has no outside. */
  boolean hasSide(int face) {
    int n = 3 * surface.parent(face);
    return surface.hasEdges(face) && (normal[n] != 0 || normal[n + 1] != 0 || normal[n + 2] != 0);
  }

  /** Looks at a face. */
  Verdict look(int face) {
    isFree = true;
    if (!hasSide(face)) {
      return Verdict.WHOLE;
    }
    boolean curved = reach.isCurved(surface.parent(face));
    fineMm = (curved ? FINE_ON_CURVE : FINE) * radiusMm;
    offMm = (curved ? OFF_ON_CURVE : OFF) * radiusMm;
    coarseMm = (curved ? COARSE_ON_CURVE : COARSE) * radiusMm;
    endMm = (curved ? END_ON_CURVE : END) * radiusMm;
    corners(face);
    double longest = longest();
    RollingBall.Finding found =
        probe.look(surface.parent(face), triangle, curved && longest <= coarseMm);
    if (found == RollingBall.Finding.CLEAR || found == RollingBall.Finding.STOPPED) {
      isFree = found == RollingBall.Finding.CLEAR;
      return Verdict.WHOLE;
    }
    isFree = probe.isFree(middle);
    int count = 0;
    for (int k = 0; k < 3; k++) {
      System.arraycopy(triangle, 3 * k, at, 0, 3);
      free[k] = isFreeInside();
      count += free[k] ? 1 : 0;
    }
    if (count % 3 != 0) {
      return mixed(face, longest);
    }
    boolean alike = isFree == (count == 3);
    if (longest <= (alike ? coarseMm : fineMm)) {
      return Verdict.WHOLE;
    }
    if (!alike) {
      boolean needle = 2 * surface.area(face) < NEEDLE * fineMm * longest;
      return needle ? Verdict.WHOLE : Verdict.MIDDLE;
    }
    double reached = furthest();
    boolean all = curved && isAll(wholeSide(), isFree);
    boolean whole =
        all
            || (isFree
                ? probe.isClear(surface.parent(face), triangle, HIDDEN * radiusMm)
                : probe.isDeep(middle, reached));
    return whole ? Verdict.WHOLE : Verdict.HALVE;
  }

  /** The face as four corners. */
  private double[] wholeSide() {
    System.arraycopy(triangle, 0, tip, 0, 9);
    System.arraycopy(triangle, 6, tip, 9, 3);
    return tip;
  }

  private void corners(int face) {
    Arrays.fill(middle, 0);
    for (int k = 0; k < 3; k++) {
      int v = surface.from(3 * face + k);
      for (int axis = 0; axis < 3; axis++) {
        triangle[3 * k + axis] = surface.at(v, axis);
        middle[axis] += surface.at(v, axis) / 3;
      }
    }
  }

  private double longest() {
    return Math.max(
        distance(triangle, 0, triangle, 3),
        Math.max(distance(triangle, 3, triangle, 6), distance(triangle, 6, triangle, 0)));
  }

  private double furthest() {
    return Math.max(
        distance(triangle, 0, middle, 0),
        Math.max(distance(triangle, 3, middle, 0), distance(triangle, 6, middle, 0)));
  }

  private static double distance(double[] a, int i, double[] b, int j) {
    double x = a[i] - b[j];
    double y = a[i + 1] - b[j + 1];
    double z = a[i + 2] - b[j + 2];
    return Math.sqrt(x * x + y * y + z * z);
  }

  /** Whether the tip is free a little inside of {@link #at}. */
  private boolean isFreeInside() {
    double away = distance(at, 0, middle, 0);
    double share = away > 0 ? Math.min(INSET, END * radiusMm / away) : 0;
    for (int axis = 0; axis < 3; axis++) {
      at[axis] += share * (middle[axis] - at[axis]);
    }
    return probe.isFree(at);
  }

  private Verdict mixed(int face, double longest) {
    int alone = free[0] == free[1] ? 2 : free[1] == free[2] ? 0 : 1;
    int next = (alone + 1) % 3;
    int prev = (alone + 2) % 3;
    end(alone, next, 0);
    end(alone, prev, 3);
    if (!across(alone)) {
      return longest <= fineMm ? Verdict.WHOLE : Verdict.HALVE;
    }
    if (longest <= fineMm) {
      return Verdict.LINE;
    }
    if (!isStraight()) {
      return Verdict.HALVE;
    }
    if (longest <= coarseMm) {
      return Verdict.LINE;
    }
    sides(alone, next, prev);
    double[] freeSide = free[alone] ? tip : rest;
    boolean told =
        isAll(free[alone] ? rest : tip, false)
            && (reach.isCurved(surface.parent(face))
                ? isAll(freeSide, true)
                : isClear(face, freeSide));
    return told ? Verdict.LINE : Verdict.HALVE;
  }

  /** Finds where the line crosses the edge from one corner to another. */
  private void end(int from, int to, int into) {
    double low = 0;
    double high = 1;
    double length = distance(triangle, 3 * from, triangle, 3 * to);
    while ((high - low) * length > endMm && high - low > Math.ulp(1.0f)) {
      double share = (low + high) / 2;
      for (int axis = 0; axis < 3; axis++) {
        double a = triangle[3 * from + axis];
        at[axis] = a + share * (triangle[3 * to + axis] - a);
      }
      if (isFreeInside() == free[from]) {
        low = share;
      } else {
        high = share;
      }
    }
    double share = (low + high) / 2;
    for (int axis = 0; axis < 3; axis++) {
      double a = triangle[3 * from + axis];
      line[into + axis] = a + share * (triangle[3 * to + axis] - a);
    }
  }

  /** Finds the way across the line; false if its ends lie in one place. */
  private boolean across(int alone) {
    double length = distance(line, 0, line, 3);
    double along = 0;
    for (int axis = 0; axis < 3; axis++) {
      double way = (line[3 + axis] - line[axis]) / length;
      along += way * (triangle[3 * alone + axis] - line[axis]);
    }
    double square = 0;
    for (int axis = 0; axis < 3; axis++) {
      double way = (line[3 + axis] - line[axis]) / length;
      double off = triangle[3 * alone + axis] - line[axis] - along * way;
      line[6 + axis] = free[alone] ? off : -off;
      square += off * off;
    }
    double size = Math.sqrt(square);
    for (int axis = 6; axis < 9; axis++) {
      line[axis] /= size;
    }
    return length > 0 && size > 0;
  }

  private boolean isStraight() {
    double length = distance(line, 0, line, 3);
    int places = places(length);
    if (places > MOST_ALONG) {
      return false;
    }
    for (int i = 1; i < places; i++) {
      if (!isFreeBeside(i / (double) places, offMm) || isFreeBeside(i / (double) places, -offMm)) {
        return false;
      }
    }
    return true;
  }

  private int places(double lengthMm) {
    double places = Math.ceil(lengthMm / (SPACING * radiusMm));
    return (int) Math.max(2, Math.min(places, MOST_ALONG + 1));
  }

  private boolean isFreeBeside(double share, double off) {
    for (int axis = 0; axis < 3; axis++) {
      at[axis] = line[axis] + share * (line[3 + axis] - line[axis]) + off * line[6 + axis];
    }
    return probe.isFree(at);
  }

  /** The two sides of the line as four corners each, in order; a triangle has one of them twice. */
  private void sides(int alone, int next, int prev) {
    System.arraycopy(triangle, 3 * alone, tip, 0, 3);
    System.arraycopy(triangle, 3 * alone, tip, 3, 3);
    System.arraycopy(triangle, 3 * next, rest, 0, 3);
    System.arraycopy(triangle, 3 * prev, rest, 3, 3);
    double aside = free[alone] ? offMm : -offMm;
    for (int axis = 0; axis < 3; axis++) {
      double off = aside * line[6 + axis];
      tip[6 + axis] = line[3 + axis] + off;
      tip[9 + axis] = line[axis] + off;
      rest[6 + axis] = line[3 + axis] - off;
      rest[9 + axis] = line[axis] - off;
    }
  }

  /** Whether the tip is free all over one side; to be asked last. */
  private boolean isClear(int face, double[] side) {
    for (int second = 3; second <= 6; second += 3) {
      System.arraycopy(side, 0, part, 0, 3);
      System.arraycopy(side, second, part, 3, 6);
      if (!probe.isClear(surface.parent(face), part, HIDDEN * radiusMm)) {
        return false;
      }
    }
    return true;
  }

  /** Whether the tip is free, or barred, at places all over one side. */
  private boolean isAll(double[] side, boolean wanted) {
    int rows = places(Math.max(distance(side, 0, side, 9), distance(side, 3, side, 6)));
    int columns = places(Math.max(distance(side, 0, side, 3), distance(side, 6, side, 9)));
    if ((long) rows * columns > MOST_ALONG) {
      return false;
    }
    for (int i = 0; i <= rows; i++) {
      for (int j = 0; j <= columns; j++) {
        double s = (double) i / rows;
        double t = (double) j / columns;
        for (int axis = 0; axis < 3; axis++) {
          at[axis] =
              (1 - s) * ((1 - t) * side[axis] + t * side[3 + axis])
                  + s * ((1 - t) * side[9 + axis] + t * side[6 + axis]);
        }
        if (isFreeInside() != wanted) {
          return false;
        }
      }
    }
    return true;
  }
}
