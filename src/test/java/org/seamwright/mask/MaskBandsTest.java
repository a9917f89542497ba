package org.seamwright.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.Mark;
import org.seamwright.region.MarkException;
import org.seamwright.region.Marks;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;
import org.seamwright.testsupport.Shapes;

/** Bands on the piece against the rectangles they unroll to. */
class MaskBandsTest {
  private static final TapeKind NARROW = new TapeKind("narrow", 3, 0, 400, 6, 0, "");
  private static final TapeKind WIDE = new TapeKind("wide", 12, 1000, 33_000, 1, 0, "");

  private static MaskBands bands(Mesh mesh, MaskSettings settings, Mark... marks)
      throws MarkException {
    SurfaceMap map =
        Marks.evaluate(
            mesh, Labels.none(mesh.faceCount()), Treatment.PLATE, List.of(marks), Progress.NONE);
    MaskPlan plan = Masking.plan(map, settings, Progress.NONE);
    return MaskBands.of(map, plan, settings, Progress.NONE);
  }

  private static Mark above(double z) {
    return new Mark.HalfSpace("", Treatment.BARE, Vector3D.of(0, 0, z), Vector3D.of(0, 0, 1));
  }

  private static double area(MaskBands bands, MaskBands.Cover cover, int band) {
    double sum = 0;
    for (int f = 0; f < bands.cover().length; f++) {
      boolean counts = bands.cover()[f] == cover && (band == 0 || bands.band()[f] == band);
      sum += counts ? Faces.area(bands.mesh(), f) : 0;
    }
    return sum;
  }

  private static double all(Mesh mesh) {
    double sum = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      sum += Faces.area(mesh, f);
    }
    return sum;
  }

  @Test
  void stripRoundATubeLapsOverItsStart() throws MarkException {
    // Bare above 3 mm; 6 mm of tape round 188.5 mm, lapping 5 mm; lacquer to 25 mm.
    MaskSettings settings = new MaskSettings(6, 5, 33_000, 25, 0.25, 25, 2, 0.15);
    Mesh wall = Shapes.cylinder(30, 200, 200, 60, false);
    MaskBands bands = bands(wall, settings, above(3));
    double round = 2 * Math.PI * 30;
    assertThat(bands.strips()).hasSize(1);
    assertThat(bands.strips().get(0).id()).isEqualTo("1.1");
    assertThat(area(bands, MaskBands.Cover.TAPE, 0))
        .isCloseTo((round - 5) * 6, Percentage.withPercentage(1));
    assertThat(area(bands, MaskBands.Cover.LAP, 0)).isCloseTo(5 * 6, Percentage.withPercentage(3));
    assertThat(area(bands, MaskBands.Cover.LACQUER, 0))
        .isCloseTo(round * 19, Percentage.withPercentage(1));
    assertThat(all(bands.mesh())).isCloseTo(all(wall), within(1e-9 * all(wall)));
  }

  @Test
  void narrowStripsLieInFrontOfStraightPieces() throws MarkException {
    // The parallel of a cone bends: the narrow tape follows it, the wide one lies behind in pieces.
    MaskSettings settings =
        new MaskSettings(
            12,
            5,
            33_000,
            25,
            0.25,
            25,
            2,
            0.15,
            List.of(NARROW, WIDE),
            MaskPace.USUAL,
            Optional.empty());
    Mesh disc = Shapes.lathe(new double[] {60, 40, 20, 5}, new double[4], 120);
    Mark hub =
        new Mark.InBox("", Treatment.PLATE, Vector3D.of(-100, -100, -1), Vector3D.of(0, 100, 1));
    MaskBands straight = bands(disc, settings, above(-1), hub);
    // A straight line across the disc takes the wide tape alone: two strips beside the hole.
    assertThat(straight.strips()).allMatch(s -> s.tape().name().equals("wide"));
    Mesh tilted = Shapes.lathe(new double[] {80, 60, 20}, new double[] {0, 20, 60}, 160);
    MaskBands bands = bands(tilted, settings, above(20));
    assertThat(bands.strips()).anyMatch(s -> s.tape().row() == 1);
    double front = area(bands, MaskBands.Cover.TAPE, 0) + area(bands, MaskBands.Cover.LAP, 0);
    // The band of 3 mm beside a circle of radius 60 on a cone of 45°: radii fall by w / √2.
    double exact = Math.PI * Math.sqrt(2) * (60 * 60 - Math.pow(60 - 3 / Math.sqrt(2), 2));
    assertThat(front).isCloseTo(exact, Percentage.withPercentage(1.5));
    double from = 60 - 3 / Math.sqrt(2);
    double to = 60 - 15 / Math.sqrt(2);
    assertThat(area(bands, MaskBands.Cover.TAPE_BEHIND, 0))
        .isCloseTo(
            Math.PI * Math.sqrt(2) * (from * from - to * to), Percentage.withPercentage(1.5));
    // Rolls of 400 mm: a strip is not longer, so one round of 377 mm and its lap is one strip.
    assertThat(bands.strips().stream().filter(s -> s.tape().row() == 0)).hasSize(1);
    for (MaskBands.Strip strip : bands.strips()) {
      assertThat(strip.points()).isNotEmpty();
    }
  }

  @Test
  void wholeDipLeavesNothingUncovered() throws MarkException {
    MaskSettings settings =
        new MaskSettings(6, 5, 33_000, 10, 0.25, 25, 2, 0.15)
            .withDip(Optional.of(Dip.of(Vector3D.Unit.PLUS_Z, Double.POSITIVE_INFINITY, 3000)));
    MaskBands bands = bands(Shapes.icosphere(50, 4), settings, above(0));
    assertThat(area(bands, MaskBands.Cover.NOTHING, 0)).isZero();
    assertThat(area(bands, MaskBands.Cover.PLATED, 0))
        .isCloseTo(2 * Math.PI * 2500, Percentage.withPercentage(1));
  }
}
