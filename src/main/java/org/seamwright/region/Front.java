package org.seamwright.region;

import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Makes the faces along a line of equal distance small enough that distance is nearly linear in
 * them, so that a cut along the line is true to it even where a flat side of the piece is two
 * triangles.
 *
 * <p>A face that the line may cross is split while its longest edge exceeds a quarter of the
 * radius, or a 24th if the slope of the distances at its corners is not 1: inside a face distance
 * rises by 1 mm per mm, and a slope read off the corners that differs tells that the front is bent
 * there. With edges of length e a front of radius r is off by at most e²/8r, and a disc's area by
 * about e²/6r² of itself: 3 parts in 10 000, always too small.
 *
 * <p>Edges are split by {@link Halving}.
 */
final class Front {
  /** Longest edge where the front is straight, as a share of the radius. */
  static final double COARSE = 1 / 4.0;

  /** Longest edge that is split where the front is bent, as a share of the radius. */
  static final double FINE = 1 / 24.0;

  /** Difference of the slope from 1 that counts as bent: about an edge of a 10th of the radius. */
  static final double BENT = 2e-3;

  private final EditableSurface surface;
  private final Halving halving;
  private final double radiusMm;

  Front(EditableSurface surface, double radiusMm) {
    this.surface = surface;
    this.halving = new Halving(surface);
    this.radiusMm = radiusMm;
  }

  /**
   * Splits faces of a patch where the line of equal distance may need it. The patch is no longer
   * valid if anything was split.
   *
   * @param distanceMm one entry per vertex of the patch; may be infinite
   * @param levelMm where the line is
   * @return how many splits were made
   */
  int refine(Patch patch, double[] distanceMm, double levelMm) {
    int before = surface.faceCount();
    int[] corner = patch.mesh().corner();
    int[] faces = patch.faces();
    for (int i = 0; i < faces.length; i++) {
      int face = i;
      if (surface.hasEdges(faces[i])
          && needsSplit(faces[i], k -> distanceMm[corner[3 * face + k]], levelMm)) {
        halving.choose(faces[i]);
      }
    }
    halving.split(faces);
    return surface.faceCount() - before;
  }

  /**
   * Splits faces near a line that are larger than the radius, so that what is laid into them leaves
   * no needles.
   *
   * @param seed a face that the line starts on
   * @return how many splits were made
   */
  int makeRoom(Patch.Maker patches, int seed, List<Vector3D> line) {
    int before = surface.faceCount();
    Tube tube = new Tube(surface, List.of(line), radiusMm);
    int splits;
    do {
      splits = surface.faceCount();
      int[] faces = patches.reached(new int[] {seed}, tube).faces();
      for (int f : faces) {
        if (surface.hasEdges(f) && surface.length(halving.longestEdge(f)) > radiusMm) {
          halving.choose(f);
        }
      }
      halving.split(faces);
    } while (surface.faceCount() > splits);
    return surface.faceCount() - before;
  }

  private boolean needsSplit(int face, IntToDoubleFunction distance, double level) {
    double longest = surface.length(halving.longestEdge(face));
    if (longest <= FINE * radiusMm) {
      return false;
    }
    double a = distance.applyAsDouble(0);
    double b = distance.applyAsDouble(1);
    double c = distance.applyAsDouble(2);
    double least = Math.min(a, Math.min(b, c));
    double most = Math.max(a, Math.max(b, c));
    if (longest > COARSE * radiusMm) {
      // Distance changes by no more than one goes: the line may cross if this leaves it room.
      return most - longest <= level && least + longest >= level && Double.isFinite(least);
    }
    double bulge = longest * longest / radiusMm;
    return least - bulge <= level
        && most + bulge >= level
        && !(Math.abs(slope(face, a, b, c) - 1) <= BENT);
  }

  /** Steepness of the linear function with the given values at the corners, per mm. */
  private double slope(int face, double a, double b, double c) {
    double uu = 0;
    double uv = 0;
    double vv = 0;
    for (int axis = 0; axis < 3; axis++) {
      double p = surface.at(surface.from(3 * face), axis);
      double u = surface.at(surface.from(3 * face + 1), axis) - p;
      double v = surface.at(surface.from(3 * face + 2), axis) - p;
      uu += u * u;
      uv += u * v;
      vv += v * v;
    }
    double s = b - a;
    double t = c - a;
    double area2 = uu * vv - uv * uv;
    return Math.sqrt((vv * s * s - 2 * uv * s * t + uu * t * t) / area2);
  }
}
