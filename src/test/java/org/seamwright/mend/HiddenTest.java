package org.seamwright.mend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

/** Shells pushed through each other: closed formulas for what is left outside. */
class HiddenTest {
  private static final Repair DROP = new Repair.DropHidden();

  @ParameterizedTest
  @ValueSource(ints = {1, 5})
  void twoCubesOffsetByHalfHideThreeQuartersOfASideThrice(int cells) {
    Mesh cube = Shapes.cube(1, cells);
    Mended mended = MendChecks.mend(Shapes.join(cube, Shapes.moved(cube, 0.5, 0.5, 0.5)), DROP);

    // Each cube has a corner of side 1/2 in the other: three squares of 1/4.
    assertThat(mended.done().get(0).lostMm2()).isCloseTo(1.5, within(1e-3 * 1.5));
    assertThat(mended.done().get(0).count()).isEqualTo(2);
  }

  @Test
  void aSphereThroughTheSideOfACubeHidesACapAndADisc() {
    double r = 5;
    Mesh cube = Shapes.cube(20, 2);
    Mesh sphere = Shapes.moved(Shapes.icosphere(r, 5), 0.3, 0.2, 12);
    Mended mended = MendChecks.mend(Shapes.join(cube, sphere), DROP);

    // Centre 2 mm above the side: a cap of height r - 2 below it, a disc of radius √(r² - 2²).
    double cap = 2 * Math.PI * r * (r - 2);
    double disc = Math.PI * (r * r - 4);
    assertThat(mended.done().get(0).lostMm2()).isCloseTo(cap + disc, within(0.003 * (cap + disc)));
  }

  @Test
  void twoSpheresHideTheCapsOfTheirLens() {
    double a = 10;
    double b = 7;
    double d = 12;
    Mesh mesh =
        Shapes.join(
            Shapes.icosphere(a, 5),
            Shapes.moved(Shapes.rotated(Shapes.icosphere(b, 5), 1, 2, 3, 0.7), 0, 0, d));
    Mended mended = MendChecks.mend(mesh, DROP);

    // E. W. Weisstein, "Sphere-Sphere Intersection", MathWorld: heights of the two caps.
    double ha = (b - a + d) * (b + a - d) / (2 * d);
    double hb = (a - b + d) * (a + b - d) / (2 * d);
    double caps = 2 * Math.PI * (a * ha + b * hb);
    assertThat(mended.done().get(0).lostMm2()).isCloseTo(caps, within(0.003 * caps));
  }

  @Test
  void aPartWhollyInsideGoes() {
    Mesh mesh = Shapes.join(Shapes.cube(10, 1), Shapes.cube(4, 3));
    Mended mended = MendChecks.mend(mesh, DROP);
    assertThat(MendChecks.area(mended.mesh())).isCloseTo(600, within(1e-9));
  }

  @Test
  void partsThatDontMeetStayToTheLastBit() {
    Mesh mesh = Shapes.join(Shapes.cube(10, 2), Shapes.moved(Shapes.cube(10, 2), 9, 9, 10.5));
    Mended mended = MendChecks.mend(mesh, DROP);
    assertThat(mended.mesh().xyz()).isEqualTo(mesh.xyz());
    assertThat(mended.mesh().corner()).isEqualTo(mesh.corner());
  }

  @Test
  void anOpenSheetHidesNothing() {
    Mesh mesh = Shapes.join(Shapes.plane(30, 30, 3, 3), Shapes.moved(Shapes.cube(10, 1), 1, 1, 0));
    Mended mended = MendChecks.mend(mesh, DROP);
    // The cube is closed and takes its section out of the sheet; the sheet hides no part of it.
    assertThat(mended.done().get(0).lostMm2()).isCloseTo(100, within(1e-2));
  }

  @Test
  void ofTwoCoincidentShellsOneStays() {
    Mesh cube = Shapes.cube(10, 3);
    Mended mended = MendChecks.mend(Shapes.join(cube, cube), DROP);
    assertThat(MendChecks.area(mended.mesh())).isCloseTo(600, within(1e-6));
  }

  @Test
  void cubesOffsetAlongOneAxisLeaveTheirUnion() {
    Mesh cube = Shapes.cube(1, 2);
    Mended mended = MendChecks.mend(Shapes.join(cube, Shapes.moved(cube, 0.5, 0, 0)), DROP);
    // A box 1.5 × 1 × 1; the sides that coincide count once.
    assertThat(MendChecks.area(mended.mesh())).isCloseTo(8, within(1e-3));
  }

  @Test
  void appliedTwiceChangesNothingMore() {
    Mesh cube = Shapes.cube(1, 1);
    Mended once = MendChecks.mend(Shapes.join(cube, Shapes.moved(cube, 0.4, 0.3, 0.2)), DROP);
    Mended twice = MendChecks.mend(once.mesh(), DROP);
    assertThat(twice.mesh().corner()).isEqualTo(once.mesh().corner());
    assertThat(twice.mesh().xyz()).isEqualTo(once.mesh().xyz());
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 4})
  void aBoxStandingOnAnotherLosesBothContactFaces(int cells) {
    // 40³ with 20³ on top: 6 · 1600 + 6 · 400 less 400 on each side of the contact.
    Mesh low = Shapes.cube(40, cells);
    Mesh high = Shapes.moved(Shapes.cube(20, cells), 3, -4, 30);
    Mended mended = MendChecks.mend(Shapes.join(low, high), DROP);
    assertThat(MendChecks.area(mended.mesh())).isCloseTo(11_200, within(11_200 * 1e-3));
    Mended other = MendChecks.mend(Shapes.join(high, low), DROP);
    assertThat(MendChecks.area(other.mesh())).isCloseTo(11_200, within(11_200 * 1e-3));
  }

  @Test
  void partsAreSewnTogetherWhereTheyWereCut() {
    Mesh cube = Shapes.cube(40, 2);
    Mesh joined = Shapes.join(cube, Shapes.moved(cube, 20, 20, 20));
    assertThat(open(MendChecks.mend(joined, DROP).mesh())).isZero();
    Mesh balls =
        Shapes.join(Shapes.icosphere(30, 4), Shapes.moved(Shapes.icosphere(30, 4), 30, 1, 2));
    Mesh one = MendChecks.mend(balls, DROP).mesh();
    Topology topology = Topology.of(one);
    assertThat(Parts.of(one, topology).count()).isEqualTo(1);
    assertThat(topology.openEdges()).isZero();
  }

  /** Corners of equal coordinates made one, as the readers of files do. */
  private static Mesh welded(Mesh... meshes) {
    Mesh soup = Shapes.join(meshes);
    Map<List<Double>, Integer> number = new LinkedHashMap<>();
    int[] corner = new int[soup.corner().length];
    for (int h = 0; h < corner.length; h++) {
      int v = soup.corner()[h];
      List<Double> at = List.of(soup.x(v), soup.y(v), soup.z(v));
      corner[h] = number.computeIfAbsent(at, key -> number.size());
    }
    double[] xyz =
        number.keySet().stream().flatMap(List::stream).mapToDouble(Double::doubleValue).toArray();
    return Mesh.of(xyz, corner);
  }

  private static void hasOneClosedPart(Mesh mesh) {
    Topology topology = Topology.of(mesh);
    assertThat(topology.openEdges()).as("open edges").isZero();
    assertThat(topology.branchingEdges()).as("branching edges").isZero();
    assertThat(Parts.of(mesh, topology).count()).as("parts").isEqualTo(1);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 5})
  void cubesSideBySideWithCommonCornersLoseTheWallBetweenThem(int cells) {
    Mesh cube = Shapes.cube(40, cells);
    Mesh beside = Shapes.moved(cube, 40, 0, 0);
    // Turned about z the wall's squares have the other diagonal.
    Mesh other = Shapes.moved(Shapes.rotated(cube, 0, 0, 1, Math.PI / 2), 40, 0, 0);
    for (Mesh[] two : new Mesh[][] {{cube, beside}, {beside, cube}, {cube, rounded(other)}}) {
      Mesh mesh = welded(two);
      assertThat(Parts.of(mesh, Topology.of(mesh)).count()).as("one part as read").isEqualTo(1);
      Mended mended = MendChecks.mend(mesh, DROP);
      // 2 · 6 · 1600 less 1600 on each side of the wall; a box 80 × 40 × 40 is left.
      assertThat(MendChecks.area(mended.mesh())).isCloseTo(16_000, within(16_000 * 1e-3));
      hasOneClosedPart(mended.mesh());
    }
  }

  /** Coordinates without the last digits that a turn leaves. */
  private static Mesh rounded(Mesh mesh) {
    double[] xyz = mesh.xyz().clone();
    for (int i = 0; i < xyz.length; i++) {
      xyz[i] = Math.rint(xyz[i] * 1e6) / 1e6;
    }
    return Mesh.of(xyz, mesh.corner());
  }

  @Test
  void eightCubesWithCommonCornersBecomeOne() {
    Mesh cube = Shapes.cube(10, 1);
    Mesh[] eight = new Mesh[8];
    for (int i = 0; i < 8; i++) {
      eight[i] = Shapes.moved(cube, 10 * (i & 1), 10 * (i >> 1 & 1), 10 * (i >> 2));
    }
    Mended mended = MendChecks.mend(welded(eight), DROP);
    assertThat(MendChecks.area(mended.mesh())).isCloseTo(6 * 400, within(2400 * 1e-3));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 10})
  void cubesThatShareAnEdgeOrACornerHideNothing(double z) {
    Mesh cube = Shapes.cube(10, 2);
    Mesh mesh = welded(cube, Shapes.moved(cube, 10, 10, z));
    Mended mended = MendChecks.mend(mesh, DROP);
    assertThat(MendChecks.area(mended.mesh())).isCloseTo(1200, within(1200 * 1e-6));
    assertThat(mended.done().get(0).lostMm2()).isCloseTo(0, within(1e-3));
  }

  @Test
  void aBoxOnAnotherWithCommonCornersIsSewnToIt() {
    // Cells of 10 mm: the small box's foot lies on corners of the large one's top.
    Mesh low = Shapes.cube(40, 4);
    Mesh high = Shapes.moved(Shapes.cube(20, 2), 0, 0, 30);
    for (Mesh[] two : new Mesh[][] {{low, high}, {high, low}}) {
      Mended mended = MendChecks.mend(welded(two), DROP);
      assertThat(MendChecks.area(mended.mesh())).isCloseTo(11_200, within(11_200 * 1e-3));
      hasOneClosedPart(mended.mesh());
    }
  }

  @Test
  void bodiesTurnedInsideOutStayOnePart() {
    Mesh cube = Shapes.cube(40, 1);
    int[] all = java.util.stream.IntStream.range(0, cube.faceCount()).toArray();
    Mesh mesh = welded(Shapes.withFlipped(cube, all), Shapes.moved(cube, 40, 0, 0));
    assertThat(Shells.of(mesh, Topology.of(mesh)).count()).isEqualTo(1);
  }

  private static int open(Mesh mesh) {
    return Topology.of(mesh).openEdges();
  }
}
