package org.seamwright.section;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.Sources;
import org.seamwright.geodesic.SurfaceDistance;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.VertexFans;

/**
 * The places where three sections or more meet, and how far they lie apart over the plated surface.
 * Where two are nearer than a lap is wide, three laps or more can lie over one another.
 *
 * <p>Cost: O(n), the square of the number of junctions, and a distance from each that has another
 * near it.
 *
 * @param places by vertex number
 * @param nearestMm the least distance between two of them, mm; infinite if no two are joined by a
 *     way of at most {@value #FARTHEST_DETOUR} times the straight line
 * @param close pairs nearer than the width asked about, the nearest first
 */
public record Junctions(List<Junction> places, double nearestMm, List<Close> close) {
  /** No places. */
  public static final Junctions NONE =
      new Junctions(List.of(), Double.POSITIVE_INFINITY, List.of());

  /** How much longer than the straight line a way between two junctions is followed. */
  static final double FARTHEST_DETOUR = 8;

  /**
   * The way that is tried first, over the straight line: surfaces are mostly flat on this scale.
   */
  private static final double FIRST_DETOUR = 1.25;

  /**
   * Two junctions that lie close together.
   *
   * @param first index in the list of places
   * @param second index of the other, higher
   * @param distanceMm way between them over the plated surface, mm
   */
  public record Close(int first, int second, double distanceMm) {}

  /** Copies the lists. */
  public Junctions {
    places = List.copyOf(places);
    close = List.copyOf(close);
  }

  /**
   * Finds the junctions of a labelled mesh.
   *
   * @param from the mesh and its sections
   * @param widthMm pairs nearer than this are listed
   */
  static Junctions of(SeamDistance from, double widthMm) {
    int[] vertex = vertices(from.mesh(), from.section(), from.first());
    List<Junction> places = new ArrayList<>();
    for (int v : vertex) {
      places.add(junction(from, v));
    }
    List<Close> close = new ArrayList<>();
    for (int i = 0; i < vertex.length; i++) {
      close.addAll(closeTo(from, vertex, i, widthMm));
    }
    close.sort(
        (a, b) -> {
          int order = Double.compare(a.distanceMm, b.distanceMm);
          order = order != 0 ? order : Integer.compare(a.first, b.first);
          return order != 0 ? order : Integer.compare(a.second, b.second);
        });
    double nearest = close.isEmpty() ? nearest(from, vertex) : close.get(0).distanceMm();
    return new Junctions(places, nearest, close);
  }

  /** Vertices with faces of three sections or more. */
  private static int[] vertices(Mesh mesh, int[] section, int first) {
    int[] one = new int[mesh.vertexCount()];
    int[] two = new int[one.length];
    boolean[] more = new boolean[one.length];
    Arrays.fill(one, first - 1);
    Arrays.fill(two, first - 1);
    int[] corner = mesh.corner();
    for (int h = 0; h < corner.length; h++) {
      int s = section[h / 3];
      int v = corner[h];
      if (s < first || s == one[v] || s == two[v]) {
        continue;
      }
      if (one[v] < first) {
        one[v] = s;
      } else if (two[v] < first) {
        two[v] = s;
      } else {
        more[v] = true;
      }
    }
    int[] found = new int[16];
    int count = 0;
    for (int v = 0; v < more.length; v++) {
      if (more[v]) {
        found = count == found.length ? Arrays.copyOf(found, 2 * count) : found;
        found[count++] = v;
      }
    }
    return Arrays.copyOf(found, count);
  }

  private static Junction junction(SeamDistance from, int v) {
    VertexFans fans = from.fans();
    List<Integer> sections = new ArrayList<>();
    for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
      int s = from.section()[fans.halfEdge(i) / 3];
      if (s >= from.first() && !sections.contains(s)) {
        sections.add(s);
      }
    }
    sections.sort(null);
    Mesh mesh = from.mesh();
    return new Junction(mesh.x(v), mesh.y(v), mesh.z(v), sections);
  }

  /** Junctions after the i-th within a width of it; no way is shorter than the straight line. */
  private static List<Close> closeTo(SeamDistance from, int[] vertex, int i, double widthMm) {
    List<Close> close = new ArrayList<>();
    double[] distance = null;
    for (int j = i + 1; j < vertex.length; j++) {
      if (Faces.length(from.mesh(), vertex[i], vertex[j]) < widthMm) {
        distance = distance == null ? distances(from, vertex[i], widthMm) : distance;
        if (distance[vertex[j]] < widthMm) {
          close.add(new Close(i, j, distance[vertex[j]]));
        }
      }
    }
    return close;
  }

  /** The least distance between any two: those with the nearest other first. */
  private static double nearest(SeamDistance from, int[] vertex) {
    double[] straight = new double[vertex.length];
    for (int i = 0; i < vertex.length; i++) {
      straight[i] = Double.POSITIVE_INFINITY;
      for (int j = 0; j < vertex.length; j++) {
        if (j != i) {
          straight[i] = Math.min(straight[i], Faces.length(from.mesh(), vertex[i], vertex[j]));
        }
      }
    }
    Integer[] order = new Integer[vertex.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, (a, b) -> Double.compare(straight[a], straight[b]));
    double least = Double.POSITIVE_INFINITY;
    for (int i : order) {
      if (straight[i] >= least) {
        break;
      }
      for (double detour = FIRST_DETOUR; detour <= FARTHEST_DETOUR; detour *= 2) {
        double reach = Math.min(least, detour * straight[i]);
        double found = nearestTo(from, vertex, i, reach);
        if (found <= reach) {
          least = Math.min(least, found);
          break;
        }
      }
    }
    return least;
  }

  private static double nearestTo(SeamDistance from, int[] vertex, int i, double reachMm) {
    double[] distance = distances(from, vertex[i], reachMm);
    double least = Double.POSITIVE_INFINITY;
    for (int j = 0; j < vertex.length; j++) {
      if (j != i) {
        least = Math.min(least, distance[vertex[j]]);
      }
    }
    return least;
  }

  private static double[] distances(SeamDistance from, int vertex, double reachMm) {
    return SurfaceDistance.from(
        from.mesh(),
        from.topology(),
        from.fans(),
        Sources.vertices(vertex),
        reachMm,
        f -> from.section()[f] >= from.first(),
        Progress.NONE);
  }
}
