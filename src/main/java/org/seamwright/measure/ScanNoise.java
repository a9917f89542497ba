package org.seamwright.measure;

import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Area that the noise of a scan adds and that no brush sees: facets' area against that of the mesh
 * smoothed at the length of the brush's tip ({@link TipSmoothing}).
 *
 * <p>Only meshes of facets not much larger than the tip are looked at. One is noisy if most of its
 * area lies in facets with both a ridge and a valley among their edges, and if smoothing takes off
 * more than a thousandth. Where the surface bends sharply over the tip's length (edges, corners,
 * fine engraving) smoothing would eat detail: noise is taken to add the same share there as
 * elsewhere. Where nearly everything bends sharply nothing is known and nothing is taken off. O(n).
 */
final class ScanNoise {
  /** Sine of 2.5°: noise whose facets meet at less adds about a thousandth to the area. */
  private static final double LEAST_TURN = 0.04;

  /** Share of the area that must be ruffled. */
  private static final double MOST_OF_IT = 0.4;

  /** Larger facets, in tips, are followed by the brush. */
  private static final double COARSEST = 2;

  /** No scan comes with fewer facets. */
  private static final int FEWEST_FACETS = 2000;

  /** Share of the area below which what is taken off is not noise worth telling. */
  private static final double WORTH = 1e-3;

  /** Share of the facets' area that must be smooth enough to tell. */
  private static final double ENOUGH = 0.2;

  /** Share of what is taken off that the bar allows for, errors met are in docs/accuracy.md. */
  private static final double DOUBT = 0.25;

  /** Share of the area that the bar allows for besides: noise too coarse to be told from shape. */
  private static final double ALWAYS_DOUBT = 0.005;

  /** Facets' area over the smoothed one from which normals are so bad that a second fit pays. */
  private static final double HEAVY = 1.3;

  private ScanNoise() {}

  /**
   * Takes the noise off an estimate.
   *
   * @param smooth what is known without looking for noise
   * @return the same if there is no noise
   */
  static Survey.SmoothArea takenOff(
      Mesh mesh, Topology topology, Survey.SmoothArea smooth, double facets, Progress progress) {
    double tip = smooth.tipMm();
    if (!isFine(mesh.faceCount(), facets, tip) || !isRuffled(mesh, topology, facets)) {
      return smooth;
    }
    TipSmoothing.Smoothed smoothed = TipSmoothing.of(mesh, topology, tip, progress.between(0, 0.5));
    if (facets > HEAVY * FacetSums.of(smoothed.mesh(), mesh.bounds()).areaMm2()) {
      smoothed = TipSmoothing.of(smoothed.mesh(), topology, tip, progress.between(0.5, 0.7));
    }
    Sum before = new Sum();
    Sum after = new Sum();
    Sum all = new Sum();
    int[] corner = mesh.corner();
    for (int f = 0; f < mesh.faceCount(); f++) {
      double area = Faces.area(smoothed.mesh(), f);
      all.add(area);
      if (smoothed.trusted()[corner[3 * f]]
          && smoothed.trusted()[corner[3 * f + 1]]
          && smoothed.trusted()[corner[3 * f + 2]]) {
        before.add(Faces.area(mesh, f));
        after.add(area);
      }
    }
    if (before.value() < ENOUGH * facets) {
      return smooth;
    }
    Survey.SmoothArea own =
        SmoothSurface.of(
                smoothed.mesh(), topology, Fans.of(mesh), all.value(), progress.between(0.7, 1))
            .area();
    double share = after.value() / before.value();
    double bends = facets - before.value();
    double area = (after.value() + bends * share) * own.areaMm2() / all.value();
    double noise = facets - area;
    if (noise < WORTH * facets) {
      return smooth;
    }
    double doubt = DOUBT * noise + ALWAYS_DOUBT * area;
    return new Survey.SmoothArea(area, area - doubt, area + doubt, 0, noise, tip);
  }

  /**
   * Whether there can be noise that a brush does not follow: facets not much larger than its tip,
   * and as many as a scan has. A coarse mesh of a saddle has ridges and valleys in every facet,
   * too.
   */
  private static boolean isFine(int faces, double facetsMm2, double tipMm) {
    // Side of an equilateral triangle of the mean area.
    double side = Math.sqrt(4 / Math.sqrt(3) * facetsMm2 / faces);
    return faces >= FEWEST_FACETS && side < COARSEST * tipMm;
  }

  /** Whether most of the area lies in facets with both a ridge and a valley. */
  private static boolean isRuffled(Mesh mesh, Topology topology, double facets) {
    double ruffled = 0;
    double[] n = new double[3];
    double[] m = new double[3];
    for (int f = 0; f < mesh.faceCount(); f++) {
      boolean ridge = false;
      boolean valley = false;
      double area = 0;
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        double turn = turn(mesh, topology, h, n, m);
        ridge |= turn > LEAST_TURN;
        valley |= turn < -LEAST_TURN;
      }
      if (ridge && valley) {
        area = Faces.area(mesh, f);
      }
      ruffled += area;
    }
    return ruffled > MOST_OF_IT * facets;
  }

  /**
   * Sine of the slope at which the tip of the face across an edge lies below this face's plane; 0
   * at borders.
   */
  private static double turn(Mesh mesh, Topology topology, int h, double[] n, double[] m) {
    int twin = topology.twin(h);
    if (twin < 0) {
      return 0;
    }
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    int a = corner[h];
    int b = corner[Topology.next(h)];
    int d = corner[Topology.prev(twin)];
    Faces.areaVector(p, a, b, corner[Topology.prev(h)], n);
    Faces.areaVector(p, a, b, d, m);
    double wx = p[3 * d] - p[3 * a];
    double wy = p[3 * d + 1] - p[3 * a + 1];
    double wz = p[3 * d + 2] - p[3 * a + 2];
    double scale2 =
        (n[0] * n[0] + n[1] * n[1] + n[2] * n[2]) * (m[0] * m[0] + m[1] * m[1] + m[2] * m[2]);
    if (!(scale2 > 0)) {
      return 0;
    }
    double edge = Faces.length(mesh, a, b);
    return -(n[0] * wx + n[1] * wy + n[2] * wz) * edge / Math.sqrt(scale2);
  }
}
