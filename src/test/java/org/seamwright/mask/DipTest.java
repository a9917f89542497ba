package org.seamwright.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.Mark;
import org.seamwright.region.MarkException;
import org.seamwright.region.Marks;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;
import org.seamwright.testsupport.Shapes;

/** Dipping against closed forms of the sphere's caps and of a box. */
class DipTest {
  private static final MaskSettings SHOP = new MaskSettings(6, 5, 400, 25, 0.25, 25, 2, 0.15);

  /** The upper part is bare. */
  private static MaskPlan plan(Mesh mesh, double bareAbove, Dip dip) throws MarkException {
    Mark bare =
        new Mark.HalfSpace("", Treatment.BARE, Vector3D.of(0, 0, bareAbove), Vector3D.of(0, 0, 1));
    SurfaceMap map =
        Marks.evaluate(
            mesh, Labels.none(mesh.faceCount()), Treatment.PLATE, List.of(bare), Progress.NONE);
    return Masking.plan(map, SHOP.withDip(Optional.of(dip)), Progress.NONE);
  }

  @ParameterizedTest
  @ValueSource(doubles = {10, 30, 50, 85})
  void sphereHangsInTheBath(double depth) throws MarkException {
    Dip dip = new Dip(Vector3D.of(0, 0, 3), depth, 2000, 0.2, 0.1, 60, 2);
    MaskPlan plan = plan(Shapes.icosphere(50, 6), 20, dip);
    Dipped dipped = plan.dipped().orElseThrow();
    // A cap of height h: area 2 pi R h, volume pi h² (3 R - h) / 3.
    assertThat(dipped.wettedMm2())
        .isCloseTo(2 * Math.PI * 50 * depth, Percentage.withPercentage(0.2));
    double cap = Math.PI * depth * depth * (150 - depth) / 3;
    assertThat(dipped.displacedMl()).isCloseTo(cap / 1000, Percentage.withPercentage(0.3));
    double plated = 2 * Math.PI * 50 * Math.min(depth, 70);
    assertThat(dipped.plateMm2()).isCloseTo(plated, Percentage.withPercentage(0.2));
    // Two coats of 25 µm dry, a quarter solids: 100 µm wet each; a fifth of what is lifted drips.
    assertThat(dipped.filmMl()).isCloseTo(dipped.wettedMm2() * 0.2 / 1000, within(1e-9));
    assertThat(dipped.drainedMl()).isCloseTo(dipped.filmMl() / 4, within(1e-9));
    assertThat(dipped.leftMl()).isCloseTo(2000 - dipped.displacedMl(), within(1e-9));
    assertThat(dipped.lostMl()).isCloseTo(dipped.leftMl() / 10, within(1e-9));
    assertThat(dipped.bathMl()).isCloseTo(dipped.leftMl() + 1.25 * dipped.filmMl(), within(1e-9));
    // Beyond the tape, along the surface 6 to 25 mm from the parallel, as far as above the bath.
    double edge = Math.acos(20 / 50.0);
    double from = Math.min(edge - 6 / 50.0, Math.acos(Math.max(-1, depth / 50 - 1)));
    double to = edge - 25 / 50.0;
    double brushed = 2 * Math.PI * 2500 * Math.max(0, Math.cos(to) - Math.cos(Math.max(from, to)));
    assertThat(plan.masks().get(0).lacquerMm2()).isCloseTo(brushed, within(0.01 * brushed + 1));
    assertThat(plan.lacquerMl())
        .isCloseTo(plan.masks().get(0).lacquerMl() + dipped.usedMl(), within(1e-9));
  }

  @Test
  void wholeBoxGoesUnderAndNothingIsBrushed() throws MarkException {
    Dip dip = Dip.of(Vector3D.of(0, 1, 0), Double.POSITIVE_INFINITY, 100);
    MaskPlan plan = plan(Shapes.box(40, 30, 20, 4), 0, dip);
    Dipped dipped = plan.dipped().orElseThrow();
    assertThat(dipped.wettedMm2()).isCloseTo(2 * (40 * 30 + 40 * 20 + 30 * 20), within(1e-6));
    assertThat(dipped.displacedMl()).isCloseTo(24, within(1e-9));
    assertThat(plan.masks()).allMatch(m -> m.lacquerMl() == 0);
    assertThat(plan.notices()).isEmpty();
  }

  @Test
  void boxHangsAskew() throws MarkException {
    // Along the diagonal of the x and y sides, to the middle: half of all, by symmetry.
    Mesh box = Shapes.box(40, 40, 20, 4);
    double half = 40 * Math.sqrt(2) / 2;
    Dipped dipped = plan(box, 0, Dip.of(Vector3D.of(1, 1, 0), half, 100)).dipped().orElseThrow();
    assertThat(dipped.displacedMl()).isCloseTo(16, within(1e-9));
    assertThat(dipped.wettedMm2()).isCloseTo(40 * 40 + 2 * 40 * 20, within(1e-6));
  }

  @Test
  void vesselThatIsTooSmallIsToldOf() throws MarkException {
    Dip dip = Dip.of(Vector3D.Unit.PLUS_Z, Double.POSITIVE_INFINITY, 20);
    MaskPlan plan = plan(Shapes.box(40, 30, 20, 4), 0, dip);
    assertThat(plan.notices()).extracting(Notice::code).contains(Masking.SMALL_VESSEL);
  }
}
