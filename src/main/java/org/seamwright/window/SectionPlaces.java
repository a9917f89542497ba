package org.seamwright.window;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.section.SectionPlan;

/**
 * Some places spread over each section: where its number is written, and what has to be turned to
 * the viewer.
 *
 * <p>Places are the middles of faces, one in each equal step of area in face order. Cost O(n) and a
 * few dozen distances per edge vertex.
 */
final class SectionPlaces {
  /** Places per section: enough to find one in sight on most sides of a section. */
  private static final int PLACES = 64;

  /** Six numbers per place: x, y, z in mm and the unit normal; one array per section id. */
  private final double[][] place;

  /** Distance of each place from its section's edge, mm; infinite where there is none. */
  private final double[][] inward;

  /** Mean normal of each section. */
  private final double[][] mean;

  private SectionPlaces(double[][] place, double[][] inward, double[][] mean) {
    this.place = place;
    this.inward = inward;
    this.mean = mean;
  }

  /** Places of a plan's sections. */
  static SectionPlaces of(SectionPlan plan) {
    int sections = plan.sections().size();
    int[][] faces = facesBySection(plan);
    double[][] edge = edgePoints(plan);
    double[][] place = new double[sections + 1][];
    double[][] inward = new double[sections + 1][];
    double[][] mean = new double[sections + 1][];
    for (int id = 1; id <= sections; id++) {
      place[id] = spread(plan.mesh(), faces[id], id);
      mean[id] = meanNormal(plan.mesh(), faces[id]);
      inward[id] = distances(place[id], edge[id]);
    }
    return new SectionPlaces(place, inward, mean);
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

  private static double[] spread(Mesh mesh, int[] faces, long seed) {
    double total = 0;
    for (int f : faces) {
      total += Faces.area(mesh, f);
    }
    int places = total > 0 ? Math.min(PLACES, faces.length) : 0;
    double[] spread = new double[6 * places];
    double[] into = new double[3];
    // Within its step of area each place is drawn by lot: even steps would march in time with the
    // rows of a regular mesh and leave out most of them. The seed is fixed, so are the places.
    SplittableRandom lot = new SplittableRandom(seed);
    double sum = 0;
    int found = 0;
    double next = lot.nextDouble();
    for (int f : faces) {
      sum += Faces.area(mesh, f);
      if (found < places && sum >= next / places * total) {
        Faces.centroid(mesh, f, into);
        System.arraycopy(into, 0, spread, 6 * found, 3);
        Faces.normal(mesh, f, into);
        System.arraycopy(into, 0, spread, 6 * found + 3, 3);
        found++;
        next = found + lot.nextDouble();
      }
    }
    return Arrays.copyOf(spread, 6 * found);
  }

  /** The mean of the faces' unit normals, weighted by area: of length 0 to 1. */
  private static double[] meanNormal(Mesh mesh, int[] faces) {
    double[] sum = new double[3];
    double[] n = new double[3];
    double total = 0;
    for (int f : faces) {
      double area = Faces.area(mesh, f);
      Faces.normal(mesh, f, n);
      total += area;
      for (int axis = 0; axis < 3; axis++) {
        sum[axis] += area * n[axis];
      }
    }
    for (int axis = 0; axis < 3 && total > 0; axis++) {
      sum[axis] /= total;
    }
    return sum;
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

  private static double[] distances(double[] place, double[] edge) {
    double[] distances = new double[place.length / 6];
    for (int i = 0; i < distances.length; i++) {
      distances[i] = Math.sqrt(squaredDistance(place, 6 * i, edge));
    }
    return distances;
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

  /** How far a place is from its section's edge as the crow flies, mm; infinite without an edge. */
  double inwardMm(int section, int index) {
    return inward[section][index];
  }

  /** A place of a section: x, y, z in mm. */
  double[] place(int section, int index) {
    return Arrays.copyOfRange(place[section], 6 * index, 6 * index + 3);
  }

  /** The unit normal there. */
  double[] normal(int section, int index) {
    return Arrays.copyOfRange(place[section], 6 * index + 3, 6 * index + 6);
  }

  /** The mean of a section's unit normals, weighted by area: short where it faces many ways. */
  double[] meanNormal(int section) {
    return mean[section].clone();
  }
}
