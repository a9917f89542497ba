package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.List;
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
    List<Rim> rims = new ArrayList<>();
    for (int[] loop : Sheets.loops(mesh, own)) {
      double[] point = new double[2 * loop.length];
      int[] vertex = new int[loop.length];
      int[] beyond = new int[loop.length];
      for (int i = 0; i < loop.length; i++) {
        int h = loop[i];
        int v = mesh.corner()[h];
        int there = 3 * laid.faces()[h / 3] + h % 3;
        point[2 * i] = layout.uv()[2 * v];
        point[2 * i + 1] = layout.uv()[2 * v + 1];
        vertex[i] = whole.mesh().corner()[there];
        int twin = topology.twin(there);
        if (twin < 0) {
          beyond[i] = NOTHING;
        } else if (whole.piece()[twin / 3] == laid.piece()) {
          beyond[i] = there < twin ? SLIT : SLIT_FAR;
        } else {
          beyond[i] = whole.piece()[twin / 3];
        }
      }
      rims.add(new Rim(point, vertex, beyond));
    }
    rims.sort((a, b) -> Double.compare(Math.abs(b.signedArea()), Math.abs(a.signedArea())));
    return rims;
  }
}
