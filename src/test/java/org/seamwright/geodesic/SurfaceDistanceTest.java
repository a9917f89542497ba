package org.seamwright.geodesic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;
import org.seamwright.testsupport.Shapes;

class SurfaceDistanceTest {
  @Test
  void fromAPointInAPlaneIsThePlainDistance() {
    Mesh mesh = Shapes.plane(10, 10, 40, 40);
    double[] d =
        distance(
            mesh, Sources.point(FaceTree.of(mesh).nearest(0.13, -0.217, 0).orElseThrow()), 1e9);
    for (int v = 0; v < d.length; v++) {
      double exact = Math.hypot(mesh.x(v) - 0.13, mesh.y(v) + 0.217);
      assertThat(d[v]).isCloseTo(exact, within(1e-4));
    }
  }

  @Test
  void stopsWhereAsked() {
    Mesh mesh = Shapes.plane(10, 10, 40, 40);
    double[] d = distance(mesh, Sources.vertices(0), 3);
    for (int v = 0; v < d.length; v++) {
      double exact = Math.hypot(mesh.x(v) + 5, mesh.y(v) + 5);
      if (exact > 3 + 1e-4) {
        assertThat(d[v]).isInfinite();
      } else if (exact < 3 - 1e-4) {
        assertThat(d[v]).isCloseTo(exact, within(1e-4));
      }
    }
  }

  private static double[] distance(Mesh mesh, Sources sources, double maxMm) {
    return SurfaceDistance.from(
        mesh, Topology.of(mesh), VertexFans.of(mesh), sources, maxMm, Progress.NONE);
  }
}
