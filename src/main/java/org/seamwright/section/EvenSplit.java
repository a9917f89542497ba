package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.FieldCut;
import org.seamwright.geodesic.Sources;
import org.seamwright.geodesic.SurfaceDistance;
import org.seamwright.measure.SymmetricEigen;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;
import org.seamwright.region.SubMesh;

/**
 * Where a section is cut in two of given areas: along a plane square to the longest of its
 * principal axes for which both parts are one piece, else along a line of equal distance over the
 * surface from one end. Areas are exact to rounding. O(n).
 */
final class EvenSplit {
  private final SubMesh sub;
  private final double[] field;
  private final double level;

  private EvenSplit(SubMesh sub, double[] field, double level) {
    this.sub = sub;
    this.field = field;
    this.level = level;
  }

  /**
   * Finds the cut.
   *
   * @param label one entry per face
   * @param section which label
   * @param share area of the lower part, as a share of the whole
   */
  static EvenSplit of(Mesh whole, int[] label, int section, double share) {
    return of(whole, label, section, share, false);
  }

  /** In two halves neither of which is a ring, if there is such a cut. */
  static EvenSplit opening(Mesh whole, int[] label, int section) {
    return of(whole, label, section, 0.5, true);
  }

  private static EvenSplit of(Mesh whole, int[] label, int section, double share, boolean opening) {
    int[] faces = new int[label.length];
    int count = 0;
    for (int f = 0; f < label.length; f++) {
      if (label[f] == section) {
        faces[count++] = f;
      }
    }
    SubMesh sub = SubMesh.of(whole, Arrays.copyOf(faces, count));
    double[][] axes = axes(sub.mesh());
    EvenSplit first = null;
    EvenSplit parted = null;
    for (double[] axis : axes) {
      EvenSplit split = at(sub, heights(sub.mesh(), axis), share);
      boolean[] found = split.look();
      if (found[0] && (!opening || found[1])) {
        return split;
      }
      first = first == null ? split : first;
      parted = parted == null && found[0] ? split : parted;
    }
    EvenSplit round = at(sub, distances(sub.mesh(), axes[0]), share);
    boolean[] found = round.look();
    if (found[0] && (found[1] || parted == null)) {
      return round;
    }
    return parted == null ? first : parted;
  }

  private static EvenSplit at(SubMesh sub, double[] field, double share) {
    return new EvenSplit(sub, field, EqualAreas.level(sub.mesh(), field, share));
  }

  /** Principal axes of the area, the longest first. */
  private static double[][] axes(Mesh mesh) {
    double[] middle = new double[3];
    double[] at = new double[3];
    double area = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      double here = Faces.area(mesh, f);
      Faces.centroid(mesh, f, at);
      area += here;
      for (int i = 0; i < 3; i++) {
        middle[i] += here * at[i];
      }
    }
    double[][] spread = new double[3][3];
    for (int h = 0; h < mesh.corner().length; h++) {
      int v = mesh.corner()[h];
      double here = Faces.area(mesh, h / 3);
      for (int i = 0; i < 3; i++) {
        for (int j = 0; j < 3; j++) {
          spread[i][j] +=
              here
                  * (mesh.xyz()[3 * v + i] - middle[i] / area)
                  * (mesh.xyz()[3 * v + j] - middle[j] / area);
        }
      }
    }
    SymmetricEigen eigen = new SymmetricEigen(spread);
    return new double[][] {eigen.vector(2), eigen.vector(1), eigen.vector(0)};
  }

  private static double[] heights(Mesh mesh, double[] axis) {
    double[] heights = new double[mesh.vertexCount()];
    Arrays.setAll(heights, v -> mesh.x(v) * axis[0] + mesh.y(v) * axis[1] + mesh.z(v) * axis[2]);
    return heights;
  }

  private static double[] distances(Mesh mesh, double[] axis) {
    double[] heights = heights(mesh, axis);
    int lowest = 0;
    for (int v = 1; v < heights.length; v++) {
      lowest = heights[v] < heights[lowest] ? v : lowest;
    }
    return SurfaceDistance.from(
        mesh,
        Topology.of(mesh),
        VertexFans.of(mesh),
        Sources.vertices(lowest),
        Double.POSITIVE_INFINITY,
        Progress.NONE);
  }

  /** Whether both parts are one piece, and whether neither is a ring. */
  private boolean[] look() {
    CutMesh cut = FieldCut.along(sub.mesh(), field, level, f -> true);
    boolean[] below = FieldCut.below(cut, field, level);
    int[] part = new int[below.length];
    Arrays.setAll(part, f -> below[f] ? 0 : 1);
    EdgeRings rings = EdgeRings.of(cut.mesh(), Topology.of(cut.mesh()));
    boolean[] ring = RingShapes.of(cut.mesh(), rings, part, 2);
    return new boolean[] {Pieces.of(cut.mesh(), rings, part).count() == 2, !ring[0] && !ring[1]};
  }

  /** Writes the field less its level to the entries of the section's vertices. */
  void writeTo(double[] value) {
    for (int v = 0; v < field.length; v++) {
      value[sub.vertices()[v]] = field[v] - level;
    }
  }
}
