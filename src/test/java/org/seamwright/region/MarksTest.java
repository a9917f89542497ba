package org.seamwright.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.seamwright.region.Maps.above;
import static org.seamwright.region.Maps.below;

import java.util.List;
import java.util.concurrent.CancellationException;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** Order, effects, notices, refusals and cancelling. */
class MarksTest {
  private static final Mesh PRISM = Shapes.cylinder(5, 10, 40, 3, false);
  private static final double PER_MM = 40 * 2 * 5 * Math.sin(Math.PI / 40);

  @Test
  void noMarksLeaveThePieceAsRead() throws MarkException {
    SurfaceMap map = Maps.of(PRISM);
    assertThat(map.mesh().xyz()).isEqualTo(PRISM.xyz());
    assertThat(map.mesh().corner()).isEqualTo(PRISM.corner());
    assertThat(map.treatment()).containsOnly(Treatment.PLATE.code());
    assertThat(map.effects()).isEmpty();
    assertThat(map.notices()).isEmpty();
  }

  @Test
  void laterMarksOverrideEarlierOnes() throws MarkException {
    Mark bare = above(1);
    Mark out = new Mark.HalfSpace("", Treatment.OUT_OF_SCOPE, Vector3D.of(0, 0, 3), Maps.Z);
    SurfaceMap outLast = Maps.of(PRISM, bare, out);
    assertThat(outLast.areaMm2(Treatment.BARE)).isCloseTo(2 * PER_MM, within(1e-9));
    assertThat(outLast.areaMm2(Treatment.OUT_OF_SCOPE)).isCloseTo(2 * PER_MM, within(1e-9));
    SurfaceMap bareLast = Maps.of(PRISM, out, bare);
    assertThat(bareLast.areaMm2(Treatment.BARE)).isCloseTo(4 * PER_MM, within(1e-9));
    assertThat(bareLast.areaMm2(Treatment.OUT_OF_SCOPE)).isZero();
  }

  @Test
  void refusesAPointSeveralSizesOffThePiece() {
    Mark stroke =
        new Mark.Near(
            "Rim", Treatment.BARE, List.of(Vector3D.of(5, 0, 5), Vector3D.of(5000, 0, 5)), 1);
    assertThatThrownBy(() -> Maps.of(PRISM, stroke))
        .isInstanceOf(MarkException.class)
        .hasMessageContaining("marks[0].path[1]")
        .hasMessageContaining("4,995.0 mm off the surface")
        .hasMessageContaining("check that unit");
  }

  @Test
  void effectsTellCoveredAndChanged() throws MarkException {
    SurfaceMap map = Maps.of(PRISM, above(1), below(3, Treatment.BARE), below(2, Treatment.PLATE));
    assertThat(map.effects()).hasSize(3);
    double[][] exact = {{4, 4}, {8, 6}, {7, 7}};
    for (int i = 0; i < 3; i++) {
      SurfaceMap.Effect effect = map.effects().get(i);
      assertThat(effect.coveredMm2()).isCloseTo(exact[i][0] * PER_MM, within(1e-9));
      assertThat(effect.changedMm2()).isCloseTo(exact[i][1] * PER_MM, within(1e-9));
    }
  }

  @Test
  void aPointFarOffIsTold() throws MarkException {
    Mark part = new Mark.WholePart("stand", Treatment.OUT_OF_SCOPE, Vector3D.of(25, 0, 1));
    SurfaceMap map = Maps.of(PRISM, part);
    // 20 mm off a wall of radius 5; the diagonal is 17.3 mm.
    assertThat(map.notices()).extracting(Notice::code).containsExactly(Marks.POINT_FAR);
    assertThat(map.notices().get(0).text()).contains("stand").contains("20.0 mm");
    assertThat(map.areaMm2(Treatment.OUT_OF_SCOPE)).isPositive();
    Mark near = new Mark.WholePart("", Treatment.OUT_OF_SCOPE, Vector3D.of(5.5, 0, 1));
    assertThat(Maps.of(PRISM, near).notices()).isEmpty();
  }

  @Test
  void aMarkThatCoversNothingIsTold() throws MarkException {
    SurfaceMap map = Maps.of(PRISM, above(1), above(99));
    assertThat(map.notices()).extracting(Notice::code).containsExactly(Marks.COVERS_NOTHING);
    assertThat(map.notices().get(0).text()).contains("mark 2");
    assertThat(map.effects().get(1)).isEqualTo(new SurfaceMap.Effect(0, 0));
  }

  @Test
  void aPieceWithoutFacesIsCoveredByNothing() throws MarkException {
    Mesh none = Mesh.of(new double[0], new int[0]);
    Mark fill = new Mark.CreaseFill("", Treatment.BARE, Vector3D.ZERO, 30);
    assertThat(Maps.of(none, above(0), fill).notices()).hasSize(2);
  }

  @Test
  void coordinatesThatAreNoNumbersAreRefused() {
    Mark bad = new Mark.Near("", Treatment.BARE, List.of(Maps.X, Vector3D.of(0, Double.NaN, 0)), 1);
    assertThatThrownBy(() -> Maps.of(PRISM, above(1), bad))
        .isInstanceOf(MarkException.class)
        .hasMessageContaining("marks[1].path[1]");
  }

  @Test
  void cancellingStopsTheWork() {
    int[] calls = {0};
    Progress cancel =
        fraction -> {
          assertThat(fraction).isBetween(0.0, 1.0);
          if (++calls[0] > 3) {
            throw new CancellationException();
          }
        };
    List<Mark> marks = List.of(above(1), above(2), above(3));
    assertThatThrownBy(
            () ->
                Marks.evaluate(
                    PRISM, Labels.none(PRISM.faceCount()), Treatment.PLATE, marks, cancel))
        .isInstanceOf(CancellationException.class);
  }
}
