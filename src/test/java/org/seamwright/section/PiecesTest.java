package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.region.SurfaceMap;
import org.seamwright.testsupport.Shapes;

/** Connectivity where meshes are at their worst. */
class PiecesTest {
  private static EdgeRings rings(Mesh mesh) {
    return EdgeRings.of(mesh, Topology.of(mesh));
  }

  private static Pieces whole(Mesh mesh) {
    return Pieces.of(mesh, rings(mesh), new int[mesh.faceCount()]);
  }

  @Test
  void wallsThatMeetAlongALineAreOnePiece() {
    assertThat(whole(Shapes.blades(5, 10, 20)).count()).isOne();
  }

  @Test
  void aFaceListedTwiceIsNoPieceOfItsOwn() {
    Mesh mesh = Shapes.withRepeated(Shapes.plane(10, 10, 6, 6), 20, 33);
    assertThat(whole(mesh).count()).isOne();
    SurfaceMap map = PlanChecks.allPlated(mesh);
    SectionSettings settings = new SectionSettings(40, 0.3, 0.6);
    SectionPlan plan = Sectioning.split(map, settings, Progress.NONE);
    PlanChecks.holds(map, settings, plan);
    assertThat(plan.sections()).hasSizeLessThanOrEqualTo(5);
  }

  /** Two squares that touch at one corner only: the same vertex, no common edge. */
  @Test
  void componentsThatTouchAtAVertexStayApart() {
    Shapes.Builder builder = new Shapes.Builder();
    int n = 8;
    int[][] first = grid(builder, n, 0, -1);
    int[][] second = grid(builder, n, n, first[n][n]);
    assertThat(second[0][0]).isEqualTo(first[n][n]);
    Mesh mesh = builder.build();
    Pieces pieces = whole(mesh);
    assertThat(pieces.count()).isEqualTo(2);
    Domain domain = Domain.of(mesh, pieces.of(), 2);
    assertThat(domain.meshVertex()).hasSize(mesh.vertexCount() + 1);
    assertThat(domain.groups()).containsExactly(0, 1);
    SurfaceMap map = PlanChecks.allPlated(mesh);
    SectionSettings settings = new SectionSettings(25, 0.4, 0.8);
    SectionPlan plan = Sectioning.split(map, settings, Progress.NONE);
    PlanChecks.holds(map, settings, plan);
    // 64 mm² each: three sections on either side, none over both.
    assertThat(plan.sections().size()).isBetween(6, 8);
    double[] side = new double[3];
    for (int f = 0; f < plan.sectionOf().length; f++) {
      Faces.centroid(plan.mesh(), f, side);
      assertThat(side[0] < n).isEqualTo(side[1] < n);
    }
    assertThat(plan.notices()).isEmpty();
  }

  private static int[][] grid(Shapes.Builder builder, int n, int at, int cornerVertex) {
    int[][] vertex = new int[n + 1][n + 1];
    for (int i = 0; i <= n; i++) {
      for (int j = 0; j <= n; j++) {
        vertex[i][j] =
            i == 0 && j == 0 && cornerVertex >= 0
                ? cornerVertex
                : builder.vertex(at + i, at + j, 0);
      }
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        builder.quad(vertex[i][j], vertex[i + 1][j], vertex[i + 1][j + 1], vertex[i][j + 1]);
      }
    }
    return vertex;
  }

  @Test
  void facesWithoutAreaAreNoSections() {
    // A square, a needle without width apart from it and a face that names a vertex twice.
    double[] p = {0, 0, 0, 4, 0, 0, 4, 4, 0, 0, 4, 0, 9, 0, 0, 9, 1, 0, 9, 2, 0};
    int[] corner = {0, 1, 2, 0, 2, 3, 4, 5, 6, 1, 1, 2};
    Mesh mesh = Mesh.of(p, corner);
    SurfaceMap map = PlanChecks.allPlated(mesh);
    SectionPlan plan = Sectioning.split(map, new SectionSettings(100, 1, 2), Progress.NONE);
    assertThat(plan.sections()).hasSize(1);
    assertThat(plan.sections().get(0).netMm2()).isCloseTo(16, within(1e-12));
  }

  @Test
  void everyCrumbIsASection() {
    Mesh mesh = Shapes.soup(300, 100, 2, 4);
    SurfaceMap map = PlanChecks.allPlated(mesh);
    SectionSettings settings = new SectionSettings(50, 1, 2);
    SectionPlan plan = Sectioning.split(map, settings, Progress.NONE);
    PlanChecks.holds(map, settings, plan);
    assertThat(plan.sections()).hasSize(300);
  }

  @Test
  void islandsGoWhereTheirLongestBorderIs() {
    Mesh mesh = Shapes.plane(30, 30, 30, 30);
    double[] centre = new double[3];
    int[] label = new int[mesh.faceCount()];
    for (int f = 0; f < label.length; f++) {
      Faces.centroid(mesh, f, centre);
      label[f] = centre[0] < 0 ? 0 : 1;
      // An island of 0 inside 1.
      if (centre[0] > 5 && centre[0] < 8 && Math.abs(centre[1]) < 2) {
        label[f] = 0;
      }
    }
    int labels = Islands.merge(mesh, rings(mesh), label, 2);
    assertThat(labels).isEqualTo(2);
    for (int f = 0; f < label.length; f++) {
      Faces.centroid(mesh, f, centre);
      assertThat(label[f]).isEqualTo(centre[0] < 0 ? 0 : 1);
    }
    assertThat(Arrays.stream(label).filter(l -> l == 0).count()).isEqualTo(900);
  }
}
