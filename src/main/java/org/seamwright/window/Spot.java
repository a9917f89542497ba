package org.seamwright.window;

/**
 * A place on the piece under the pointer.
 *
 * @param face face of the section plan's mesh
 * @param faceClass its class, see {@link FaceClasses}
 * @param x mm
 * @param y mm
 * @param z mm
 */
public record Spot(int face, int faceClass, double x, double y, double z) {
  /** Section of the place; 0 where nothing is plated. */
  public int section() {
    return FaceClasses.section(faceClass);
  }

  /** Whether the place is worked again with a later neighbour. */
  public boolean inLap() {
    return FaceClasses.isLap(faceClass);
  }
}
