package org.seamwright.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** A flat sheet with one steep spike: the fill must not leave the spike's faces as crumbs. */
class PocketsTest {
  private static SurfaceMap fillOf(Mesh mesh) throws MarkException {
    return Marks.evaluate(
        mesh,
        Labels.none(mesh.faceCount()),
        Treatment.PLATE,
        List.of(new Mark.CreaseFill("all", Treatment.BARE, Vector3D.of(1, 1, 0), 40)),
        Progress.NONE);
  }

  private static Mesh sheetWithSpike(double heightMm) {
    Mesh flat = Shapes.plane(100, 100, 300, 300);
    Bounds bounds = flat.bounds();
    double[] xyz = flat.xyz().clone();
    int nearest = 0;
    for (int v = 0; v < flat.vertexCount(); v++) {
      double x = flat.x(v) - bounds.minX() - 50;
      double y = flat.y(v) - bounds.minY() - 50;
      if (Math.hypot(x, y) < 0.25) {
        nearest = v;
      }
    }
    xyz[3 * nearest + 2] += heightMm;
    return Mesh.of(xyz, flat.corner().clone());
  }

  @Test
  void takesInASpikeThatIsSteeperThanTheCrease() throws MarkException {
    // Cells of 1/3 mm: the six faces at the spike slope by 50° or more, h over the distance from
    // the
    // spike to the far edge (1/3 mm, or 1/3 mm / √2), and have under 1 mm² of the sheet's 10 000.
    SurfaceMap map = fillOf(sheetWithSpike(0.4));
    assertThat(map.areaMm2(Treatment.PLATE)).isZero();
    assertThat(map.notices())
        .singleElement()
        .satisfies(
            n -> {
              assertThat(n.code()).isEqualTo(Marks.POCKETS);
              assertThat(n.count()).isOne();
            });
  }

  @Test
  void leavesALargerFaceBehindACreaseAlone() throws MarkException {
    Mesh cube = Shapes.cube(20, 10);
    SurfaceMap map =
        Marks.evaluate(
            cube,
            Labels.none(cube.faceCount()),
            Treatment.PLATE,
            List.of(
                new Mark.CreaseFill(
                    "side", Treatment.BARE, Vector3D.of(0, 0, cube.bounds().maxZ()), 40)),
            Progress.NONE);
    assertThat(map.areaMm2(Treatment.BARE)).isCloseTo(400, within(1e-9));
    assertThat(map.notices()).isEmpty();
  }
}
