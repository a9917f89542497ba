package org.seamwright.desk;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.section.SectionPlan;

/**
 * One line along which two sections meet, to be pointed at and moved: it ends where a third
 * section, or what is not plated, begins.
 *
 * @param earlier id of the section worked first
 * @param later id of the section worked later
 * @param points its course over the edges of the mesh, mm; a closed line ends where it begins
 */
public record SeamCourse(int earlier, int later, List<Vector3D> points) {
  /** Points of a course are this far apart at least, as a share of the piece's diagonal. */
  private static final double CLOSE_SHARE = 2.5e-3;

  /** Copies the list. */
  public SeamCourse {
    points = List.copyOf(points);
  }

  /** Whether it ends where it begins. */
  public boolean isClosed() {
    return points.get(0).equals(points.get(points.size() - 1));
  }

  /** Its length, mm. */
  public double lengthMm() {
    double sum = 0;
    for (int i = 1; i < points.size(); i++) {
      sum += points.get(i).distance(points.get(i - 1));
    }
    return sum;
  }

  /** The distance of a place from it, as the crow flies, mm. */
  public double farFrom(Vector3D place) {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 1; i < points.size(); i++) {
      Vector3D from = points.get(i - 1);
      Vector3D along = points.get(i).subtract(from);
      Vector3D off = place.subtract(from);
      double share =
          along.normSq() > 0 ? Math.max(0, Math.min(1, off.dot(along) / along.normSq())) : 0;
      least = Math.min(least, off.subtract(along.multiply(share)).norm());
    }
    return least;
  }

  /** The place half way along. */
  public Vector3D middle() {
    return SeamPull.resampled(points, 2).get(1);
  }

  /** The course nearest to a place, if one is within a reach in mm. */
  static Optional<SeamCourse> nearest(List<SeamCourse> all, Vector3D place, double reachMm) {
    Optional<SeamCourse> best =
        all.stream().min(Comparator.comparingDouble(course -> course.farFrom(place)));
    return best.filter(course -> course.farFrom(place) <= reachMm);
  }

  /** All courses of a plan, by sections, longest first between the same two: O(n). */
  static List<SeamCourse> of(SectionPlan plan) {
    Mesh mesh = plan.mesh();
    EdgeRings rings = EdgeRings.of(mesh, Topology.of(mesh));
    Map<Long, List<int[]>> edges = new TreeMap<>();
    for (int h = 0; h < mesh.corner().length; h++) {
      int id = plan.sectionOf()[h / 3];
      for (int g = rings.next(h); g != h && id > 0; g = rings.next(g)) {
        int other = plan.sectionOf()[g / 3];
        if (other > id) {
          edges
              .computeIfAbsent((long) id << 32 | other, k -> new ArrayList<>())
              .add(new int[] {mesh.corner()[h], mesh.corner()[Topology.next(h)]});
        }
      }
    }
    double least = CLOSE_SHARE * mesh.bounds().diagonal();
    List<SeamCourse> courses = new ArrayList<>();
    edges.forEach(
        (pair, between) -> {
          List<SeamCourse> lines = new ArrayList<>();
          for (int[] line : chains(between)) {
            List<Vector3D> points =
                Arrays.stream(line)
                    .mapToObj(v -> Vector3D.of(mesh.x(v), mesh.y(v), mesh.z(v)))
                    .toList();
            lines.add(new SeamCourse((int) (pair >> 32), pair.intValue(), thinned(points, least)));
          }
          lines.sort(Comparator.comparingDouble(line -> -line.lengthMm()));
          courses.addAll(lines);
        });
    return courses;
  }

  /**
   * Without points that lie close to the one before: far fewer on a fine mesh, to the eye alike.
   */
  private static List<Vector3D> thinned(List<Vector3D> points, double leastMm) {
    List<Vector3D> few = new ArrayList<>(List.of(points.get(0)));
    for (int i = 1; i < points.size() - 1; i++) {
      if (points.get(i).distance(few.get(few.size() - 1)) >= leastMm) {
        few.add(points.get(i));
      }
    }
    few.add(points.get(points.size() - 1));
    return few;
  }

  /**
   * Joins edges end to end, in the order they are given; closed lines repeat their first vertex.
   */
  private static List<int[]> chains(List<int[]> edges) {
    Map<Integer, List<Integer>> at = new HashMap<>();
    for (int e = 0; e < edges.size(); e++) {
      for (int v : edges.get(e)) {
        at.computeIfAbsent(v, k -> new ArrayList<>()).add(e);
      }
    }
    boolean[] used = new boolean[edges.size()];
    List<int[]> lines = new ArrayList<>();
    for (boolean open : new boolean[] {true, false}) {
      for (int e = 0; e < used.length; e++) {
        for (int v : edges.get(e)) {
          // First from ends and forks, then what is left: closed lines.
          if (!used[e] && (!open || at.get(v).size() != 2)) {
            lines.add(walk(edges, at, used, e, v));
          }
        }
      }
    }
    return lines;
  }

  private static int[] walk(
      List<int[]> edges, Map<Integer, List<Integer>> at, boolean[] used, int first, int start) {
    List<Integer> line = new ArrayList<>(List.of(start));
    int v = start;
    int e = first;
    while (e >= 0) {
      used[e] = true;
      v = edges.get(e)[0] == v ? edges.get(e)[1] : edges.get(e)[0];
      line.add(v);
      e = -1;
      if (at.get(v).size() == 2) {
        for (int next : at.get(v)) {
          e = used[next] ? e : next;
        }
      }
    }
    return line.stream().mapToInt(i -> i).toArray();
  }
}
