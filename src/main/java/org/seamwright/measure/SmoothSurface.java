package org.seamwright.measure;

import java.util.stream.IntStream;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
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
 * other, and edges that could be creases or coarse steps. O(n), 150 bytes a face while it runs.
 *
 * <p>Errors met on spheres, tori, cones, ellipsoids and turned pieces of 500 to 80,000 facets are
 * below a tenth of the facets' own. Limits: a coarse regular prism can't be told from a cylinder.
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

  /**
   * Area that roughness adds, as a multiple of area times squared misfit of chord and normals, sums
   * over a facet's edges. Met between 0.5 and 0.8 for random heights on several meshes.
   */
  private static final double ROUGHNESS = 0.6;

  /** How much larger than estimated the bar lets the roughness be. */
  private static final double ROUGHNESS_DOUBT = 2;

  /** Misfit below this share of the (squared) bend is that of a smooth surface in coarse steps. */
  private static final double SMOOTH_MISFIT = 0.05;

  /** What folded facets may lose, over what they lose laid along the mean of those around them. */
  private static final double FOLD_DOUBT = 1.05;

  /** Bends (1 - cosine) below this are rounding: the facet is flat and keeps its area. */
  private static final double FLAT = 1e-12;

  /** Share of the area that summing may be wrong by. */
  private static final double ROUNDING = 1e-12;

  /** Facets summed in one go: fixed, so that the digits don't depend on the number of threads. */
  private static final int BLOCK = 1 << 12;

  /** Blocks between two reports of progress. */
  private static final int WAVE = 16;

  private final Mesh mesh;
  private final Topology topology;
  private final double[] faceNormals;
  private final double[] degrees;

  /**
   * What was found.
   *
   * @param area estimate and bar
   * @param roughnessMm2 area that roughness is taken to add, mm²
   * @param foldedFacets facets folded against all neighbours, some up and some down
   * @param foldedMm2 their area, mm²
   */
  record Estimate(
      Survey.SmoothArea area, double roughnessMm2, int foldedFacets, double foldedMm2) {}

  /** Sums over the facets for one idea of what a crease is. */
  private record Pass(double correction, double doubt, double roughness) {}

  private SmoothSurface(Mesh mesh, Topology topology) {
    this.mesh = mesh;
    this.topology = topology;
    this.faceNormals = Crease.normals(mesh, topology);
    this.degrees = Crease.degrees(mesh, topology, faceNormals);
  }

  /** Estimates the area behind a mesh in mm. */
  static Estimate of(Mesh mesh, Topology topology, double facetsMm2, Progress progress) {
    return new SmoothSurface(mesh, topology).estimate(facetsMm2, progress);
  }

  private Estimate estimate(double facets, Progress progress) {
    progress.at(0.1);
    Pass best = pass(CREASE_DEGREES, progress.between(0.1, 0.4));
    Folds folds = Folds.of(mesh, topology, faceNormals, degrees, CREASE_DEGREES);
    double low = facets + low(best);
    double high = facets + best.correction + best.doubt;
    boolean doubtful = false;
    for (double turn : degrees) {
      doubtful |= turn > PERHAPS_CREASE_DEGREES && turn <= PERHAPS_STEP_DEGREES;
    }
    if (doubtful) {
      Pass sharper = pass(PERHAPS_CREASE_DEGREES, progress.between(0.4, 0.7));
      Pass rounder = pass(PERHAPS_STEP_DEGREES, progress.between(0.7, 1));
      low = Math.min(low, facets + Math.min(low(sharper), low(rounder)));
      high = Math.max(high, facets + Math.max(sharper.correction, rounder.correction));
    }
    low = Math.max(0, low - FOLD_DOUBT * folds.excessMm2());
    double area = Math.max(low, facets + best.correction - best.roughness);
    progress.at(1);
    return new Estimate(
        new Survey.SmoothArea(area, low - ROUNDING * facets, high + ROUNDING * facets),
        best.roughness,
        folds.count(),
        folds.areaMm2());
  }

  private static double low(Pass pass) {
    return pass.correction - pass.doubt - ROUGHNESS_DOUBT * pass.roughness;
  }

  private Pass pass(double creaseDegrees, Progress progress) {
    boolean[] sharp = SharpEdges.of(mesh, topology, faceNormals, degrees, creaseDegrees);
    progress.at(0.2);
    CornerNormals normals =
        CornerNormals.of(
            mesh, topology, faceNormals, sharp, creaseDegrees, progress.between(0.2, 0.6));
    EdgeTangents.Borders borders = EdgeTangents.Borders.of(mesh, topology);
    int blocks = (mesh.faceCount() + BLOCK - 1) / BLOCK;
    Sum[][] parts = new Sum[blocks][];
    for (int wave = 0; wave < blocks; wave += WAVE) {
      progress.at(0.6 + 0.4 * wave / blocks);
      IntStream.range(wave, Math.min(blocks, wave + WAVE))
          .parallel()
          .forEach(
              b -> {
                EdgeTangents tangents =
                    new EdgeTangents(mesh, topology, sharp, normals, borders, creaseDegrees);
                parts[b] = block(b * BLOCK, tangents, normals);
              });
    }
    Sum[] total = {new Sum(), new Sum(), new Sum()};
    for (Sum[] part : parts) {
      for (int i = 0; i < total.length; i++) {
        total[i].add(part[i].value());
      }
    }
    progress.at(1);
    return new Pass(total[0].value(), DOUBT * total[1].value(), total[2].value());
  }

  /** Sums of the corrections, of their amounts, and of the roughness over a block of facets. */
  private Sum[] block(int from, EdgeTangents tangents, CornerNormals normals) {
    Sum[] sums = {new Sum(), new Sum(), new Sum()};
    CurvedPatch patch = new CurvedPatch();
    double[] bend = new double[2];
    int to = Math.min(mesh.faceCount(), from + BLOCK);
    for (int f = from; f < to; f++) {
      if (lay(f, patch, tangents)) {
        double facet = Faces.area(mesh, f);
        double curved =
            patch.area(faceNormals[3 * f], faceNormals[3 * f + 1], faceNormals[3 * f + 2]);
        double correction = Double.isNaN(curved) ? 0 : curved - facet;
        sums[0].add(correction);
        sums[1].add(Math.abs(correction));
        bends(f, normals, bend);
        sums[2].add(ROUGHNESS * facet * Math.max(0, bend[1] - SMOOTH_MISFIT * bend[0]));
      }
    }
    return sums;
  }

  /** Lays a patch over a facet; false if it is flat with straight edges. */
  private boolean lay(int f, CurvedPatch patch, EdgeTangents tangents) {
    double[] point = new double[3];
    double bent = 0;
    for (int k = 0; k < 3; k++) {
      int h = 3 * f + k;
      int v = mesh.corner()[h];
      patch.corner(k, mesh.x(v), mesh.y(v), mesh.z(v));
      bent = Math.max(bent, tangents.control(h, true, point));
      patch.edge(k, true, point[0], point[1], point[2]);
      bent = Math.max(bent, tangents.control(h, false, point));
      patch.edge(k, false, point[0], point[1], point[2]);
    }
    patch.middle();
    return bent > FLAT;
  }

  /** How far the chords of a facet lean: like an arc, and unequally at both ends (both squared). */
  private void bends(int f, CornerNormals normals, double[] into) {
    double[] p = mesh.xyz();
    into[0] = 0;
    into[1] = 0;
    for (int h = 3 * f; h < 3 * f + 3; h++) {
      int next = Topology.next(h);
      int v = 3 * mesh.corner()[h];
      int w = 3 * mesh.corner()[next];
      double here = 0;
      double there = 0;
      double length2 = 0;
      for (int axis = 0; axis < 3; axis++) {
        double d = p[w + axis] - p[v + axis];
        length2 += d * d;
        here += d * normals.at(h, axis);
        there += d * normals.at(next, axis);
      }
      if (length2 > 0) {
        into[0] += (here - there) * (here - there) / (4 * length2);
        into[1] += (here + there) * (here + there) / (4 * length2);
      }
    }
  }
}
