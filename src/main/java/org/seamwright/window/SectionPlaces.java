package org.seamwright.window;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.section.SectionPlan;

/**
 * Some places spread over each section, the most inward first: where its number is written, and
 * what has to be turned to the viewer.
 *
 * <p>Places are the middles of faces, taken at equal steps of area in face order. Inward means far
 * from the section's edge as the crow flies. Cost O(n) and a few dozen distances per edge vertex.
 */
final class SectionPlaces {
  /** Places per section: enough to find one in sight on most sides of a section. */
  private static final int PLACES = 32;

  /** Six numbers per place: x, y, z in mm and the unit normal; one array per section id. */
  private final double[][] place;

  private SectionPlaces(double[][] place) {
    this.place = place;
  }

  /** Places of a plan's sections. */
  static SectionPlaces of(SectionPlan plan) {
    int sections = plan.sections().size();
    int[][] faces = facesBySection(plan);
    double[][] edge = edgePoints(plan);
    double[][] place = new double[sections + 1][];
    place[0] = new double[0];
    for (int id = 1; id <= sections; id++) {
      place[id] = inwardFirst(spread(plan.mesh(), faces[id]), edge[id]);
    }
    return new SectionPlaces(place);
  }

  private static int[][] facesBySection(SectionPlan plan) {
    int[] count = new int[plan.sections().size() + 1];
    for (int id : plan.sectionOf()) {
      count[id]++;
    }
    int[][] faces = new int[count.length][];
    for (int id = 0; id < count.length; id++) {
      faces[id] = new int[count[id]];
    }
    for (int f = plan.sectionOf().length - 1; f >= 0; f--) {
      int id = plan.sectionOf()[f];
      faces[id][--count[id]] = f;
    }
    return faces;
  }

  private static double[] spread(Mesh mesh, int[] faces) {
    double total = 0;
    for (int f : faces) {
      total += Faces.area(mesh, f);
    }
    int places = total > 0 ? Math.min(PLACES, faces.length) : 0;
    double[] spread = new double[6 * places];
    double[] into = new double[3];
    double sum = 0;
    int found = 0;
    for (int f : faces) {
      sum += Faces.area(mesh, f);
      if (found < places && sum >= (found + 0.5) / places * total) {
        Faces.centroid(mesh, f, into);
        System.arraycopy(into, 0, spread, 6 * found, 3);
        Faces.normal(mesh, f, into);
        System.arraycopy(into, 0, spread, 6 * found + 3, 3);
        found++;
      }
    }
    return Arrays.copyOf(spread, 6 * found);
  }

  /** Middles of the edges where each section ends, 3 numbers each. */
  private static double[][] edgePoints(SectionPlan plan) {
    Mesh mesh = plan.mesh();
    Topology topology = Topology.of(mesh);
    double[][] points = new double[plan.sections().size() + 1][];
    int[] used = new int[points.length];
    Arrays.setAll(points, id -> new double[96]);
    for (int h = 0; h < mesh.corner().length; h++) {
      int id = plan.sectionOf()[h / 3];
      int across = topology.faceAcross(h);
      if (id > 0 && (across < 0 || plan.sectionOf()[across] != id)) {
        if (used[id] == points[id].length) {
          points[id] = Arrays.copyOf(points[id], 2 * used[id]);
        }
        int a = 3 * mesh.corner()[h];
        int b = 3 * mesh.corner()[Topology.next(h)];
        for (int axis = 0; axis < 3; axis++) {
          points[id][used[id]++] = (mesh.xyz()[a + axis] + mesh.xyz()[b + axis]) / 2;
        }
      }
    }
    Arrays.setAll(points, id -> Arrays.copyOf(points[id], used[id]));
    return points;
  }

  private static double[] inwardFirst(double[] place, double[] edge) {
    int places = place.length / 6;
    double[] inward = new double[places];
    for (int i = 0; i < places; i++) {
      inward[i] = squaredDistance(place, 6 * i, edge);
    }
    int[] order =
        IntStream.range(0, places)
            .boxed()
            .sorted(Comparator.comparingDouble((Integer i) -> -inward[i]))
            .mapToInt(Integer::intValue)
            .toArray();
    double[] sorted = new double[place.length];
    for (int i = 0; i < places; i++) {
      System.arraycopy(place, 6 * order[i], sorted, 6 * i, 6);
    }
    return sorted;
  }

  private static double squaredDistance(double[] place, int at, double[] edge) {
    double least = Double.POSITIVE_INFINITY;
    for (int e = 0; e < edge.length; e += 3) {
      double dx = edge[e] - place[at];
      double dy = edge[e + 1] - place[at + 1];
      double dz = edge[e + 2] - place[at + 2];
      least = Math.min(least, dx * dx + dy * dy + dz * dz);
    }
    return least;
  }

  /** Number of places of a section. */
  int count(int section) {
    return place[section].length / 6;
  }

  /** A place of a section: x, y, z in mm. */
  double[] place(int section, int index) {
    return Arrays.copyOfRange(place[section], 6 * index, 6 * index + 3);
  }

  /** The unit normal there. */
  double[] normal(int section, int index) {
    return Arrays.copyOfRange(place[section], 6 * index + 3, 6 * index + 6);
  }
}
