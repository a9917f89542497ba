package org.seamwright.mask;

import java.util.Objects;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Stop-off lacquer laid by dipping: all of the piece below the surface of the bath is coated,
 * plated places as well, which are cut free along the tape and peeled.
 *
 * @param up which way is up as the piece hangs in the bath; its length doesn't count
 * @param depthMm how deep its lowest point hangs, above 0; infinite for the whole piece
 * @param vesselMl what the vessel holds up to the bath's surface with nothing in it, above 0
 * @param drainLoss share of the lacquer lifted out that drips off and is lost, from 0 to below 1
 * @param leftLoss share of what is left in the vessel that is not used again, from 0 to 1
 * @param secondsPerCoat dipping and draining by hand, for one coat, s
 * @param peelSecondsPerCm2 peeling one cm² of plated surface free, s
 */
public record Dip(
    Vector3D up,
    double depthMm,
    double vesselMl,
    double drainLoss,
    double leftLoss,
    double secondsPerCoat,
    double peelSecondsPerCm2) {
  /** Losses and times a job starts with where it says nothing: common practice, no source. */
  public static final double DRAIN_LOSS = 0.1;

  /** The same of what is left in the vessel. */
  public static final double LEFT_LOSS = 0.05;

  /** The same of the time for one coat, s. */
  public static final double SECONDS_PER_COAT = 300;

  /** The same of peeling, s/cm². */
  public static final double PEEL_SECONDS_PER_CM2 = 1;

  /** Checks the ranges. */
  public Dip {
    Objects.requireNonNull(up, "up");
    if (!(up.norm() > 0) || Double.isInfinite(up.norm())) {
      throw new IllegalArgumentException("Up must be a direction");
    }
    if (!(depthMm > 0) || !(vesselMl > 0) || Double.isInfinite(vesselMl)) {
      throw new IllegalArgumentException("Depth and vessel must be above 0");
    }
    if (!(drainLoss >= 0 && drainLoss < 1) || !(leftLoss >= 0 && leftLoss <= 1)) {
      throw new IllegalArgumentException("Losses of a bath out of range");
    }
    if (!(secondsPerCoat >= 0 && peelSecondsPerCm2 >= 0)) {
      throw new IllegalArgumentException("Times are not negative");
    }
  }

  /** A bath with the usual losses and times. */
  public static Dip of(Vector3D up, double depthMm, double vesselMl) {
    return new Dip(
        up, depthMm, vesselMl, DRAIN_LOSS, LEFT_LOSS, SECONDS_PER_COAT, PEEL_SECONDS_PER_CM2);
  }

  /** Height of a point along up, mm. */
  double heightMm(double x, double y, double z) {
    return (x * up.getX() + y * up.getY() + z * up.getZ()) / up.norm();
  }

  /** Whether the whole piece goes under. */
  public boolean isWhole() {
    return Double.isInfinite(depthMm);
  }
}
