package org.seamwright.desk;

import java.util.Locale;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.region.Treatment;

/**
 * What the tools of marking are set to.
 *
 * @param treatment what becomes of the place
 * @param radiusMm half the width of a stroke, mm
 * @param creaseDegrees how sharp a crease stops a fill
 * @param gapsMm breaks of a crease that don't let a fill through, mm
 * @param facingDegrees how far normals may lean away
 * @param side which side of a plane
 * @param byMm how far places grow, and how smooth edges become, mm
 * @param count how many there are of each after a turn
 * @param label name of faces in the file
 */
public record ToolSettings(
    Treatment treatment,
    double radiusMm,
    double creaseDegrees,
    double gapsMm,
    double facingDegrees,
    Side side,
    double byMm,
    int count,
    String label) {
  /** A wheel step makes a stroke wider by this factor. */
  private static final double WHEEL = 1.1;

  /** Which side of a plane is marked. */
  public enum Side {
    /** What is higher. */
    ABOVE(0, 0, 1),
    /** What is lower. */
    BELOW(0, 0, -1),
    /** Towards smaller x. */
    LEFT(-1, 0, 0),
    /** Towards larger x. */
    RIGHT(1, 0, 0),
    /** Towards smaller y. */
    FRONT(0, -1, 0),
    /** Towards larger y. */
    BACK(0, 1, 0),
    /** Outwards from the face clicked. */
    FACE(0, 0, 0);

    private final double x;
    private final double y;
    private final double z;

    Side(double x, double y, double z) {
      this.x = x;
      this.y = y;
      this.z = z;
    }

    /** Direction to the marked side, given that of the face clicked. */
    Vector3D normal(Vector3D face) {
      return this == FACE ? face : Vector3D.of(x, y, z);
    }

    /** Its name. */
    public String title() {
      return Messages.text("side." + name().toLowerCase(Locale.ROOT));
    }
  }

  /** Settings to start with on a piece of a size: strokes a fortieth of its diagonal wide. */
  static ToolSettings start(double diagonalMm) {
    double radius = Tidy.toTwoDigits(Math.max(diagonalMm, 1e-3) / 80);
    return new ToolSettings(Treatment.BARE, radius, 40, 0, 5, Side.BELOW, radius, 5, "");
  }

  /** The same with another treatment. */
  public ToolSettings withTreatment(Treatment other) {
    return new ToolSettings(
        other, radiusMm, creaseDegrees, gapsMm, facingDegrees, side, byMm, count, label);
  }

  /** The same with another radius, above 0. */
  public ToolSettings withRadiusMm(double other) {
    return new ToolSettings(
        treatment, other, creaseDegrees, gapsMm, facingDegrees, side, byMm, count, label);
  }

  /** The same after some steps of the wheel. */
  public ToolSettings widened(int steps) {
    return withRadiusMm(Tidy.toThreeDigits(radiusMm * Math.pow(WHEEL, steps)));
  }

  /** The same with another crease angle, above 0 to 180. */
  public ToolSettings withCreaseDegrees(double other) {
    return new ToolSettings(
        treatment, radiusMm, other, gapsMm, facingDegrees, side, byMm, count, label);
  }

  /** The same with other gaps, 0 or more. */
  public ToolSettings withGapsMm(double other) {
    return new ToolSettings(
        treatment, radiusMm, creaseDegrees, other, facingDegrees, side, byMm, count, label);
  }

  /** The same with another leaning, above 0 to 180. */
  public ToolSettings withFacingDegrees(double other) {
    return new ToolSettings(
        treatment, radiusMm, creaseDegrees, gapsMm, other, side, byMm, count, label);
  }

  /** The same with another side. */
  public ToolSettings withSide(Side other) {
    return new ToolSettings(
        treatment, radiusMm, creaseDegrees, gapsMm, facingDegrees, other, byMm, count, label);
  }

  /** The same with another distance, above 0. */
  public ToolSettings withByMm(double other) {
    return new ToolSettings(
        treatment, radiusMm, creaseDegrees, gapsMm, facingDegrees, side, other, count, label);
  }

  /** The same with another count, from 2. */
  public ToolSettings withCount(int other) {
    return new ToolSettings(
        treatment, radiusMm, creaseDegrees, gapsMm, facingDegrees, side, byMm, other, label);
  }

  /** The same with another name to look for. */
  public ToolSettings withLabel(String other) {
    return new ToolSettings(
        treatment, radiusMm, creaseDegrees, gapsMm, facingDegrees, side, byMm, count, other);
  }
}
