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
    for (int f = 0; f < mesh.faceCount(); f++) {
      boolean ridge = false;
      boolean valley = false;
      double area = 0;
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        double turn = turn(mesh, topology, h);
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
  private static double turn(Mesh mesh, Topology topology, int h) {
    int twin = topology.twin(h);
    if (twin < 0) {
      return 0;
    }
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    int a = 3 * corner[h];
    int b = 3 * corner[Topology.next(h)];
    int c = 3 * corner[Topology.prev(h)];
    int d = 3 * corner[Topology.prev(twin)];
    double ux = p[b] - p[a];
    double uy = p[b + 1] - p[a + 1];
    double uz = p[b + 2] - p[a + 2];
    double vx = p[c] - p[a];
    double vy = p[c + 1] - p[a + 1];
    double vz = p[c + 2] - p[a + 2];
    double x = uy * vz - uz * vy;
    double y = uz * vx - ux * vz;
    double z = ux * vy - uy * vx;
    double wx = p[d] - p[a];
    double wy = p[d + 1] - p[a + 1];
    double wz = p[d + 2] - p[a + 2];
    double mx = uy * wz - uz * wy;
    double my = uz * wx - ux * wz;
    double mz = ux * wy - uy * wx;
    double scale2 = (x * x + y * y + z * z) * (mx * mx + my * my + mz * mz);
    if (!(scale2 > 0)) {
      return 0;
    }
    double edge = Math.sqrt(ux * ux + uy * uy + uz * uz);
    return -(x * wx + y * wy + z * wz) * edge / Math.sqrt(scale2);
  }
}
