package org.seamwright.geodesic;

/**
 * When a wavefront that is known at the two ends of an edge reaches a third point across it, all in
 * one plane: the edge from (0, 0) to (length, 0), the point C at (cx, cy) with cy above 0.
 *
 * <p>At each end the arrival and the unit direction of travel are known. Where the two rays, traced
 * back, meet not far behind the edge, the front is taken as round about that place, which is exact
 * for a point source in a plane; where they run nearly alike, the arrival along the edge is the
 * cubic that has the right values and slopes at both ends, which is exact for a straight front and
 * errs by length⁴/(128 radius³) for a round one. Where they run towards one another two fronts
 * collide, and each is taken as straight.
 *
 * <p>After: M. Novotni and R. Klein, "Computing geodesic distances on triangular meshes", 2002
 * (round fronts about a virtual source); S. F. Potter and M. K. Cameron, "Jet marching methods for
 * solving the eikonal equation", 2021 (cubic between ends).
 */
final class EdgeCrossing {
  /**
   * Sine of the angle between the rays beyond which the front is round or collides: r < 10 edges.
   */
  private static final double WIDE = 0.1;

  /** How far a ray may lean away from C, as a sine, and still count as grazing the edge. */
  private static final double LEAN = 0.05;

  /** Largest disagreement of the two ends about a round front, as a share of the edge. */
  private static final double ROUND_MISFIT = 0.1;

  private static final int NEWTON_STEPS = 2;

  /** Direction of travel at C, set with a finite result. */
  double towardsX;

  double towardsY;

  /**
   * Arrival at C through the inside of the edge, infinite if no ray comes that way.
   *
   * @param fa slope of the arrival along the edge at its start: x of the ray there
   * @param ha y of the ray there
   */
  double at(
      double da,
      double db,
      double length,
      double cx,
      double cy,
      double fa,
      double ha,
      double fb,
      double hb) {
    if (ha < -LEAN || hb < -LEAN) {
      return Double.POSITIVE_INFINITY;
    }
    double turn = ha * fb - fa * hb;
    boolean apart = fa * fb + ha * hb < 0;
    if (turn < -WIDE) {
      return colliding(da, db, length, cx, cy, fa, ha, fb, hb);
    }
    if (turn > WIDE || (apart && fa < fb)) {
      double ra;
      double rb;
      if (turn > WIDE * WIDE) {
        ra = length * hb / turn;
        rb = length * ha / turn;
      } else {
        // The source is all but on the edge; where along it, the arrivals tell better.
        ra = Math.max(0, Math.min(length, (length + da - db) / 2));
        rb = length - ra;
      }
      double ea = da - ra;
      double eb = db - rb;
      if (Math.abs(ea - eb) <= ROUND_MISFIT * length) {
        double sx = -ra * fa;
        double sy = -ra * ha;
        double x = sx - (cx - sx) * sy / (cy - sy);
        if (!(x >= 0 && x <= length)) {
          return Double.POSITIVE_INFINITY;
        }
        double r = Math.sqrt((cx - sx) * (cx - sx) + (cy - sy) * (cy - sy));
        towardsX = (cx - sx) / r;
        towardsY = (cy - sy) / r;
        return r + ea + (eb - ea) * x / length;
      }
    }
    return cubic(da, db, length, cx, cy, fa, fb, (fa + fb) / 2, (ha + hb) / 2);
  }

  private double cubic(
      double da,
      double db,
      double length,
      double cx,
      double cy,
      double fa,
      double fb,
      double guessX,
      double guessY) {
    double m = (db - da) / length;
    // Arrival at share u of the edge: da + length (fa u + b u² + c u³).
    double b = 3 * m - 2 * fa - fb;
    double c = fa + fb - 2 * m;
    double s = guessY > 0 ? cx - cy * guessX / guessY : -Math.signum(guessX) * length;
    s = Math.max(0, Math.min(length, s));
    double r = 0;
    for (int i = 0; i <= NEWTON_STEPS; i++) {
      double u = s / length;
      r = Math.sqrt((cx - s) * (cx - s) + cy * cy);
      double slope = fa + u * (2 * b + 3 * c * u) - (cx - s) / r;
      double bend = (2 * b + 6 * c * u) / length + cy * cy / (r * r * r);
      if (!(bend > 0)) {
        return Double.POSITIVE_INFINITY;
      }
      double next = s - slope / bend;
      if (next <= 0 ? s == 0 : next >= length && s == length) {
        return Double.POSITIVE_INFINITY;
      }
      if (i < NEWTON_STEPS) {
        s = Math.max(0, Math.min(length, next));
      }
    }
    r = Math.sqrt((cx - s) * (cx - s) + cy * cy);
    towardsX = (cx - s) / r;
    towardsY = cy / r;
    double u = s / length;
    return da + length * u * (fa + u * (b + c * u)) + r;
  }

  private double colliding(
      double da,
      double db,
      double length,
      double cx,
      double cy,
      double fa,
      double ha,
      double fb,
      double hb) {
    double best = Double.POSITIVE_INFINITY;
    double xa = cx - cy * fa / ha;
    if (ha > 0 && xa >= 0 && xa <= length) {
      best = da + fa * cx + ha * cy;
      towardsX = fa;
      towardsY = ha;
    }
    double xb = cx - cy * fb / hb;
    if (hb > 0 && xb >= 0 && xb <= length) {
      double d = db + fb * (cx - length) + hb * cy;
      if (d < best) {
        best = d;
        towardsX = fb;
        towardsY = hb;
      }
    }
    return best;
  }
}
