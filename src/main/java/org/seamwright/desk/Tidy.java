package org.seamwright.desk;

import java.math.BigDecimal;
import java.math.MathContext;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Rounds what a pointer tells: a pixel is never as exact as a double, and a job file of few digits
 * reads well.
 */
final class Tidy {
  /** Steps of a coordinate per diagonal of the piece: far finer than a pixel. */
  private static final double STEPS = 1e5;

  private Tidy() {}

  static double toTwoDigits(double value) {
    return digits(value, 2);
  }

  static double toThreeDigits(double value) {
    return digits(value, 3);
  }

  private static double digits(double value, int digits) {
    return new BigDecimal(value).round(new MathContext(digits)).doubleValue();
  }

  /** A length to a power of ten of mm that is fine for a piece of such a diagonal. */
  static double length(double mm, double diagonalMm) {
    int exponent = diagonalMm > 0 ? (int) Math.floor(Math.log10(diagonalMm / STEPS)) : -3;
    return BigDecimal.valueOf(mm)
        .setScale(-exponent, java.math.RoundingMode.HALF_EVEN)
        .doubleValue();
  }

  static Vector3D point(Vector3D mm, double diagonalMm) {
    return Vector3D.of(
        length(mm.getX(), diagonalMm),
        length(mm.getY(), diagonalMm),
        length(mm.getZ(), diagonalMm));
  }

  /** A direction to six digits, good to a second of arc. */
  static Vector3D direction(Vector3D way) {
    Vector3D unit = way.normalize();
    return Vector3D.of(round6(unit.getX()), round6(unit.getY()), round6(unit.getZ()));
  }

  private static double round6(double value) {
    return BigDecimal.valueOf(value).setScale(6, java.math.RoundingMode.HALF_EVEN).doubleValue();
  }
}
