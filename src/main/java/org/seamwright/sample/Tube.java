package org.seamwright.sample;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A tube that joins two openings of equal vertex count without a gap: each ring is a blend of the
 * opening's own outline and an ellipse about a centre line.
 */
final class Tube {
  private Tube() {}

  /** A centre line: place and direction for a share of the way from 0 to 1. */
  interface Way {
    /** Place, mm. */
    Vector3D at(double share);

    /** Unit direction of travel. */
    Vector3D direction(double share);
  }

  /** A straight way between two points. */
  static Way straight(Vector3D from, Vector3D to) {
    Vector3D direction = to.subtract(from).normalize();
    return new Way() {
      @Override
      public Vector3D at(double share) {
        return from.lerp(to, share);
      }

      @Override
      public Vector3D direction(double share) {
        return direction;
      }
    };
  }

  /**
   * A half circle that leaves along {@code out} and comes back against it.
   *
   * @param centre middle of the half circle's diameter
   * @param start unit vector from the centre to where it starts
   * @param out unit vector, square to {@code start}
   * @param radius mm
   */
  static Way halfCircle(Vector3D centre, Vector3D start, Vector3D out, double radius) {
    return new Way() {
      @Override
      public Vector3D at(double share) {
        double t = Math.PI * share;
        return centre
            .add(start.multiply(radius * Math.cos(t)))
            .add(out.multiply(radius * Math.sin(t)));
      }

      @Override
      public Vector3D direction(double share) {
        double t = Math.PI * share;
        return out.multiply(Math.cos(t)).subtract(start.multiply(Math.sin(t)));
      }
    };
  }

  /**
   * Adds the tube's faces.
   *
   * @param builder receives them
   * @param from outline of the opening where it starts, counter-clockwise seen from outside
   * @param to outline of the opening where it ends, likewise
   * @param way centre line from the middle of one to the middle of the other
   * @param side unit vector that stays square to the way all along
   * @param halfSide half width of the ellipse along {@code side}, mm
   * @param halfOther half width of the ellipse across, mm
   * @param rings number of steps along the way
   * @param blend share of the way, at each end, over which outline turns into ellipse
   */
  static void join(
      MeshBuilder builder,
      int[] from,
      int[] to,
      Way way,
      Vector3D side,
      double halfSide,
      double halfOther,
      int rings,
      double blend) {
    int n = from.length;
    double[][] start = local(builder, from, way, 0, side);
    double[][] end = aligned(local(builder, to, way, 1, side), start);
    int[] endVertex = alignedVertices(to, end, builder, way, side);
    int[] ring = from.clone();
    for (int i = 1; i <= rings; i++) {
      double share = (double) i / rings;
      int[] next = i == rings ? endVertex : new int[n];
      for (int k = 0; k < n && i < rings; k++) {
        double w0 = smooth(1 - share / blend);
        double w1 = smooth(1 - (1 - share) / blend);
        double mid = 1 - w0 - w1;
        double angle =
            Math.atan2(
                (1 - share) * start[k][1] / halfOther + share * end[k][1] / halfOther,
                (1 - share) * start[k][0] / halfSide + share * end[k][0] / halfSide);
        double s = w0 * start[k][0] + w1 * end[k][0] + mid * halfSide * Math.cos(angle);
        double o = w0 * start[k][1] + w1 * end[k][1] + mid * halfOther * Math.sin(angle);
        double a = w0 * start[k][2] + w1 * end[k][2];
        Vector3D t = way.direction(share);
        Vector3D p =
            way.at(share).add(side.multiply(s)).add(t.cross(side).multiply(o)).add(t.multiply(a));
        next[k] = builder.vertex(p.getX(), p.getY(), p.getZ());
      }
      for (int k = 0; k < n; k++) {
        int k1 = (k + 1) % n;
        builder.face(ring[k], ring[k1], next[k]);
        builder.face(ring[k1], next[k1], next[k]);
      }
      ring = next;
    }
  }

  /** Smooth step from 0 (x ≤ 0) to 1 (x ≥ 1). */
  private static double smooth(double x) {
    double c = Math.max(0, Math.min(1, x));
    return c * c * (3 - 2 * c);
  }

  /** Outline in the frame of the way: along the side, across, along the way. */
  private static double[][] local(
      MeshBuilder builder, int[] outline, Way way, double share, Vector3D side) {
    Vector3D centre = way.at(share);
    Vector3D t = way.direction(share);
    Vector3D other = t.cross(side);
    double[][] local = new double[outline.length][];
    for (int k = 0; k < outline.length; k++) {
      Vector3D d =
          Vector3D.of(
                  builder.at(outline[k], 0), builder.at(outline[k], 1), builder.at(outline[k], 2))
              .subtract(centre);
      local[k] = new double[] {d.dot(side), d.dot(other), d.dot(t)};
    }
    return local;
  }

  /**
   * The far outline, turned round (its own sense is seen from its own outside, against the way) and
   * shifted so that it twists least against the near one.
   */
  private static double[][] aligned(double[][] far, double[][] near) {
    int n = far.length;
    int best = 0;
    double bestSum = Double.POSITIVE_INFINITY;
    for (int shift = 0; shift < n; shift++) {
      double sum = 0;
      for (int k = 0; k < n; k++) {
        double[] f = far[Math.floorMod(shift - k, n)];
        sum += Math.pow(f[0] - near[k][0], 2) + Math.pow(f[1] - near[k][1], 2);
      }
      if (sum < bestSum) {
        bestSum = sum;
        best = shift;
      }
    }
    double[][] aligned = new double[n][];
    for (int k = 0; k < n; k++) {
      aligned[k] = far[Math.floorMod(best - k, n)];
    }
    return aligned;
  }

  private static int[] alignedVertices(
      int[] to, double[][] aligned, MeshBuilder builder, Way way, Vector3D side) {
    double[][] plain = local(builder, to, way, 1, side);
    int shift = 0;
    while (plain[shift][0] != aligned[0][0]
        || plain[shift][1] != aligned[0][1]
        || plain[shift][2] != aligned[0][2]) {
      shift++;
    }
    int[] vertices = new int[to.length];
    for (int k = 0; k < to.length; k++) {
      vertices[k] = to[Math.floorMod(shift - k, to.length)];
    }
    return vertices;
  }
}
