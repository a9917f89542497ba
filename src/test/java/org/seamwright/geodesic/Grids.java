package org.seamwright.geodesic;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;

/** Meshes over a unit square, even and sliver-ridden, and sources on them. */
final class Grids {
  private Grids() {}

  /** A place for each point of the unit square. */
  @FunctionalInterface
  interface Map {
    double[] at(double u, double v);
  }

  /** Even; shifted with random diagonals; stretched 20:1 each way. */
  static List<Mesh> ofEvenKinds(int faces, boolean closed, Map map) {
    return List.of(
        of(faces, 1, closed, 0, false, map),
        of(faces, 1, closed, 0.6, true, map),
        of(faces, 20, closed, 0, false, map),
        of(faces, 1 / 20.0, closed, 0, true, map));
  }

  /** Those, and stretched 20:1 and shifted: needles of every direction. */
  static List<Mesh> ofEachKind(int faces, boolean closed, Map map) {
    List<Mesh> kinds = new ArrayList<>(ofEvenKinds(faces, closed, map));
    kinds.add(of(faces, 20, closed, 0.6, true, map));
    return kinds;
  }

  /**
   * A grid.
   *
   * @param stretch how much longer a cell is along u than along v, on a square
   * @param closed whether u = 1 is u = 0
   * @param shift how far vertices are moved at random, in cells
   * @param randomDiagonals whether diagonals run at random
   */
  static Mesh of(
      int faces, double stretch, boolean closed, double shift, boolean randomDiagonals, Map map) {
    int nu = (int) Math.round(Math.sqrt(faces / 2.0 / stretch));
    int nv = (int) Math.round(Math.sqrt(faces / 2.0 * stretch));
    Random random = new Random(1);
    int row = closed ? nu : nu + 1;
    double[] xyz = new double[3 * row * (nv + 1)];
    for (int j = 0; j <= nv; j++) {
      for (int i = 0; i < row; i++) {
        boolean free = j > 0 && j < nv && (closed || (i > 0 && i < nu));
        double du = free ? shift * (random.nextDouble() - 0.5) : 0;
        double dv = free ? shift * (random.nextDouble() - 0.5) : 0;
        System.arraycopy(map.at((i + du) / nu, (j + dv) / nv), 0, xyz, 3 * (j * row + i), 3);
      }
    }
    int[] corner = new int[6 * nu * nv];
    int n = 0;
    for (int j = 0; j < nv; j++) {
      for (int i = 0; i < nu; i++) {
        int a = j * row + i;
        int b = j * row + (i + 1) % row;
        int c = b + row;
        int d = a + row;
        boolean other = randomDiagonals && random.nextBoolean();
        int[] two = other ? new int[] {a, b, d, b, c, d} : new int[] {a, b, c, a, c, d};
        System.arraycopy(two, 0, corner, n, 6);
        n += 6;
      }
    }
    return Mesh.of(xyz, corner);
  }

  static double meanEdge(Mesh mesh) {
    double sum = 0;
    for (int h = 0; h < mesh.corner().length; h++) {
      sum += Faces.length(mesh, mesh.corner()[h], mesh.corner()[Topology.next(h)]);
    }
    return sum / mesh.corner().length;
  }

  /** Half-edges, one an edge, whose two ends are both among some vertices. */
  static int[] edges(Mesh mesh, IntPredicate vertices) {
    Topology topology = Topology.of(mesh);
    IntList edges = new IntList(16);
    for (int h = 0; h < mesh.corner().length; h++) {
      boolean first = topology.twin(h) < 0 || topology.twin(h) > h;
      if (first
          && vertices.test(mesh.corner()[h])
          && vertices.test(mesh.corner()[Topology.next(h)])) {
        edges.add(h);
      }
    }
    return edges.toArray();
  }

  /** A polyline over a mesh of the plane z = 0, with a point at each edge it crosses. */
  static Sources polyline(Mesh mesh, double[][] bends) {
    FaceTree tree = FaceTree.of(mesh);
    Topology topology = Topology.of(mesh);
    List<SurfacePoint> points = new ArrayList<>();
    for (int s = 0; s + 1 < bends.length; s++) {
      SurfacePoint start = tree.nearest(bends[s][0], bends[s][1], 0).orElseThrow();
      points.add(start);
      int h = exit(mesh, start.face(), -1, bends[s], bends[s + 1]);
      while (h >= 0) {
        double v = side(mesh, mesh.corner()[h], bends[s], bends[s + 1]);
        double w = side(mesh, mesh.corner()[Topology.next(h)], bends[s], bends[s + 1]);
        points.add(PathTrace.onEdge(h / 3, h % 3, v / (v - w)));
        h = exit(mesh, topology.twin(h) / 3, topology.twin(h), bends[s], bends[s + 1]);
      }
    }
    double[] last = bends[bends.length - 1];
    points.add(tree.nearest(last[0], last[1], 0).orElseThrow());
    return Sources.path(points);
  }

  /** The half-edge by which a segment leaves a face, or -1 if it ends there. */
  private static int exit(Mesh mesh, int face, int entry, double[] from, double[] to) {
    for (int h = 3 * face; h < 3 * face + 3; h++) {
      int v = mesh.corner()[h];
      int w = mesh.corner()[Topology.next(h)];
      double sv = side(mesh, v, from, to);
      double sw = side(mesh, w, from, to);
      if (h != entry && sv < 0 && sw > 0) {
        double beyond =
            (mesh.x(w) - mesh.x(v)) * (to[1] - mesh.y(v))
                - (mesh.y(w) - mesh.y(v)) * (to[0] - mesh.x(v));
        return beyond < 0 ? h : -1;
      }
    }
    return -1;
  }

  private static double side(Mesh mesh, int v, double[] a, double[] b) {
    return (b[0] - a[0]) * (mesh.y(v) - a[1]) - (b[1] - a[1]) * (mesh.x(v) - a[0]);
  }

  /** Plain distance of a vertex from a polyline in the plane z = 0. */
  static double distance(Mesh mesh, int v, double[][] bends) {
    double least = Double.POSITIVE_INFINITY;
    for (int s = 0; s + 1 < bends.length; s++) {
      double ux = bends[s + 1][0] - bends[s][0];
      double uy = bends[s + 1][1] - bends[s][1];
      double x = mesh.x(v) - bends[s][0];
      double y = mesh.y(v) - bends[s][1];
      double t = Math.max(0, Math.min(1, (x * ux + y * uy) / (ux * ux + uy * uy)));
      least = Math.min(least, Math.hypot(x - t * ux, y - t * uy));
    }
    return least;
  }
}
