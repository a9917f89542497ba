package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

/** Seams lie where they cost least. */
class SeamCostTest {
  private static final double[] NOWHERE = new double[3];

  private static SectionPlan plan(Mesh mesh, double limitMm2, SeamWeights weights) {
    return plan(mesh, new boolean[mesh.faceCount()], limitMm2, weights);
  }

  private static SectionPlan plan(Mesh mesh, boolean[] show, double limitMm2, SeamWeights weights) {
    SectionSettings settings = new SectionSettings(limitMm2, 0, 0, OrderPins.NONE, weights);
    SectionPlan plan = Sectioning.split(PlanChecks.allPlated(mesh), show, settings, Progress.NONE);
    PlanChecks.holds(PlanChecks.allPlated(mesh), settings, plan);
    assertThat(plan.notices()).isEmpty();
    return plan;
  }

  private static double length(SectionPlan plan) {
    return plan.seams().stream().mapToDouble(Seam::lengthMm).sum();
  }

  /** Length of seam whose middle is in a place. */
  private static double length(SectionPlan plan, Predicate<double[]> place) {
    Mesh mesh = plan.mesh();
    EdgeRings rings = EdgeRings.of(mesh, Topology.of(mesh));
    double sum = 0;
    for (int h = 0; h < mesh.corner().length; h++) {
      int other = rings.next(h);
      if (other > h && plan.sectionOf()[h / 3] != plan.sectionOf()[other / 3]) {
        int a = mesh.corner()[h];
        int b = mesh.corner()[Topology.next(h)];
        double[] middle = NOWHERE.clone();
        for (int axis = 0; axis < 3; axis++) {
          middle[axis] = (mesh.xyz()[3 * a + axis] + mesh.xyz()[3 * b + axis]) / 2;
        }
        sum += place.test(middle) ? Faces.length(mesh, a, b) : 0;
      }
    }
    return sum;
  }

  /** Six faces of 1600 mm² and a limit that just holds one: seams are the twelve edges, 480 mm. */
  @Test
  void aBoxIsSplitAlongItsEdges() {
    SectionPlan plan = plan(Shapes.cube(40, 8), 1650, SeamWeights.DEFAULT);
    assertThat(plan.sections()).hasSize(6);
    assertThat(plan.sections())
        .allSatisfy(s -> assertThat(s.netMm2()).isCloseTo(1600, within(1e-6)));
    assertThat(length(plan)).isCloseTo(12 * 40, within(1e-6));
  }

  /** A V 4 mm deep runs over a plate beside its middle, where the seam would be shorter. */
  @Test
  void theSeamOfAPlateLiesInItsGroove() {
    int n = 40;
    Shapes.Builder builder = new Shapes.Builder();
    int[][] vertex = new int[n + 1][n + 1];
    for (int i = 0; i <= n; i++) {
      for (int j = 0; j <= n; j++) {
        double depth = Math.max(0, 4 - Math.abs(2 * (i - 23)));
        vertex[i][j] = builder.vertex(2.0 * i, 2.0 * j, -depth);
      }
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        builder.quad(vertex[i][j], vertex[i + 1][j], vertex[i + 1][j + 1], vertex[i][j + 1]);
      }
    }
    Mesh plate = builder.build();
    double area = PlanChecks.area(plate);
    SectionPlan plan = plan(plate, 0.6 * area, SeamWeights.DEFAULT);
    assertThat(plan.sections()).hasSize(2);
    assertThat(length(plan)).isCloseTo(80, within(1e-6));
    assertThat(length(plan, p -> Math.abs(p[0] - 46) < 1e-9)).isCloseTo(80, within(1e-6));
  }

  /** Round a tube half of which is on show at least two seams go lengthwise: both behind. */
  @Test
  void seamsStayOffTheShowSide() {
    Mesh tube = Shapes.cylinder(20, 60, 96, 48, false);
    boolean[] show = new boolean[tube.faceCount()];
    double[] centre = new double[3];
    for (int f = 0; f < show.length; f++) {
      Faces.centroid(tube, f, centre);
      show[f] = centre[0] > 4;
    }
    double limit = 0.7 * PlanChecks.area(tube);
    SectionPlan plan = plan(tube, show, limit, SeamWeights.DEFAULT);
    double seen = length(plan, p -> p[0] > 4.5);
    assertThat(plan.sections()).hasSize(2);
    assertThat(seen).isLessThan(0.02 * length(plan));
  }

  @Test
  void whatASeamCostsFallsAgainstLengthAlone() {
    Mesh mesh = Shapes.cube(40, 8);
    SeamWeights weights = new SeamWeights(0.3, 0.3, 1, 1);
    double withEdges = cost(plan(mesh, 1750, weights), 0.3);
    double withLength = cost(plan(mesh, 1750, SeamWeights.EVEN), 0.3);
    assertThat(withEdges).isLessThan(withLength);
  }

  /** Cost with edges of the cube at a share of the rest. */
  private static double cost(SectionPlan plan, double edge) {
    double along =
        length(
            plan,
            p -> {
              int on = 0;
              for (double x : p) {
                on += Math.abs(Math.abs(x) - 20) < 1e-9 ? 1 : 0;
              }
              return on >= 2;
            });
    return length(plan) - (1 - edge) * along;
  }

  /**
   * Half of a dull sky is seen from the corner of two walls, all of it from the outside of a ball.
   */
  @Test
  void corneredPlacesSeeHalf() {
    Mesh ball = Shapes.icosphere(10, 3);
    Domain whole = Domain.of(ball, new int[ball.faceCount()], 1);
    assertThat(Openness.of(ball, whole, new int[] {0, 5, 99}, 1)).containsOnly(1);
    Shapes.Builder builder = new Shapes.Builder();
    int far = 1000;
    int[] v = {
      builder.vertex(0, -far, 0), builder.vertex(far, -far, 0), builder.vertex(far, far, 0),
      builder.vertex(0, far, 0), builder.vertex(0, -far, far), builder.vertex(0, far, far),
      builder.vertex(0.5, 0, 0)
    };
    builder.face(v[0], v[1], v[6]);
    builder.face(v[1], v[2], v[6]);
    builder.face(v[2], v[3], v[6]);
    builder.face(v[3], v[0], v[6]);
    builder.quad(v[0], v[3], v[5], v[4]);
    Mesh walls = builder.build();
    Domain both = Domain.of(walls, new int[walls.faceCount()], 1);
    int foot = 0;
    for (int i = 0; i < both.meshVertex().length; i++) {
      foot = both.meshVertex()[i] == v[6] ? i : foot;
    }
    assertThat(Openness.of(walls, both, new int[] {foot}, 1)[0]).isCloseTo(0.5, within(2.0 / 16));
  }

  @Test
  void weightsOutOfRangeAreRefused() {
    assertThatThrownBy(() -> new SeamWeights(0, 1, 1, 1)).hasMessageContaining("crease");
    assertThatThrownBy(() -> new SeamWeights(1, 1.1, 1, 1)).hasMessageContaining("valley");
    assertThatThrownBy(() -> new SeamWeights(1, 1, Double.NaN, 1)).hasMessageContaining("hidden");
    assertThatThrownBy(() -> new SeamWeights(1, 1, 1, 0.5)).hasMessageContaining("show");
  }
}
