package org.seamwright.geodesic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.Function;
import java.util.function.IntPredicate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;
import org.seamwright.testsupport.Shapes;

/** Areas within a distance, cut along its line, against closed forms; 20,000 faces. */
class BandAreaTest {
  /** A round line of radius r is cut as a polygon: its faces need edges of at most r/8. */
  private static final double ROUND = 8;

  @ParameterizedTest(name = "{0} edges")
  @ValueSource(doubles = {2, 2.7, 5, 10, 20, 40})
  void discInAPlane(double edges) {
    Mesh mesh = Shapes.plane(1, 1, 100, 100);
    double r = edges / 100;
    double area =
        areaWithin(
            mesh, r, m -> Sources.point(FaceTree.of(m).nearest(0.0013, -0.0021, 0).orElseThrow()));
    assertThat(area).isCloseTo(Math.PI * r * r, within(0.005 * Math.PI * r * r));
  }

  @ParameterizedTest(name = "{0} edges")
  @ValueSource(doubles = {2, 2.7, 5, 10, 20, 40})
  void stadiumInAPlane(double edges) {
    // Two half discs and a rectangle: pi r² + 2 r L, L = 0.15.
    Mesh mesh = Shapes.plane(1, 1, 100, 100);
    double r = edges / 100;
    double[][] segment = {{-0.07503, -0.01207}, {0.07497, -0.01207}};
    double area = areaWithin(mesh, r, m -> Grids.polyline(m, segment));
    double exact = Math.PI * r * r + 2 * r * 0.15;
    assertThat(area).isCloseTo(exact, within(0.005 * exact));
  }

  @ParameterizedTest(name = "{0} edges")
  @ValueSource(doubles = {2, 2.7, 5, 10, 20, 40})
  void bandRoundACylinder(double edges) {
    // Both sides of the ring at z = 0: 2 pi R 2 w.
    Mesh mesh = Shapes.cylinder(1, 2 * Math.PI, 100, 100, false);
    double w = edges * 2 * Math.PI / 100;
    double area = areaWithin(mesh, w, m -> ring(m, v -> Math.abs(m.z(v)) < 1e-9));
    double exact = Math.min(2 * w, 2 * Math.PI) * 2 * Math.PI;
    assertThat(area).isCloseTo(exact, within(0.005 * exact));
  }

  @ParameterizedTest(name = "{0} edges")
  @ValueSource(doubles = {2, 2.7, 5, 10, 20, 40})
  void bandBesideAParallelOfASphere(double edges) {
    // 2 pi R² |cos t - cos(t ± w/R)| on each side.
    Mesh mesh = Shapes.sphere(10, 100, 100);
    double polar = 0.45 * Math.PI;
    double w = edges * 10 * Math.PI / 100;
    double height = 10 * Math.cos(polar);
    double area = areaWithin(mesh, w, m -> ring(m, v -> Math.abs(m.z(v) - height) < 1e-6));
    double upper = Math.max(0, polar - w / 10);
    double lower = Math.min(Math.PI, polar + w / 10);
    double exact = 2 * Math.PI * 100 * (Math.cos(upper) - Math.cos(lower));
    assertThat(area).isCloseTo(exact, within(0.005 * exact));
  }

  @ParameterizedTest(name = "{0} edges")
  @ValueSource(doubles = {4, 10, 20, 40})
  void capOfASphere(double edges) {
    // 2 pi R² (1 - cos(r/R)).
    Mesh mesh = Shapes.icosphere(10, 5);
    double r = edges * 0.38;
    double area =
        areaWithin(mesh, r, m -> Sources.point(FaceTree.of(m).nearest(3, 4, 8.6).orElseThrow()));
    double exact = 2 * Math.PI * 100 * (1 - Math.cos(r / 10));
    assertThat(area).isCloseTo(exact, within(0.005 * exact));
  }

  private static Sources ring(Mesh mesh, IntPredicate vertices) {
    return Sources.edges(Grids.edges(mesh, vertices));
  }

  private static double areaWithin(Mesh mesh, double width, Function<Mesh, Sources> sources) {
    double[] field = toCut(mesh, sources.apply(mesh), width);
    CutMesh finer = Refinement.edges(mesh, width / ROUND, f -> crosses(mesh, f, field, width));
    Mesh fine = finer.mesh();
    double[] distance = toCut(fine, sources.apply(fine), width);
    CutMesh cut = FieldCut.along(fine, distance, width, f -> true);
    boolean[] below = FieldCut.below(cut, distance, width);
    double sum = 0;
    for (int f = 0; f < below.length; f++) {
      sum += below[f] ? Faces.area(cut.mesh(), f) : 0;
    }
    return sum;
  }

  private static double[] toCut(Mesh mesh, Sources sources, double width) {
    return SurfaceDistance.toCutAt(
        mesh, Topology.of(mesh), VertexFans.of(mesh), sources, width, f -> true, Progress.NONE);
  }

  private static boolean crosses(Mesh mesh, int face, double[] field, double level) {
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    for (int k = 0; k < 3; k++) {
      least = Math.min(least, field[mesh.corner()[3 * face + k]]);
      most = Math.max(most, field[mesh.corner()[3 * face + k]]);
    }
    return least <= level && most >= level;
  }
}
