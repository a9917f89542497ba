package org.seamwright.flatten;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

class LayoutTest {
  /** Digits that a layout of a surface that unrolls keeps. */
  private static final double EXACT = 1e-6;

  @Test
  void planeStaysAsItIs() {
    assertIsometric(Patches.laid(Shapes.plane(100, 50, 40, 20), 0.02), 5000);
  }

  @Test
  void foldedSheetUnfolds() {
    // Two slopes of 3 : 4 : 5, each 30 wide and so 37.5 along the slope.
    Mesh roof = Patches.rolled(60, 20, 30, 8, x -> 0.75 * (30 - Math.abs(x - 30)));
    assertIsometric(Patches.laid(roof, 0.02), 2 * 37.5 * 20);
  }

  @Test
  void cylinderUnrollsToTheRectangleOfItsFacets() {
    Layout layout = Patches.laid(Shapes.cylinder(20, 50, 60, 20, false), 0.02);
    // A prism of 60 sides: its girth is 60 chords.
    assertIsometric(layout, 60 * 2 * 20 * Math.sin(Math.PI / 60) * 50);
  }

  @Test
  void coneUnrollsToASectorWithTheAngleOfItsSlant() {
    // Frustum from radius 20 to 10 over height 24: apex at slant 2 * 26 from the wide rim.
    Layout layout = Patches.laid(Shapes.coneFrustum(20, 10, 24, 720, 12, false), 0.02);
    assertThat(layout.stretch().largest()).isLessThan(EXACT);
    // Area π (r1 + r2) s; facets of 720 sides are short of it by less than 1e-5.
    assertThat(layout.areaMm2() * layout.stretch().areaRatio())
        .isCloseTo(Math.PI * 30 * 26, within(Math.PI * 30 * 26 * 2e-5));
    // The sector's angle is 2π sin(half apex angle) = 2π · 10 / 26.
    double inner = 0;
    double outer = 0;
    Topology topology = Topology.of(layout.mesh());
    for (int h = 0; h < layout.mesh().corner().length; h++) {
      int a = layout.mesh().corner()[h];
      int b = layout.mesh().corner()[Topology.next(h)];
      if (topology.twin(h) < 0 && layout.mesh().z(a) == layout.mesh().z(b)) {
        double length = flatLength(layout, a, b);
        if (Math.hypot(layout.mesh().x(a), layout.mesh().y(a)) > 15) {
          outer += length;
        } else {
          inner += length;
        }
      }
    }
    assertThat((outer - inner) / 26).isCloseTo(2 * Math.PI * 10 / 26, within(1e-4));
  }

  @Test
  void openBoxUnfoldsToACross() {
    Mesh box = Shapes.box(40, 30, 20, 6);
    double top = box.bounds().maxZ();
    double[] at = new double[3];
    int[] lid = new int[box.faceCount()];
    int count = 0;
    for (int f = 0; f < box.faceCount(); f++) {
      Faces.centroid(box, f, at);
      if (at[2] > top - 1e-9) {
        lid[count++] = f;
      }
    }
    Layout layout = Patches.laid(Shapes.without(box, Arrays.copyOf(lid, count)), 0.02);
    assertIsometric(layout, 40 * 30 + 2 * 40 * 20 + 2 * 30 * 20);
  }

  @Test
  void plateWithAHoleNeedsNoSlit() {
    Mesh plate = Shapes.plane(40, 40, 20, 20);
    double[] at = new double[3];
    int[] hole = new int[plate.faceCount()];
    int count = 0;
    for (int f = 0; f < plate.faceCount(); f++) {
      Faces.centroid(plate, f, at);
      if (Math.abs(at[0] - centre(plate, 0)) < 6 && Math.abs(at[1] - centre(plate, 1)) < 6) {
        hole[count++] = f;
      }
    }
    Layout layout = Patches.laid(Shapes.without(plate, Arrays.copyOf(hole, count)), 0.02);
    assertIsometric(layout, 1600 - 144);
    assertThat(layout.slit()).doesNotContain(true);
  }

  private static double centre(Mesh mesh, int axis) {
    return axis == 0
        ? (mesh.bounds().minX() + mesh.bounds().maxX()) / 2
        : (mesh.bounds().minY() + mesh.bounds().maxY()) / 2;
  }

  /**
   * J. Milnor, "A problem in cartography", Amer. Math. Monthly 76 (1969), from memory: no map of a
   * cap of angular radius a keeps its scales within a ratio of less than a / sin a, which the
   * azimuthal equidistant map reaches.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.2, 0.4, 0.8})
  void capComesNearTheLeastStretchThereIs(double a) {
    double bound = Math.log(a / Math.sin(a));
    Mesh cap = Patches.cap(50, a, 40, 120);
    Stretch stretch = Patches.laid(cap, 0.9 * (Math.exp(bound / 2) - 1)).stretch();
    double ratio = Math.log(stretch.greatest() / stretch.least());
    // The facets of the cap are a little less curved than the sphere.
    assertThat(ratio).isBetween(0.99 * bound, 1.10 * bound);
  }

  /**
   * Least squared strain of a shallow cap, from the equation of a flat disc pressed on a sphere
   * (∇⁴χ = −K for Poisson ratio 0 with a free edge): hoop strain a²/16 in the middle, −a²/8 at the
   * rim. Derived here.
   */
  @Test
  void capOfLeastMeanStretchIsStrainedAsElasticityTells() {
    double a = 0.2;
    Stretch stretch = Patches.laid(Patches.cap(50, a, 60, 160), 1).stretch();
    assertThat(stretch.greatest() - 1).isCloseTo(a * a / 8, within(0.05 * a * a / 8));
    assertThat(1 - stretch.least()).isCloseTo(a * a / 16, within(0.05 * a * a / 16));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void hillsAreLaidOutWithoutFoldsAndAreasFollowTheStretch(long seed) {
    Layout layout = Patches.laid(Patches.hills(seed, 0.8), 0.02);
    Stretch stretch = layout.stretch();
    assertThat(stretch.flipped()).isZero();
    // A face whose lengths are off by a factor q at most is off in area by q² at most.
    double most = Math.pow(1 + stretch.largest(), 2);
    assertThat(stretch.areaRatio()).isBetween(1 / most, most);
    for (int f = 0; f < layout.mesh().faceCount(); f++) {
      double flat = flatArea(layout, f);
      assertThat(flat / Faces.area(layout.mesh(), f))
          .isBetween(1 / most * (1 - 1e-9), most * (1 + 1e-9));
    }
  }

  private static double flatArea(Layout layout, int f) {
    double[] uv = layout.uv();
    int a = layout.mesh().corner()[3 * f];
    int b = layout.mesh().corner()[3 * f + 1];
    int c = layout.mesh().corner()[3 * f + 2];
    return ((uv[2 * b] - uv[2 * a]) * (uv[2 * c + 1] - uv[2 * a + 1])
            - (uv[2 * b + 1] - uv[2 * a + 1]) * (uv[2 * c] - uv[2 * a]))
        / 2;
  }

  private static double flatLength(Layout layout, int a, int b) {
    double[] uv = layout.uv();
    return Math.hypot(uv[2 * b] - uv[2 * a], uv[2 * b + 1] - uv[2 * a + 1]);
  }

  private static void assertIsometric(Layout layout, double areaMm2) {
    assertThat(layout.stretch().largest()).isLessThan(EXACT);
    assertThat(layout.areaMm2() * layout.stretch().areaRatio())
        .isCloseTo(areaMm2, within(EXACT * areaMm2));
    for (int h = 0; h < layout.mesh().corner().length; h++) {
      int a = layout.mesh().corner()[h];
      int b = layout.mesh().corner()[Topology.next(h)];
      double length = Faces.length(layout.mesh(), a, b);
      assertThat(flatLength(layout, a, b)).isCloseTo(length, within(EXACT * length));
    }
  }

  @Test
  void planeOfNeedlesStaysAsItIs() {
    // A strip 300 mm long whose rows are 0.05 mm apart on one side: needles, as drawn models have.
    double[] xyz = new double[3 * 2 * 101];
    int[] corner = new int[3 * 2 * 100];
    for (int i = 0; i <= 100; i++) {
      xyz[6 * i + 1] = i < 50 ? 0.05 * i : i - 47.5;
      xyz[6 * i + 3] = 300;
      xyz[6 * i + 4] = i;
    }
    for (int i = 0; i < 100; i++) {
      int[] quad = {2 * i, 2 * i + 1, 2 * i + 3, 2 * i, 2 * i + 3, 2 * i + 2};
      System.arraycopy(quad, 0, corner, 6 * i, 6);
    }
    Mesh needles = Mesh.of(xyz, corner);
    Layout layout = Patches.laid(needles, 0.02);
    assertThat(layout.stretch().nearlyAll()).isLessThan(1e-6);
    assertThat(layout.stretch().flipped()).isZero();
    Mesh mesh = layout.mesh();
    for (int h = 0; h < corner.length; h++) {
      int a = mesh.corner()[h];
      int b = mesh.corner()[Topology.next(h)];
      double flat =
          Math.hypot(
              layout.uv()[2 * a] - layout.uv()[2 * b],
              layout.uv()[2 * a + 1] - layout.uv()[2 * b + 1]);
      assertThat(flat).isCloseTo(Faces.length(mesh, a, b), within(1e-9 * 300));
    }
  }
}
