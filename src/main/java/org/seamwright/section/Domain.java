package org.seamwright.section;

import java.util.Arrays;
import java.util.function.Function;
import org.seamwright.mesh.Mesh;

/**
 * The faces to be split, as a surface of their own: components one after the other, in faces and
 * vertices alike. Components that only touch at a vertex have that vertex apart, so nothing spreads
 * from one into the other.
 *
 * @param surface the faces
 * @param faceBegin one entry per component and one more: its first face
 * @param vertexBegin one entry per component and one more: its first vertex
 * @param meshFace one entry per face: its face in the mesh it was taken from; empty if coarsened
 * @param meshVertex one entry per vertex: its vertex in that mesh
 * @param vertexMm2 one entry per vertex: a third of the area of its faces
 */
record Domain(
    Surface surface,
    int[] faceBegin,
    int[] vertexBegin,
    int[] meshFace,
    int[] meshVertex,
    double[] vertexMm2) {

  /** Whether this is a coarsened domain: its vertices, not its faces, are those of another. */
  boolean isCoarse() {
    return meshFace.length < surface.mesh().faceCount();
  }

  /** Number of components. */
  int components() {
    return faceBegin.length - 1;
  }

  /** Area of a component, mm². */
  double areaMm2(int component) {
    double sum = 0;
    for (int f = faceBegin[component]; f < faceBegin[component + 1]; f++) {
      sum += surface.areaMm2()[f];
    }
    return sum;
  }

  /**
   * Takes components out of a mesh.
   *
   * @param mesh the whole piece
   * @param component one entry per face: its component from 0, or negative to leave it out
   * @param components number of components
   */
  static Domain of(Mesh mesh, int[] component, int components) {
    return of(mesh, component, components, Surface::of);
  }

  /** Takes components out of a mesh and prepares their surface as asked. */
  static Domain of(Mesh mesh, int[] component, int components, Function<Mesh, Surface> prepare) {
    int[] faceBegin = new int[components + 1];
    for (int c : component) {
      if (c >= 0) {
        faceBegin[c + 1]++;
      }
    }
    for (int c = 0; c < components; c++) {
      faceBegin[c + 1] += faceBegin[c];
    }
    int[] meshFace = new int[faceBegin[components]];
    int[] fill = Arrays.copyOf(faceBegin, components);
    for (int f = 0; f < component.length; f++) {
      if (component[f] >= 0) {
        meshFace[fill[component[f]]++] = f;
      }
    }
    return number(mesh, component, faceBegin, meshFace, prepare);
  }

  private static Domain number(
      Mesh mesh,
      int[] component,
      int[] faceBegin,
      int[] meshFace,
      Function<Mesh, Surface> prepare) {
    int components = faceBegin.length - 1;
    int[] vertexBegin = new int[components + 1];
    int[] number = new int[mesh.vertexCount()];
    int[] owner = new int[mesh.vertexCount()];
    Arrays.fill(owner, -1);
    int[] corner = new int[3 * meshFace.length];
    int[] meshVertex = new int[Math.min(corner.length, mesh.vertexCount() + 16)];
    int count = 0;
    for (int i = 0; i < meshFace.length; i++) {
      int c = component[meshFace[i]];
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner()[3 * meshFace[i] + k];
        // A vertex shared with an earlier component is numbered afresh.
        if (owner[v] != c) {
          owner[v] = c;
          number[v] = count;
          if (count == meshVertex.length) {
            meshVertex = Arrays.copyOf(meshVertex, 2 * count);
          }
          meshVertex[count++] = v;
        }
        corner[3 * i + k] = number[v];
      }
      vertexBegin[c + 1] = count;
    }
    for (int c = 0; c < components; c++) {
      vertexBegin[c + 1] = Math.max(vertexBegin[c + 1], vertexBegin[c]);
    }
    meshVertex = Arrays.copyOf(meshVertex, count);
    double[] xyz = new double[3 * count];
    for (int v = 0; v < count; v++) {
      System.arraycopy(mesh.xyz(), 3 * meshVertex[v], xyz, 3 * v, 3);
    }
    Surface surface = prepare.apply(Mesh.of(xyz, corner));
    return new Domain(surface, faceBegin, vertexBegin, meshFace, meshVertex, vertexAreas(surface));
  }

  static double[] vertexAreas(Surface surface) {
    double[] area = new double[surface.mesh().vertexCount()];
    int[] corner = surface.mesh().corner();
    for (int h = 0; h < corner.length; h++) {
      area[corner[h]] += surface.areaMm2()[h / 3] / 3;
    }
    return area;
  }

  /**
   * Groups of components no two of which share a vertex of the mesh, so that each group can be cut
   * with one value per vertex. One entry per component; nearly always all 0.
   */
  int[] groups() {
    int vertices = 0;
    for (int m : meshVertex) {
      vertices = Math.max(vertices, m + 1);
    }
    // Groups at a vertex ascend, so the next free one is one above the last seen there.
    int[] free = new int[vertices];
    int[] group = new int[components()];
    for (int c = 0; c < components(); c++) {
      for (int v = vertexBegin[c]; v < vertexBegin[c + 1]; v++) {
        group[c] = Math.max(group[c], free[meshVertex[v]]);
      }
      for (int v = vertexBegin[c]; v < vertexBegin[c + 1]; v++) {
        free[meshVertex[v]] = group[c] + 1;
      }
    }
    return group;
  }
}
