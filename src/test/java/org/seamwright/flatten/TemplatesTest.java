package org.seamwright.flatten;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

class TemplatesTest {
  @Test
  void cylinderIsARectangleOfFourPoints() {
    Templates templates = Patches.templates(Shapes.cylinder(20, 50, 60, 20, false), 0.02, 0);
    assertThat(templates.templates()).hasSize(1);
    Template one = templates.templates().get(0);
    double girth = 60 * 2 * 20 * Math.sin(Math.PI / 60);
    assertThat(one.cut().get(0)).hasSize(8);
    assertThat(one.widthMm()).isCloseTo(girth, within(1e-6));
    assertThat(one.heightMm()).isCloseTo(50, within(1e-6));
    assertThat(Patches.area(one.cut().get(0))).isCloseTo(girth * 50, within(1e-4));
    assertThat(one.id()).isEqualTo("1");
  }

  @Test
  void sphereIsCutUntilEveryPieceKeepsToTheStretch() {
    Mesh sphere = Shapes.icosphere(30, 3);
    Templates templates = Patches.templates(sphere, 0.04, 3);
    assertThat(templates.notices()).isEmpty();
    // Caps that keep to 4% have an angular radius with a / sin a = 1.04² (Milnor, see LayoutTest):
    // nine cover the sphere by area alone. Strips cover more each, since stretch goes with the
    // square of the width; so a dozen must do.
    assertThat(templates.templates()).hasSizeBetween(2, 12);
    double sum = templates.templates().stream().mapToDouble(Template::areaMm2).sum();
    assertThat(sum).isCloseTo(Patches.area(sphere), within(1e-9 * sum));
    for (Template t : templates.templates()) {
      assertThat(t.layout().stretch().nearlyAll()).isLessThanOrEqualTo(0.04);
      assertThat(Patches.area(t.net().get(0)))
          .isCloseTo(t.areaMm2() * t.layout().stretch().areaRatio(), within(0.01 * t.areaMm2()));
    }
    assertMarksMeet(templates.templates());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void slitRunsStraightThroughFacets(long seed) {
    Mesh tube = Patches.roughlyMeshedTube(seed, 20, 50, 120, 30);
    Templates templates = Patches.templates(tube, 0.05, 0);
    assertThat(templates.templates()).hasSize(1);
    Template one = templates.templates().get(0);
    // A tube rolls out to a rectangle. Rim 1 and rim 2 are as long as the facets' edges there; the
    // slit crosses them at right angles, which a zigzag could not come near: it goes by facets of
    // 2 mm. The harmonic field bends a little with the facets.
    double[] net = one.net().get(0);
    double round = 0;
    for (int i = 0; i < net.length / 2; i++) {
      int k = (i + 1) % (net.length / 2);
      round += Math.hypot(net[2 * k] - net[2 * i], net[2 * k + 1] - net[2 * i + 1]);
    }
    assertThat(round).isCloseTo(2 * (2 * Math.PI * 20 + 50), within(0.01 * 350));
    assertMarksMeet(templates.templates());
  }

  @Test
  void filletOfARingIsOneStrip() {
    // A quarter of a torus: curvature cos t / (r (R + r cos t)), width r π/2. Cut across it would
    // stretch as before; along it, a strip of width w stretches by about K w² / 16, here 0.6%.
    int steps = 12;
    double[] radius = new double[steps + 1];
    double[] height = new double[steps + 1];
    for (int i = 0; i <= steps; i++) {
      double t = Math.PI / 2 * i / steps;
      radius[i] = 120 + 8 * Math.sin(t);
      height[i] = 8 * Math.cos(t);
    }
    Templates templates = Patches.templates(Shapes.lathe(radius, height, 180), 0.02, 0);
    assertThat(templates.templates()).hasSize(1);
  }

  @Test
  void ballZoneIsCutIntoBandsAcrossItsCurvature() {
    // A zone of a sphere from 60° to 120°: 2% needs strips of K w² / 16 = 0.02, w = 0.57 R. The
    // zone is 1.05 R wide: two bands do.
    int steps = 24;
    double[] radius = new double[steps + 1];
    double[] height = new double[steps + 1];
    for (int i = 0; i <= steps; i++) {
      double t = Math.PI / 3 * (1 + (double) i / steps);
      radius[i] = 50 * Math.sin(t);
      height[i] = 50 * Math.cos(t);
    }
    Templates templates = Patches.templates(Shapes.lathe(radius, height, 96), 0.02, 0);
    assertThat(templates.templates()).hasSize(2);
    double area = templates.templates().stream().mapToDouble(Template::areaMm2).sum();
    assertThat(area).isCloseTo(2 * Math.PI * 50 * 50, within(0.005 * area));
  }

  @Test
  void narrowPlacesGetNoTemplate() {
    assertThat(Patches.templates(Shapes.cylinder(20, 3, 60, 2, false), 0.02, 0, 5).templates())
        .isEmpty();
    Templates wide = Patches.templates(Shapes.cylinder(20, 6, 60, 2, false), 0.02, 0, 5);
    assertThat(wide.templates()).hasSize(1);
    assertThat(wide.byHand()).isEmpty();
    // The plate's face is cut, its edge of 3 mm is not; together they are all there is.
    Templates plate = Patches.templates(Shapes.box(40, 30, 3, 6), 0.001, 0, 5);
    assertThat(plate.notices()).extracting(n -> n.code()).contains(Templates.TOO_SMALL);
    double sum = plate.templates().stream().mapToDouble(Template::areaMm2).sum();
    sum += plate.byHand().stream().mapToDouble(Templates.ByHand::areaMm2).sum();
    assertThat(sum).isCloseTo(2 * (40 * 30 + 3 * 70), within(1e-6 * sum));
  }

  @Test
  void whatIsTooRoundForItsSizeIsToldOf() {
    Templates ball = Patches.templates(Shapes.icosphere(4, 3), 0.005, 0, 5);
    assertThat(ball.templates()).isEmpty();
    assertThat(ball.byHand()).isNotEmpty();
    double sum = ball.byHand().stream().mapToDouble(Templates.ByHand::areaMm2).sum();
    assertThat(sum).isCloseTo(Patches.area(Shapes.icosphere(4, 3)), within(1e-9 * sum));
  }

  /** Each match mark stands on two sides of one seam. */
  private static void assertMarksMeet(List<Template> templates) {
    Map<Integer, Long> sides =
        templates.stream()
            .flatMap(t -> t.marks().stream())
            .collect(Collectors.groupingBy(Template.MatchMark::number, Collectors.counting()));
    assertThat(sides).isNotEmpty();
    assertThat(sides.values()).allMatch(n -> n == 2);
  }

  @Test
  void allowanceLiesBeyondSeamsOnly() {
    Mesh box = Shapes.box(40, 30, 20, 6);
    Templates bare = Patches.templates(box, 0.02, 0);
    Templates lapped = Patches.templates(box, 0.02, 3);
    assertThat(lapped.templates()).hasSameSizeAs(bare.templates());
    double seam = 0;
    for (int i = 0; i < bare.templates().size(); i++) {
      seam +=
          Patches.area(lapped.templates().get(i).cut().get(0))
              - Patches.area(bare.templates().get(i).cut().get(0));
    }
    // A straight plane parts the box through its middle: a closed seam no longer than twice its
    // largest section's girth, lapped on one side by 3 mm.
    assertThat(seam).isBetween(3 * 2 * (30 + 20.0), 3 * 2 * 2 * (40 + 30.0));
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14})
  void hillsAreCoveredOnce(long seed) {
    Mesh hills = Patches.hills(seed, 1.2);
    Templates templates = Patches.templates(hills, 0.01, 2);
    double sum = templates.templates().stream().mapToDouble(Template::areaMm2).sum();
    assertThat(sum).isCloseTo(Patches.area(hills), within(1e-9 * sum));
    assertThat(templates.templates()).allMatch(t -> t.layout().stretch().flipped() == 0);
  }

  @Test
  void sameMeshSameTemplates() {
    Mesh hills = Patches.hills(3, 1.2);
    Templates first = Patches.templates(hills, 0.01, 2);
    Templates second = Patches.templates(hills, 0.01, 2);
    for (int i = 0; i < first.templates().size(); i++) {
      assertThat(second.templates().get(i).cut().get(0))
          .containsExactly(first.templates().get(i).cut().get(0));
    }
  }
}
