package org.seamwright.region;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.measure.ClosedBody;

/**
 * Cuts a surface along that of a closed body and tells what is inside.
 *
 * <p>Where an edge of the surface passes through a face of the body it is split, where an edge of
 * the body passes through a face that face is split, until none of either is left: then no face of
 * the surface has the body's on both sides, and the line between them runs along edges. Both
 * surfaces are taken as they are, face by face, so the areas are those of the facets to rounding.
 * Faces that meet many small ones of the body are halved first, which moves nothing and keeps the
 * pieces round. The meeting of two faces is that of T. Möller, "A Fast Triangle-Triangle
 * Intersection Test", Journal of Graphics Tools 2 (1997); inside is told by {@link ClosedBody}.
 *
 * <p>A corner nearer to the plane of a face than {@link PlaneMarks#SNAP} of the piece's diagonal
 * counts as lying in it, and a crossing that near to the end of an edge, or within {@link
 * #SNAP_SHARE} of its length, as passing through that end. A face in the body's surface is inside.
 *
 * <p>Cost: a look at each face, then in proportion to the faces that meet the body's.
 */
final class BodyCut {
  /** As where planes cut: pieces keep enough area for the rounding of coordinates. */
  private static final double SNAP_SHARE = 1e-6;

  /** Faces of the body that one face may meet before it is halved. */
  private static final int MOST_MET = 12;

  /** Faces are not halved below this many times the size of those that they meet. */
  private static final double SIZES = 2;

  private static final int MOST_PASSES = 40;
  private static final int LEAST_PER_RANGE = 1 << 12;

  private final EditableSurface surface;
  private final ClosedBody body;
  private final BodyMeeting meeting;
  private final double snapMm;

  /** Faces to look at. */
  private int[] stack = new int[1024];

  private int top;

  /** One entry per face: whether it meets the body's surface or is a piece of one that did. */
  private boolean[] near;

  BodyCut(EditableSurface surface, ClosedBody body, double diagonalMm) {
    this.surface = surface;
    this.body = body;
    this.snapMm = PlaneMarks.SNAP * diagonalMm;
    this.meeting = new BodyMeeting(surface, body, snapMm);
    this.near = new boolean[surface.faceCount()];
  }

  /** Cuts; gives for each face of the cut surface whether it is inside the body. */
  boolean[] cover(Progress progress) {
    int[] met = halve(progress.between(0, 0.3));
    for (int i = met.length - 1; i >= 0; i--) {
      push(met[i]);
    }
    int looked = 0;
    while (top > 0) {
      split(stack[--top]);
      if ((++looked & 0xfff) == 0) {
        progress.at(0.3 + 0.5 * looked / (looked + top));
      }
    }
    progress.at(0.8);
    return inside();
  }

  /** Halves faces that meet many of the body's; gives those that meet any. */
  private int[] halve(Progress progress) {
    Halving halving = new Halving(surface);
    int[] faces = new int[surface.faceCount()];
    Arrays.setAll(faces, f -> f);
    byte[] how = new byte[0];
    for (int pass = 0; pass < MOST_PASSES; pass++) {
      progress.at((double) pass / MOST_PASSES);
      how = Arrays.copyOf(how, surface.faceCount());
      byte[] now = meetings(faces, halving);
      int[] many = new int[faces.length];
      int count = 0;
      for (int i = 0; i < faces.length; i++) {
        how[faces[i]] = now[i];
        if (now[i] > 1) {
          many[count++] = faces[i];
        }
      }
      if (count == 0) {
        break;
      }
      int known = surface.faceCount();
      many = Arrays.copyOf(many, count);
      for (int f : many) {
        halving.choose(f);
      }
      halving.split(many);
      // Halving turns edges too, so that other pieces of the same faces may meet others now.
      faces = PiecesOf.parents(surface, many, known);
    }
    byte[] last = how;
    return IntStream.range(0, last.length).filter(f -> last[f] > 0).toArray();
  }

  /**
   * Per face: 0 if it meets none of the body's faces, 1 if some, 2 if so many that it is halved.
   */
  private byte[] meetings(int[] faces, Halving halving) {
    byte[] how = new byte[faces.length];
    Parallel.split(
        faces.length,
        Parallel.ranges(faces.length, LEAST_PER_RANGE),
        (from, to) -> {
          BodyMeeting own = new BodyMeeting(surface, body, snapMm);
          for (int i = from; i < to; i++) {
            int count = own.meet(faces[i]);
            boolean many =
                count > MOST_MET
                    && surface.length(halving.longestEdge(faces[i])) > SIZES * own.meanSize();
            how[i] = (byte) (count == 0 ? 0 : many ? 2 : 1);
          }
        });
    return how;
  }

  /** Splits a face and the edges on it until it meets nothing across. */
  private void split(int face) {
    if (!surface.hasEdges(face)) {
      return;
    }
    while (meeting.meet(face) > 0) {
      int known = surface.faceCount();
      if (!splitAtPoint(face) && !splitEdge(face)) {
        return;
      }
      for (int f = known; f < surface.faceCount(); f++) {
        push(f);
      }
    }
  }

  private boolean splitAtPoint(int face) {
    double[] weight = new double[3];
    double margin = Math.max(snapMm, SNAP_SHARE * longest(face));
    if (!meeting.pointInside(margin, weight) || !meeting.splitsSoundly(weight)) {
      return false;
    }
    surface.splitFace(face, weight[0], weight[1], weight[2]);
    return true;
  }

  private boolean splitEdge(int face) {
    for (int h = 3 * face; h < 3 * face + 3; h++) {
      double share = meeting.crossing(h, SNAP_SHARE);
      if (share > 0 && surface.splitsSoundly(h, share)) {
        for (int g = surface.ring(h); g != h; g = surface.ring(g)) {
          push(g / 3);
        }
        surface.splitEdge(h, share);
        return true;
      }
    }
    return false;
  }

  private double longest(int face) {
    return Math.max(
        surface.length(3 * face),
        Math.max(surface.length(3 * face + 1), surface.length(3 * face + 2)));
  }

  private void push(int face) {
    if (top == stack.length) {
      stack = Arrays.copyOf(stack, 2 * top);
    }
    stack[top++] = face;
    if (face >= near.length) {
      near = Arrays.copyOf(near, EditableSurface.grown(face + 1));
    }
    near[face] = true;
  }

  private boolean[] inside() {
    int faces = surface.faceCount();
    near = Arrays.copyOf(near, faces);
    boolean[] inside = new boolean[faces];
    Parallel.split(
        faces,
        Parallel.ranges(faces, LEAST_PER_RANGE),
        (from, to) -> {
          for (int f = from; f < to; f++) {
            inside[f] = near[f] && isInside(f);
          }
        });
    // Where nothing meets the body's surface neighbours are on the same side of it.
    boolean[] seen = near.clone();
    int[] queue = new int[faces];
    for (int seed = 0; seed < faces; seed++) {
      if (!seen[seed]) {
        flood(seed, isInside(seed), seen, inside, queue);
      }
    }
    return inside;
  }

  private void flood(int seed, boolean is, boolean[] seen, boolean[] inside, int[] queue) {
    int end = 0;
    queue[end++] = seed;
    seen[seed] = true;
    for (int begin = 0; begin < end; begin++) {
      int f = queue[begin];
      inside[f] = is;
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        for (int g = surface.ring(h); g != h; g = surface.ring(g)) {
          if (!seen[g / 3]) {
            seen[g / 3] = true;
            queue[end++] = g / 3;
          }
        }
      }
    }
  }

  private boolean isInside(int face) {
    double[] at = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      at[axis] =
          (surface.at(surface.from(3 * face), axis)
                  + surface.at(surface.from(3 * face + 1), axis)
                  + surface.at(surface.from(3 * face + 2), axis))
              / 3;
    }
    return body.contains(at[0], at[1], at[2])
        || body.tree().nearest(at[0], at[1], at[2], 2 * snapMm).isPresent();
  }
}
