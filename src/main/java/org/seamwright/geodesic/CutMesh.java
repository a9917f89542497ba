package org.seamwright.geodesic;

import java.util.Arrays;
import java.util.Objects;
import org.seamwright.mesh.Mesh;

/**
 * A mesh after a cut. The old vertices keep their numbers; each new vertex lies on an edge between
 * two earlier vertices, so any per-vertex value can be carried over.
 *
 * @param mesh the finer mesh; its area is the old one's up to rounding
 * @param parentFace one entry per face: the face of the mesh before the cut that it is a piece of
 * @param oldVertexCount vertices before the cut; vertex {@code oldVertexCount + i} is new vertex i
 * @param edgeFrom one entry per new vertex: one end of the edge it lies on, an earlier vertex
 * @param edgeTo one entry per new vertex: the other end
 * @param edgeAt one entry per new vertex: share of the way from {@code edgeFrom} to {@code edgeTo},
 *     strictly between 0 and 1
 */
public record CutMesh(
    Mesh mesh,
    int[] parentFace,
    int oldVertexCount,
    int[] edgeFrom,
    int[] edgeTo,
    double[] edgeAt) {
  /** Checks that the arrays fit together. */
  public CutMesh {
    Objects.requireNonNull(mesh, "mesh");
    if (parentFace.length != mesh.faceCount()
        || oldVertexCount + edgeFrom.length != mesh.vertexCount()
        || edgeFrom.length != edgeTo.length
        || edgeFrom.length != edgeAt.length) {
      throw new IllegalArgumentException("Arrays of a cut don't fit its mesh");
    }
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
      carried[oldVertexCount + i] = from + edgeAt[i] * (carried[edgeTo[i]] - from);
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
}
