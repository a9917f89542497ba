package org.seamwright.measure;

import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Vertices moved, along the normals, onto quadrics fitted to the surface around them at the length
 * of a brush's tip (moving least squares, {@link QuadricHeight}). Quadrics don't shrink what is
 * round; waves of four tips' length keep nine tenths of their area and more.
 *
 * <p>Neighbours are gathered along edges, within {@link #REACH} tips in the tangent plane and two
 * rows of faces at least; faces turned away by more than 60° are left out. The same digits on any
 * number of cores. O(n) times the neighbours, {@link #MOST} at most: where faces are so fine that
 * more would be needed, the reach is shorter and the fit is done up to {@link #PASSES} times. Where
 * faces are fine, one vertex of a few is fitted and those beside it lie on its quadric.
 */
final class TipSmoothing {
  /** Reach of the fit over the tip: weights fall to zero there. */
  static final double REACH = 1.6;

  /** Least reach over the edges' local length: two rows of neighbours. */
  private static final double ROWS = 2.6;

  /** Neighbours aimed at where faces are fine. */
  private static final int MOST = 600;

  /** Neighbours at which gathering ends in any case. */
  private static final int END = 4 * MOST;

  /** Edges below this share of the reach let vertices share the quadric of one beside them. */
  private static final double FINE = 0.2;

  /** Numbers of a quadric that is kept: six, and its radius. */
  private static final int KEPT = 7;

  /** Fits in a row where faces are very fine. */
  private static final int PASSES = 3;

  /** Fewer neighbours than this fix a quadric badly. */
  private static final int FEWEST = 10;

  /** Cosine of 60°: faces turned away by more belong to another side. */
  private static final double SAME_SIDE = 0.5;

  /** A place that bends more than this over the tip's length is a crease to the fit. */
  private static final double BEND = 0.5;

  /** Times that normals are averaged with their neighbours. */
  private static final int NORMAL_ROUNDS = 8;

  /** Vertices below which a second thread does not pay. */
  private static final int LEAST = 1 << 10;

  private final Mesh mesh;
  private final double tip;
  private final int[] offset;
  private final int[] neighbour;
  private final boolean[] trusted;

  private TipSmoothing(Mesh mesh, Topology topology, double tip) {
    this.mesh = mesh;
    this.tip = tip;
    int[] corner = mesh.corner();
    this.offset = new int[mesh.vertexCount() + 1];
    for (int h = 0; h < corner.length; h++) {
      offset[corner[h] + 1]++;
      if (topology.twin(h) < 0) {
        offset[corner[Topology.next(h)] + 1]++;
      }
    }
    for (int v = 0; v < mesh.vertexCount(); v++) {
      offset[v + 1] += offset[v];
    }
    this.neighbour = new int[offset[mesh.vertexCount()]];
    int[] fill = offset.clone();
    for (int h = 0; h < corner.length; h++) {
      int to = corner[Topology.next(h)];
      neighbour[fill[corner[h]]++] = to;
      if (topology.twin(h) < 0) {
        neighbour[fill[to]++] = corner[h];
      }
    }
    this.trusted = new boolean[mesh.vertexCount()];
  }

  /**
   * What came of it.
   *
   * @param mesh the smoothed mesh, mm
   * @param trusted for each vertex whether the surface bends so little there that the fit follows
   *     it
   */
  record Smoothed(Mesh mesh, boolean[] trusted) {}

  /** Smooths a mesh in mm. */
  static Smoothed of(Mesh mesh, Topology topology, double tipMm, Progress progress) {
    return new TipSmoothing(mesh, topology, tipMm).run(progress);
  }

  private Smoothed run(Progress progress) {
    double edge = meanEdge();
    double wanted = REACH * tip;
    double affordable = edge * Math.sqrt(MOST * Math.sqrt(0.75) / Math.PI);
    double reach = Math.min(wanted, affordable);
    int passes = (int) Math.max(1, Math.min(PASSES, Math.ceil(wanted / affordable)));
    double[] xyz = mesh.xyz();
    for (int pass = 0; pass < passes; pass++) {
      progress.at((double) pass / passes);
      double[] from = xyz;
      double[] to = new double[from.length];
      double[] normals = normals(from);
      int n = mesh.vertexCount();
      int ranges = Parallel.ranges(n, LEAST);
      boolean[] centre = centres(edge < FINE * reach);
      double[] kept = new double[KEPT * n];
      Parallel.split(
          n, ranges, (a, b) -> new Fitter(from, normals, reach, to, kept).run(centre, a, b));
      Parallel.split(n, ranges, (a, b) -> share(from, normals, centre, kept, to, a, b));
      xyz = to;
    }
    return new Smoothed(Mesh.of(xyz, mesh.corner()), trusted);
  }

  /**
   * Vertices to be fitted: all, or the first of each few, so that every vertex is one or beside.
   */
  private boolean[] centres(boolean few) {
    boolean[] centre = new boolean[mesh.vertexCount()];
    for (int v = 0; v < centre.length; v++) {
      boolean beside = false;
      for (int i = offset[v]; few && i < offset[v + 1] && !beside; i++) {
        beside = centre[neighbour[i]];
      }
      centre[v] = !beside;
    }
    return centre;
  }

  /** Lays the vertices that were not fitted on the quadrics beside them: the mean of all. */
  private void share(
      double[] p,
      double[] normals,
      boolean[] centre,
      double[] kept,
      double[] to,
      int begin,
      int end) {
    double[] normal = new double[3];
    double[] first = new double[3];
    double[] second = new double[3];
    for (int v = begin; v < end; v++) {
      if (centre[v]) {
        continue;
      }
      int n = 0;
      boolean all = true;
      System.arraycopy(p, 3 * v, to, 3 * v, 3);
      double[] by = new double[3];
      for (int i = offset[v]; i < offset[v + 1]; i++) {
        int c = neighbour[i];
        double r = kept[KEPT * c + KEPT - 1];
        if (!centre[c]) {
          continue;
        }
        all &= trusted[c];
        if (r > 0) {
          System.arraycopy(normals, 3 * c, normal, 0, 3);
          NormalFit.tangents(normal, first, second);
          double x = p[3 * v] - p[3 * c];
          double y = p[3 * v + 1] - p[3 * c + 1];
          double z = p[3 * v + 2] - p[3 * c + 2];
          double a = (x * first[0] + y * first[1] + z * first[2]) / r;
          double b = (x * second[0] + y * second[1] + z * second[2]) / r;
          double height = r * QuadricHeight.height(kept, KEPT * c, a, b);
          height -= x * normal[0] + y * normal[1] + z * normal[2];
          for (int axis = 0; axis < 3; axis++) {
            by[axis] += height * normal[axis];
          }
          n++;
        }
      }
      trusted[v] = all && n > 0;
      for (int axis = 0; axis < 3 && n > 0; axis++) {
        to[3 * v + axis] += by[axis] / n;
      }
    }
  }

  private double meanEdge() {
    double[] p = mesh.xyz();
    double sum = 0;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      sum += localEdge(p, v) * (offset[v + 1] - offset[v]);
    }
    return neighbour.length == 0 ? 0 : sum / neighbour.length;
  }

  private double localEdge(double[] p, int v) {
    double sum = 0;
    for (int i = offset[v]; i < offset[v + 1]; i++) {
      int w = neighbour[i];
      double x = p[3 * w] - p[3 * v];
      double y = p[3 * w + 1] - p[3 * v + 1];
      double z = p[3 * w + 2] - p[3 * v + 2];
      sum += Math.sqrt(x * x + y * y + z * z);
    }
    return sum / Math.max(1, offset[v + 1] - offset[v]);
  }

  /** Unit normals at vertices: vector areas of the faces around, averaged over several rows. */
  private double[] normals(double[] p) {
    int n = mesh.vertexCount();
    double[] sums = new double[3 * n];
    int[] corner = mesh.corner();
    double[] area = new double[3];
    for (int f = 0; f < corner.length; f += 3) {
      Faces.areaVector(p, corner[f], corner[f + 1], corner[f + 2], area);
      for (int k = f; k < f + 3; k++) {
        int at = 3 * corner[k];
        sums[at] += area[0];
        sums[at + 1] += area[1];
        sums[at + 2] += area[2];
      }
    }
    double[] other = new double[3 * n];
    for (int round = 0; round < NORMAL_ROUNDS; round++) {
      double[] from = sums;
      double[] to = other;
      Parallel.split(n, Parallel.ranges(n, LEAST), (a, b) -> average(from, to, a, b));
      sums = to;
      other = from;
    }
    for (int v = 0; v < 3 * n; v += 3) {
      double length =
          Math.sqrt(sums[v] * sums[v] + sums[v + 1] * sums[v + 1] + sums[v + 2] * sums[v + 2]);
      for (int axis = 0; axis < 3 && length > 0; axis++) {
        sums[v + axis] /= length;
      }
    }
    return sums;
  }

  private void average(double[] from, double[] to, int begin, int end) {
    for (int v = begin; v < end; v++) {
      double x = from[3 * v];
      double y = from[3 * v + 1];
      double z = from[3 * v + 2];
      for (int i = offset[v]; i < offset[v + 1]; i++) {
        int w = 3 * neighbour[i];
        x += from[w];
        y += from[w + 1];
        z += from[w + 2];
      }
      double count = 1.0 + offset[v + 1] - offset[v];
      to[3 * v] = x / count;
      to[3 * v + 1] = y / count;
      to[3 * v + 2] = z / count;
    }
  }

  /** Fits quadrics at a range of vertices; holds scratch. */
  private final class Fitter {
    private final double[] p;
    private final double[] normals;
    private final double reach;
    private final double[] to;
    private final double[] kept;
    private final int[] seen = new int[mesh.vertexCount()];
    private final int[] queue = new int[END];
    private final QuadricHeight fit = new QuadricHeight();
    private final double[] normal = new double[3];
    private final double[] first = new double[3];
    private final double[] second = new double[3];

    Fitter(double[] p, double[] normals, double reach, double[] to, double[] kept) {
      this.kept = kept;
      this.p = p;
      this.normals = normals;
      this.reach = reach;
      this.to = to;
    }

    void run(boolean[] centre, int begin, int end) {
      for (int v = begin; v < end; v++) {
        if (!centre[v]) {
          continue;
        }
        double r = Math.max(reach, ROWS * localEdge(p, v));
        System.arraycopy(normals, 3 * v, normal, 0, 3);
        double by = 0;
        trusted[v] = false;
        if (gather(v, r) >= FEWEST && fit.solve()) {
          double height = fit.height() * r;
          trusted[v] = fit.bend() / r * tip < BEND && Math.abs(height) < r;
          if (Math.abs(height) < r) {
            by = height;
            fit.write(kept, KEPT * v);
            kept[KEPT * v + KEPT - 1] = r;
          }
        }
        for (int axis = 0; axis < 3; axis++) {
          to[3 * v + axis] = p[3 * v + axis] + by * normal[axis];
        }
      }
    }

    /** Feeds the fit with the vertices around one; their number. */
    private int gather(int v, double r) {
      NormalFit.tangents(normal, first, second);
      fit.start();
      fit.add(0, 0, 0, 1);
      int stamp = v + 1;
      seen[v] = stamp;
      queue[0] = v;
      int n = 1;
      for (int done = 0; done < n; done++) {
        int at = queue[done];
        for (int i = offset[at]; i < offset[at + 1] && n < END; i++) {
          int w = neighbour[i];
          if (seen[w] != stamp) {
            seen[w] = stamp;
            if (add(v, w, r)) {
              queue[n++] = w;
            }
          }
        }
      }
      return n;
    }

    private boolean add(int v, int w, double r) {
      double x = p[3 * w] - p[3 * v];
      double y = p[3 * w + 1] - p[3 * v + 1];
      double z = p[3 * w + 2] - p[3 * v + 2];
      double a = (x * first[0] + y * first[1] + z * first[2]) / r;
      double b = (x * second[0] + y * second[1] + z * second[2]) / r;
      double away = 1 - a * a - b * b;
      if (away <= 0) {
        return false;
      }
      double same =
          normals[3 * w] * normal[0]
              + normals[3 * w + 1] * normal[1]
              + normals[3 * w + 2] * normal[2];
      if (same < SAME_SIDE) {
        return false;
      }
      double height = (x * normal[0] + y * normal[1] + z * normal[2]) / r;
      fit.add(a, b, height, away * away);
      return true;
    }
  }
}
