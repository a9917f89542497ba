package org.seamwright.measure;

import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * How far off the area may be because there are too few facets to tell rounds from edges.
 *
 * <p>A round in steps of an angle θ has a share of θ² more area than its chords, times a number
 * that depends on its shape and on how even the steps are. With some dozens of facets the steps
 * that can be seen say little of the others: one large step hides more than all the rest show. So
 * the bar takes θ² over all edges that may be steps, each with the smaller of its two facets (the
 * chord of a round has a like one beside it, a chamfer has not), times a factor that falls as
 * facets become many. Facets with a flat edge are halves of a strip, as on prisms and cylinders,
 * where less can hide. O(n).
 *
 * <p>The factors are set so that the bar holds in 19 cases of 20 of the campaign in
 * docs/accuracy.md; a test asks the same of seeds that they were not set on.
 */
final class Coarseness {
  /** Turns that may be steps of a round: a cube's edges and a fine mesh's own are left alone. */
  private static final double LEAST_STEP = Math.cos(Math.toRadians(20));

  private static final double LARGEST_STEP = Math.cos(Math.toRadians(80));

  /** An edge that turns less than 2° is flat. */
  private static final double FLAT = Math.cos(Math.toRadians(2));

  /** What an edge counts, by how many of its two facets have a flat edge. */
  private static final double[] WEIGHT = {1, 0.5, 0.25};

  /** Facets up to which the steps say nothing of each other. */
  private static final double FEW = 60;

  /** Area that may be missing, over θ² times area, and the most of the area that it may be. */
  private static final double MISSING = 8;

  private static final double MOST_MISSING = 0.7;

  /** Area that may be too much, where facets lie folded across a saddle, and the most of it. */
  private static final double EXCESS = 3;

  private static final double MOST_EXCESS = 0.25;

  /** Facets beyond which too few of them add nothing that a figure shows. */
  static final int MANY = 60_000;

  private final Mesh mesh;
  private final Topology topology;
  private final double[] here = new double[3];
  private final double[] there = new double[3];

  private Coarseness(Mesh mesh, Topology topology) {
    this.mesh = mesh;
    this.topology = topology;
  }

  /**
   * Area beyond the facets' sum.
   *
   * @param missingMm2 how much more the piece may have for want of facets, mm²
   * @param excessMm2 how much less, mm²
   * @param mostMissingMm2 how much more it may have if every edge that may be a step is one, mm²
   * @param mostExcessMm2 how much less then, mm²
   */
  record Doubt(double missingMm2, double excessMm2, double mostMissingMm2, double mostExcessMm2) {}

  /** Looks at all edges. */
  static Doubt of(Mesh mesh, Topology topology, double facetsMm2) {
    double steps = new Coarseness(mesh, topology).steps();
    double few = Math.min(1, FEW / mesh.faceCount());
    double share = steps * few * Math.sqrt(few);
    return new Doubt(
        Math.min(MOST_MISSING * facetsMm2, MISSING * share),
        Math.min(MOST_EXCESS * facetsMm2, EXCESS * share),
        MISSING * steps,
        EXCESS * steps);
  }

  /** θ² times the smaller facet, weighted, over the edges that may be steps, mm². */
  private double steps() {
    int halfEdges = 3 * mesh.faceCount();
    double[] cosine = new double[halfEdges];
    boolean[] flat = new boolean[mesh.faceCount()];
    for (int h = 0; h < halfEdges; h++) {
      int twin = topology.twin(h);
      cosine[h] = twin < 0 ? -1 : cosine(h, twin);
      flat[h / 3] |= cosine[h] > FLAT;
    }
    Sum steps = new Sum();
    for (int h = 0; h < halfEdges; h++) {
      int twin = topology.twin(h);
      if (twin > h && cosine[h] < LEAST_STEP && cosine[h] > LARGEST_STEP) {
        double angle = Math.acos(cosine[h]);
        double weight = WEIGHT[(flat[h / 3] ? 1 : 0) + (flat[twin / 3] ? 1 : 0)];
        steps.add(
            weight
                * (angle * angle)
                * Math.min(Faces.area(mesh, h / 3), Faces.area(mesh, twin / 3)));
      }
    }
    return steps.value();
  }

  private double cosine(int h, int twin) {
    Crease.normal(mesh, topology, h / 3, here);
    Crease.normal(mesh, topology, twin / 3, there);
    double cosine = here[0] * there[0] + here[1] * there[1] + here[2] * there[2];
    return mesh.corner()[h] == mesh.corner()[twin] ? -cosine : cosine;
  }
}
