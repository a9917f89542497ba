package org.seamwright.meshfile;

/** What a glTF node does to its mesh and children: section 3.5.2 of the standard. */
final class GltfNodes {
  private GltfNodes() {}

  /** The node's own transform, from its matrix or from scale, rotation and translation. */
  static Affine transform(GltfJson node) throws MeshFileException {
    if (node.has("matrix")) {
      // Column by column; the last row is 0 0 0 1.
      double[] c = node.get("matrix").numbers(16);
      return new Affine(
          new double[] {
            c[0], c[4], c[8], c[1], c[5], c[9], c[2], c[6], c[10], c[12], c[13], c[14]
          });
    }
    if (!node.has("translation") && !node.has("rotation") && !node.has("scale")) {
      return Affine.IDENTITY;
    }
    double[] t = numbers(node, "translation", 0);
    double[] s = numbers(node, "scale", 1);
    double[] r = rotation(node);
    return new Affine(
        new double[] {
          r[0] * s[0],
          r[1] * s[1],
          r[2] * s[2],
          r[3] * s[0],
          r[4] * s[1],
          r[5] * s[2],
          r[6] * s[0],
          r[7] * s[1],
          r[8] * s[2],
          t[0],
          t[1],
          t[2]
        });
  }

  private static double[] numbers(GltfJson node, String key, double usual)
      throws MeshFileException {
    return node.has(key) ? node.get(key).numbers(3) : new double[] {usual, usual, usual};
  }

  /** Matrix of the quaternion x, y, z, w, which is brought to length 1. */
  private static double[] rotation(GltfJson node) throws MeshFileException {
    if (!node.has("rotation")) {
      return new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1};
    }
    double[] q = node.get("rotation").numbers(4);
    double length = Math.sqrt(q[0] * q[0] + q[1] * q[1] + q[2] * q[2] + q[3] * q[3]);
    if (!(length > 0) || Double.isInfinite(length)) {
      throw node.get("rotation").refuse("this is no rotation", Refusal.EXPORT_AGAIN);
    }
    double x = q[0] / length;
    double y = q[1] / length;
    double z = q[2] / length;
    double w = q[3] / length;
    return new double[] {
      1 - 2 * (y * y + z * z),
      2 * (x * y - z * w),
      2 * (x * z + y * w),
      2 * (x * y + z * w),
      1 - 2 * (x * x + z * z),
      2 * (y * z - x * w),
      2 * (x * z - y * w),
      2 * (y * z + x * w),
      1 - 2 * (x * x + y * y)
    };
  }
}
