package org.seamwright.region;

/** The middle of a face and how far the face reaches from it. */
final class Spread {
  private Spread() {}

  /**
   * Distance from a face's middle to its furthest corner, mm.
   *
   * @param middle receives the middle, mm
   */
  static double of(EditableSurface surface, int face, double[] middle) {
    for (int axis = 0; axis < 3; axis++) {
      middle[axis] =
          (surface.at(surface.from(3 * face), axis)
                  + surface.at(surface.from(3 * face + 1), axis)
                  + surface.at(surface.from(3 * face + 2), axis))
              / 3;
    }
    double furthest2 = 0;
    for (int k = 0; k < 3; k++) {
      double sum = 0;
      for (int axis = 0; axis < 3; axis++) {
        double d = surface.at(surface.from(3 * face + k), axis) - middle[axis];
        sum += d * d;
      }
      furthest2 = Math.max(furthest2, sum);
    }
    return Math.sqrt(furthest2);
  }
}
