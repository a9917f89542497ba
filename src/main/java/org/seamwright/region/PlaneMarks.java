package org.seamwright.region;

import org.apache.commons.geometry.euclidean.threed.AffineTransformMatrix3D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;

/**
 * Marks bounded by planes: half space, box, sector. The surface is cut along the planes, so the
 * areas are those of the model's facets to rounding.
 *
 * <p>All are closed sets: a face lying in a bounding plane is covered. A vertex within {@link
 * #SNAP} of a plane counts as lying in it.
 */
final class PlaneMarks {
  /**
   * Share of the piece's diagonal that counts as no distance at all: a few roundings of the single
   * precision that most files hold, so that "z = 2.54" finds the face that a file puts at
   * 2.5400002.
   */
  static final double SNAP = 1e-7;

  private final EditableSurface surface;
  private final double snapMm;
  private final Progress progress;

  PlaneMarks(EditableSurface surface, double diagonalMm, Progress progress) {
    this.surface = surface;
    this.snapMm = SNAP * diagonalMm;
    this.progress = progress;
  }

  /** Cuts along the plane; gives for each face whether it is on the marked side. */
  boolean[] halfSpace(Mark.HalfSpace mark) {
    double[] field = distances(mark.point(), mark.normal().normalize());
    field = surface.cutAlongZero(field, f -> true, progress);
    boolean[] covered = new boolean[surface.faceCount()];
    for (int f = 0; f < covered.length; f++) {
      covered[f] = field[corner(f, 0)] + field[corner(f, 1)] + field[corner(f, 2)] >= 0;
    }
    return covered;
  }

  /**
   * Cuts the faces that reach into the box; gives for each face whether it is inside.
   *
   * @param motion from the axes that the box is parallel to, to where it is
   */
  boolean[] box(Mark.InBox mark, AffineTransformMatrix3D motion) {
    double[] low = mark.low().toArray();
    double[] high = mark.high().toArray();
    BoxReach.Coordinates frame = frame(motion);
    BoxReach reach = new BoxReach(surface, frame, low, high, snapMm);
    for (int side = 0; side < 6; side++) {
      int axis = side % 3;
      double[] field = new double[surface.vertexCount()];
      for (int v = 0; v < field.length; v++) {
        double at = frame.at(v, axis);
        double distance = side < 3 ? at - low[axis] : high[axis] - at;
        field[v] = Math.abs(distance) <= snapMm ? 0 : distance;
      }
      surface.cutAlongZero(field, reach, progress.between(side / 6.0, (side + 1) / 6.0));
    }
    boolean[] covered = new boolean[surface.faceCount()];
    for (int f = 0; f < covered.length; f++) {
      covered[f] = true;
      for (int axis = 0; axis < 3; axis++) {
        double middle =
            (frame.at(corner(f, 0), axis)
                    + frame.at(corner(f, 1), axis)
                    + frame.at(corner(f, 2), axis))
                / 3;
        covered[f] &= middle >= low[axis] - snapMm && middle <= high[axis] + snapMm;
      }
    }
    return covered;
  }

  private BoxReach.Coordinates frame(AffineTransformMatrix3D motion) {
    if (motion.equals(AffineTransformMatrix3D.identity())) {
      return surface::at;
    }
    double[] m = motion.inverse().toArray();
    return (vertex, axis) ->
        m[4 * axis] * surface.at(vertex, 0)
            + m[4 * axis + 1] * surface.at(vertex, 1)
            + m[4 * axis + 2] * surface.at(vertex, 2)
            + m[4 * axis + 3];
  }

  /**
   * Cuts along two half planes that meet in the axis; gives for each face whether it is between.
   */
  boolean[] sector(Mark.Sector mark) {
    Vector3D axis = mark.axis().normalize();
    Vector3D zero = mark.zero().subtract(axis.multiply(axis.dot(mark.zero()))).normalize();
    Vector3D quarter = axis.cross(zero);
    double span = mark.toDegrees() - mark.fromDegrees();
    Vector3D along = turned(zero, quarter, mark.fromDegrees());
    Vector3D across = turned(zero, quarter, mark.fromDegrees() + 90);
    cutAlongHalfPlane(mark.point(), along, across, progress.between(0, 0.5));
    cutAlongHalfPlane(
        mark.point(),
        turned(zero, quarter, mark.toDegrees()),
        turned(zero, quarter, mark.toDegrees() + 90),
        progress.between(0.5, 1));
    boolean[] covered = new boolean[surface.faceCount()];
    for (int f = 0; f < covered.length; f++) {
      Vector3D arm =
          Vector3D.of(centroid(f, 0), centroid(f, 1), centroid(f, 2)).subtract(mark.point());
      double x = arm.dot(along);
      double y = arm.dot(across);
      double angle = Math.atan2(y, x);
      double turn = angle < 0 ? angle + 2 * Math.PI : angle;
      double past = turn - Math.toRadians(span);
      double radius = Math.hypot(x, y);
      covered[f] =
          past <= 0
              || (Math.abs(y) <= snapMm && x > 0)
              || (Math.abs(radius * Math.sin(past)) <= snapMm && Math.cos(past) > 0);
    }
    return covered;
  }

  private static Vector3D turned(Vector3D zero, Vector3D quarter, double degrees) {
    double angle = Math.toRadians(degrees);
    return zero.multiply(Math.cos(angle)).add(quarter.multiply(Math.sin(angle)));
  }

  private void cutAlongHalfPlane(
      Vector3D point, Vector3D along, Vector3D normal, Progress progressOfCut) {
    double[] field = distances(point, normal);
    double offset = along.dot(point);
    double[] limit = {snapMm + offset};
    // New vertices lie in the plane, so the field is only asked for old vertices.
    int known = surface.vertexCount();
    surface.cutAlongZero(
        field,
        f -> {
          double furthest = Double.NEGATIVE_INFINITY;
          for (int k = 0; k < 3; k++) {
            int a = corner(f, k);
            int b = corner(f, (k + 1) % 3);
            double da = a < known ? field[a] : 0;
            double db = b < known ? field[b] : 0;
            double pa = along(a, along);
            if (da == 0) {
              furthest = Math.max(furthest, pa);
            } else if (da < 0 != db < 0 && db != 0) {
              furthest = Math.max(furthest, pa + da / (da - db) * (along(b, along) - pa));
            }
          }
          return furthest > limit[0];
        },
        progressOfCut);
  }

  private double along(int vertex, Vector3D direction) {
    return surface.at(vertex, 0) * direction.getX()
        + surface.at(vertex, 1) * direction.getY()
        + surface.at(vertex, 2) * direction.getZ();
  }

  private int corner(int face, int k) {
    return surface.from(3 * face + k);
  }

  private double centroid(int face, int axis) {
    return (surface.at(corner(face, 0), axis)
            + surface.at(corner(face, 1), axis)
            + surface.at(corner(face, 2), axis))
        / 3;
  }

  /** Signed distance of each vertex from a plane, mm; 0 for those within the snap distance. */
  private double[] distances(Vector3D point, Vector3D unit) {
    double[] field = new double[surface.vertexCount()];
    double[] p = surface.coordinates();
    for (int v = 0; v < field.length; v++) {
      double distance =
          (p[3 * v] - point.getX()) * unit.getX()
              + (p[3 * v + 1] - point.getY()) * unit.getY()
              + (p[3 * v + 2] - point.getZ()) * unit.getZ();
      field[v] = Math.abs(distance) <= snapMm ? 0 : distance;
    }
    return field;
  }
}
