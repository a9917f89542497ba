package org.seamwright.mend;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Count;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * Keeps some connected parts (faces that share an edge are in one part) and drops the rest. O(n log
 * n).
 */
final class PartChoice {
  private PartChoice() {}

  /** Keeps the parts nearest to some points. */
  static Change near(Mesh mesh, Topology topology, List<Vector3D> points) {
    Parts parts = Parts.of(mesh, topology);
    boolean[] kept = new boolean[parts.count()];
    FaceTree tree = FaceTree.of(mesh);
    for (Vector3D p : points) {
      tree.nearest(p.getX(), p.getY(), p.getZ())
          .ifPresent(at -> kept[parts.of()[at.face()]] = true);
    }
    return keep(mesh, parts, kept);
  }

  /** Keeps the parts of largest area; of equal ones the first in the file. */
  static Change largest(Mesh mesh, Topology topology, int count) {
    Parts parts = Parts.of(mesh, topology);
    double[] area = areas(mesh, parts);
    Integer[] order = new Integer[parts.count()];
    Arrays.setAll(order, p -> p);
    // The sort is stable, so equal parts stay in the order of the file.
    Arrays.sort(order, (p, q) -> Double.compare(area[q], area[p]));
    boolean[] kept = new boolean[parts.count()];
    for (int i = 0; i < Math.min(count, order.length); i++) {
      kept[order[i]] = true;
    }
    return keep(mesh, parts, kept);
  }

  /** Keeps the parts with at least a share of the area. */
  static Change above(Mesh mesh, Topology topology, double share) {
    Parts parts = Parts.of(mesh, topology);
    double[] area = areas(mesh, parts);
    double least = share * Arrays.stream(area).sum();
    boolean[] kept = new boolean[parts.count()];
    for (int p = 0; p < kept.length; p++) {
      kept[p] = area[p] >= least;
    }
    return keep(mesh, parts, kept);
  }

  private static Change keep(Mesh mesh, Parts parts, boolean[] kept) {
    int stay = 0;
    for (boolean k : kept) {
      stay += k ? 1 : 0;
    }
    int gone = kept.length - stay;
    String text = Count.of(stay, "part") + " kept, " + Count.of(gone, "other part") + " dropped";
    return Change.keeping(mesh, f -> kept[parts.of()[f]], gone, text);
  }

  /** Area of each part, mm². */
  static double[] areas(Mesh mesh, Parts parts) {
    double[] area = new double[parts.count()];
    for (int f = 0; f < mesh.faceCount(); f++) {
      area[parts.of()[f]] += Faces.area(mesh, f);
    }
    return area;
  }
}
