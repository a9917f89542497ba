package org.seamwright.section;

import org.seamwright.measure.Crease;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/** Faces that are reached from one another without crossing a crease: O(n α(n)). */
final class CreasePieces {
  private CreasePieces() {}

  /**
   * Labels natural faces.
   *
   * @param plated one entry per face: 0 or more where plated, below 0 elsewhere
   * @param angleDegrees edges that turn by at least this much stop
   * @return one entry per face: a number below the number of faces that its natural face shares, -1
   *     elsewhere
   */
  static int[] of(Mesh mesh, Topology topology, int[] plated, double angleDegrees) {
    double[] degrees = Crease.degrees(mesh, topology);
    int[] root = new int[mesh.faceCount()];
    for (int f = 0; f < root.length; f++) {
      root[f] = f;
    }
    for (int h = 0; h < degrees.length; h++) {
      int twin = topology.twin(h);
      if (twin > h && degrees[h] < angleDegrees && plated[h / 3] >= 0 && plated[twin / 3] >= 0) {
        Pieces.union(root, h / 3, twin / 3);
      }
    }
    int[] label = new int[root.length];
    for (int f = 0; f < label.length; f++) {
      label[f] = plated[f] >= 0 ? Pieces.find(root, f) : -1;
    }
    return label;
  }
}
