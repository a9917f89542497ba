package org.seamwright.geodesic;

import java.util.function.IntPredicate;
import org.seamwright.mesh.Mesh;

/**
 * Cuts a mesh along the line where a field, given per vertex and linear inside faces, has a level.
 *
 * <p>Each cut edge gets one vertex, at a place computed from its lower end whichever face asks, so
 * neighbours stay welded. A face that is not to be cut but has such a vertex on its edge is split
 * there too (its pieces are flat parts of it), also on branching, flipped and open edges. Works on
 * any soup; O(n) plus hashing of the cut edges only.
 *
 * <p>Guarantees: area kept up to rounding; pieces face the way of their parents; a parent's pieces
 * follow one another in the order of faces. The line moves, never the geometry: by at most {@link
 * #SNAP_SHARE} of an edge as a rule, {@link #TIGHT_SNAP_SHARE} where rounding would turn a piece.
 */
public final class FieldCut {
  /**
   * A crossing nearer than this share of its edge to one end is moved into that end. Pieces then
   * keep 1e-12 of their parent's area, which the rounding of coordinates leaves positive.
   */
  public static final double SNAP_SHARE = 1e-6;

  /** How far a crossing may be moved where a piece would otherwise lose its area to rounding. */
  public static final double TIGHT_SNAP_SHARE = 1e-2;

  private final Mesh mesh;
  private final double[] field;
  private final double level;
  private final IntPredicate facesToCut;

  /** One entry per vertex, set for those that count as on the line. */
  private final boolean[] onLine;

  private FieldCut(Mesh mesh, double[] field, double level, IntPredicate facesToCut) {
    this.mesh = mesh;
    this.field = field;
    this.level = level;
    this.facesToCut = facesToCut;
    this.onLine = new boolean[mesh.vertexCount()];
  }

  /**
   * Cuts along field = level.
   *
   * @param mesh any soup
   * @param field one entry per vertex; a face with a corner that is not finite is not cut
   * @param level the value on the line, in the field's unit
   * @param facesToCut which faces the line may cross
   * @throws IllegalArgumentException if the field has not one entry per vertex
   */
  public static CutMesh along(Mesh mesh, double[] field, double level, IntPredicate facesToCut) {
    if (field.length != mesh.vertexCount()) {
      throw new IllegalArgumentException(
          "Expected " + mesh.vertexCount() + " values, found " + field.length);
    }
    return new FieldCut(mesh, field, level, facesToCut).cut();
  }

  /**
   * Which faces of a cut mesh lie below the level it was cut at.
   *
   * @param cut made by {@link #along} with the same field and level
   * @param field one entry per vertex before the cut
   * @param level the level
   * @return one entry per face of the cut mesh; false where a corner is not finite
   */
  public static boolean[] below(CutMesh cut, double[] field, double level) {
    double[] value = cut.carry(field);
    int[] corner = cut.mesh().corner();
    boolean[] below = new boolean[cut.mesh().faceCount()];
    for (int f = 0; f < below.length; f++) {
      double sum =
          (value[corner[3 * f]] - level)
              + (value[corner[3 * f + 1]] - level)
              + (value[corner[3 * f + 2]] - level);
      below[f] = sum < 0;
    }
    return below;
  }

  private CutMesh cut() {
    snapNearEnds();
    while (true) {
      NewVertices vertices = crossings();
      if (vertices.count() == 0) {
        return CutMesh.none(mesh);
      }
      Pieces pieces = new Pieces(mesh, vertices);
      boolean moved = false;
      for (int f = 0; f < mesh.faceCount(); f++) {
        int first = pieces.count();
        pieces.split(f);
        if (pieces.count() > first + 1 && !pieces.sound(f, first)) {
          moved |= snapNearest(f, vertices);
        }
      }
      if (!moved) {
        return vertices.cut(pieces.xyz(), pieces.corners(), pieces.parents());
      }
    }
  }

  private boolean mayCross(int face) {
    int[] c = mesh.corner();
    double a = field[c[3 * face]];
    double b = field[c[3 * face + 1]];
    double d = field[c[3 * face + 2]];
    double lowest = Math.min(a, Math.min(b, d));
    double highest = Math.max(a, Math.max(b, d));
    return lowest <= level
        && highest >= level
        && lowest > Double.NEGATIVE_INFINITY
        && highest < Double.POSITIVE_INFINITY
        && c[3 * face] != c[3 * face + 1]
        && c[3 * face + 1] != c[3 * face + 2]
        && c[3 * face + 2] != c[3 * face]
        && facesToCut.test(face);
  }

  /** Share of the way from a to b where the level is; outside (0, 1) if not between them. */
  private double share(int a, int b) {
    double below = level - field[a];
    double step = field[b] - field[a];
    return Double.isInfinite(step) ? -1 : below / step;
  }

  private boolean crosses(int a, int b) {
    return !onLine[a] && !onLine[b] && (field[a] < level) != (field[b] < level);
  }

  private void snapNearEnds() {
    int[] c = mesh.corner();
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (!mayCross(f)) {
        continue;
      }
      for (int k = 0; k < 3; k++) {
        int a = c[3 * f + k];
        int b = c[3 * f + (k + 1) % 3];
        if ((field[a] < level) == (field[b] < level)) {
          onLine[a] |= field[a] == level;
          onLine[b] |= field[b] == level;
          continue;
        }
        double share = share(Math.min(a, b), Math.max(a, b));
        // Written so that a share that is no number snaps as well.
        if (!(share >= SNAP_SHARE)) {
          onLine[Math.min(a, b)] = true;
        }
        if (!(share <= 1 - SNAP_SHARE)) {
          onLine[Math.max(a, b)] = true;
        }
      }
    }
  }

  private NewVertices crossings() {
    NewVertices vertices = new NewVertices(mesh);
    int[] c = mesh.corner();
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (!mayCross(f)) {
        continue;
      }
      for (int k = 0; k < 3; k++) {
        int low = Math.min(c[3 * f + k], c[3 * f + (k + 1) % 3]);
        int high = Math.max(c[3 * f + k], c[3 * f + (k + 1) % 3]);
        if (crosses(low, high)) {
          vertices.addOnEdge(low, high, share(low, high));
        }
      }
    }
    return vertices;
  }

  /** Moves the crossing of a face that is nearest an end into it, if that is near enough. */
  private boolean snapNearest(int face, NewVertices vertices) {
    int[] c = mesh.corner();
    int nearest = -1;
    double least = TIGHT_SNAP_SHARE;
    for (int k = 0; k < 3; k++) {
      int a = c[3 * face + k];
      for (int other = 1; other <= 2; other++) {
        int b = c[3 * face + (k + other) % 3];
        int index = vertices.onEdge(a, b);
        if (index >= 0 && vertices.share(index, b) < least) {
          least = vertices.share(index, b);
          nearest = a;
        }
      }
    }
    if (nearest < 0 || onLine[nearest]) {
      return false;
    }
    onLine[nearest] = true;
    return true;
  }
}
