package org.seamwright.window;

import com.jme3.math.FastMath;
import com.jme3.math.Quaternion;
import com.jme3.math.Ray;
import com.jme3.math.Vector3f;
import org.seamwright.mesh.Bounds;

/**
 * The viewer's place: a turntable about the piece's z axis, which always points up on the screen.
 *
 * <p>One state gives both the picture's camera ({@link #cameraMatrix}) and the ray under a pixel
 * ({@link #ray}), so what is pointed at is what is seen. Angles and lengths are kept in double; the
 * rotations are single-precision quaternions about the middle of the piece, good to about 1e-6 of
 * the distance to the viewer at any offset of the piece from its file's origin.
 *
 * <p>Pixels count from the upper left corner of the viewport, y downwards.
 */
public final class OrbitCamera {
  /** Angle of view over the height of the viewport: about that of an 80 mm portrait lens. */
  public static final double FIELD_OF_VIEW_DEGREES = 24;

  /** Share of the viewport's width and height that a fitted piece may fill. */
  static final double FIT_FILL = 0.84;

  /** Nearest and farthest distance to what is orbited, in radii of the piece. */
  private static final double NEAREST = 0.02;

  private static final double FARTHEST = 40;

  private final double[] outline;
  private final double[] centre;
  private final double radius;
  private final double tanHalf = Math.tan(Math.toRadians(FIELD_OF_VIEW_DEGREES) / 2);
  private double width = 1;
  private double height = 1;
  private Pose pose;

  /**
   * Where the viewer stands.
   *
   * @param azimuthDegrees turn about the z axis, 0 in front
   * @param elevationDegrees height above the horizontal plane, -90 to 90
   * @param x point orbited, mm
   * @param y point orbited, mm
   * @param z point orbited, mm
   * @param distance from that point to the viewer, mm
   */
  public record Pose(
      double azimuthDegrees,
      double elevationDegrees,
      double x,
      double y,
      double z,
      double distance) {

    /** The pose on the way to another, taking the shorter way round; 0 is here and 1 there. */
    public Pose towards(Pose end, double share) {
      double turn = Math.IEEEremainder(end.azimuthDegrees - azimuthDegrees, 360);
      return new Pose(
          azimuthDegrees + turn * share,
          mix(elevationDegrees, end.elevationDegrees, share),
          mix(x, end.x, share),
          mix(y, end.y, share),
          mix(z, end.z, share),
          // Distances are ratios to the eye, so they change by equal factors.
          distance * Math.pow(end.distance / distance, share));
    }

    private static double mix(double a, double b, double share) {
      return a + (b - a) * share;
    }
  }

  /** A projected point: pixels, and the distance in front of the viewer, mm. */
  public record OnScreen(double x, double y, double depthMm) {}

  /**
   * Looks at a piece from its corner, fitted.
   *
   * @param bounds box around the piece, mm
   * @param outline the points that must be in sight when fitted, 3 numbers each, mm
   */
  public OrbitCamera(Bounds bounds, double[] outline) {
    this.centre =
        new double[] {
          (bounds.minX() + bounds.maxX()) / 2,
          (bounds.minY() + bounds.maxY()) / 2,
          (bounds.minZ() + bounds.maxZ()) / 2
        };
    this.outline = outline.clone();
    for (int i = 0; i < outline.length; i++) {
      this.outline[i] -= centre[i % 3];
    }
    this.radius = bounds.diagonal() > 0 ? bounds.diagonal() / 2 : 1;
    this.pose = fitted(StandardView.CORNER);
  }

  /** Tells the size of the viewport in pixels; sizes below one pixel are taken as one. */
  public void resize(double widthPixels, double heightPixels) {
    width = Math.max(1, widthPixels);
    height = Math.max(1, heightPixels);
  }

  /** Where the viewer stands now. */
  public Pose pose() {
    return pose;
  }

  /** Moves the viewer; elevation and distance are kept within their ranges. */
  public void moveTo(Pose next) {
    pose =
        new Pose(
            Math.IEEEremainder(next.azimuthDegrees, 360),
            Math.max(-90, Math.min(90, next.elevationDegrees)),
            next.x,
            next.y,
            next.z,
            Math.max(NEAREST * radius, Math.min(FARTHEST * radius, next.distance)));
  }

  /** Turns the viewer about the point orbited. */
  public void orbit(double azimuthDegrees, double elevationDegrees) {
    moveTo(
        new Pose(
            pose.azimuthDegrees + azimuthDegrees,
            pose.elevationDegrees + elevationDegrees,
            pose.x,
            pose.y,
            pose.z,
            pose.distance));
  }

  /** Moves the viewer sideways, so that what is orbited follows the pointer by so many pixels. */
  public void pan(double dxPixels, double dyPixels) {
    Vector3f right = rotation().mult(Vector3f.UNIT_X);
    Vector3f up = rotation().mult(Vector3f.UNIT_Z);
    double mmPerPixel = 2 * pose.distance * tanHalf / height;
    double r = -dxPixels * mmPerPixel;
    double u = dyPixels * mmPerPixel;
    moveTo(
        new Pose(
            pose.azimuthDegrees,
            pose.elevationDegrees,
            pose.x + r * right.x + u * up.x,
            pose.y + r * right.y + u * up.y,
            pose.z + r * right.z + u * up.z,
            pose.distance));
  }

  /**
   * Comes closer to a point or goes away from it, so that it stays at its pixel.
   *
   * @param factor of all distances to the point; below 1 comes closer
   * @param anchor x, y, z of the point, mm
   */
  public void zoom(double factor, double[] anchor) {
    double limited =
        Math.max(
            NEAREST * radius / pose.distance, Math.min(FARTHEST * radius / pose.distance, factor));
    moveTo(
        new Pose(
            pose.azimuthDegrees,
            pose.elevationDegrees,
            anchor[0] + limited * (pose.x - anchor[0]),
            anchor[1] + limited * (pose.y - anchor[1]),
            anchor[2] + limited * (pose.z - anchor[2]),
            pose.distance * limited));
  }

  /** The point under a pixel at the depth of the point orbited: x, y, z in mm. */
  public double[] atOrbitDepth(double px, double py) {
    PickRay ray = ray(px, py);
    Vector3f forward = rotation().mult(Vector3f.UNIT_Y);
    double t = pose.distance / (ray.dx() * forward.x + ray.dy() * forward.y + ray.dz() * forward.z);
    return new double[] {ray.at(t, 0), ray.at(t, 1), ray.at(t, 2)};
  }

  /** The pose from a standard view with the whole piece in the viewport. */
  public Pose fitted(StandardView view) {
    return fitted(view.azimuthDegrees(), view.elevationDegrees());
  }

  /**
   * The pose from a direction with the whole piece in the viewport: as near as the outline allows,
   * its extents in the middle.
   */
  public Pose fitted(double azimuthDegrees, double elevationDegrees) {
    Quaternion q = rotation(azimuthDegrees, elevationDegrees);
    Vector3f right = q.mult(Vector3f.UNIT_X);
    Vector3f up = q.mult(Vector3f.UNIT_Z);
    Vector3f forward = q.mult(Vector3f.UNIT_Y);
    double tanY = tanHalf * FIT_FILL;
    double[] h = narrowest(right, forward, tanY * width / height);
    double[] v = narrowest(up, forward, tanY);
    double back = Math.max(h[1], v[1]);
    double ahead = depthOfOutline(forward);
    double distance = Math.max(NEAREST * radius, back + ahead);
    return new Pose(
        azimuthDegrees,
        elevationDegrees,
        centre[0] + h[0] * right.x + v[0] * up.x + ahead * forward.x,
        centre[1] + h[0] * right.y + v[0] * up.y + ahead * forward.y,
        centre[2] + h[0] * right.z + v[0] * up.z + ahead * forward.z,
        distance);
  }

  /**
   * Where an eye must stand, across and behind the middle of the piece, for the outline to lie
   * between two lines of sight: both lines touch it, and cross at the eye.
   */
  private double[] narrowest(Vector3f across, Vector3f forward, double tan) {
    double left = Double.NEGATIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < outline.length; i += 3) {
      double a = along(across, i);
      double f = along(forward, i);
      left = Math.max(left, -a - tan * f);
      right = Math.max(right, a - tan * f);
    }
    return outline.length == 0
        ? new double[] {0, radius / tan}
        : new double[] {(right - left) / 2, (right + left) / 2 / tan};
  }

  /** Depth of the middle of the outline behind the middle of the piece: what is orbited. */
  private double depthOfOutline(Vector3f forward) {
    double near = Double.POSITIVE_INFINITY;
    double far = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < outline.length; i += 3) {
      near = Math.min(near, along(forward, i));
      far = Math.max(far, along(forward, i));
    }
    return outline.length == 0 ? 0 : (near + far) / 2;
  }

  private double along(Vector3f axis, int i) {
    return outline[i] * axis.x + outline[i + 1] * axis.y + outline[i + 2] * axis.z;
  }

  /** The ray from the viewer through a pixel. */
  public PickRay ray(double px, double py) {
    Vector3f direction =
        new Vector3f(
            (float) ((2 * px - width) / height * tanHalf),
            1,
            (float) ((height - 2 * py) / height * tanHalf));
    Ray ray = new Ray(eye(), rotation().multLocal(direction.normalizeLocal()));
    return new PickRay(
        ray.origin.x + centre[0],
        ray.origin.y + centre[1],
        ray.origin.z + centre[2],
        ray.direction.x,
        ray.direction.y,
        ray.direction.z);
  }

  /** Where a point of the piece appears. */
  public OnScreen project(double x, double y, double z) {
    Vector3f p =
        new Vector3f((float) (x - centre[0]), (float) (y - centre[1]), (float) (z - centre[2]))
            .subtractLocal(eye());
    Quaternion q = rotation();
    double depth = p.dot(q.mult(Vector3f.UNIT_Y));
    double scale = height / (2 * tanHalf * depth);
    return new OnScreen(
        width / 2 + scale * p.dot(q.mult(Vector3f.UNIT_X)),
        height / 2 - scale * p.dot(q.mult(Vector3f.UNIT_Z)),
        depth);
  }

  /**
   * From camera to scene, row by row, 3 rows of 4. The camera looks along its z axis with y down;
   * the scene holds the piece with its middle in the origin.
   */
  public double[] cameraMatrix() {
    Quaternion q = rotation();
    Vector3f right = q.mult(Vector3f.UNIT_X);
    Vector3f down = q.mult(Vector3f.UNIT_Z).negateLocal();
    Vector3f forward = q.mult(Vector3f.UNIT_Y);
    Vector3f eye = eye();
    return new double[] {
      right.x, down.x, forward.x, eye.x,
      right.y, down.y, forward.y, eye.y,
      right.z, down.z, forward.z, eye.z
    };
  }

  /** The viewer's place: x, y, z in mm. */
  public double[] eyeMm() {
    Vector3f eye = eye();
    return new double[] {eye.x + centre[0], eye.y + centre[1], eye.z + centre[2]};
  }

  /** Distance in front of the viewer before which nothing of the piece lies, mm; above 0. */
  public double nearClipMm() {
    return Math.max(NEAREST * radius / 10, depthOfCentre() - 1.05 * radius);
  }

  /** Distance in front of the viewer beyond which nothing of the piece lies, mm. */
  public double farClipMm() {
    return Math.max(2 * nearClipMm(), depthOfCentre() + 1.05 * radius);
  }

  private double depthOfCentre() {
    return -eye().dot(rotation().mult(Vector3f.UNIT_Y));
  }

  /** The viewer's place from the middle of the piece. */
  private Vector3f eye() {
    Vector3f forward = rotation().mult(Vector3f.UNIT_Y);
    return new Vector3f(
        (float) (pose.x - centre[0] - pose.distance * forward.x),
        (float) (pose.y - centre[1] - pose.distance * forward.y),
        (float) (pose.z - centre[2] - pose.distance * forward.z));
  }

  private Quaternion rotation() {
    return rotation(pose.azimuthDegrees, pose.elevationDegrees);
  }

  /** Turns right, ahead, up of a viewer in front (x, y, z) into those of the viewer. */
  private static Quaternion rotation(double azimuthDegrees, double elevationDegrees) {
    Quaternion about =
        new Quaternion()
            .fromAngleNormalAxis((float) azimuthDegrees * FastMath.DEG_TO_RAD, Vector3f.UNIT_Z);
    Quaternion tilt =
        new Quaternion()
            .fromAngleNormalAxis((float) -elevationDegrees * FastMath.DEG_TO_RAD, Vector3f.UNIT_X);
    return about.multLocal(tilt);
  }
}
