package org.seamwright.mesh;

import java.util.Objects;
import org.seamwright.basis.Parallel;

/**
 * A triangle mesh in millimetres. Immutable: a cut or repair gives a new mesh.
 *
 * <p>Face f has the corners {@code corner[3f], corner[3f+1], corner[3f+2]}, counter-clockwise seen
 * from outside where the file was right about it. Half-edge h = 3f + k starts at {@code corner[h]}
 * and ends at {@code corner[Topology.next(h)]}.
 *
 * <p>{@link #xyz()} and {@link #corner()} give the mesh's own arrays, since inner loops over
 * millions of faces live on them. They are read, never written.
 */
public final class Mesh {
  /** Below this many corners a second thread costs more than it saves. */
  private static final int MANY_CORNERS = 1 << 18;

  private final double[] xyz;
  private final int[] corner;

  private Mesh(double[] xyz, int[] corner) {
    this.xyz = xyz;
    this.corner = corner;
  }

  /**
   * Wraps arrays as a mesh and takes them over: the caller writes to them no more.
   *
   * @param xyz coordinates in mm, 3 per vertex
   * @param corner vertex numbers, 3 per face
   * @throws IllegalArgumentException if a length is no multiple of 3 or a vertex number is out of
   *     range
   */
  public static Mesh of(double[] xyz, int[] corner) {
    Objects.requireNonNull(xyz, "xyz");
    Objects.requireNonNull(corner, "corner");
    if (xyz.length % 3 != 0 || corner.length % 3 != 0) {
      throw new IllegalArgumentException(
          "Expected 3 numbers per vertex and face, found " + xyz.length + " and " + corner.length);
    }
    int vertices = xyz.length / 3;
    if (!allBelow(corner, vertices)) {
      int h = 0;
      while (corner[h] >= 0 && corner[h] < vertices) {
        h++;
      }
      throw new IllegalArgumentException(
          "Corner " + h + " names vertex " + corner[h] + " of " + vertices);
    }
    return new Mesh(xyz, corner);
  }

  /** Whether all numbers are from 0 to under a limit. */
  private static boolean allBelow(int[] numbers, int limit) {
    int ranges = Parallel.ranges(numbers.length, MANY_CORNERS);
    boolean[] wrong = new boolean[ranges];
    Parallel.each(
        ranges,
        i -> {
          int over = 0;
          int end = Parallel.begin(numbers.length, ranges, i + 1);
          for (int h = Parallel.begin(numbers.length, ranges, i); h < end; h++) {
            // The sign of this is set if the number is outside.
            over |= numbers[h] | (limit - 1 - numbers[h]);
          }
          wrong[i] = over < 0;
        });
    for (boolean some : wrong) {
      if (some) {
        return false;
      }
    }
    return true;
  }

  /** Number of vertices. */
  public int vertexCount() {
    return xyz.length / 3;
  }

  /** Number of faces. */
  public int faceCount() {
    return corner.length / 3;
  }

  /** Coordinates in mm, 3 per vertex: the mesh's own array, not to be written. */
  public double[] xyz() {
    return xyz;
  }

  /** Vertex numbers, 3 per face: the mesh's own array, not to be written. */
  public int[] corner() {
    return corner;
  }

  /** Coordinate x of a vertex, mm. */
  public double x(int vertex) {
    return xyz[3 * vertex];
  }

  /** Coordinate y of a vertex, mm. */
  public double y(int vertex) {
    return xyz[3 * vertex + 1];
  }

  /** Coordinate z of a vertex, mm. */
  public double z(int vertex) {
    return xyz[3 * vertex + 2];
  }

  /** The smallest box around all vertices that a face uses; all zero for a mesh without faces. */
  public Bounds bounds() {
    if (corner.length == 0) {
      return new Bounds(0, 0, 0, 0, 0, 0);
    }
    double[] lo = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    double[] hi = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (int vertex : corner) {
      for (int axis = 0; axis < 3; axis++) {
        double value = xyz[3 * vertex + axis];
        lo[axis] = Math.min(lo[axis], value);
        hi[axis] = Math.max(hi[axis], value);
      }
    }
    return new Bounds(lo[0], lo[1], lo[2], hi[0], hi[1], hi[2]);
  }

  /** The same mesh with every coordinate multiplied, as a change of unit does. */
  public Mesh scaledBy(double factor) {
    if (!(factor > 0) || Double.isInfinite(factor)) {
      throw new IllegalArgumentException("Scale must be positive and finite: " + factor);
    }
    if (factor == 1) {
      return this;
    }
    double[] scaled = new double[xyz.length];
    for (int i = 0; i < xyz.length; i++) {
      scaled[i] = xyz[i] * factor;
    }
    return new Mesh(scaled, corner);
  }
}
