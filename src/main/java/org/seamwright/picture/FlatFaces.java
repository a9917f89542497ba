package org.seamwright.picture;

import java.util.Arrays;
import org.seamwright.mesh.Mesh;

/**
 * Lays faces of one stretch flat: to the right the way round the axis at the face's own radius, up
 * the way along the profile, so that areas and both ways stay true. Faces are halved until they
 * bend no more, and cut at the back and at the stretch's ends.
 */
final class FlatFaces {
  /** Largest angle that a face may span, radians: half a degree of bow, far below a pixel. */
  private static final double SPAN = Math.toRadians(4);

  /** Halvings of a face at most; a face across the axis would never come to rest. */
  private static final int DEEPEST = 14;

  /** Share of the height over the profile that is kept, so that the outermost face is on top. */
  private static final double RELIEF = 0.01;

  /** Numbers per corner: angle, way along the profile, radius, height over the profile. */
  private static final int PER = 4;

  private final Turned turned;
  private final Stretch stretch;

  /** 1 where the chain runs down the page. */
  private final int way;

  private double[] xyz = new double[9 * 1024];
  private int[] parent = new int[1024];
  private int count;

  FlatFaces(Turned turned, Stretch stretch, boolean down) {
    this.turned = turned;
    this.stretch = stretch;
    way = down ? 1 : -1;
  }

  /** Lays a face that lies on a segment of the stretch's chain. */
  void add(int f, int segment, double reachMm) {
    double[] p = new double[9];
    for (int k = 0; k < 3; k++) {
      int v = turned.mesh.corner()[3 * f + k];
      p[3 * k] = turned.across[v];
      p[3 * k + 1] = turned.aside[v];
      p[3 * k + 2] = turned.height[v];
    }
    halve(f, p, segment, reachMm, 0);
  }

  private void halve(int f, double[] p, int segment, double reachMm, int depth) {
    int longest = -1;
    double most = SPAN;
    for (int k = 0; k < 3 && depth < DEEPEST; k++) {
      double span = span(p, k, (k + 1) % 3);
      if (span > most) {
        most = span;
        longest = k;
      }
    }
    if (longest < 0) {
      lay(f, p, segment, reachMm);
      return;
    }
    int a = 3 * longest;
    int b = 3 * ((longest + 1) % 3);
    double[] first = p.clone();
    double[] second = p.clone();
    for (int axis = 0; axis < 3; axis++) {
      double middle = (p[a + axis] + p[b + axis]) / 2;
      first[b + axis] = middle;
      second[a + axis] = middle;
    }
    halve(f, first, segment, reachMm, depth + 1);
    halve(f, second, segment, reachMm, depth + 1);
  }

  /** Angle between two corners about the axis; none where one is on it. */
  private static double span(double[] p, int i, int j) {
    double x = p[3 * i] * p[3 * j] + p[3 * i + 1] * p[3 * j + 1];
    double y = p[3 * i] * p[3 * j + 1] - p[3 * i + 1] * p[3 * j];
    return Math.abs(Math.atan2(y, x));
  }

  private void lay(int f, double[] p, int segment, double reachMm) {
    double[] at = new double[3 * PER];
    double middleX = p[0] + p[3] + p[6];
    double middleY = p[1] + p[4] + p[7];
    double middle = Math.atan2(middleY, middleX);
    double chainMm = stretch.chain().lengthMm();
    double s0 = 0;
    for (int k = 0; k < 3; k++) {
      double r = Math.hypot(p[3 * k], p[3 * k + 1]);
      double turn =
          r > 0
              ? Math.atan2(
                  p[3 * k + 1] * Math.cos(middle) - p[3 * k] * Math.sin(middle),
                  p[3 * k] * Math.cos(middle) + p[3 * k + 1] * Math.sin(middle))
              : 0;
      at[PER * k] = middle + turn;
      foot(r, p[3 * k + 2], segment, reachMm, at, PER * k);
      if (k == 0) {
        s0 = at[1];
      } else if (stretch.chain().closed()) {
        at[PER * k + 1] -= chainMm * Math.rint((at[PER * k + 1] - s0) / chainMm);
      }
    }
    for (int lap = -1; lap <= 1; lap++) {
      for (int turn = -1; turn <= 1; turn++) {
        if ((lap == 0 || stretch.chain().closed()) && reaches(at, lap * chainMm, turn)) {
          emit(f, cut(at, lap * chainMm, 2 * Math.PI * turn));
        }
      }
    }
  }

  private boolean reaches(double[] at, double shiftMm, int turns) {
    double lo = Math.min(at[1], Math.min(at[PER + 1], at[2 * PER + 1])) + shiftMm;
    double hi = Math.max(at[1], Math.max(at[PER + 1], at[2 * PER + 1])) + shiftMm;
    double right = Math.max(at[0], Math.max(at[PER], at[2 * PER])) + 2 * Math.PI * turns;
    double left = Math.min(at[0], Math.min(at[PER], at[2 * PER])) + 2 * Math.PI * turns;
    return lo < stretch.toMm() && hi > stretch.fromMm() && right > -Math.PI && left < Math.PI;
  }

  /** Way along, radius and height over the profile of a place near a segment. */
  private void foot(double r, double z, int segment, double reachMm, double[] into, int at) {
    Profile.Chain chain = stretch.chain();
    int n = chain.points() - 1;
    int best = segment;
    double least = Double.POSITIVE_INFINITY;
    for (int direction = -1; direction <= 1; direction += 2) {
      double gone = 0;
      int i = segment;
      for (int steps = 0; steps < n && gone <= reachMm; steps++) {
        double away = ProfileIndex.distance(chain, i, r, z);
        if (away < least) {
          least = away;
          best = i;
        }
        int next = i + direction;
        if (next < 0 || next >= n) {
          if (!chain.closed()) {
            break;
          }
          next = Math.floorMod(next, n);
        }
        i = next;
        gone += steps == 0 ? 0 : chain.along()[i + 1] - chain.along()[i];
      }
    }
    double t = ProfileIndex.share(chain, best, r, z);
    double dr = chain.radius(best + 1) - chain.radius(best);
    double dz = chain.height(best + 1) - chain.height(best);
    double length = Math.hypot(dr, dz);
    double above =
        length > 0 ? ((z - chain.height(best)) * dr - (r - chain.radius(best)) * dz) / length : 0;
    into[at + 1] = chain.along()[best] + t * (chain.along()[best + 1] - chain.along()[best]);
    into[at + 2] = r;
    into[at + 3] = above;
  }

  /** A face, moved by a lap and turn, as far as it lies in the stretch and in one turn. */
  private double[] cut(double[] at, double shiftMm, double turn) {
    double[] moved = at.clone();
    for (int k = 0; k < 3; k++) {
      moved[PER * k] += turn;
      moved[PER * k + 1] += shiftMm;
    }
    double[] cut = clip(moved, 0, Math.PI, true);
    cut = clip(cut, 0, -Math.PI, false);
    cut = clip(cut, 1, stretch.toMm(), true);
    return clip(cut, 1, stretch.fromMm(), false);
  }

  /** Sutherland and Hodgman, "Reentrant polygon clipping", 1974: one line. */
  private static double[] clip(double[] polygon, int axis, double bound, boolean below) {
    int n = polygon.length / PER;
    double[] out = new double[2 * polygon.length + PER];
    int m = 0;
    for (int i = 0; i < n; i++) {
      int a = PER * i;
      int b = PER * ((i + 1) % n);
      boolean aIn = below ? polygon[a + axis] <= bound : polygon[a + axis] >= bound;
      boolean bIn = below ? polygon[b + axis] <= bound : polygon[b + axis] >= bound;
      if (aIn) {
        System.arraycopy(polygon, a, out, PER * m++, PER);
      }
      if (aIn != bIn) {
        double t = (bound - polygon[a + axis]) / (polygon[b + axis] - polygon[a + axis]);
        for (int k = 0; k < PER; k++) {
          out[PER * m + k] = polygon[a + k] + t * (polygon[b + k] - polygon[a + k]);
        }
        out[PER * m + axis] = bound;
        m++;
      }
    }
    return Arrays.copyOf(out, PER * m);
  }

  private void emit(int f, double[] polygon) {
    int n = polygon.length / PER;
    for (int i = 1; i + 1 < n; i++) {
      if (count == parent.length) {
        parent = Arrays.copyOf(parent, 2 * count);
        xyz = Arrays.copyOf(xyz, 18 * count);
      }
      int second = way > 0 ? i + 1 : i;
      int third = way > 0 ? i : i + 1;
      corner(polygon, 0, 9 * count);
      corner(polygon, second, 9 * count + 3);
      corner(polygon, third, 9 * count + 6);
      parent[count++] = f;
    }
  }

  private void corner(double[] polygon, int i, int to) {
    int at = PER * i;
    xyz[to] = way * polygon[at] * polygon[at + 2];
    xyz[to + 1] = -way * (polygon[at + 1] - stretch.fromMm());
    xyz[to + 2] = RELIEF * polygon[at + 3];
  }

  /** The flat mesh: every face has corners of its own. */
  Mesh mesh() {
    int[] corner = new int[3 * count];
    Arrays.setAll(corner, i -> i);
    return Mesh.of(Arrays.copyOf(xyz, 9 * count), corner);
  }

  /** One entry per flat face: the piece's face it is a part of. */
  int[] parent() {
    return Arrays.copyOf(parent, count);
  }
}
