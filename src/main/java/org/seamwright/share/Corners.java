package org.seamwright.share;

import java.util.Arrays;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.picture.CornerNormals;

/**
 * A mesh as graphics cards take it: places with one normal each, doubled where normals differ, and
 * triangles in the order of their regions.
 *
 * @param vertex for each place its vertex of the mesh
 * @param normal three numbers per place, unit
 * @param index three places per triangle
 * @param begin first triangle of each region, and one more
 */
record Corners(int[] vertex, float[] normal, int[] index, int[] begin) {
  /** Normals that differ by less look alike: steps of a signed byte. */
  private static final float STEPS = 127;

  /** As in the printed pictures. */
  private static final double CREASE_DEGREES = 40;

  /** Share of faces that may lie on a sharp edge each. */
  private static final double MOST_CREASES = 0.5;

  static Corners of(Mesh mesh, int[] region, int regions) {
    float[] normals = CornerNormals.of(mesh);
    int faces = mesh.faceCount();
    int[] begin = new int[regions + 1];
    for (int r : region) {
      begin[r + 1]++;
    }
    for (int r = 0; r < regions; r++) {
      begin[r + 1] += begin[r];
    }
    int[] next = Arrays.copyOf(begin, regions);
    int[] index = new int[3 * faces];
    int[] vertex = new int[3 * faces];
    float[] normal = new float[9 * faces];
    int[] head = new int[mesh.vertexCount()];
    int[] link = new int[3 * faces];
    Arrays.fill(head, -1);
    int count = 0;
    int[] order = new int[faces];
    for (int f = 0; f < faces; f++) {
      order[next[region[f]]++] = f;
    }
    for (int k = 0; k < faces; k++) {
      for (int h = 3 * order[k]; h < 3 * order[k] + 3; h++) {
        int v = mesh.corner()[h];
        int place = head[v];
        while (place >= 0 && !alike(normal, place, normals, h)) {
          place = link[place];
        }
        if (place < 0) {
          place = count++;
          vertex[place] = v;
          System.arraycopy(normals, 3 * h, normal, 3 * place, 3);
          link[place] = head[v];
          head[v] = place;
        }
        index[3 * k + h % 3] = place;
      }
    }
    return new Corners(
        Arrays.copyOf(vertex, count), Arrays.copyOf(normal, 3 * count), index, begin);
  }

  private static boolean alike(float[] normal, int place, float[] normals, int h) {
    for (int axis = 0; axis < 3; axis++) {
      if (Math.round(STEPS * normal[3 * place + axis])
          != Math.round(STEPS * normals[3 * h + axis])) {
        return false;
      }
    }
    return true;
  }

  /** Ends of the edges where two regions meet, two vertices of the mesh each. */
  static int[] lines(Mesh mesh, int[] region) {
    return edges(mesh, (f, g) -> region[f] != region[g]);
  }

  /**
   * Ends of sharp edges, two vertices of the mesh each; none where there are so many that the
   * surface is rough all over and lines would blacken it.
   */
  static int[] creases(Mesh mesh) {
    double least = Math.cos(Math.toRadians(CREASE_DEGREES));
    double[] n = new double[3];
    double[] m = new double[3];
    int[] ends =
        edges(
            mesh,
            (f, g) -> {
              Faces.normal(mesh, f, n);
              Faces.normal(mesh, g, m);
              return n[0] * m[0] + n[1] * m[1] + n[2] * m[2] < least;
            });
    return ends.length > MOST_CREASES * 2 * mesh.faceCount() ? new int[0] : ends;
  }

  /** Which edges are wanted, by their two faces. */
  @FunctionalInterface
  private interface Between {
    boolean wants(int f, int g);
  }

  private static int[] edges(Mesh mesh, Between between) {
    Topology topology = Topology.of(mesh);
    int[] ends = new int[1024];
    int count = 0;
    for (int h = 0; h < mesh.corner().length; h++) {
      int twin = topology.twin(h);
      if (twin > h && between.wants(h / 3, twin / 3)) {
        if (count == ends.length) {
          ends = Arrays.copyOf(ends, 2 * ends.length);
        }
        ends[count++] = mesh.corner()[h];
        ends[count++] = mesh.corner()[Topology.next(h)];
      }
    }
    return Arrays.copyOf(ends, count);
  }
}
