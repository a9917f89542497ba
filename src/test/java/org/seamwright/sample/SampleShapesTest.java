package org.seamwright.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/** The sample pieces against the closed formulas of the parts that have one. */
class SampleShapesTest {
  private static double area(Mesh mesh) {
    return Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
  }

  /** V − E + F of a closed surface with g handles is 2 − 2g (Euler–Poincaré). */
  private static int handles(Mesh mesh) {
    Topology topology = Topology.of(mesh);
    return (2 - (mesh.vertexCount() - topology.edgeCount() + mesh.faceCount())) / 2;
  }

  private static void assertClosedInOnePart(Mesh mesh) {
    Topology topology = Topology.of(mesh);
    assertThat(topology.openEdges()).isZero();
    assertThat(topology.branchingEdges()).isZero();
    assertThat(topology.flippedEdges()).isZero();
    assertThat(Parts.of(mesh, topology).count()).isOne();
  }

  @Test
  void profileOfAConeAndASphereHasTheHandbookArea() {
    // Cone frustum π(r₁ + r₂)s and sphere 4πr²: CRC Standard Mathematical Tables.
    assertThat(Profile.from(5, 0).lineTo(3, 4).areaMm2())
        .isCloseTo(Math.PI * 8 * Math.sqrt(4 + 16), within(1e-12 * 112));
    assertThat(Profile.from(0, -7).arcTo(0, 0, 90).areaMm2())
        .isCloseTo(4 * Math.PI * 49, within(1e-9));
    // Torus R = 50, r = 5: 4π²Rr = 9869.6044010894; from 180° once round.
    assertThat(Profile.from(45, 0).arcTo(50, 0, 540).areaMm2())
        .isCloseTo(9869.6044010894, within(1e-8));
  }

  @Test
  void turnedCupComesCloserToItsFormulaWithTheSquareOfTheStep() {
    double exact = CupMaker.profile().areaMm2();
    double coarse = exact - area(CupMaker.withoutHandles(4, 90));
    double fine = exact - area(CupMaker.withoutHandles(2, 180));
    assertThat(fine).isPositive().isLessThan(exact * 4e-4);
    assertThat(coarse / fine).isBetween(2.5, 5.5);
  }

  @Test
  void turnedBarrelAndHubMatchTheirFormulas() {
    double barrel = RimMaker.barrel().areaMm2();
    double hub = RimMaker.hub().areaMm2();
    // A polygon of n sides inside a circle falls short by about (π/n)²/6: 1.3e-5 round the barrel,
    // 4.1e-5 round the hub. Arcs drawn in steps of 15° fall short by 0.3 %, and are 1/20 of the
    // barrel's outline.
    assertThat(area(RimMaker.turned(RimMaker.barrel(), 2.4, 360)) / barrel)
        .isBetween(1 - 2e-4, 1.0);
    assertThat(area(RimMaker.turned(RimMaker.hub(), 2, 200)) / hub).isBetween(1 - 1e-4, 1.0);
  }

  @Test
  void cupIsOneClosedSurfaceWithTwoHandles() {
    Mesh cup = CupMaker.cup();
    assertClosedInOnePart(cup);
    assertThat(handles(cup)).isEqualTo(2);
  }

  @Test
  void handleIsTheOuterPartOfATorus() {
    Mesh cup = CupMaker.cup();
    double radius = (CupMaker.HANDLE_TOP_MM - CupMaker.HANDLE_BOTTOM_MM) / 2;
    double sum = 0;
    double[] c = new double[3];
    double reach = 0;
    for (int f = 0; f < cup.faceCount(); f++) {
      Faces.centroid(cup, f, c);
      reach = Math.max(reach, c[0]);
    }
    double centreX = reach - radius - CupMaker.HANDLE_ROD_MM;
    double half = Math.PI / 4;
    for (int f = 0; f < cup.faceCount(); f++) {
      Faces.centroid(cup, f, c);
      Vector3D from = Vector3D.of(c[0] - centreX, 0, c[2] - 190);
      if (from.getX() > 0 && Math.abs(Math.atan2(from.getZ(), from.getX())) < half) {
        sum += Faces.area(cup, f);
      }
    }
    // Pappus: a ring of rod radius r and ring radius R has 2πr·R·angle; a rod of 20 sides falls
    // short by under 1%, and the band's ends follow whole faces, one of 30 on either side.
    double exact = 2 * Math.PI * CupMaker.HANDLE_ROD_MM * radius * 2 * half;
    assertThat(sum / exact).isBetween(0.95, 1.05);
  }

  @Test
  void rimIsOneClosedSurfaceWithSpokesBoreAndBoltHoles() {
    Mesh rim = RimMaker.rim();
    assertThat(rim.faceCount()).isGreaterThan(200_000);
    assertClosedInOnePart(rim);
    // Barrel and hub are rings; ten spokes join them (nine more ways round), five holes pierce.
    assertThat(handles(rim)).isEqualTo(2 + (RimMaker.SPOKES - 1) + RimMaker.BOLTS);
    // 17 in across the flanges, on the grid's own vertices.
    assertThat(rim.bounds().sizeX()).isCloseTo(17 * 25.4, within(1e-9));
  }

  @Test
  void plaqueHasExactlyTheAreaOfItsOutlines() {
    PlaqueMaker.Plaque plaque = PlaqueMaker.plaque();
    assertClosedInOnePart(plaque.mesh());
    assertThat(handles(plaque.mesh())).isZero();
    assertThat(area(plaque.mesh())).isCloseTo(plaque.areaMm2(), within(1e-9 * 72_000));
  }

  @Test
  void scanHasTwoHolesAndTheTablesEdge() {
    Mesh scan = ScanMaker.scan();
    Topology topology = Topology.of(scan);
    assertThat(topology.openEdges()).isPositive();
    assertThat(topology.branchingEdges()).isZero();
    assertThat(topology.flippedEdges()).isZero();
    // Two handles and three openings: V − E + F = 2 − 2·2 − 3.
    assertThat(scan.vertexCount() - topology.edgeCount() + scan.faceCount()).isEqualTo(-5);
  }
}
