package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;

/**
 * A seam while it is pulled: the place that was taken goes with the pointer, across the seam; its
 * neighbours along the seam follow, less and less, and beyond the stretch nothing moves.
 *
 * <p>Each movement is carried over to a neighbour by the rotation that takes the one normal to the
 * other, and goes over the surface in steps small beside its bends; each step is dropped to the
 * nearest place. The weight of a neighbour is a raised cosine of its way along the seam.
 */
final class SeamPull {
  /** Points that a whole seam is told by. */
  private static final int POINTS = 48;

  /** Steps over the surface, per diagonal: a wall thinner than a step might be left through. */
  private static final double STEPS = 300;

  /** Below this weight a place stays, so that the stretch begins and ends on the old seam. */
  private static final double STAYS = 1e-3;

  private final SeamCourse course;
  private final SurfaceFoot foot;
  private final double[] weight;
  private final Vector3D[] now;
  private final int taken;
  private Touch hand;

  /**
   * Takes a seam.
   *
   * @param share how much of the seam moves, above 0; from 1 on all of it, alike
   */
  SeamPull(SeamCourse course, Touch at, double share, SurfaceFoot foot) {
    this.course = course;
    this.foot = foot;
    List<Vector3D> points = resampled(course.points(), POINTS);
    int nearest = 0;
    for (int i = 0; i < points.size(); i++) {
      if (points.get(i).distance(at.point()) < points.get(nearest).distance(at.point())) {
        nearest = i;
      }
    }
    taken = nearest;
    now = points.toArray(Vector3D[]::new);
    hand = at;
    weight = new double[now.length];
    double reach = Math.max(2, share * POINTS / 2);
    for (int i = 0; i < now.length; i++) {
      int apart = Math.abs(i - taken);
      int way = course.isClosed() ? Math.min(apart, now.length - 1 - apart) : apart;
      weight[i] = share >= 1 ? 1 : way >= reach ? 0 : 0.5 * (1 + Math.cos(Math.PI * way / reach));
    }
  }

  /** Places at equal ways along a line, one more than so many parts. */
  static List<Vector3D> resampled(List<Vector3D> line, int parts) {
    double length = 0;
    for (int i = 1; i < line.size(); i++) {
      length += line.get(i).distance(line.get(i - 1));
    }
    List<Vector3D> places = new ArrayList<>(List.of(line.get(0)));
    double before = 0;
    for (int i = 1; i < line.size() && places.size() < parts; i++) {
      double edge = line.get(i).distance(line.get(i - 1));
      while (places.size() < parts && places.size() * length / parts <= before + edge) {
        double along = edge > 0 ? (places.size() * length / parts - before) / edge : 0;
        places.add(line.get(i - 1).lerp(line.get(i), along));
      }
      before += edge;
    }
    places.add(line.get(line.size() - 1));
    return places;
  }

  SeamCourse course() {
    return course;
  }

  /** Where the hand is. */
  Touch hand() {
    return hand;
  }

  /** The hand goes to a place. */
  void to(Touch next) {
    Vector3D moved = across(next.point().subtract(hand.point()));
    for (int i = 0; i < now.length; i++) {
      if (weight[i] > STAYS) {
        now[i] = walked(now[i], moved.multiply(weight[i]));
      }
    }
    if (course.isClosed()) {
      now[now.length - 1] = now[0];
    }
    hand = next;
  }

  /** A seam moves across itself; along itself it would only run over its ends. */
  private Vector3D across(Vector3D moved) {
    Vector3D along = now[Math.min(now.length - 1, taken + 1)].subtract(now[Math.max(0, taken - 1)]);
    return along.norm() > 0
        ? moved.subtract(along.multiply(moved.dot(along) / along.normSq()))
        : moved;
  }

  private Vector3D walked(Vector3D from, Vector3D by) {
    int steps = Math.max(1, (int) Math.ceil(by.norm() * STEPS / foot.diagonalMm()));
    Touch at = foot.under(from);
    for (int k = 0; k < steps; k++) {
      Vector3D step = carried(by.multiply(1.0 / steps), at.normal());
      at = foot.under(at.point().add(step));
    }
    return at.point();
  }

  /** A movement in the hand's tangent plane, turned into another. */
  private Vector3D carried(Vector3D step, Vector3D normal) {
    boolean flat = !(hand.normal().norm() > 0) || !(normal.norm() > 0);
    boolean opposite = !flat && hand.normal().dot(normal) < -0.99 * normal.norm();
    if (flat || opposite) {
      return step;
    }
    return QuaternionRotation.createVectorRotation(hand.normal(), normal).apply(step);
  }

  /** The course so far: the stretch that moves, from the old seam to the old seam. */
  List<Vector3D> path() {
    List<Vector3D> path = new ArrayList<>();
    boolean all = true;
    for (double w : weight) {
      all &= w > STAYS;
    }
    if (course.isClosed() && !all) {
      // From the first place that moves, wherever the line begins.
      int n = now.length - 1;
      int begin = 0;
      while (weight[begin] > STAYS || !(weight[(begin + 1) % n] > STAYS)) {
        begin = (begin + 1) % n;
      }
      path.add(now[begin]);
      for (int k = 1; k <= n; k++) {
        int i = (begin + k) % n;
        path.add(now[i]);
        if (!(weight[i] > STAYS)) {
          break;
        }
      }
      return path;
    }
    for (int i = 0; i < now.length; i++) {
      boolean beside =
          (i > 0 && weight[i - 1] > STAYS) || (i + 1 < now.length && weight[i + 1] > STAYS);
      if (weight[i] > STAYS || beside) {
        path.add(now[i]);
      }
    }
    if (course.isClosed()) {
      path.set(path.size() - 1, path.get(0));
    }
    return path;
  }

  /** The whole seam as it would run, to be drawn. */
  List<Vector3D> whole() {
    return List.of(now);
  }
}
