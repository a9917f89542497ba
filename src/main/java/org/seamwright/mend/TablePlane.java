package org.seamwright.mend;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;

/**
 * The plane of the table that a piece was scanned on.
 *
 * <p>A table is a flat stretch of the surface that faces the piece and has next to nothing below
 * it; the flat underside of a piece faces away from it and is no table. Hypotheses are planes
 * through sample places along their normals, each fitted to the samples in a band around it until
 * it stands still (random sample consensus of M. Fischler and R. Bolles, 1981, with the samples
 * spread evenly instead of drawn); the one with most samples wins and is fitted once more, to all
 * samples within its own roughness, by total least squares.
 *
 * <p>Cost: hypotheses × samples, whatever the number of faces. Error: that of the table's mean
 * height, roughness ÷ √(samples on it).
 *
 * @param normal unit normal, towards the piece
 * @param offsetMm distance of the plane from the origin along the normal
 * @param roughnessMm standard deviation of the table about the plane
 * @param share part of the model's area that lies on it
 */
record TablePlane(Vector3D normal, double offsetMm, double roughnessMm, double share) {
  private static final int SAMPLES = 20_000;
  private static final int HYPOTHESES = 300;
  private static final int ROUNDS = 8;

  /** Half width of the first band, as a share of the diagonal: wider than a scan is rough. */
  private static final double BAND = 0.005;

  /** A sample whose normal is turned further than 60° from the plane's is not on the plane. */
  private static final double SAME_WAY = 0.5;

  /** Less of the area than this is no table. */
  static final double LEAST_SHARE = 0.03;

  /** More of the area than this below a plane says that it is not the table. */
  private static final double MOST_BELOW = 0.02;

  /** A stretch that is not this much wider than it is thick is no plane. */
  private static final double FLAT = 0.05;

  /** Median absolute deviation to standard deviation of a normal distribution. */
  private static final double MAD_TO_SIGMA = 1.4826;

  /** Half width of the last band, in standard deviations. */
  private static final double LAST_BAND = 3;

  /** Looks for the table; a given place lies on it, and lifts the rule that nothing is below. */
  static Optional<TablePlane> find(Mesh mesh, Optional<Vector3D> place, Progress progress) {
    int[] all = new int[mesh.faceCount()];
    Arrays.setAll(all, f -> f);
    Samples samples = Samples.of(mesh, all, SAMPLES);
    double band = BAND * mesh.bounds().diagonal();
    List<Fit> fits = new ArrayList<>();
    for (int i = 0; i < HYPOTHESES && samples.count > 0; i++) {
      progress.at((double) i / HYPOTHESES);
      int seed = (int) ((i + 0.5) * samples.count / HYPOTHESES);
      Fit fit = new Fit(samples, seed);
      if (fit.settle(band)
          && fit.inliers >= LEAST_SHARE * samples.count
          && place.map(p -> Math.abs(fit.height(p)) <= 2 * band).orElse(true)
          && (place.isPresent() || fit.below(2 * band) <= MOST_BELOW * samples.count)) {
        fits.add(fit);
      }
    }
    // The sort is stable: of equal fits the first hypothesis wins.
    fits.sort(Comparator.comparingInt(f -> -f.inliers));
    return fits.stream().findFirst().map(f -> f.refined(band));
  }

  /** A hypothesis and the samples that agree with it. */
  private static final class Fit {
    private final Samples s;
    private double nx;
    private double ny;
    private double nz;
    private double d;
    private int inliers;

    Fit(Samples samples, int seed) {
      s = samples;
      nx = s.normal[3 * seed];
      ny = s.normal[3 * seed + 1];
      nz = s.normal[3 * seed + 2];
      d = nx * s.at[3 * seed] + ny * s.at[3 * seed + 1] + nz * s.at[3 * seed + 2];
    }

    private double height(int i) {
      return nx * s.at[3 * i] + ny * s.at[3 * i + 1] + nz * s.at[3 * i + 2] - d;
    }

    double height(Vector3D p) {
      return nx * p.getX() + ny * p.getY() + nz * p.getZ() - d;
    }

    private boolean agrees(int i, double band) {
      return Math.abs(height(i)) <= band
          && nx * s.normal[3 * i] + ny * s.normal[3 * i + 1] + nz * s.normal[3 * i + 2] > SAME_WAY;
    }

    /** Fits to the samples in the band until they stay the same; false if that is no plane. */
    boolean settle(double band) {
      for (int round = 0; round < ROUNDS; round++) {
        int before = inliers;
        if (!fitOnce(band)) {
          return false;
        }
        if (inliers == before) {
          break;
        }
      }
      return true;
    }

    private boolean fitOnce(double band) {
      Moments moments = new Moments(s.at[0], s.at[1], s.at[2]);
      inliers = 0;
      for (int i = 0; i < s.count; i++) {
        if (agrees(i, band)) {
          moments.add(1, s.at[3 * i], s.at[3 * i + 1], s.at[3 * i + 2]);
          inliers++;
        }
      }
      if (inliers < 3
          || !moments.solve()
          || !(moments.variance[0] < FLAT * FLAT * moments.variance[1])) {
        return false;
      }
      double[] n = moments.normal;
      // The normal of the faces says which side is up.
      double way = Math.signum(nx * n[0] + ny * n[1] + nz * n[2]);
      nx = way * n[0];
      ny = way * n[1];
      nz = way * n[2];
      d = nx * moments.mean[0] + ny * moments.mean[1] + nz * moments.mean[2];
      return true;
    }

    int below(double band) {
      int count = 0;
      for (int i = 0; i < s.count; i++) {
        count += height(i) < -band ? 1 : 0;
      }
      return count;
    }

    TablePlane refined(double band) {
      double sigma = sigma(band);
      double floor = 1e-3 * band;
      settle(Math.min(band, Math.max(floor, LAST_BAND * sigma)));
      return new TablePlane(Vector3D.of(nx, ny, nz), d, sigma(band), (double) inliers / s.count);
    }

    private double sigma(double band) {
      double[] off = new double[inliers + s.count];
      int n = 0;
      for (int i = 0; i < s.count; i++) {
        if (agrees(i, band)) {
          off[n++] = Math.abs(height(i));
        }
      }
      Arrays.sort(off, 0, n);
      return n == 0 ? 0 : MAD_TO_SIGMA * off[n / 2];
    }
  }
}
