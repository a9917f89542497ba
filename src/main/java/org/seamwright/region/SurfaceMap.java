package org.seamwright.region;

import java.util.List;
import java.util.Objects;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * The piece with a treatment for every face, cut exactly along the edges of the marks.
 *
 * @param mesh the piece, cut
 * @param parentFace one entry per face: the face of the piece as read that it is a piece of
 * @param treatment one entry per face: code of a {@link Treatment}
 * @param effects one entry per mark, in order
 * @param notices what was assumed
 */
public record SurfaceMap(
    Mesh mesh, int[] parentFace, byte[] treatment, List<Effect> effects, List<Notice> notices) {

  /**
   * What a mark did.
   *
   * @param coveredMm2 area the mark covers
   * @param changedMm2 area whose treatment it changed
   * @param places which of the places that were asked about it covers, ascending
   */
  public record Effect(double coveredMm2, double changedMm2, List<Integer> places) {
    /** Copies the list. */
    public Effect {
      places = List.copyOf(places);
    }

    /** An effect where no places were asked about. */
    public Effect(double coveredMm2, double changedMm2) {
      this(coveredMm2, changedMm2, List.of());
    }
  }

  /** Checks that the arrays fit the mesh. */
  public SurfaceMap {
    Objects.requireNonNull(mesh, "mesh");
    effects = List.copyOf(effects);
    notices = List.copyOf(notices);
    if (parentFace.length != mesh.faceCount() || treatment.length != mesh.faceCount()) {
      throw new IllegalArgumentException("Arrays of a surface map don't fit its mesh");
    }
  }

  /** Treatment of a face. */
  public Treatment of(int face) {
    return Treatment.ofCode(treatment[face]);
  }

  /** Area with a treatment, mm². */
  public double areaMm2(Treatment which) {
    return Sum.over(mesh.faceCount(), f -> treatment[f] == which.code() ? Faces.area(mesh, f) : 0);
  }
}
