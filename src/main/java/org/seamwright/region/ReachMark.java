package org.seamwright.region;

import java.util.Arrays;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.measure.TipReach;

/**
 * Cuts a surface along the edge of what a round tip can touch ({@link TipReach}), and tells what it
 * cannot.
 *
 * <p>Each face is judged by its middle. Faces that may be touched in part are halved until their
 * edges are {@link #FINE} of the radius; then they are cut where the largest ball that touches them
 * has the tip's radius, taken as linear along their edges. The line isn't off where it is straight,
 * as beside a crease; round the edges of a post on a floor it was off by 0.1% of the radius at
 * most, on tori of 30 facets round the tube by 0.8% on average.
 *
 * <p>Cost: a nearest-point query per face, some more for each face along the line.
 */
final class ReachMark {
  /** Longer faces than this share of the radius are halved wherever anything rises near them. */
  private static final double COARSE = 1 / 4.0;

  /** Faces that the line crosses are halved down to this share of the radius. */
  private static final double FINE = 1 / 12.0;

  /** A tip smaller than this share of the piece is a slip in a unit. */
  static final double LEAST_SHARE = 5e-5;

  /** Faces smaller than this share of the radius are not cut: they go by their middle. */
  private static final double SMALL = 1 / 400.0;

  /** A crossing nearer than this share of an edge to its end is moved there. */
  private static final double SNAP_SHARE = 0.02;

  /** A corner on the line of one face is on that of another if its ball differs by less. */
  private static final double SAME = 0.05;

  /** How far largest balls are followed beyond the tip, in radii. */
  private static final double BEYOND = 1.5;

  /** How far inside a face its corners are judged, as a share of the way to the middle. */
  private static final double INSET = 1e-3;

  private static final int MOST_PASSES = 40;
  private static final int MOST_MADE = 1_500_000;
  private static final int LEAST_PER_RANGE = 1 << 10;

  private static final byte FREE = 1;
  private static final byte BLOCKED = 2;

  private final EditableSurface surface;
  private final TipReach reach;
  private final double radiusMm;
  private final double[] normal;

  /** One entry per face: {@link #FREE} or {@link #BLOCKED}; 0 if not judged. */
  private byte[] state;

  /** One entry per face: whether it was seen not to be touched in part. */
  private boolean[] whole;

  /**
   * Prepares.
   *
   * @param normal unit normals of the piece as read, 3 per face
   */
  ReachMark(EditableSurface surface, TipReach reach, double[] normal, double radiusMm) {
    this.surface = surface;
    this.reach = reach;
    this.normal = normal;
    this.radiusMm = radiusMm;
    state = new byte[surface.faceCount()];
    whole = new boolean[surface.faceCount()];
  }

  /**
   * Cuts; gives for each face of the cut surface whether the tip cannot touch it. Empty if that
   * would take millions of faces.
   */
  boolean[] cover(Progress progress) {
    int before = surface.faceCount();
    judge(progress.between(0, 0.5));
    for (int pass = 0; pass < MOST_PASSES; pass++) {
      progress.at(0.5 + 0.4 * pass / MOST_PASSES);
      int[] mixed = mixed();
      if (mixed.length == 0) {
        break;
      }
      if (surface.faceCount() - before > MOST_MADE) {
        return new boolean[0];
      }
      split(mixed);
    }
    new ReachLine().cut(border());
    judge(Progress.NONE);
    progress.at(1);
    return surface.facesWhere(f -> state[f] == BLOCKED);
  }

  /** Judges all faces that are not yet, by their middle. */
  private void judge(Progress progress) {
    int faces = surface.faceCount();
    state = Arrays.copyOf(state, faces);
    whole = Arrays.copyOf(whole, faces);
    Parallel.split(
        faces,
        Parallel.ranges(faces, LEAST_PER_RANGE),
        (from, to) -> {
          double[] at = new double[3];
          for (int f = from; f < to; f++) {
            if (state[f] == 0) {
              middle(f, at);
              state[f] = isFree(f, at) ? FREE : BLOCKED;
            }
          }
        });
    progress.at(1);
  }

  private boolean isFree(int face, double[] at) {
    return !hasSide(face) || reach.isFree(surface.parent(face), at[0], at[1], at[2]);
  }

  /** A face without area has no outside. */
  private boolean hasSide(int face) {
    int n = 3 * surface.parent(face);
    return surface.hasEdges(face) && (normal[n] != 0 || normal[n + 1] != 0 || normal[n + 2] != 0);
  }

  private void middle(int face, double[] at) {
    for (int axis = 0; axis < 3; axis++) {
      at[axis] =
          (surface.at(surface.from(3 * face), axis)
                  + surface.at(surface.from(3 * face + 1), axis)
                  + surface.at(surface.from(3 * face + 2), axis))
              / 3;
    }
  }

  /** Per vertex: the states of the faces round it. */
  private byte[] around() {
    byte[] around = new byte[surface.vertexCount()];
    for (int h = 0; h < 3 * surface.faceCount(); h++) {
      around[surface.from(h)] |= state[h / 3];
    }
    return around;
  }

  private boolean isBorder(int face, byte[] around) {
    return (around[surface.from(3 * face)]
            | around[surface.from(3 * face + 1)]
            | around[surface.from(3 * face + 2)])
        == (FREE | BLOCKED);
  }

  /** Faces that must be halved. */
  private int[] mixed() {
    byte[] around = around();
    Halving halving = new Halving(surface);
    boolean[] mixed = new boolean[surface.faceCount()];
    Parallel.split(
        mixed.length,
        Parallel.ranges(mixed.length, LEAST_PER_RANGE),
        (from, to) -> {
          for (int f = from; f < to; f++) {
            mixed[f] = !whole[f] && hasSide(f) && isMixed(f, around, halving);
          }
        });
    return indices(mixed);
  }

  private static int[] indices(boolean[] which) {
    int[] found = new int[which.length];
    int count = 0;
    for (int f = 0; f < which.length; f++) {
      if (which[f]) {
        found[count++] = f;
      }
    }
    return Arrays.copyOf(found, count);
  }

  private boolean isMixed(int face, byte[] around, Halving halving) {
    double longest = surface.length(halving.longestEdge(face));
    boolean coarse = longest > COARSE * radiusMm;
    if (longest <= FINE * radiusMm || (!coarse && !isBorder(face, around))) {
      return false;
    }
    double[] at = new double[3];
    middle(face, at);
    double[] corner = new double[3];
    double furthest = 0;
    for (int k = 0; k < 3; k++) {
      double square = 0;
      for (int axis = 0; axis < 3; axis++) {
        double there = surface.at(surface.from(3 * face + k), axis);
        square += (there - at[axis]) * (there - at[axis]);
        corner[axis] = there + INSET * (at[axis] - there);
      }
      furthest = Math.max(furthest, Math.sqrt(square));
      if (isFree(face, corner) != (state[face] == FREE)) {
        return true;
      }
    }
    if (!coarse) {
      return false;
    }
    int parent = surface.parent(face);
    boolean mixed =
        state[face] == FREE
            ? reach.isOverhung(parent, at[0], at[1], at[2], furthest)
            : reach.distance(parent, at[0], at[1], at[2]) + furthest
                >= radiusMm * (1 - TipReach.MOST_SLACK);
    whole[face] = !mixed;
    return mixed;
  }

  private void split(int[] faces) {
    Halving halving = new Halving(surface);
    int known = surface.faceCount();
    for (int f : faces) {
      halving.choose(f);
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        if (surface.isDue(h)) {
          forget(h);
        }
      }
    }
    halving.split(faces);
    // Turned edges change further pieces of the faces that were split.
    for (int f : PiecesOf.parents(surface, faces, known)) {
      if (f < known) {
        state[f] = 0;
        whole[f] = false;
      }
    }
    judge(Progress.NONE);
  }

  /** Faces on an edge that will be split are judged anew. */
  private void forget(int h) {
    int g = h;
    do {
      state[g / 3] = 0;
      whole[g / 3] = false;
      g = surface.ring(g);
    } while (g != h);
  }

  /** Faces along the edge of what is touched. */
  private int[] border() {
    byte[] around = around();
    boolean[] border = new boolean[surface.faceCount()];
    for (int f = 0; f < border.length; f++) {
      border[f] = isBorder(f, around) && hasSide(f);
    }
    return indices(border);
  }

  /** Cuts faces along the line where the largest ball is the tip. */
  private final class ReachLine {
    private int[] stack = new int[1024];
    private int top;

    /** One entry per vertex: the parent face whose line it was made on, plus 1. */
    private int[] madeFor = new int[surface.vertexCount()];

    void cut(int[] faces) {
      for (int i = faces.length - 1; i >= 0; i--) {
        push(faces[i]);
      }
      while (top > 0) {
        one(stack[--top]);
      }
    }

    private void push(int face) {
      stack = top == stack.length ? Arrays.copyOf(stack, 2 * top) : stack;
      stack[top++] = face;
    }

    private void one(int face) {
      if (!hasSide(face)) {
        return;
      }
      double[] value = new double[3];
      for (int k = 0; k < 3; k++) {
        value[k] = value(face, surface.from(3 * face + k));
      }
      for (int k = 0; k < 3; k++) {
        int h = 3 * face + k;
        double a = value[k];
        double b = value[(k + 1) % 3];
        if (!(a < 0 && b > 0) && !(a > 0 && b < 0)) {
          continue;
        }
        double share = a / (a - b);
        if (share < SNAP_SHARE
            || share > 1 - SNAP_SHARE
            || surface.length(h) < SMALL * radiusMm
            || !surface.splitsSoundly(h, share)) {
          continue;
        }
        split(h, share);
        return;
      }
    }

    private void split(int h, double share) {
      int known = surface.faceCount();
      int g = h;
      do {
        push(g / 3);
        if (g / 3 < state.length) {
          state[g / 3] = 0;
        }
        g = surface.ring(g);
      } while (g != h);
      int vertex = surface.splitEdge(h, share);
      if (vertex >= madeFor.length) {
        madeFor = Arrays.copyOf(madeFor, EditableSurface.grown(vertex + 1));
      }
      madeFor[vertex] = surface.parent(h / 3) + 1;
      for (int f = known; f < surface.faceCount(); f++) {
        push(f);
      }
    }

    /** By how much the largest ball at a corner exceeds the tip, mm; 0 on the line. */
    private double value(int face, int vertex) {
      int made = vertex < madeFor.length ? madeFor[vertex] : 0;
      if (made == surface.parent(face) + 1) {
        return 0;
      }
      double ball =
          reach.largest(
              surface.parent(face),
              surface.at(vertex, 0),
              surface.at(vertex, 1),
              surface.at(vertex, 2),
              BEYOND * radiusMm);
      double value = ball - radiusMm;
      return made > 0 && Math.abs(value) <= SAME * radiusMm ? 0 : value;
    }
  }
}
