package org.seamwright.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/** Evaluates marks in tests, and checks what must hold of any surface map. */
final class Maps {
  static final Vector3D ORIGIN = Vector3D.ZERO;
  static final Vector3D X = Vector3D.Unit.PLUS_X;
  static final Vector3D Y = Vector3D.Unit.PLUS_Y;
  static final Vector3D Z = Vector3D.Unit.PLUS_Z;

  private Maps() {}

  /** Evaluates bare and other marks over plated ground. */
  static SurfaceMap of(Mesh mesh, Mark... marks) throws MarkException {
    return Marks.evaluate(mesh, labels(mesh), Treatment.PLATE, List.of(marks), Progress.NONE);
  }

  /** Every second face is called odd, every third third. */
  static Labels labels(Mesh mesh) {
    int[] of = new int[mesh.faceCount()];
    Arrays.setAll(of, f -> f % 6 == 3 ? 3 : f % 2 == 1 ? 1 : f % 3 == 0 ? 2 : 0);
    return new Labels(List.of("", "odd", "third", "odd / third"), of);
  }

  static double bare(Mesh mesh, Mark... marks) throws MarkException {
    SurfaceMap map = of(mesh, marks);
    requireSound(mesh, map);
    return map.areaMm2(Treatment.BARE);
  }

  static Mark.HalfSpace above(double z) {
    return new Mark.HalfSpace("above", Treatment.BARE, Vector3D.of(0, 0, z), Z);
  }

  static Mark.HalfSpace below(double z, Treatment treatment) {
    return new Mark.HalfSpace("below", treatment, Vector3D.of(0, 0, z), Z.negate());
  }

  static Mark.Sector sector(double from, double to) {
    return new Mark.Sector("sector", Treatment.BARE, ORIGIN, Z, X, from, to);
  }

  static Mark.InBox box(double x0, double y0, double z0, double x1, double y1, double z1) {
    return new Mark.InBox("box", Treatment.BARE, Vector3D.of(x0, y0, z0), Vector3D.of(x1, y1, z1));
  }

  static double area(Mesh mesh) {
    return Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
  }

  /** Areas add up, nothing is torn, no piece has lost its area or turned over. */
  static void requireSound(Mesh piece, SurfaceMap map) {
    Mesh cut = map.mesh();
    double whole = area(piece);
    double classes = 0;
    for (Treatment treatment : Treatment.values()) {
      classes += map.areaMm2(treatment);
    }
    assertThat(classes).as("areas of the treatments").isCloseTo(whole, within(1e-9 * whole));
    double[] ofParent = new double[piece.faceCount()];
    double[] own = new double[3];
    double[] parent = new double[3];
    for (int f = 0; f < cut.faceCount(); f++) {
      int p = map.parentFace()[f];
      double area = Faces.area(cut, f);
      ofParent[p] += area;
      if (!hasArea(piece, p)) {
        continue;
      }
      assertThat(area).as("area of face %d", f).isPositive();
      Faces.normal(cut, f, own);
      Faces.normal(piece, p, parent);
      assertThat(own[0] * parent[0] + own[1] * parent[1] + own[2] * parent[2])
          .as("face %d of area %s lies as its parent %d", f, area, p)
          .isGreaterThan(0.9);
    }
    for (int p = 0; p < ofParent.length; p++) {
      if (hasArea(piece, p)) {
        double area = Faces.area(piece, p);
        assertThat(ofParent[p]).as("pieces of face %d", p).isCloseTo(area, within(1e-9 * area));
      }
    }
    Topology before = Topology.of(piece);
    Topology after = Topology.of(cut);
    assertThat(length(cut, after, Topology.OPEN))
        .as("length of open edges")
        .isCloseTo(length(piece, before, Topology.OPEN), within(1e-9 * Math.sqrt(whole)));
    double branching = length(piece, before, Topology.BRANCHING);
    double tolerance = 1e-9 * Math.sqrt(whole);
    if (hasRepeated(piece)) {
      // The cut through a face and that through its double are the same edge, of four faces.
      assertThat(length(cut, after, Topology.BRANCHING)).isGreaterThan(branching - tolerance);
    } else {
      assertThat(length(cut, after, Topology.BRANCHING))
          .as("length of branching edges")
          .isCloseTo(branching, within(tolerance));
    }
  }

  /** Whether a face is more than a line: its area above the rounding of its corners. */
  private static boolean hasArea(Mesh mesh, int face) {
    return Faces.area(mesh, face) > 1e-12;
  }

  private static boolean hasRepeated(Mesh mesh) {
    Set<List<Integer>> faces = new HashSet<>();
    for (int f = 0; f < mesh.faceCount(); f++) {
      int[] corners = Arrays.copyOfRange(mesh.corner(), 3 * f, 3 * f + 3);
      Arrays.sort(corners);
      boolean three = corners[0] != corners[1] && corners[1] != corners[2];
      if (three && !faces.add(List.of(corners[0], corners[1], corners[2]))) {
        return true;
      }
    }
    return false;
  }

  /** Length of half-edges whose twin has a code, mm. */
  private static double length(Mesh mesh, Topology topology, int code) {
    return Sum.over(
        mesh.corner().length,
        h ->
            topology.twin(h) == code
                ? Faces.length(mesh, mesh.corner()[h], mesh.corner()[Topology.next(h)])
                : 0);
  }
}
