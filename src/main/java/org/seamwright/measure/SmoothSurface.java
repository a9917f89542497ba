package org.seamwright.measure;

import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Estimates the area of the smooth surface that facets stand for, with a bar that means to hold.
 *
 * <p>Each facet is replaced by a cubic patch through its corners, at right angles to the normals
 * there; sharp edges stay, and are bent only along themselves. Flat faces keep their area to the
 * last digit. Where chords make unequal angles with the normals at their ends the surface is rough
 * rather than curved, and what the roughness adds is taken off. The bar covers a quarter of all
 * corrections, the roughness as if it were real or twice as large, facets folded against each
 * other, edges that could be creases or coarse steps, and facets too few to tell. O(n), 20 bytes a
 * face while it runs and 40 if many edges are sharp.
 *
 * <p>Errors met are in docs/accuracy.md: below a tenth of the facets' own where steps are even and
 * at least 20 to the turn, more on uneven ones. Limits: a coarse regular prism can't be told from a
 * cylinder.
 *
 * <p>Source of the patch: A. Vlachos et al., "Curved PN triangles", Symposium on Interactive 3D
 * Graphics (2001); handles here are those of circular arcs.
 */
final class SmoothSurface {
  /** An edge that turns by more is a crease: between 12 steps to the turn and a 45° chamfer. */
  private static final double CREASE_DEGREES = 40;

  /** Edges that turn by more than this might be creases: 18 steps to the turn. */
  private static final double PERHAPS_CREASE_DEGREES = 20;

  /** Edges that turn by less than this might still be steps of a coarse round: 6 to the turn. */
  private static final double PERHAPS_STEP_DEGREES = 65;

  /**
   * Share of the corrections that the bar allows for; up to 0.1 was met on shapes of known area.
   */
  private static final double DOUBT = 0.25;

  /** Cosines of those two. */
  static final double PERHAPS_CREASE_COSINE = Math.cos(Math.toRadians(PERHAPS_CREASE_DEGREES));

  static final double PERHAPS_STEP_COSINE = Math.cos(Math.toRadians(PERHAPS_STEP_DEGREES));

  /** How much larger than estimated the bar lets the roughness be. */
  private static final double ROUGHNESS_DOUBT = 2;

  /** What folded facets may lose, over what they lose laid along the mean of those around them. */
  private static final double FOLD_DOUBT = 1.05;

  /** Share of the area that summing may be wrong by. */
  private static final double ROUNDING = 1e-12;

  private final Mesh mesh;
  private final Topology topology;
  private final Fans fans;

  /**
   * What was found.
   *
   * @param area estimate and bar
   * @param folds facets folded against all neighbours, some up and some down
   */
  record Estimate(Survey.SmoothArea area, Folds folds) {}

  private SmoothSurface(Mesh mesh, Topology topology, Fans fans) {
    this.mesh = mesh;
    this.topology = topology;
    this.fans = fans;
  }

  /** Estimates the area behind a mesh in mm. */
  static Estimate of(Mesh mesh, Topology topology, Fans fans, double facetsMm2, Progress progress) {
    return new SmoothSurface(mesh, topology, fans).estimate(facetsMm2, progress);
  }

  private Estimate estimate(double facets, Progress progress) {
    progress.at(0);
    Correction best = pass(CREASE_DEGREES, progress.between(0, 0.4));
    Folds folds = best.folds();
    double low = low(best);
    double high = high(best);
    if (best.metDoubtful() || mesh.faceCount() <= Coarseness.MANY) {
      Coarseness.Doubt coarse = Coarseness.of(mesh, topology, facets);
      if (best.metDoubtful()) {
        Correction sharper = pass(PERHAPS_CREASE_DEGREES, progress.between(0.4, 0.7));
        Correction rounder = pass(PERHAPS_STEP_DEGREES, progress.between(0.7, 1));
        // A large flat face beside a chamfer would be bent as a whole: no more than the chamfer is.
        double least = Math.max(-coarse.mostExcessMm2(), Math.min(low(sharper), low(rounder)));
        double most = Math.min(coarse.mostMissingMm2(), Math.max(high(sharper), high(rounder)));
        low = Math.min(low, least);
        high = Math.max(high, most);
      }
      low = Math.min(low, FOLD_DOUBT * folds.excessMm2() - coarse.excessMm2());
      high = Math.max(high, coarse.missingMm2());
    }
    low = Math.max(0, facets + low - FOLD_DOUBT * folds.excessMm2());
    high += facets;
    double area = Math.max(low, facets + best.correction() - best.roughness());
    progress.at(1);
    return new Estimate(
        new Survey.SmoothArea(
            area,
            low - ROUNDING * facets,
            high + ROUNDING * facets,
            facets + best.correction() - area),
        folds);
  }

  private static double high(Correction pass) {
    return pass.correction() + DOUBT * pass.doubt();
  }

  private static double low(Correction pass) {
    return pass.correction() - DOUBT * pass.doubt() - ROUGHNESS_DOUBT * pass.roughness();
  }

  private Correction pass(double creaseDegrees, Progress progress) {
    CornerNormals normals =
        CornerNormals.of(mesh, topology, fans, creaseDegrees, progress.between(0, 0.5));
    return Correction.of(mesh, topology, normals, creaseDegrees, progress.between(0.5, 1));
  }
}
