package org.seamwright.mask;

import java.util.stream.IntStream;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.FieldCut;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.region.SurfaceBands;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;

/**
 * What dipping takes.
 *
 * <p>The film is area × dry film ÷ solids for each coat ({@link Lacquer}); to leave it, film ÷ (1 −
 * drain loss) is lifted out. The vessel is filled to its level with the piece hanging in it, so it
 * holds its volume less what the piece displaces, and what was lifted out is topped up. The
 * displaced volume is that of the cones from a point of the bath's surface to the faces below it
 * (divergence theorem: the surface itself adds nothing).
 *
 * @param heightMm the bath's surface along the dip's up, mm; infinite if all of the piece is under
 * @param wettedMm2 surface of the piece below it
 * @param plateMm2 of that, what is plated: to be peeled free
 * @param displacedMl volume of the piece below it; 0 if the model is not closed, so that there is
 *     enough
 * @param filmMl lacquer that stays on the piece, wet, all coats
 * @param drainedMl lacquer that drips off and is lost
 * @param leftMl what the vessel holds at the end
 * @param lostMl of that, what is not used again
 */
public record Dipped(
    double heightMm,
    double wettedMm2,
    double plateMm2,
    double displacedMl,
    double filmMl,
    double drainedMl,
    double leftMl,
    double lostMl) {
  private static final double MM3_PER_ML = 1000;

  /** Lacquer used up, ml. */
  public double usedMl() {
    return filmMl + drainedMl + lostMl;
  }

  /** Lacquer to have ready, ml. */
  public double bathMl() {
    return filmMl + drainedMl + leftMl;
  }

  /** Work at dipping and peeling, drying not counted, s. */
  public double workSeconds(MaskSettings settings, Dip dip) {
    return settings.lacquerCoats() * dip.secondsPerCoat()
        + plateMm2 / 100 * dip.peelSecondsPerCm2();
  }

  /** Works out what a dip takes. */
  static Dipped of(SurfaceMap map, MaskSettings settings, Dip dip) {
    Mesh mesh = map.mesh();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int v : mesh.corner()) {
      low = Math.min(low, height(mesh, v, dip));
      high = Math.max(high, height(mesh, v, dip));
    }
    double level = low + dip.depthMm();
    double plane = Math.min(level, high);
    Sum wetted = new Sum();
    Sum plate = new Sum();
    Sum volume = new Sum();
    double[] under = new double[2];
    for (int f = 0; f < mesh.faceCount(); f++) {
      under(mesh, f, dip, plane, under);
      wetted.add(under[0]);
      plate.add(map.of(f) == Treatment.PLATE ? under[0] : 0);
      volume.add(under[1]);
    }
    double displaced = isClosed(mesh) ? Math.max(0, volume.value()) / MM3_PER_ML : 0;
    double um = Lacquer.wetUm(settings.lacquerSolids(), settings.lacquerDryUm());
    double film = wetted.value() * um / 1000 * settings.lacquerCoats() / MM3_PER_ML;
    double left = Math.max(0, dip.vesselMl() - displaced);
    return new Dipped(
        level >= high ? Double.POSITIVE_INFINITY : level,
        wetted.value(),
        plate.value(),
        displaced,
        film,
        film * dip.drainLoss() / (1 - dip.drainLoss()),
        left,
        left * dip.leftLoss());
  }

  /**
   * Area between two distances from a border that stays above the bath, to be brushed, mm².
   *
   * @param mesh a bare region
   * @param borders its half-edges that border on plating
   * @param levels distances from them, the lower first; one if there is nothing between
   */
  static double aboveMm2(
      Mesh mesh,
      int[] borders,
      double[] levels,
      Dipped dipped,
      MaskSettings settings,
      Progress progress) {
    double level = dipped.heightMm();
    if (levels.length < 2 || Double.isInfinite(level)) {
      return 0;
    }
    Dip dip = settings.dip().orElseThrow();
    double[] height = new double[mesh.vertexCount()];
    for (int v = 0; v < height.length; v++) {
      height[v] = height(mesh, v, dip);
    }
    CutMesh cut = FieldCut.along(mesh, height, level, f -> true);
    double[] areas =
        SurfaceBands.areasWithin(
            cut.mesh(),
            carried(mesh, cut, borders),
            levels,
            at -> dip.heightMm(at[0], at[1], at[2]) > level,
            progress);
    return Math.max(0, areas[1] - areas[0]);
  }

  /** The half-edges of a cut mesh that lie on some of the mesh before. */
  private static int[] carried(Mesh mesh, CutMesh cut, int[] halfEdges) {
    boolean[] wanted = new boolean[mesh.corner().length];
    for (int h : halfEdges) {
      wanted[h] = true;
    }
    int[] corner = cut.mesh().corner();
    return IntStream.range(0, corner.length)
        .filter(
            g -> {
              int parent = cut.parentFace()[g / 3];
              for (int h = 3 * parent; h < 3 * parent + 3; h++) {
                int a = mesh.corner()[h];
                int b = mesh.corner()[Topology.next(h)];
                if (wanted[h]
                    && isOn(cut, corner[g], a, b)
                    && isOn(cut, corner[Topology.next(g)], a, b)) {
                  return true;
                }
              }
              return false;
            })
        .toArray();
  }

  private static boolean isOn(CutMesh cut, int v, int a, int b) {
    int i = v - cut.oldVertexCount();
    return i < 0
        ? v == a || v == b
        : cut.third()[i] < 0
            && Math.min(cut.edgeFrom()[i], cut.edgeTo()[i]) == Math.min(a, b)
            && Math.max(cut.edgeFrom()[i], cut.edgeTo()[i]) == Math.max(a, b);
  }

  private static double height(Mesh mesh, int v, Dip dip) {
    return dip.heightMm(mesh.x(v), mesh.y(v), mesh.z(v));
  }

  private static boolean isClosed(Mesh mesh) {
    Topology topology = Topology.of(mesh);
    for (int h = 0; h < mesh.corner().length; h++) {
      if (topology.twin(h) < 0) {
        return false;
      }
    }
    return true;
  }

  /** Area of a face below the level, and volume of the cone on it from a point at the level. */
  private static void under(Mesh mesh, int f, Dip dip, double level, double[] into) {
    double[] polygon = new double[12];
    int count = 0;
    for (int k = 0; k < 3; k++) {
      int a = mesh.corner()[3 * f + k];
      int b = mesh.corner()[3 * f + (k + 1) % 3];
      double ha = height(mesh, a, dip) - level;
      double hb = height(mesh, b, dip) - level;
      if (ha <= 0) {
        System.arraycopy(mesh.xyz(), 3 * a, polygon, 3 * count++, 3);
      }
      if ((ha < 0 && hb > 0) || (ha > 0 && hb < 0)) {
        for (int d = 0; d < 3; d++) {
          double from = mesh.xyz()[3 * a + d];
          polygon[3 * count + d] = from + ha / (ha - hb) * (mesh.xyz()[3 * b + d] - from);
        }
        count++;
      }
    }
    double norm = dip.up().norm();
    double[] apex = dip.up().multiply(level / norm).toArray();
    into[0] = 0;
    into[1] = 0;
    for (int i = 1; i + 1 < count; i++) {
      cone(polygon, i, apex, into);
    }
  }

  /** Adds the triangle of the polygon's first point and two that follow one another. */
  private static void cone(double[] p, int i, double[] apex, double[] into) {
    double[] u = new double[3];
    double[] v = new double[3];
    double[] w = new double[3];
    for (int d = 0; d < 3; d++) {
      u[d] = p[3 * i + d] - p[d];
      v[d] = p[3 * i + 3 + d] - p[d];
      w[d] = p[d] - apex[d];
    }
    double x = u[1] * v[2] - u[2] * v[1];
    double y = u[2] * v[0] - u[0] * v[2];
    double z = u[0] * v[1] - u[1] * v[0];
    into[0] += Math.sqrt(x * x + y * y + z * z) / 2;
    into[1] += (w[0] * x + w[1] * y + w[2] * z) / 6;
  }
}
