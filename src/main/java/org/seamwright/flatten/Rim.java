package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.geom.Coordinate;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * One boundary loop of a layout with what lies beyond each of its edges.
 *
 * @param point x, y of each point, in order, the film on the left
 * @param vertex one entry per point: the patch's vertex it is
 * @param beyond one entry per edge from point i to the next: {@link #NOTHING}, {@link #SLIT} or the
 *     number of the piece there
 */
record Rim(double[] point, int[] vertex, int[] beyond) {
  /** The patch ends here: the film's edge is the mask's edge. */
  static final int NOTHING = -1;

  /** The same piece goes on across the slit; this is the slit's one side. */
  static final int SLIT = -2;

  /** The slit's other side. */
  static final int SLIT_FAR = -3;

  int size() {
    return vertex.length;
  }

  /** Length all round, mm. */
  double lengthMm() {
    double sum = 0;
    for (int i = 0; i < size(); i++) {
      int k = (i + 1) % size();
      sum += Math.hypot(point[2 * k] - point[2 * i], point[2 * k + 1] - point[2 * i + 1]);
    }
    return sum;
  }

  /** Enclosed area, positive where the loop runs counter-clockwise, mm². */
  double signedArea() {
    Coordinate[] ring = new Coordinate[size() + 1];
    for (int i = 0; i <= size(); i++) {
      ring[i] = new Coordinate(point[2 * (i % size())], point[2 * (i % size()) + 1]);
    }
    return -Area.ofRingSigned(ring);
  }

  /**
   * The loops of a piece, the outer one first.
   *
   * @param whole the cut patch and its pieces
   * @param topology of the cut patch
   */
  static List<Rim> of(Splitter.Result whole, Topology topology, Splitter.Laid laid) {
    Layout layout = laid.layout().orElseThrow();
    Mesh mesh = layout.mesh();
    Topology own = Topology.of(mesh);
    List<int[]> loops = new ArrayList<>();
    Map<Integer, Integer> place = new HashMap<>();
    for (int[] found : Sheets.loops(mesh, own)) {
      int[] there = new int[found.length];
      for (int i = 0; i < found.length; i++) {
        there[i] = 3 * laid.faces()[found[i] / 3] + found[i] % 3;
      }
      int start = offTheSlits(whole, topology, laid.piece(), there);
      loops.add(from(found, start));
      for (int h : from(there, start)) {
        place.put(h, place.size());
      }
    }
    List<Rim> rims = new ArrayList<>();
    for (int[] loop : loops) {
      double[] point = new double[2 * loop.length];
      int[] vertex = new int[loop.length];
      int[] beyond = new int[loop.length];
      for (int i = 0; i < loop.length; i++) {
        int v = mesh.corner()[loop[i]];
        int there = 3 * laid.faces()[loop[i] / 3] + loop[i] % 3;
        point[2 * i] = layout.uv()[2 * v];
        point[2 * i + 1] = layout.uv()[2 * v + 1];
        vertex[i] = whole.mesh().corner()[there];
        int twin = topology.twin(there);
        if (twin < 0) {
          beyond[i] = NOTHING;
        } else if (whole.piece()[twin / 3] == laid.piece()) {
          // The side met first on the way round is the one, whole runs of it.
          beyond[i] = place.get(there) < place.getOrDefault(twin, -1) ? SLIT : SLIT_FAR;
        } else {
          beyond[i] = whole.piece()[twin / 3];
        }
      }
      rims.add(new Rim(point, vertex, beyond));
    }
    rims.sort((a, b) -> Double.compare(Math.abs(b.signedArea()), Math.abs(a.signedArea())));
    return rims;
  }

  /** Where a loop is on no slit, so that none goes over its end; 0 if it is on slits all round. */
  private static int offTheSlits(Splitter.Result whole, Topology topology, int piece, int[] there) {
    for (int i = 0; i < there.length; i++) {
      int twin = topology.twin(there[i]);
      if (twin < 0 || whole.piece()[twin / 3] != piece) {
        return i;
      }
    }
    return 0;
  }

  /** An array turned so that it begins at another entry. */
  private static int[] from(int[] list, int start) {
    int[] turned = new int[list.length];
    for (int i = 0; i < list.length; i++) {
      turned[i] = list[(start + i) % list.length];
    }
    return turned;
  }
}
