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

  private final double[] xyz;
  private final BoxTree boxes;
  private final float[] box;
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
    box = boxes.box();
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
    room = far + boxes.noise() + BoxTree.ROUNDING * (1 + Math.abs(x) + Math.abs(y) + Math.abs(z));
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
    int[] stack = new int[BoxTree.STACK];
    float[] entry = new float[BoxTree.STACK];
    int top = 0;
    int at = boxes.root();
    int[] child = boxes.child();
    while (true) {
      if (at < 0) {
        leaf(~at);
      } else {
        int bottom = top;
        int first = BoxTree.CHILDREN * at;
        for (int k = first; k < first + BoxTree.CHILDREN; k++) {
          float far = entry(BoxTree.BOX * k);
          if (far <= limit) {
            int i = top++;
            for (; i > bottom && entry[i - 1] < far; i--) {
              entry[i] = entry[i - 1];
              stack[i] = stack[i - 1];
            }
            entry[i] = far;
            stack[i] = child[k];
          }
        }
      }
      do {
        if (top == 0) {
          return bestFace >= 0;
        }
      } while (entry[--top] > limit);
      at = stack[top];
    }
  }

  /** Where the ray enters a box, in scaled lengths; infinite if it misses. */
  private float entry(int at) {
    float tx = (box[at] - ox) * ix;
    float ty = (box[at + 1] - oy) * iy;
    float tz = (box[at + 2] - oz) * iz;
    float hx = box[at + 3] * Math.abs(ix) + roomX;
    float hy = box[at + 4] * Math.abs(iy) + roomY;
    float hz = box[at + 5] * Math.abs(iz) + roomZ;
    float near = Math.max(Math.max(tx - hx, ty - hy), Math.max(tz - hz, 0));
    float far = Math.min(Math.min(tx + hx, ty + hy), tz + hz);
    return near <= far ? near : Float.POSITIVE_INFINITY;
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
