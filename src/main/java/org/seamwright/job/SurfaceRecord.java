package org.seamwright.job;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;

/**
 * What a job remembers of the surface that its marks were made on: area and places spread over it,
 * enough to tell how far another mesh lies from it.
 *
 * <p>Places are drawn at equal steps of area along the faces in their order, within a face by a
 * sequence that fills it evenly, and rounded to about a millionth of the piece's size. The same
 * mesh gives the same places. Cost: linear in faces.
 *
 * @param areaMm2 area of the faces, mm²
 * @param samples places on the surface, mm
 */
public record SurfaceRecord(double areaMm2, List<Vector3D> samples) {
  /** Enough that a change on a few hundredths of the surface is met; a line of 3 kB in the file. */
  static final int SAMPLES = 128;

  /** Digits below the leading one of the piece's size that a coordinate keeps. */
  private static final int DIGITS = 5;

  /**
   * Steps of the additive recurrence whose points fill a square evenly: powers of 1 / g, where g³ =
   * g + 1, as the golden ratio serves on a line.
   */
  private static final double STEP_U = 0.7548776662466927;

  private static final double STEP_V = 0.5698402909980532;

  /** Copies the list. */
  public SurfaceRecord {
    samples = List.copyOf(samples);
  }

  /**
   * Remembers a surface.
   *
   * @param mesh in mm, with an area
   */
  static SurfaceRecord of(Mesh mesh) {
    int faces = mesh.faceCount();
    double areaMm2 = areaMm2(mesh);
    int decimals = DIGITS - (int) Math.floor(Math.log10(mesh.bounds().diagonal()));
    List<Vector3D> samples = new ArrayList<>();
    Sum passed = new Sum();
    for (int f = 0; f < faces && samples.size() < SAMPLES; f++) {
      passed.add(Faces.area(mesh, f));
      while (samples.size() < SAMPLES
          && passed.value() >= (samples.size() + 0.5) / SAMPLES * areaMm2) {
        samples.add(place(mesh, f, samples.size(), decimals));
      }
    }
    return new SurfaceRecord(areaMm2, samples);
  }

  /** Area of a mesh as it is compared, mm². */
  static double areaMm2(Mesh mesh) {
    return Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
  }

  private static Vector3D place(Mesh mesh, int face, int i, int decimals) {
    double u = (i * STEP_U + 0.5) % 1;
    double v = (i * STEP_V + 0.5) % 1;
    if (u + v > 1) {
      u = 1 - u;
      v = 1 - v;
    }
    SurfacePoint p = new SurfacePoint(face, 1 - u - v, u, v);
    return Vector3D.of(
        rounded(p.at(mesh, 0), decimals),
        rounded(p.at(mesh, 1), decimals),
        rounded(p.at(mesh, 2), decimals));
  }

  private static double rounded(double value, int decimals) {
    // The sum turns -0 into 0.
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN).doubleValue() + 0.0;
  }

  /** Length of the diagonal of the box round the samples, mm. */
  double diagonalMm() {
    Vector3D low = samples.get(0);
    Vector3D high = low;
    for (Vector3D p : samples) {
      low =
          Vector3D.of(
              Math.min(low.getX(), p.getX()),
              Math.min(low.getY(), p.getY()),
              Math.min(low.getZ(), p.getZ()));
      high =
          Vector3D.of(
              Math.max(high.getX(), p.getX()),
              Math.max(high.getY(), p.getY()),
              Math.max(high.getZ(), p.getZ()));
    }
    return low.distance(high);
  }
}
