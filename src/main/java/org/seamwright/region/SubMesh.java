package org.seamwright.region;

import java.util.Arrays;
import org.seamwright.mesh.Mesh;

/**
 * Some faces of a mesh as a mesh of their own.
 *
 * @param mesh faces in the order they were asked for, vertices in the order these meet them
 * @param faces one entry per face: its number in the whole
 * @param vertices one entry per vertex: its number in the whole
 */
public record SubMesh(Mesh mesh, int[] faces, int[] vertices) {
  /** Takes out faces of a mesh: O(vertices of the mesh + faces taken). */
  public static SubMesh of(Mesh whole, int[] faces) {
    return of(whole.xyz(), whole.corner(), faces, new int[whole.vertexCount()]);
  }

  /**
   * Takes out faces in time that depends on their number only.
   *
   * @param local working space, one entry per vertex of the whole, all 0 before and after
   */
  public static SubMesh of(Mesh whole, int[] faces, int[] local) {
    return of(whole.xyz(), whole.corner(), faces, local);
  }

  /**
   * Takes out faces in time that depends on their number only.
   *
   * @param xyz coordinates, 3 per vertex
   * @param corner vertices, 3 per face
   * @param local working space, one entry per vertex, all 0 before and after
   */
  static SubMesh of(double[] xyz, int[] corner, int[] faces, int[] local) {
    int[] vertices = new int[3 * faces.length];
    int[] own = new int[3 * faces.length];
    int count = 0;
    for (int i = 0; i < own.length; i++) {
      int v = corner[3 * faces[i / 3] + i % 3];
      if (local[v] == 0) {
        vertices[count++] = v;
        local[v] = count;
      }
      own[i] = local[v] - 1;
    }
    double[] points = new double[3 * count];
    for (int i = 0; i < count; i++) {
      local[vertices[i]] = 0;
      System.arraycopy(xyz, 3 * vertices[i], points, 3 * i, 3);
    }
    return new SubMesh(Mesh.of(points, own), faces, Arrays.copyOf(vertices, count));
  }
}
