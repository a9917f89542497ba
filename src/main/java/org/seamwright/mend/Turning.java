package org.seamwright.mend;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seamwright.basis.Count;
import org.seamwright.basis.Progress;
import org.seamwright.measure.NestedParts;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * Turns faces so that neighbours agree and outside is outside. Areas don't change.
 *
 * <p>Faces are first made to agree by a flood over edges with two faces. What the flood reaches is
 * a sheet; edges of three or more faces bound it. A closed sheet is then turned outwards by the
 * sign of its volume, or inwards where it is the wall of a hollow (inside an odd number of closed
 * parts). An open sheet is turned to the side from which more of it is seen, by rays from places on
 * it, and where neither side is seen clearly more, the way most of its area was turned. A sheet
 * that cannot be made to agree, such as a Möbius band, stays as it was and is told.
 *
 * <p>O(n log n); rays are cast for the {@link #MOST_SHEETS} largest open sheets.
 */
final class Turning {
  private static final int MOST_SHEETS = 500;
  private static final int PLACES = 48;
  private static final int DIRECTIONS = 24;

  /** One side must be seen this many times as often as the other. */
  private static final double CLEARLY = 1.25;

  /** Rays start off the surface by this share of the diagonal: far above rounding, unseen. */
  private static final double OFF = 1e-7;

  private final Mesh mesh;
  private final Topology topology;
  private final Parts parts;

  /** One entry per face: its sheet. */
  private final int[] sheet;

  /** One entry per face: whether it is turned against the first face of its sheet. */
  private final boolean[] against;

  private final List<int[]> faces = new ArrayList<>();
  private final List<Boolean> orientable = new ArrayList<>();

  private Turning(Mesh mesh, Topology topology) {
    this.mesh = mesh;
    this.topology = topology;
    this.parts = Parts.of(mesh, topology);
    this.sheet = new int[mesh.faceCount()];
    this.against = new boolean[mesh.faceCount()];
    Arrays.fill(sheet, -1);
  }

  static Change outward(Mesh mesh, Topology topology, Progress progress) {
    Turning turning = new Turning(mesh, topology);
    turning.flood();
    progress.at(0.2);
    return turning.turned(progress.between(0.2, 1));
  }

  private void flood() {
    int[] queue = new int[mesh.faceCount()];
    for (int seed = 0; seed < sheet.length; seed++) {
      if (sheet[seed] < 0) {
        int number = faces.size();
        boolean agrees = true;
        int size = 0;
        queue[size++] = seed;
        sheet[seed] = number;
        for (int i = 0; i < size; i++) {
          int f = queue[i];
          for (int h = 3 * f; h < 3 * f + 3; h++) {
            int twin = topology.twin(h);
            if (twin < 0) {
              continue;
            }
            boolean other = against[f] ^ (mesh.corner()[h] == mesh.corner()[twin]);
            int g = twin / 3;
            if (sheet[g] < 0) {
              sheet[g] = number;
              against[g] = other;
              queue[size++] = g;
            } else {
              agrees &= against[g] == other;
            }
          }
        }
        faces.add(Arrays.copyOf(queue, size));
        orientable.add(agrees);
      }
    }
  }

  private Change turned(Progress progress) {
    boolean[] turn = new boolean[mesh.faceCount()];
    int[] depth = NestedParts.depth(mesh, topology, parts, progress.between(0, 0.3));
    boolean[] byRays = largestOpen();
    FaceTree tree = null;
    long twisted = 0;
    for (int s = 0; s < faces.size(); s++) {
      progress.at(0.3 + 0.7 * s / faces.size());
      int[] own = faces.get(s);
      if (!orientable.get(s)) {
        twisted++;
        continue;
      }
      boolean flip;
      if (isClosed(own)) {
        flip = volume(own) < 0 ^ depth[parts.of()[own[0]]] % 2 == 1;
      } else {
        tree = tree == null && byRays[s] ? FaceTree.of(mesh) : tree;
        double seen = byRays[s] ? seen(own, tree) : 0;
        flip = seen == 0 ? majorityAgainst(own) : seen < 0;
      }
      for (int f : own) {
        turn[f] = against[f] ^ flip;
      }
    }
    return apply(turn, twisted);
  }

  private Change apply(boolean[] turn, long twisted) {
    int[] corner = mesh.corner().clone();
    long count = 0;
    for (int f = 0; f < turn.length; f++) {
      if (turn[f]) {
        corner[3 * f + 1] = mesh.corner()[3 * f + 2];
        corner[3 * f + 2] = mesh.corner()[3 * f + 1];
        count++;
      }
    }
    String text = Count.of(count, "face") + " turned over";
    if (twisted > 0) {
      text +=
          "; "
              + Count.of(twisted, "sheet")
              + " left as read, since with a twist like a Möbius band's no turn makes them agree";
    }
    int[] parent = new int[turn.length];
    Arrays.setAll(parent, f -> f);
    return new Change(Mesh.of(mesh.xyz(), corner), parent, count, text);
  }

  private boolean isClosed(int[] own) {
    for (int f : own) {
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        if (topology.twin(h) < 0) {
          return false;
        }
      }
    }
    return true;
  }

  /** Six times the volume of a closed sheet once its faces agree with the first. */
  private double volume(int[] own) {
    double[] p = mesh.xyz();
    int o = 3 * mesh.corner()[3 * own[0]];
    double sum = 0;
    for (int f : own) {
      int a = 3 * mesh.corner()[3 * f];
      int b = 3 * mesh.corner()[3 * f + 1];
      int c = 3 * mesh.corner()[3 * f + 2];
      double ax = p[a] - p[o];
      double ay = p[a + 1] - p[o + 1];
      double az = p[a + 2] - p[o + 2];
      double bx = p[b] - p[o];
      double by = p[b + 1] - p[o + 1];
      double bz = p[b + 2] - p[o + 2];
      double cx = p[c] - p[o];
      double cy = p[c + 1] - p[o + 1];
      double cz = p[c + 2] - p[o + 2];
      double six = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
      sum += against[f] ? -six : six;
    }
    return sum;
  }

  private boolean majorityAgainst(int[] own) {
    double with = 0;
    double other = 0;
    for (int f : own) {
      double area = Faces.area(mesh, f);
      with += against[f] ? 0 : area;
      other += against[f] ? area : 0;
    }
    return other > with;
  }

  /** The open sheets that are worth rays. */
  private boolean[] largestOpen() {
    boolean[] chosen = new boolean[faces.size()];
    Integer[] order = new Integer[faces.size()];
    double[] area = new double[faces.size()];
    for (int s = 0; s < area.length; s++) {
      order[s] = s;
      for (int f : faces.get(s)) {
        area[s] += Faces.area(mesh, f);
      }
    }
    Arrays.sort(order, (s, t) -> Double.compare(area[t], area[s]));
    int left = MOST_SHEETS;
    for (int s : order) {
      if (left > 0 && orientable.get(s) && !isClosed(faces.get(s))) {
        chosen[s] = true;
        left--;
      }
    }
    return chosen;
  }

  /** Above 0 if the side that the first face shows is seen clearly more, below 0 if less. */
  private double seen(int[] own, FaceTree tree) {
    Samples places = Samples.of(mesh, own, PLACES);
    double off = OFF * mesh.bounds().diagonal();
    int front = 0;
    int back = 0;
    for (int i = 0; i < places.count; i++) {
      double[] n = {places.normal[3 * i], places.normal[3 * i + 1], places.normal[3 * i + 2]};
      for (int side = -1; side <= 1; side += 2) {
        int free = 0;
        for (int k = 0; k < DIRECTIONS; k++) {
          double[] d = direction(k, n, side);
          free +=
              tree.firstHit(
                          places.at[3 * i] + side * off * n[0],
                          places.at[3 * i + 1] + side * off * n[1],
                          places.at[3 * i + 2] + side * off * n[2],
                          d[0],
                          d[1],
                          d[2])
                      .isEmpty()
                  ? 1
                  : 0;
        }
        if (side > 0 ^ against[places.face[i]]) {
          front += free;
        } else {
          back += free;
        }
      }
    }
    if (front > CLEARLY * back) {
      return 1;
    }
    return back > CLEARLY * front ? -1 : 0;
  }

  /** A direction of an even spread (Fibonacci's lattice), on the given side of a normal. */
  private static double[] direction(int k, double[] n, int side) {
    double z = 1 - (2 * k + 1.0) / DIRECTIONS;
    double r = Math.sqrt(1 - z * z);
    double turn = k * Math.PI * (3 - Math.sqrt(5));
    double[] d = {r * Math.cos(turn), r * Math.sin(turn), z};
    double dot = side * (d[0] * n[0] + d[1] * n[1] + d[2] * n[2]);
    if (dot < 0) {
      for (int axis = 0; axis < 3; axis++) {
        d[axis] = -d[axis];
      }
    }
    return d;
  }
}
