package org.seamwright.measure;

import java.util.List;
import org.seamwright.basis.Notice;
import org.seamwright.mesh.Bounds;

/**
 * What is known of a mesh.
 *
 * @param triangles faces
 * @param vertices vertices used by faces
 * @param areaMm2 sum of the facets' areas, mm²
 * @param smooth estimate of the surface behind the facets
 * @param volumeMm3 signed volume by the divergence theorem, mm³; means little unless {@code closed}
 * @param bounds box around it, mm
 * @param parts connected parts
 * @param openEdges edges with one face
 * @param branchingEdges edges with three or more faces
 * @param flippedEdges edges whose two faces are turned against each other
 * @param duplicateTriangles faces that repeat the three vertices of an earlier one
 * @param degenerateTriangles faces without area, those dropped while welding included
 * @param closed whether every edge has exactly two faces
 * @param notices what a user should know before trusting the figures
 */
public record Survey(
    int triangles,
    int vertices,
    double areaMm2,
    SmoothArea smooth,
    double volumeMm3,
    Bounds bounds,
    int parts,
    int openEdges,
    int branchingEdges,
    int flippedEdges,
    int duplicateTriangles,
    int degenerateTriangles,
    boolean closed,
    List<Notice> notices) {
  /** Copies the list. */
  public Survey {
    notices = List.copyOf(notices);
  }

  /** Length of a brush's tip where nothing is told, mm: a shop setting, not a published value. */
  public static final double DEFAULT_TIP_MM = 3;

  /**
   * Area of the smooth surface that the facets stand for, as a brush sees it.
   *
   * @param areaMm2 estimate, what noise and roughness add taken off
   * @param lowMm2 lower end of the bar
   * @param highMm2 upper end of the bar
   * @param roughnessMm2 how much has been taken off for roughness at the scale of the facets; 0
   *     where noise has been taken off, which includes it
   * @param noiseMm2 how much the facets' area exceeds the estimate where scan noise was found, mm²;
   *     0 where none was
   * @param tipMm length of the brush's tip, at whose scale noise is told from detail, mm
   */
  public record SmoothArea(
      double areaMm2,
      double lowMm2,
      double highMm2,
      double roughnessMm2,
      double noiseMm2,
      double tipMm) {
    /** An area from which nothing has been taken off. */
    public SmoothArea(double areaMm2, double lowMm2, double highMm2) {
      this(areaMm2, lowMm2, highMm2, 0, 0, DEFAULT_TIP_MM);
    }

    /** An area with its noise not looked for. */
    SmoothArea(double areaMm2, double lowMm2, double highMm2, double roughnessMm2) {
      this(areaMm2, lowMm2, highMm2, roughnessMm2, 0, DEFAULT_TIP_MM);
    }

    SmoothArea withTip(double tip) {
      return new SmoothArea(areaMm2, lowMm2, highMm2, roughnessMm2, noiseMm2, tip);
    }
  }
}
