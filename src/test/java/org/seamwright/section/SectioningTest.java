package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CancellationException;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.SurfaceMap;
import org.seamwright.testsupport.Shapes;

class SectioningTest {
  private static SectionPlan plan(SurfaceMap map, SectionSettings settings) {
    SectionPlan plan = Sectioning.split(map, settings, Progress.NONE);
    PlanChecks.holds(map, settings, plan);
    return plan;
  }

  /** Shapes of every kind of connectivity. */
  private static Mesh shape(int which) {
    return switch (which) {
      case 0 -> Shapes.plane(120, 70, 36, 21);
      case 1 -> Shapes.icosphere(30, 4);
      case 2 -> Shapes.torus(40, 12, 72, 24);
      case 3 -> Shapes.cylinder(15, 60, 40, 20, true);
      case 4 -> Shapes.cube(40, 1);
      case 5 -> Shapes.mobius(40, 20, 90, 9);
      case 6 -> Shapes.twoSpheres(20, 60, 16, 24);
      case 7 -> dumbbell();
      case 8 -> plateWithHole();
      case 9 -> Shapes.blades(3, 30, 60);
      default -> throw new IllegalArgumentException("No shape " + which);
    };
  }

  /** Two bells on a thin neck, from a profile. */
  private static Mesh dumbbell() {
    int n = 60;
    double[] r = new double[n + 1];
    double[] z = new double[n + 1];
    for (int i = 0; i <= n; i++) {
      double t = (double) i / n * 2 - 1;
      z[i] = 50 * t;
      r[i] = 1.5 + 20 * t * t * Math.sqrt(Math.max(0, 1 - t * t)) * 2;
    }
    return Shapes.lathe(r, z, 36);
  }

  /** A square plate whose middle third is cut out. */
  private static Mesh plateWithHole() {
    int n = 30;
    Shapes.Builder mesh = new Shapes.Builder();
    int[][] vertex = new int[n + 1][n + 1];
    for (int i = 0; i <= n; i++) {
      for (int j = 0; j <= n; j++) {
        vertex[i][j] = mesh.vertex(3 * i, 3 * j, 0);
      }
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        if (i < 10 || i >= 20 || j < 10 || j >= 20) {
          mesh.quad(vertex[i][j], vertex[i + 1][j], vertex[i + 1][j + 1], vertex[i][j + 1]);
        }
      }
    }
    return mesh.build();
  }

  @ParameterizedTest(name = "shape {0}")
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9})
  void keepsEveryPropertyAtRandomLimits(int which) {
    Mesh mesh = shape(which);
    SurfaceMap map = PlanChecks.allPlated(mesh);
    double area = PlanChecks.area(mesh);
    Random random = new Random(1000 + which);
    for (int i = 0; i < 4; i++) {
      double limit = area / (1 + 14 * random.nextDouble());
      double lap = (0.02 + 0.1 * random.nextDouble()) * Math.sqrt(limit);
      plan(map, new SectionSettings(limit, lap * random.nextDouble(), lap));
    }
  }

  /** Two rows of sections on a plate; corners and sides are named by points in them. */
  @Test
  void theOrderAskedForIsKept() {
    SurfaceMap map = PlanChecks.allPlated(Shapes.plane(120, 70, 60, 35));
    Vector3D lowerLeft = Vector3D.of(-58, -33, 0);
    Vector3D upperRight = Vector3D.of(58, 33, 0);
    Vector3D upperLeft = Vector3D.of(-58, 33, 0);
    OrderPins pins =
        new OrderPins(
            List.of(upperRight),
            List.of(lowerLeft),
            List.of(new OrderPins.Before(Vector3D.of(58, -33, 0), upperLeft)));
    SectionPlan plan = plan(map, new SectionSettings(1400, 1, 3, pins));
    assertThat(plan.notices()).isEmpty();
    assertThat(sectionAt(plan, upperRight)).isEqualTo(1);
    assertThat(sectionAt(plan, lowerLeft)).isEqualTo(plan.sections().size());
    assertThat(sectionAt(plan, Vector3D.of(58, -33, 0))).isLessThan(sectionAt(plan, upperLeft));
    SectionPlan free = plan(map, new SectionSettings(1400, 1, 3));
    assertThat(sectionAt(free, upperRight) == 1 && sectionAt(free, lowerLeft) == 8).isFalse();
  }

  private static int sectionAt(SectionPlan plan, Vector3D point) {
    double least = Double.POSITIVE_INFINITY;
    int section = 0;
    double[] centre = new double[3];
    for (int f = 0; f < plan.sectionOf().length; f++) {
      Faces.centroid(plan.mesh(), f, centre);
      double far = point.distance(Vector3D.of(centre));
      if (far < least) {
        least = far;
        section = plan.sectionOf()[f];
      }
    }
    return section;
  }

  @Test
  void anOrderThatContradictsItselfIsTold() {
    SurfaceMap map = PlanChecks.allPlated(Shapes.plane(120, 70, 36, 21));
    Vector3D left = Vector3D.of(-58, 0, 0);
    Vector3D right = Vector3D.of(58, 0, 0);
    OrderPins pins =
        new OrderPins(List.of(left), List.of(), List.of(new OrderPins.Before(right, left)));
    SectionPlan plan = plan(map, new SectionSettings(3000, 1, 3, pins));
    assertThat(plan.notices()).hasSize(1);
    assertThat(plan.notices().get(0).code()).isEqualTo("order-pin-broken");
    assertThat(plan.notices().get(0).text()).contains("sections.order.before[0]");
    assertThat(sectionAt(plan, left)).isEqualTo(1);
  }

  @Test
  void aPieceWithinTheLimitIsOneSection() {
    Mesh mesh = Shapes.plane(100, 50, 4, 2);
    SectionPlan plan = plan(PlanChecks.allPlated(mesh), new SectionSettings(5000, 3, 10));
    assertThat(plan.sections()).hasSize(1);
    assertThat(plan.seams()).isEmpty();
    assertThat(plan.notices()).isEmpty();
  }

  @Test
  void nothingPlatedGivesNoSections() {
    Mesh mesh = Shapes.plane(100, 50, 4, 2);
    byte[] bare = new byte[mesh.faceCount()];
    Arrays.fill(bare, (byte) 1);
    SectionPlan plan = plan(PlanChecks.map(mesh, bare), new SectionSettings(5000, 3, 10));
    assertThat(plan.sections()).isEmpty();
    assertThat(plan.onceMm2()).isZero();
  }

  @Test
  void aLimitUnderOneLapIsToldAndStillPlanned() {
    Mesh mesh = Shapes.plane(100, 100, 20, 20);
    SectionPlan plan = plan(PlanChecks.allPlated(mesh), new SectionSettings(50, 20, 20));
    assertThat(plan.notices()).isNotEmpty();
    assertThat(plan.sections()).hasSizeLessThanOrEqualTo(Division.MOST_CELLS);
  }

  @Test
  void givesTheSamePlanTwice() {
    SurfaceMap map = PlanChecks.allPlated(Shapes.icosphere(30, 4));
    SectionSettings settings = new SectionSettings(1000, 1, 3);
    SectionPlan first = plan(map, settings);
    SectionPlan second = plan(map, settings);
    assertThat(second.sections()).isEqualTo(first.sections());
    assertThat(second.seams()).isEqualTo(first.seams());
    assertThat(second.mesh().xyz()).isEqualTo(first.mesh().xyz());
    assertThat(second.sectionOf()).isEqualTo(first.sectionOf());
  }

  @Test
  void cancelsWhenAsked() {
    SurfaceMap map = PlanChecks.allPlated(Shapes.icosphere(30, 4));
    assertThatThrownBy(
            () ->
                Sectioning.split(
                    map,
                    new SectionSettings(500, 1, 3),
                    fraction -> {
                      if (fraction > 0.3) {
                        throw new CancellationException();
                      }
                    }))
        .isInstanceOf(CancellationException.class);
  }
}
