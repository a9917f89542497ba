package org.seamwright.mesh;

/**
 * For each vertex the half-edges that start there, one per face around it: offsets into one flat
 * list. Works for any soup; the order within a fan is by half-edge number.
 */
public final class VertexFans {
  private final int[] offset;
  private final int[] halfEdge;

  private VertexFans(int[] offset, int[] halfEdge) {
    this.offset = offset;
    this.halfEdge = halfEdge;
  }

  /** Lists the half-edges of a mesh by start vertex: O(n). */
  public static VertexFans of(Mesh mesh) {
    int[] corner = mesh.corner();
    int[] offset = new int[mesh.vertexCount() + 1];
    for (int v : corner) {
      offset[v + 1]++;
    }
    for (int v = 0; v < mesh.vertexCount(); v++) {
      offset[v + 1] += offset[v];
    }
    int[] fill = offset.clone();
    int[] halfEdge = new int[corner.length];
    for (int h = 0; h < corner.length; h++) {
      halfEdge[fill[corner[h]]++] = h;
    }
    return new VertexFans(offset, halfEdge);
  }

  /** Where the fan of a vertex begins in the list; it ends before {@code begin(vertex + 1)}. */
  public int begin(int vertex) {
    return offset[vertex];
  }

  /** Entry of the list: a half-edge. */
  public int halfEdge(int index) {
    return halfEdge[index];
  }
}
