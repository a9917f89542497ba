package org.seamwright.sample;

import java.util.ArrayList;
import java.util.List;

/**
 * Half of a turned piece's outline, in the plane of radius r and height z, mm: straight lines and
 * circular arcs, one after the other, with the metal on the left of the way.
 *
 * <p>Knows the exact area that each piece sweeps when turned about the axis: a line gives a cone
 * frustum, π(r₁ + r₂)s; an arc of radius ρ about (a, b) from angle α to β gives a zone of a torus,
 * 2πρ·|a(β − α) + ρ(sin β − sin α)| (Pappus; any handbook of mathematics, for example CRC Standard
 * Mathematical Tables).
 */
final class Profile {
  /** Largest turn between neighbouring points of an arc, radians. */
  private static final double ARC_STEP = Math.toRadians(15);

  private sealed interface Piece {
    double areaMm2();

    double[] at(double share);

    double lengthMm();

    /** Fewest parts that show its shape: a tight arc needs several however short it is. */
    int leastParts();
  }

  private record Line(double r1, double z1, double r2, double z2) implements Piece {
    @Override
    public double areaMm2() {
      return Math.PI * (r1 + r2) * lengthMm();
    }

    @Override
    public double[] at(double share) {
      return new double[] {r1 + share * (r2 - r1), z1 + share * (z2 - z1)};
    }

    @Override
    public double lengthMm() {
      return Math.hypot(r2 - r1, z2 - z1);
    }

    @Override
    public int leastParts() {
      return 1;
    }
  }

  private record Arc(double a, double b, double rho, double from, double to) implements Piece {
    @Override
    public double areaMm2() {
      return 2 * Math.PI * rho * Math.abs(a * (to - from) + rho * (Math.sin(to) - Math.sin(from)));
    }

    @Override
    public double[] at(double share) {
      double angle = from + share * (to - from);
      return new double[] {a + rho * Math.cos(angle), b + rho * Math.sin(angle)};
    }

    @Override
    public double lengthMm() {
      return rho * Math.abs(to - from);
    }

    @Override
    public int leastParts() {
      return (int) Math.ceil(Math.abs(to - from) / ARC_STEP - 1e-9);
    }
  }

  private final List<Piece> pieces = new ArrayList<>();
  private double r;
  private double z;

  private Profile(double r, double z) {
    this.r = r;
    this.z = z;
  }

  /** Starts a profile at a point. */
  static Profile from(double r, double z) {
    return new Profile(r, z);
  }

  /** Goes straight to a point. */
  Profile lineTo(double toR, double toZ) {
    pieces.add(new Line(r, z, toR, toZ));
    r = toR;
    z = toZ;
    return this;
  }

  /**
   * Goes along a circle about a centre until the angle, measured at the centre from the outward
   * direction towards up, is the given one.
   *
   * @param centreR radius of the centre, mm
   * @param centreZ height of the centre, mm
   * @param toDegrees angle at the end; less than the present angle to turn clockwise
   */
  Profile arcTo(double centreR, double centreZ, double toDegrees) {
    double rho = Math.hypot(r - centreR, z - centreZ);
    double from = Math.atan2(z - centreZ, r - centreR);
    double to = Math.toRadians(toDegrees);
    Arc arc = new Arc(centreR, centreZ, rho, from, to);
    pieces.add(arc);
    double[] end = arc.at(1);
    r = end[0];
    z = end[1];
    return this;
  }

  /** Exact area swept by a full turn, mm². */
  double areaMm2() {
    double sum = 0;
    for (Piece piece : pieces) {
      sum += piece.areaMm2();
    }
    return sum;
  }

  /**
   * Points along the profile, both ends of every piece among them.
   *
   * @param stepMm largest distance along the profile between neighbours
   * @return one entry per point: r and z, mm
   */
  double[][] sample(double stepMm) {
    List<double[]> points = new ArrayList<>();
    points.add(pieces.get(0).at(0));
    for (Piece piece : pieces) {
      int parts = Math.max(piece.leastParts(), (int) Math.ceil(piece.lengthMm() / stepMm - 1e-9));
      for (int i = 1; i <= parts; i++) {
        points.add(piece.at((double) i / parts));
      }
    }
    return points.toArray(double[][]::new);
  }
}
