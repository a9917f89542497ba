package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.SubMesh;

/**
 * A cut of some faces put back into the whole mesh: pieces take the place of the faces they are of.
 * Faces whose edges were cut must all be among those taken out. Cost: O(n).
 */
final class Splice {
  private final CutMesh cut;
  private final int[] piece;

  /**
   * Puts back.
   *
   * @param mesh the whole
   * @param sub the faces taken out, ascending
   * @param part a cut of them, pieces in the order of their faces
   */
  Splice(Mesh mesh, SubMesh sub, CutMesh part) {
    int faces = mesh.faceCount() - sub.faces().length + part.mesh().faceCount();
    int[] corner = new int[3 * faces];
    int[] parent = new int[faces];
    piece = new int[faces];
    int next = 0;
    int taken = 0;
    int at = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (taken < sub.faces().length && sub.faces()[taken] == f) {
        for (; next < part.parentFace().length && part.parentFace()[next] == taken; next++) {
          for (int k = 0; k < 3; k++) {
            corner[3 * at + k] = whole(mesh, sub, part.mesh().corner()[3 * next + k]);
          }
          parent[at] = f;
          piece[at++] = next;
        }
        taken++;
      } else {
        System.arraycopy(mesh.corner(), 3 * f, corner, 3 * at, 3);
        parent[at] = f;
        piece[at++] = -1;
      }
    }
    int old = sub.vertices().length;
    int added = part.mesh().vertexCount() - old;
    double[] xyz = Arrays.copyOf(mesh.xyz(), mesh.xyz().length + 3 * added);
    System.arraycopy(part.mesh().xyz(), 3 * old, xyz, mesh.xyz().length, 3 * added);
    cut =
        new CutMesh(
            Mesh.of(xyz, corner),
            parent,
            mesh.vertexCount(),
            whole(mesh, sub, part.edgeFrom()),
            whole(mesh, sub, part.edgeTo()),
            part.edgeAt(),
            whole(mesh, sub, part.third()),
            part.thirdAt());
  }

  private static int whole(Mesh mesh, SubMesh sub, int v) {
    int old = sub.vertices().length;
    return v < 0 ? v : v < old ? sub.vertices()[v] : mesh.vertexCount() + v - old;
  }

  private static int[] whole(Mesh mesh, SubMesh sub, int[] vertices) {
    return Arrays.stream(vertices).map(v -> whole(mesh, sub, v)).toArray();
  }

  /** The cut of the whole mesh. */
  CutMesh cut() {
    return cut;
  }

  /** One entry per face: its number among the pieces, or -1 for a face that was not taken out. */
  int[] piece() {
    return piece;
  }
}
