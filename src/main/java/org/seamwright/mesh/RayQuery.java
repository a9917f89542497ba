package org.seamwright.mesh;

/** One search for the first face of a {@link FaceTree} that a ray meets: nearer boxes first. */
final class RayQuery {
  /**
   * Stands for the inverse of a direction that is zero or so small, beside its longest component,
   * that it moves the ray by less than one rounding.
   */
  private static final double UPRIGHT = 0x1p40;

  /**
   * Radius of a ball that holds the mesh's box with room, box units; the box's corners lie at √3.
   */
  private static final double BALL = 2;

  /**
   * Roundings of single precision between the origin and a box's entry, each of numbers up to 4:
   * fewer than 16 units in the last place of 1, of which a box holds 8 already.
   */
  private static final int ROOM = 2;

  private final double[] xyz;
  private final BoxTree boxes;
  private final int[] node;
  private final Ray ray;

  /** Where the search starts, in box units, and the inverse of the scaled direction. */
  private final float ox;

  private final float oy;
  private final float oz;
  private final float ix;
  private final float iy;
  private final float iz;

  /** Room for roundings, in scaled lengths. */
  private final float roomX;

  private final float roomY;
  private final float roomZ;

  /** Scaled lengths per length of the direction given, and scaled length to the start. */
  private final double lengths;

  private final double start;
  private final double room;
  private double best = Double.POSITIVE_INFINITY;
  private int bestFace = -1;
  private double w1;
  private double w2;

  /** Boxes entered later than this can hold no earlier face; in scaled lengths from the start. */
  private float limit = Float.MAX_VALUE;

  /**
   * Scales the direction by a power of two, so that its longest component is 1 to 2, and starts the
   * search where the ray enters a ball around the mesh, so that an origin far off costs no digits.
   */
  RayQuery(double[] xyz, BoxTree boxes, Ray ray) {
    this.xyz = xyz;
    this.boxes = boxes;
    this.ray = ray;
    node = boxes.node();
    double scale = boxes.scale();
    double[] middle = boxes.middle();
    double x = (ray.ox - middle[0]) * scale;
    double y = (ray.oy - middle[1]) * scale;
    double z = (ray.oz - middle[2]) * scale;
    double unit = Math.scalb(1.0, -Math.getExponent(ray.longest));
    double dx = ray.dx * unit;
    double dy = ray.dy * unit;
    double dz = ray.dz * unit;
    double dd = dx * dx + dy * dy + dz * dz;
    lengths = scale / unit;
    start = Math.max(0, -(x * dx + y * dy + z * dz) / dd - BALL / Math.sqrt(dd));
    double far = BoxTree.FINE_ROUNDING * (Math.abs(x) + Math.abs(y) + Math.abs(z));
    x += start * dx;
    y += start * dy;
    z += start * dz;
    room =
        far
            + boxes.noise()
            + ROOM * BoxTree.ROUNDING * (1 + Math.abs(x) + Math.abs(y) + Math.abs(z));
    ox = (float) x;
    oy = (float) y;
    oz = (float) z;
    ix = inverse(dx);
    iy = inverse(dy);
    iz = inverse(dz);
    roomX = (float) room * Math.abs(ix);
    roomY = (float) room * Math.abs(iy);
    roomZ = (float) room * Math.abs(iz);
  }

  private static float inverse(double direction) {
    return (float) (Math.abs(direction) * UPRIGHT > 1 ? 1 / direction : UPRIGHT);
  }

  /** Whether the ray meets a face. */
  boolean run() {
    NodeStack stack = new NodeStack();
    int at = boxes.root();
    while (true) {
      if (at < 0) {
        leaf(~at);
      } else {
        node(at, stack);
      }
      do {
        if (stack.isEmpty()) {
          return bestFace >= 0;
        }
        at = stack.pop();
      } while (stack.popped() > limit || at == BoxTree.NONE);
    }
  }

  /** Pushes the children of a node that the ray enters soon enough. */
  private void node(int at, NodeStack stack) {
    float half = Float.intBitsToFloat(node[at + 3]) / 2;
    float ax = (Float.intBitsToFloat(node[at]) - ox) * ix;
    float ay = (Float.intBitsToFloat(node[at + 1]) - oy) * iy;
    float az = (Float.intBitsToFloat(node[at + 2]) - oz) * iz;
    float sx = half * ix;
    float sy = half * iy;
    float sz = half * iz;
    stack.push(
        entry(at, 0, ax, ay, az, sx, sy, sz),
        entry(at, 1, ax, ay, az, sx, sy, sz),
        entry(at, 2, ax, ay, az, sx, sy, sz),
        entry(at, 3, ax, ay, az, sx, sy, sz),
        limit);
  }

  /**
   * Where the ray enters a child's box, in scaled lengths, with its reference; never if it misses.
   *
   * @param ax where it enters the plane through the node's corner, square to x
   * @param sx what half a unit adds to that
   */
  private long entry(int at, int k, float ax, float ay, float az, float sx, float sy, float sz) {
    int x0 = BoxTree.part(node[at + 4], k);
    int x1 = BoxTree.part(node[at + 5], k);
    int y0 = BoxTree.part(node[at + 6], k);
    int y1 = BoxTree.part(node[at + 7], k);
    int z0 = BoxTree.part(node[at + 8], k);
    int z1 = BoxTree.part(node[at + 9], k);
    float tx = ax + (x0 + x1) * sx;
    float ty = ay + (y0 + y1) * sy;
    float tz = az + (z0 + z1) * sz;
    float hx = (x1 - x0) * Math.abs(sx) + roomX;
    float hy = (y1 - y0) * Math.abs(sy) + roomY;
    float hz = (z1 - z0) * Math.abs(sz) + roomZ;
    float near = Math.max(Math.max(tx - hx, ty - hy), Math.max(tz - hz, 0));
    float far = Math.min(Math.min(tx + hx, ty + hy), tz + hz);
    return NodeStack.keyUnless(far - near, near, node[at + BoxTree.REFERENCES + k]);
  }

  private void leaf(int begin) {
    int[] leaf = boxes.leaf();
    for (int i = begin; ; i += 4) {
      int face = leaf[i + 3];
      if (ray.meets(xyz, leaf[i], leaf[i + 1], leaf[i + 2])) {
        int f = face < 0 ? ~face : face;
        if (ray.distance < best || (ray.distance == best && f < bestFace)) {
          best = ray.distance;
          bestFace = f;
          w1 = ray.w1;
          w2 = ray.w2;
          limit = (float) Math.min(Float.MAX_VALUE, best * lengths - start + room);
        }
      }
      if (face < 0) {
        return;
      }
    }
  }

  FaceTree.Hit hit() {
    return new FaceTree.Hit(new SurfacePoint(bestFace, 1 - w1 - w2, w1, w2), best);
  }
}
