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

  /** The same for a front that is taken as round before anything else. */
  private static final double EXACT_MISFIT = 1e-3;

  /**
   * How far the mean of the slopes at the ends may be from the slope between them, twice, before
   * the front counts as pieced together of a straight and a round part.
   */
  private static final double SKEW = 0.01;

  /** Cosine up to which a ray counts as leaving a segment at no less than a right angle. */
  private static final double SQUARE = 0.01;

  /** The same where the source crosses the edge itself: there is no front to fall back on. */
  private static final double LOOSELY_SQUARE = 0.3;

  /** Share of the edge by which a start on the segment may be misplaced. */
  private static final double MISPLACED = 0.02;

  /** The same beyond which the rays are not believed: rough surface, or an end not final. */
  private static final double DISTRUST = 0.2;

  private static final int NEWTON_STEPS = 2;

  private double sx;
  private double sy;
  private double tx;
  private double ty;
  private double startA;
  private double startB;

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
      // Only a source that itself crosses the edge is behind one end and before the other.
      if (Math.max(da, db) <= length
          && startsOnSegment(da, db, length, fa, ha, fb, hb, LOOSELY_SQUARE)) {
        return fromSegment(length, cx, cy);
      }
      return colliding(da, db, length, cx, cy, fa, ha, fb, hb);
    }
    double turn = ha * fb - fa * hb;
    boolean apart = fa * fb + ha * hb < 0;
    boolean wide = turn > WIDE || (apart && fa < fb);
    if (wide && meetBehind(da, db, length, fa, ha, hb, turn, EXACT_MISFIT)) {
      return round(length, cx, cy);
    }
    double skew = fa + fb - 2 * (db - da) / length;
    if ((wide || Math.abs(skew) > SKEW)
        && startsOnSegment(da, db, length, fa, ha, fb, hb, SQUARE)) {
      return fromSegment(length, cx, cy);
    }
    if (turn < -WIDE) {
      return colliding(da, db, length, cx, cy, fa, ha, fb, hb);
    }
    if (wide && meetBehind(da, db, length, fa, ha, hb, turn, ROUND_MISFIT)) {
      return round(length, cx, cy);
    }
    if (Math.abs(skew) > DISTRUST) {
      return fromDistancesAlone(da, db, length, cx, cy);
    }
    return cubic(da, db, length, cx, cy, fa, fb, (fa + fb) / 2, (ha + hb) / 2);
  }

  /** Finds where the rays, traced back, meet; false if the ends disagree about the radius. */
  private boolean meetBehind(
      double da,
      double db,
      double length,
      double fa,
      double ha,
      double hb,
      double turn,
      double misfit) {
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
    sx = -ra * fa;
    sy = -ra * ha;
    startA = da - ra;
    startB = db - rb;
    return Math.abs(startA - startB) <= misfit * length;
  }

  /** Arrival from the place where the rays meet. */
  private double round(double length, double cx, double cy) {
    double x = sx - (cx - sx) * sy / (cy - sy);
    if (!(x >= 0 && x <= length)) {
      return Double.POSITIVE_INFINITY;
    }
    double r = Math.sqrt((cx - sx) * (cx - sx) + (cy - sy) * (cy - sy));
    towardsX = (cx - sx) / r;
    towardsY = (cy - sy) / r;
    return r + startA + (startB - startA) * x / length;
  }

  /** Finds where the rays start; false unless each end is nearest its own start. */
  private boolean startsOnSegment(
      double da,
      double db,
      double length,
      double fa,
      double ha,
      double fb,
      double hb,
      double square) {
    sx = -da * fa;
    sy = -da * ha;
    tx = length - db * fb;
    ty = -db * hb;
    double ux = tx - sx;
    double uy = ty - sy;
    double u = Math.sqrt(ux * ux + uy * uy);
    return -(ux * sx + uy * sy) <= u * Math.max(square * da, MISPLACED * length)
        && -(ux * (length - tx) - uy * ty) <= u * Math.max(square * db, MISPLACED * length);
  }

  /** Arrival from the segment between the two starts. */
  private double fromSegment(double length, double cx, double cy) {
    double ux = tx - sx;
    double uy = ty - sy;
    double uu = ux * ux + uy * uy;
    double t = uu > 0 ? ((cx - sx) * ux + (cy - sy) * uy) / uu : 0;
    t = Math.max(0, Math.min(1, t));
    double px = sx + t * ux;
    double py = sy + t * uy;
    if (py > 0) {
      return Double.POSITIVE_INFINITY;
    }
    return fromPoint(px, py, length, cx, cy);
  }

  /** Arrival from the place behind the edge that has the two arrivals as distances. */
  private double fromDistancesAlone(double da, double db, double length, double cx, double cy) {
    double x = (length + (da - db) * (da + db) / length) / 2;
    double yy = da * da - x * x;
    return yy > 0 ? fromPoint(x, -Math.sqrt(yy), length, cx, cy) : Double.POSITIVE_INFINITY;
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
    if (ha > 0) {
      best = fromPoint(-da * fa, -da * ha, length, cx, cy);
    }
    if (hb > 0) {
      double x = towardsX;
      double y = towardsY;
      double other = fromPoint(length - db * fb, -db * hb, length, cx, cy);
      if (other < best) {
        return other;
      }
      towardsX = x;
      towardsY = y;
    }
    return best;
  }

  private double fromPoint(double px, double py, double length, double cx, double cy) {
    double x = px - (cx - px) * py / (cy - py);
    if (!(x >= 0 && x <= length)) {
      return Double.POSITIVE_INFINITY;
    }
    double r = Math.sqrt((cx - px) * (cx - px) + (cy - py) * (cy - py));
    towardsX = (cx - px) / r;
    towardsY = (cy - py) / r;
    return r;
  }
}
