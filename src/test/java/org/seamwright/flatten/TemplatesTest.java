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
    // Milnor's bound (see LayoutTest): a disc that keeps to 4% is no larger than a cap whose
    // a / sin a is 1.04², so fewer pieces than the sphere has such caps cannot do.
    double least = 4 * Math.PI * 900 / capAreaMm2(30, 1.04 * 1.04);
    assertThat(templates.templates().size()).isBetween((int) Math.ceil(least), 40);
    double sum = templates.templates().stream().mapToDouble(Template::areaMm2).sum();
    assertThat(sum).isCloseTo(Patches.area(sphere), within(1e-9 * sum));
    for (Template t : templates.templates()) {
      assertThat(t.layout().stretch().nearlyAll()).isLessThanOrEqualTo(0.04);
      assertThat(Patches.area(t.net().get(0)))
          .isCloseTo(t.areaMm2() * t.layout().stretch().areaRatio(), within(0.01 * t.areaMm2()));
    }
    assertMarksMeet(templates.templates());
  }

  private static double capAreaMm2(double radius, double ratio) {
    double low = 0;
    double high = 3;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (middle / Math.sin(middle) < ratio) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 2 * Math.PI * radius * radius * (1 - Math.cos(low));
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
