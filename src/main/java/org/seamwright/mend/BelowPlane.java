package org.seamwright.mend;

import java.util.Locale;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Count;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.FieldCut;
import org.seamwright.mesh.Mesh;

/**
 * Drops what lies below a plane, cutting the faces that pass through it exactly. O(n). Faces that
 * lie in the plane stay.
 */
final class BelowPlane {
  /**
   * Clearance in standard deviations of the table. Corners of faces scatter by up to √2 of what
   * places within them do, so this leaves one corner in some 4,000 standing out.
   */
  private static final double CLEAR_OF_ROUGHNESS = 5;

  /** Least clearance as a share of the diagonal: the table's own faces must go for sure. */
  private static final double LEAST_CLEARANCE = 1e-6;

  /** Share of the diagonal by which a corner may lie off the plane and count as on it. */
  private static final double ON_PLANE = 1e-12;

  private BelowPlane() {}

  /** Finds the table and drops it. */
  static Change table(Mesh mesh, Repair.CutTable table, Progress progress) throws RepairRefused {
    TablePlane plane =
        TablePlane.find(mesh, table.point(), progress.between(0, 0.8))
            .orElseThrow(
                () ->
                    new RepairRefused(
                        table.point().isPresent()
                            ? "No flat stretch was found at the given point"
                            : "No table was found: no flat stretch of the surface faces the piece"
                                + " with nothing below it",
                        "Give a point on the table, or use the step cutBelow with a plane."));
    double clearance =
        table
            .clearanceMm()
            .orElse(
                Math.max(
                    CLEAR_OF_ROUGHNESS * plane.roughnessMm(),
                    LEAST_CLEARANCE * mesh.bounds().diagonal()));
    Vector3D n = plane.normal();
    String text =
        String.format(
            Locale.ROOT,
            "a plane was fitted to %.3g%% of the surface, rough by %.2g mm, facing (%.4f, %.4f,"
                + " %.4f); what lies below %.2g mm above it was dropped",
            100 * plane.share(),
            plane.roughnessMm(),
            n.getX(),
            n.getY(),
            n.getZ(),
            clearance);
    return cut(mesh, n, plane.offsetMm() + clearance, text);
  }

  /** Drops what lies below a given plane. */
  static Change given(Mesh mesh, Repair.CutBelow below) {
    Vector3D n = below.normal().normalize();
    return cut(mesh, n, n.dot(below.point()), "what lies below the plane was dropped");
  }

  private static Change cut(Mesh mesh, Vector3D n, double offset, String text) {
    double[] height = new double[mesh.vertexCount()];
    double snap = ON_PLANE * mesh.bounds().diagonal();
    for (int v = 0; v < height.length; v++) {
      double h = n.getX() * mesh.x(v) + n.getY() * mesh.y(v) + n.getZ() * mesh.z(v) - offset;
      height[v] = Math.abs(h) <= snap ? 0 : h;
    }
    CutMesh cut = FieldCut.along(mesh, height, 0, f -> true);
    boolean[] below = FieldCut.below(cut, height, 0);
    int whole = 0;
    boolean[] touched = new boolean[mesh.faceCount()];
    for (int f = 0; f < below.length; f++) {
      if (below[f] && !touched[cut.parentFace()[f]]) {
        touched[cut.parentFace()[f]] = true;
        whole++;
      }
    }
    if (whole == 0) {
      return Change.none(mesh, text);
    }
    Change split = new Change(cut.mesh(), cut.parentFace(), 0, "");
    String counted = text + " (" + Count.of(whole, "face") + " touched)";
    return split.then(Change.keeping(cut.mesh(), f -> !below[f], whole, counted));
  }
}
