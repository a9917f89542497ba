package org.seamwright.region;

import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.geometry.euclidean.threed.AffineTransformMatrix3D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Parallel;
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

  private static final int LEAST_PER_RANGE = 1 << 14;

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
    double[] distance = distances(mark.point(), mark.normal().normalize());
    double[] field = surface.cutAlongZero(distance, f -> true, progress);
    return surface.facesWhere(
        f -> field[corner(f, 0)] + field[corner(f, 1)] + field[corner(f, 2)] >= 0);
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
      boolean lower = side < 3;
      double[] field =
          field(v -> lower ? frame.at(v, axis) - low[axis] : high[axis] - frame.at(v, axis));
      surface.cutAlongZero(field, reach, progress.between(side / 6.0, (side + 1) / 6.0));
    }
    return surface.facesWhere(f -> isWithin(f, frame, low, high));
  }

  private boolean isWithin(int face, BoxReach.Coordinates frame, double[] low, double[] high) {
    for (int axis = 0; axis < 3; axis++) {
      double middle =
          (frame.at(corner(face, 0), axis)
                  + frame.at(corner(face, 1), axis)
                  + frame.at(corner(face, 2), axis))
              / 3;
      if (!(middle >= low[axis] - snapMm && middle <= high[axis] + snapMm)) {
        return false;
      }
    }
    return true;
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
    cutAlongHalfPlane(mark.point(), along, across, f -> true, progress.between(0, 0.5));
    cutAlongHalfPlane(
        mark.point(),
        turned(zero, quarter, mark.toDegrees()),
        turned(zero, quarter, mark.toDegrees() + 90),
        f -> true,
        progress.between(0.5, 1));
    double cosine = Math.cos(Math.toRadians(span));
    double sine = Math.sin(Math.toRadians(span));
    return surface.facesWhere(
        f -> {
          double dx = centroid(f, 0) - mark.point().getX();
          double dy = centroid(f, 1) - mark.point().getY();
          double dz = centroid(f, 2) - mark.point().getZ();
          double x = dx * along.getX() + dy * along.getY() + dz * along.getZ();
          double y = dx * across.getX() + dy * across.getY() + dz * across.getZ();
          // The same place seen from the far side of the slice.
          double farX = x * cosine + y * sine;
          double farY = y * cosine - x * sine;
          boolean within = span <= 180 ? y >= 0 && farY <= 0 : y >= 0 || farY <= 0;
          return within
              || (Math.abs(y) <= snapMm && x > 0)
              || (Math.abs(farY) <= snapMm && farX > 0);
        });
  }

  private static Vector3D turned(Vector3D zero, Vector3D quarter, double degrees) {
    double angle = Math.toRadians(degrees);
    return zero.multiply(Math.cos(angle)).add(quarter.multiply(Math.sin(angle)));
  }

  /** Cuts faces along the half of a plane where {@code along} leads from a point of its rim. */
  void cutAlongHalfPlane(Vector3D point, Vector3D along, Vector3D normal, IntPredicate faces) {
    cutAlongHalfPlane(point, along, normal, faces, progress);
  }

  private void cutAlongHalfPlane(
      Vector3D point, Vector3D along, Vector3D normal, IntPredicate faces, Progress progressOfCut) {
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
          return furthest > limit[0] && faces.test(f);
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
    double[] p = surface.coordinates();
    double x = point.getX();
    double y = point.getY();
    double z = point.getZ();
    double nx = unit.getX();
    double ny = unit.getY();
    double nz = unit.getZ();
    return field(v -> (p[3 * v] - x) * nx + (p[3 * v + 1] - y) * ny + (p[3 * v + 2] - z) * nz);
  }

  /** A value per vertex, worked out side by side; 0 for those within the snap distance. */
  private double[] field(IntToDoubleFunction value) {
    double[] field = new double[surface.vertexCount()];
    Parallel.split(
        field.length,
        Parallel.ranges(field.length, LEAST_PER_RANGE),
        (from, to) -> {
          for (int v = from; v < to; v++) {
            double at = value.applyAsDouble(v);
            field[v] = Math.abs(at) <= snapMm ? 0 : at;
          }
        });
    return field;
  }
}
