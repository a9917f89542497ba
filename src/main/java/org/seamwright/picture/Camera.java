package org.seamwright.picture;

import org.seamwright.mesh.Mesh;

/**
 * Maps the piece (mm) to a picture (pixels, y down) with a depth that grows away from the eye and
 * is linear over the picture, so that it can be interpolated along a face.
 *
 * <p>Orthographic: depth in mm. Perspective: depth is −1 / distance, 1/mm. Fitting takes one pass
 * over the vertices that faces use.
 */
public final class Camera {
  private final double[] axes;
  private final double[] middle;
  private final double eyeMm;
  private final double scale;
  private final double shiftX;
  private final double shiftY;
  private final int width;
  private final int height;

  private Camera(
      double[] axes,
      double[] middle,
      double eyeMm,
      double scale,
      double shiftX,
      double shiftY,
      int width,
      int height) {
    this.axes = axes;
    this.middle = middle;
    this.eyeMm = eyeMm;
    this.scale = scale;
    this.shiftX = shiftX;
    this.shiftY = shiftY;
    this.width = width;
    this.height = height;
  }

  /**
   * Room left free at the edges of a picture.
   *
   * @param left pixels
   * @param top pixels
   * @param right pixels
   * @param bottom pixels
   */
  public record Margins(int left, int top, int right, int bottom) {
    /** The same room on all four sides. */
    public static Margins all(int pixels) {
      return new Margins(pixels, pixels, pixels, pixels);
    }
  }

  /**
   * Parallel rays: lengths across the view keep their ratio. The piece fills the picture within the
   * margins.
   *
   * @param view side it is seen from
   * @param mesh the piece
   * @param width of the picture, pixels
   * @param height of the picture, pixels
   * @param margins room left free
   */
  public static Camera orthographic(View view, Mesh mesh, int width, int height, Margins margins) {
    return fit(view, mesh, Double.POSITIVE_INFINITY, width, height, margins);
  }

  /**
   * Rays through one eye, as a photograph is taken. The piece fills the picture within the margins.
   *
   * @param view side it is seen from
   * @param mesh the piece
   * @param width of the picture, pixels
   * @param height of the picture, pixels
   * @param margins room left free
   * @param fieldOfViewDegrees angle that the ball around the piece fills, above 0 and below 180
   */
  public static Camera perspective(
      View view, Mesh mesh, int width, int height, Margins margins, double fieldOfViewDegrees) {
    if (!(fieldOfViewDegrees > 0 && fieldOfViewDegrees < 180)) {
      throw new IllegalArgumentException("Field of view out of range: " + fieldOfViewDegrees);
    }
    double radius = mesh.bounds().diagonal() / 2;
    double eye = Math.max(radius, SMALLEST_MM) / Math.sin(Math.toRadians(fieldOfViewDegrees / 2));
    return fit(view, mesh, eye, width, height, margins);
  }

  /** A piece without extent is shown as if this large, mm: a picture of a dot, not a failure. */
  private static final double SMALLEST_MM = 1e-6;

  private static Camera fit(
      View view, Mesh mesh, double eyeMm, int width, int height, Margins margins) {
    int roomX = width - margins.left() - margins.right();
    int roomY = height - margins.top() - margins.bottom();
    if (roomX < 1 || roomY < 1) {
      throw new IllegalArgumentException("No room for a picture of " + width + " × " + height);
    }
    var box = mesh.bounds();
    double[] middle = {
      (box.minX() + box.maxX()) / 2, (box.minY() + box.maxY()) / 2, (box.minZ() + box.maxZ()) / 2
    };
    Camera unit = new Camera(view.axes(), middle, eyeMm, 1, 0, 0, width, height);
    double[] lo = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    double[] hi = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    double[] at = new double[3];
    double[] p = mesh.xyz();
    for (int v : mesh.corner()) {
      unit.project(p[3 * v], p[3 * v + 1], p[3 * v + 2], at);
      for (int axis = 0; axis < 2; axis++) {
        lo[axis] = Math.min(lo[axis], at[axis]);
        hi[axis] = Math.max(hi[axis], at[axis]);
      }
    }
    if (mesh.faceCount() == 0) {
      lo[0] = lo[1] = hi[0] = hi[1] = 0;
    }
    double scale =
        Math.min(
            roomX / Math.max(hi[0] - lo[0], SMALLEST_MM),
            roomY / Math.max(hi[1] - lo[1], SMALLEST_MM));
    double shiftX = margins.left() + roomX / 2.0 - scale * (lo[0] + hi[0]) / 2;
    double shiftY = margins.top() + roomY / 2.0 - scale * (lo[1] + hi[1]) / 2;
    return new Camera(view.axes(), middle, eyeMm, scale, shiftX, shiftY, width, height);
  }

  /**
   * Where a point of the piece falls.
   *
   * @param x mm
   * @param y mm
   * @param z mm
   * @param into receives x and y in pixels (y down) and the depth
   */
  public void project(double x, double y, double z, double[] into) {
    double dx = x - middle[0];
    double dy = y - middle[1];
    double dz = z - middle[2];
    double right = dx * axes[0] + dy * axes[1] + dz * axes[2];
    double up = dx * axes[3] + dy * axes[4] + dz * axes[5];
    double towards = dx * axes[6] + dy * axes[7] + dz * axes[8];
    if (Double.isInfinite(eyeMm)) {
      into[0] = shiftX + scale * right;
      into[1] = shiftY - scale * up;
      into[2] = -towards;
    } else {
      double away = eyeMm - towards;
      double shrink = eyeMm / away;
      into[0] = shiftX + scale * right * shrink;
      into[1] = shiftY - scale * up * shrink;
      into[2] = -1 / away;
    }
  }

  /**
   * Where the ray through a pixel meets a level plane below the piece.
   *
   * @param z height of the plane, mm
   * @param into receives x and y, mm
   * @return whether it does, going away from the eye
   */
  boolean onLevel(double px, double py, double z, double[] into) {
    double[] from = middle.clone();
    double[] along = new double[3];
    double sideways = isPerspective() ? 0 : (px - shiftX) / scale;
    double up = isPerspective() ? 0 : (shiftY - py) / scale;
    for (int k = 0; k < 3; k++) {
      along[k] = slantX(px) * axes[k] + slantY(py) * axes[3 + k] - axes[6 + k];
      from[k] +=
          sideways * axes[k] + up * axes[3 + k] + (isPerspective() ? eyeMm * axes[6 + k] : 0);
    }
    if (!(along[2] < 0)) {
      return false;
    }
    double t = (z - from[2]) / along[2];
    into[0] = from[0] + t * along[0];
    into[1] = from[1] + t * along[1];
    return !isPerspective() || t > 0;
  }

  /** Width of the picture, pixels. */
  public int width() {
    return width;
  }

  /** Height of the picture, pixels. */
  public int height() {
    return height;
  }

  /** Pixels per mm in the plane through the middle of the piece. */
  public double pixelsPerMm() {
    return scale;
  }

  /** Whether rays meet in an eye. */
  boolean isPerspective() {
    return !Double.isInfinite(eyeMm);
  }

  /** Distance along the view, mm, for a depth: differences of it are true lengths. */
  double distanceMm(double depth) {
    return isPerspective() ? -1 / depth : depth;
  }

  /** Right, up and towards the eye, in the piece's coordinates. */
  double[] axes() {
    return axes;
  }

  /** Sideways part, over the part along the view, of the ray through a pixel; 0 for parallel. */
  double slantX(double px) {
    return isPerspective() ? (px - shiftX) / (scale * eyeMm) : 0;
  }

  /** Upward part, over the part along the view, of the ray through a pixel; 0 for parallel. */
  double slantY(double py) {
    return isPerspective() ? (shiftY - py) / (scale * eyeMm) : 0;
  }
}
