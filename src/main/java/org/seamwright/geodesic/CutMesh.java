package org.seamwright.geodesic;

import java.util.Arrays;
import java.util.Objects;
import org.seamwright.mesh.Mesh;

/**
 * A mesh after a cut. The old vertices keep their numbers; each new vertex lies on an edge between
 * two earlier vertices or, where lines meet inside a face, on the way from such a place to a third
 * vertex. So any per-vertex value can be carried over.
 *
 * @param mesh the finer mesh; its area is the old one's up to rounding
 * @param parentFace one entry per face: the face of the mesh before the cut that it is a piece of
 * @param oldVertexCount vertices before the cut; vertex {@code oldVertexCount + i} is new vertex i
 * @param edgeFrom one entry per new vertex: one end of the edge it lies on, an earlier vertex
 * @param edgeTo one entry per new vertex: the other end
 * @param edgeAt one entry per new vertex: share of the way from {@code edgeFrom} to {@code edgeTo},
 *     strictly between 0 and 1
 * @param third one entry per new vertex: the earlier vertex it lies towards, -1 for one on its edge
 * @param thirdAt one entry per new vertex: share of the way from the place on the edge to {@code
 *     third}; 0 for one on its edge
 */
public record CutMesh(
    Mesh mesh,
    int[] parentFace,
    int oldVertexCount,
    int[] edgeFrom,
    int[] edgeTo,
    double[] edgeAt,
    int[] third,
    double[] thirdAt) {
  /** Checks that the arrays fit together. */
  public CutMesh {
    Objects.requireNonNull(mesh, "mesh");
    if (parentFace.length != mesh.faceCount()
        || oldVertexCount + edgeFrom.length != mesh.vertexCount()
        || edgeFrom.length != edgeTo.length
        || edgeFrom.length != edgeAt.length
        || edgeFrom.length != third.length
        || edgeFrom.length != thirdAt.length) {
      throw new IllegalArgumentException("Arrays of a cut don't fit its mesh");
    }
  }

  /** A cut whose new vertices all lie on edges. */
  public CutMesh(
      Mesh mesh,
      int[] parentFace,
      int oldVertexCount,
      int[] edgeFrom,
      int[] edgeTo,
      double[] edgeAt) {
    this(
        mesh,
        parentFace,
        oldVertexCount,
        edgeFrom,
        edgeTo,
        edgeAt,
        none(edgeFrom.length),
        new double[edgeFrom.length]);
  }

  private static int[] none(int count) {
    int[] none = new int[count];
    Arrays.fill(none, -1);
    return none;
  }

  /** The cut that changes nothing. */
  public static CutMesh none(Mesh mesh) {
    int[] parent = new int[mesh.faceCount()];
    Arrays.setAll(parent, f -> f);
    return new CutMesh(mesh, parent, mesh.vertexCount(), new int[0], new int[0], new double[0]);
  }

  /**
   * Carries a value per old vertex over to all vertices, linearly along the cut edges.
   *
   * @param value one entry per old vertex
   */
  public double[] carry(double[] value) {
    double[] carried = Arrays.copyOf(value, mesh.vertexCount());
    for (int i = 0; i < edgeFrom.length; i++) {
      double from = carried[edgeFrom[i]];
      double there = from + edgeAt[i] * (carried[edgeTo[i]] - from);
      if (third[i] >= 0) {
        there += thirdAt[i] * (carried[third[i]] - there);
      }
      carried[oldVertexCount + i] = there;
    }
    return carried;
  }

  /**
   * Carries a value per old face over to the pieces.
   *
   * @param value one entry per old face
   */
  public int[] carryFaces(int[] value) {
    int[] carried = new int[parentFace.length];
    for (int f = 0; f < carried.length; f++) {
      carried[f] = value[parentFace[f]];
    }
    return carried;
  }

  /**
   * This cut and then another one as one cut of the mesh before this.
   *
   * @param next a cut of this cut's {@link #mesh()}
   */
  public CutMesh then(CutMesh next) {
    if (next.oldVertexCount != mesh.vertexCount()) {
      throw new IllegalArgumentException("The second cut is not one of the first one's mesh");
    }
    return new CutMesh(
        next.mesh,
        next.carryFaces(parentFace),
        oldVertexCount,
        joined(edgeFrom, next.edgeFrom),
        joined(edgeTo, next.edgeTo),
        joined(edgeAt, next.edgeAt),
        joined(third, next.third),
        joined(thirdAt, next.thirdAt));
  }

  private static int[] joined(int[] a, int[] b) {
    int[] both = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    return both;
  }

  private static double[] joined(double[] a, double[] b) {
    double[] both = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    return both;
  }
}
