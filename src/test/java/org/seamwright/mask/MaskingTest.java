package org.seamwright.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.concurrent.CancellationException;
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

/** Lengths and areas of masks against closed forms. */
class MaskingTest {
  private static final MaskSettings SHOP = new MaskSettings(6, 5, 400, 25, 0.25, 25, 2, 0.15);

  private static MaskPlan plan(Mesh mesh, Mark... marks) throws MarkException {
    SurfaceMap map =
        Marks.evaluate(
            mesh, Labels.none(mesh.faceCount()), Treatment.PLATE, List.of(marks), Progress.NONE);
    return Masking.plan(map, SHOP, Progress.NONE);
  }

  private static Mark half(Treatment treatment, Vector3D point, Vector3D normal) {
    return new Mark.HalfSpace("", treatment, point, normal);
  }

  private static Mark above(double z) {
    return half(Treatment.BARE, Vector3D.of(0, 0, z), Vector3D.of(0, 0, 1));
  }

  private static Mark box(Treatment treatment, double... c) {
    return new Mark.InBox(
        "", treatment, Vector3D.of(c[0], c[1], c[2]), Vector3D.of(c[3], c[4], c[5]));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 20, -37.5, 45})
  void capOfASphere(double z) throws MarkException {
    MaskPlan plan = plan(Shapes.icosphere(50, 6), above(z));
    assertThat(plan.masks()).hasSize(1);
    MaskPlan.Mask mask = plan.masks().get(0);
    // The edge is a parallel of radius sqrt(R² - z²).
    double circle = 2 * Math.PI * Math.sqrt(2500 - z * z);
    assertThat(mask.edges()).hasSize(1);
    assertThat(mask.edges().get(0).closed()).isTrue();
    assertThat(mask.edgeMm()).isCloseTo(circle, Percentage.withPercentage(0.2));
    // Bands between parallels: 2 pi R² (cos(t - b/R) - cos(t - a/R)), t the polar angle.
    double polar = Math.acos(z / 50);
    double underTape = 2 * Math.PI * 2500 * (Math.cos(polar - 6 / 50.0) - Math.cos(polar));
    assertThat(mask.tapeMm2()).isCloseTo(underTape, Percentage.withPercentage(0.5));
    double to = Math.max(0, polar - 25 / 50.0);
    double beyond = 2 * Math.PI * 2500 * (Math.cos(to) - Math.cos(polar - 6 / 50.0));
    assertThat(mask.lacquerMm2()).isCloseTo(beyond, Percentage.withPercentage(0.5));
    assertThat(mask.lacquerMl())
        .isCloseTo(mask.lacquerMm2() * 1e-6 * 2 / 10 / 0.85 * 1000, within(1e-9));
    assertThat(mask.areaMm2())
        .isCloseTo(2 * Math.PI * 50 * (50 - z), Percentage.withPercentage(0.2));
    double tape = mask.tape().stream().mapToDouble(MaskPlan.TapeStrip::lengthMm).sum();
    assertThat(tape).isCloseTo(mask.edgeMm() + 5 * mask.tape().size(), within(1e-9));
    assertThat(Math.hypot(mask.middleMm()[0], mask.middleMm()[1]))
        .isCloseTo(circle / 2 / Math.PI, Percentage.withPercentage(0.5));
    assertThat(mask.middleMm()[2]).isCloseTo(z, within(1e-6));
  }

  @Test
  void circleAndEllipseOnACylinder() throws MarkException {
    Mesh wall = Shapes.cylinder(30, 200, 400, 100, false);
    MaskPlan.Mask straight = plan(wall, above(3)).masks().get(0);
    assertThat(straight.edgeMm()).isCloseTo(2 * Math.PI * 30, Percentage.withPercentage(0.2));
    // The wall unrolls, so the band is 2 pi r w.
    assertThat(straight.tapeMm2()).isCloseTo(2 * Math.PI * 30 * 6, Percentage.withPercentage(0.5));
    // A plane at 50 degrees to the axis' normal cuts an ellipse with semi-axes r / cos 50 and r.
    double tilt = Math.toRadians(50);
    Vector3D normal = Vector3D.of(Math.sin(tilt), 0, Math.cos(tilt));
    MaskPlan.Mask tilted = plan(wall, half(Treatment.BARE, Vector3D.ZERO, normal)).masks().get(0);
    double exact = ellipsePerimeter(30 / Math.cos(tilt), 30);
    assertThat(tilted.edgeMm()).isCloseTo(exact, Percentage.withPercentage(0.2));
    assertThat(tilted.edges()).hasSize(1);
  }

  @Test
  void ellipsePerimeterHasThePublishedDigits() {
    // Complete elliptic integral of the second kind, E(m = 1/2) = 1.3506438810 (Abramowitz and
    // Stegun, table 17.1, from memory): the ellipse with axes 1 and sqrt(1/2) is 4 E long.
    assertThat(ellipsePerimeter(1, Math.sqrt(0.5))).isCloseTo(4 * 1.3506438810, within(1e-9));
    assertThat(ellipsePerimeter(2, 2)).isCloseTo(4 * Math.PI, within(1e-12));
  }

  /** 4 a E(e) by the arithmetic-geometric mean (Abramowitz and Stegun 17.6). */
  private static double ellipsePerimeter(double major, double minor) {
    double a = major;
    double b = minor;
    double c = Math.sqrt(a * a - b * b);
    double sum = c * c / 2;
    for (double power = 1; Math.abs(c) > 1e-15 * a; power *= 2) {
      c = (a - b) / 2;
      double mean = (a + b) / 2;
      b = Math.sqrt(a * b);
      a = mean;
      sum += power * c * c;
    }
    return 2 * Math.PI / a * (major * major - sum);
  }

  @Test
  void rectangleOnACoarsePlane() throws MarkException {
    // Bare 80 x 50 in the middle of two triangles: tape and lacquer run inwards, so the bands are
    // rectangular frames: 80*50 - 68*38 and 68*38 - 30*0 (splash 25 reaches the middle line).
    Mesh plane = Shapes.plane(300, 200, 1, 1);
    MaskPlan.Mask mask = plan(plane, box(Treatment.BARE, -40, -25, -1, 40, 25, 1)).masks().get(0);
    assertThat(mask.edgeMm()).isCloseTo(260, within(1e-9));
    assertThat(mask.areaMm2()).isCloseTo(4000, within(1e-9));
    assertThat(mask.tapeMm2()).isCloseTo(4000 - 68 * 38, Percentage.withPercentage(0.5));
    assertThat(mask.lacquerMm2()).isCloseTo(68 * 38, Percentage.withPercentage(0.5));
  }

  @Test
  void roundsOutsideConvexCornersOfThePlating() throws MarkException {
    // Plated 80 x 50 inside bare: the bands outwards are Steiner's, perimeter w + pi w².
    Mesh plane = Shapes.plane(300, 200, 1, 1);
    Mark ground = box(Treatment.BARE, -200, -200, -1, 200, 200, 1);
    MaskPlan.Mask mask =
        plan(plane, ground, box(Treatment.PLATE, -40, -25, -1, 40, 25, 1)).masks().get(0);
    double tape = 260 * 6 + Math.PI * 36;
    double all = 260 * 25 + Math.PI * 625;
    assertThat(mask.tapeMm2()).isCloseTo(tape, Percentage.withPercentage(0.5));
    assertThat(mask.lacquerMm2()).isCloseTo(all - tape, Percentage.withPercentage(0.5));
  }

  @Test
  void openEdgesEndAtTheRimAndAtWhatIsOutOfScope() throws MarkException {
    Mesh plane = Shapes.plane(100, 60, 4, 3);
    MaskPlan.Mask rim =
        plan(plane, half(Treatment.BARE, Vector3D.ZERO, Vector3D.of(1, 0, 0))).masks().get(0);
    assertThat(rim.edges()).hasSize(1);
    assertThat(rim.edges().get(0).closed()).isFalse();
    assertThat(rim.edgeMm()).isCloseTo(60, within(1e-9));
    assertThat(rim.tape()).containsExactly(new MaskPlan.TapeStrip(6, rim.edgeMm()));
    assertThat(rim.tapeMm2()).isCloseTo(360, within(1e-6));
    assertThat(rim.middleMm()).containsExactly(new double[] {0, 0, 0}, within(1e-9));
    MaskPlan.Mask scope =
        plan(
                plane,
                half(Treatment.BARE, Vector3D.ZERO, Vector3D.of(1, 0, 0)),
                box(Treatment.OUT_OF_SCOPE, -60, -10, -1, 60, 8, 1))
            .masks()
            .get(0);
    assertThat(scope.edgeMm()).as("upper piece, 30 - 8").isCloseTo(22, within(1e-9));
    assertThat(scope.lacquerMm2()).isCloseTo(22 * (25 - 6), within(1e-6));
  }

  @Test
  void masksAreNumberedByEdgeAndRegionsApartAreTold() throws MarkException {
    Mesh plane = Shapes.plane(300, 200, 3, 2);
    MaskPlan plan =
        plan(
            Shapes.join(plane, Shapes.moved(plane, 0, 0, 50)),
            box(Treatment.BARE, -100, -80, -1, -90, -70, 1),
            box(Treatment.BARE, 0, 0, -1, 60, 30, 1),
            box(Treatment.BARE, 100, 50, -1, 120, 70, 1),
            above(40));
    assertThat(plan.masks()).extracting(MaskPlan.Mask::id).containsExactly(1, 2, 3);
    double[] edges = plan.masks().stream().mapToDouble(MaskPlan.Mask::edgeMm).toArray();
    assertThat(edges).containsExactly(new double[] {180, 80, 40}, within(1e-9));
    assertThat(plan.notices())
        .extracting(Notice::code)
        .containsExactly(Masking.NOT_MASKED, Masking.TAPE_ONLY);
    assertThat(plan.notices().get(0).count()).isEqualTo(1);
    assertThat(plan.masks().get(2).lacquerMl()).as("10 mm wide, tape 6 from each side").isZero();
    assertThat(plan.masks().get(2).tapeMm2()).isCloseTo(100, within(1e-9));
  }

  @Test
  void aLongEdgeTakesSeveralStrips() throws MarkException {
    MaskPlan.Mask mask = plan(Shapes.cylinder(100, 100, 200, 1, false), above(0)).masks().get(0);
    // 628 mm round, rolls of 400 less a lap of 5: two strips.
    assertThat(mask.tape()).hasSize(2);
  }

  @Test
  void nothingBareNeedsNoMask() throws MarkException {
    MaskPlan plan = plan(Shapes.cube(10, 1));
    assertThat(plan.masks()).isEmpty();
    assertThat(plan.notices()).isEmpty();
  }

  @Test
  void aBranchIsABorderToo() throws MarkException {
    // Four blades; one bare: its edge is the line where they meet.
    MaskPlan.Mask mask =
        plan(Shapes.blades(4, 30, 40), box(Treatment.BARE, 1e-3, -1, -1, 40, 1, 50)).masks().get(0);
    assertThat(mask.edgeMm()).isCloseTo(40, within(1e-9));
  }

  @Test
  void sameDigitsTwiceAndCancelled() throws MarkException {
    Mesh sphere = Shapes.icosphere(50, 4);
    SurfaceMap map =
        Marks.evaluate(
            sphere,
            Labels.none(sphere.faceCount()),
            Treatment.PLATE,
            List.of(above(20)),
            Progress.NONE);
    MaskPlan.Mask one = Masking.plan(map, SHOP, Progress.NONE).masks().get(0);
    MaskPlan.Mask two = Masking.plan(map, SHOP, Progress.NONE).masks().get(0);
    assertThat(two.tapeMm2()).isEqualTo(one.tapeMm2());
    assertThat(two.lacquerMm2()).isEqualTo(one.lacquerMm2());
    assertThat(two.edges().get(0).points()).isEqualTo(one.edges().get(0).points());
    assertThatThrownBy(
            () ->
                Masking.plan(
                    map,
                    SHOP,
                    fraction -> {
                      throw new CancellationException();
                    }))
        .isInstanceOf(CancellationException.class);
  }
}
