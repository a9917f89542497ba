package org.seamwright.mend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.measure.Area;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

/** Hidden area that is told, against closed formulas. */
class HiddenAreaTest {
  private static List<Notice> notices(Mesh mesh) {
    Topology topology = Topology.of(mesh);
    int parts = Parts.of(mesh, topology).count();
    return HiddenArea.notices(mesh, topology, parts, Area.ofFaces(mesh), Progress.NONE);
  }

  private static double hidden(Mesh mesh) {
    List<Notice> notices = notices(mesh);
    assertThat(notices).hasSize(1);
    assertThat(notices.get(0).code()).isEqualTo(HiddenArea.CODE);
    assertThat(notices.get(0).text()).contains("dropHidden");
    String figure = notices.get(0).text().split(" mm²")[0].replace(",", "");
    return Double.parseDouble(figure);
  }

  @Test
  void twoCubesOffsetByHalf() {
    // Each corner of one, 10 by 10 on three sides, lies inside the other: 2 * 3 * 100.
    Mesh cube = Shapes.cube(20, 4);
    assertThat(hidden(Shapes.join(cube, Shapes.moved(cube, 10, 10, 10))))
        .isCloseTo(600, within(1.0));
  }

  @Test
  void twoSpheresHideTheCapsOfTheirLens() {
    // Archimedes: two caps 2 pi R h with h = R - d / 2.
    double exact = 2 * 2 * Math.PI * 10 * (10 - 6);
    assertThat(hidden(Shapes.twoSpheres(10, 12, 60, 90))).isCloseTo(exact, within(0.01 * exact));
  }

  @Test
  void aCubeInACubeIsHiddenWhole() {
    assertThat(hidden(Shapes.join(Shapes.cube(20, 2), Shapes.cube(6, 2))))
        .isCloseTo(216, within(1.0));
  }

  @Test
  void nothingIsToldOfPartsThatStandFree() {
    assertThat(notices(Shapes.twoSpheres(10, 30, 20, 30))).isEmpty();
    assertThat(notices(Shapes.sphere(10, 20, 30))).isEmpty();
    Mesh soup = Shapes.soup(800, 50, 3, 5);
    assertThat(notices(soup)).isEmpty();
  }
}
