package org.seamwright.meshfile;

import org.seamwright.basis.Progress;

/**
 * Turns the corners of a glTF primitive into triangles: section 3.7.2.1 of the standard.
 *
 * @param primitive where it stands, for refusals
 * @param corners point numbers; null if the points are the corners
 * @param points number of points
 * @param base number of its first point among those gathered
 * @param turned whether the body is mirrored
 * @param name label of its faces
 */
record GltfTriangles(
    GltfJson primitive,
    GltfBuffers.Accessor corners,
    int points,
    int base,
    boolean turned,
    int name) {
  static final int TRIANGLES = 4;
  private static final int STRIP = 5;
  private static final int FAN = 6;
  private static final int STRIDE = 1 << 12;

  /** Adds the triangles of so many corners. */
  void into(FaceSink sink, int mode, int count, Progress progress) throws MeshFileException {
    if (mode > FAN) {
      throw primitive.get("mode").refuse("mode " + mode + " is unknown", Refusal.EXPORT_AGAIN);
    }
    if (mode == TRIANGLES && count % 3 != 0) {
      throw primitive.refuse(
          "it has " + count + " corners, which is no multiple of 3", Refusal.EXPORT_AGAIN);
    }
    int step = mode == TRIANGLES ? 3 : 1;
    for (int i = 0; i + 2 < count; i += step) {
      int a = corner(mode == FAN ? 0 : i);
      int b = corner(i + 1);
      int c = corner(i + 2);
      boolean odd = mode == STRIP && (i & 1) != 0;
      // Triangles of a strip that have equal corners only join strips.
      if (mode == TRIANGLES || (a != b && b != c && c != a)) {
        sink.triangle(base + a, base + b, base + c, turned != odd, name);
      }
      if ((i & (STRIDE - 1)) == 0) {
        progress.at((double) i / count);
      }
    }
  }

  private int corner(int i) throws MeshFileException {
    if (corners == null) {
      return i;
    }
    double index = corners.value(i, 0);
    if (!(index >= 0 && index < points) || index != Math.rint(index)) {
      throw primitive
          .get("indices")
          .refuse(
              "corner " + i + " is point " + (long) index + ", but there are " + points,
              Refusal.EXPORT_AGAIN);
    }
    return (int) index;
  }
}
