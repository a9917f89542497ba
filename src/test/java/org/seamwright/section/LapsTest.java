package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.FieldCut;
import org.seamwright.geodesic.Refinement;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

/** Bands of constant width against closed formulas, on meshes of 20,000 faces or so. */
class LapsTest {
  /** What is promised of a band that is at least two edges wide. */
  private static final Percentage PROMISED = Percentage.withPercentage(0.5);

  /** A mesh cut along a field, and which side of the cut each face lies on. */
  private record Sides(Mesh mesh, boolean[] below) {
    static Sides of(Mesh mesh, IntToDoubleFunction fieldAtVertex, double level) {
      double[] field = new double[mesh.vertexCount()];
      Arrays.setAll(field, fieldAtVertex);
      CutMesh cut = FieldCut.along(mesh, field, level, f -> true);
      return new Sides(cut.mesh(), FieldCut.below(cut, field, level));
    }

    int[] section(int belowId, int aboveId) {
      int[] section = new int[below.length];
      Arrays.setAll(section, f -> below[f] ? belowId : aboveId);
      return section;
    }
  }

  private static Laps lay(Mesh mesh, int[] section, double activationMm, double flashMm) {
    int sections = Arrays.stream(section).max().orElse(0);
    return Laps.of(mesh, section, sections, activationMm, flashMm, Progress.NONE);
  }

  @ParameterizedTest
  @ValueSource(doubles = {2, 3.3, 10, 40})
  void onAPlaneItIsWidthTimesLength(double edges) {
    // 100 by 100 squares of 1 mm; the seam runs beside the lines of the mesh.
    Mesh plane = Shapes.plane(100, 100, 100, 100);
    Sides sides = Sides.of(plane, plane::x, 0.37);
    Laps laps = lay(sides.mesh(), sides.section(1, 2), edges / 2, edges);
    assertThat(laps.sections().get(1).flashLapMm2()).isCloseTo(100 * edges, PROMISED);
    assertThat(laps.sections().get(1).activationLapMm2()).isCloseTo(50 * edges, PROMISED);
    assertThat(laps.sections().get(0).flashLapMm2()).isZero();
    assertThat(laps.sections().get(0).netMm2()).isCloseTo(5037, within(1e-9));
    assertThat(laps.seams()).hasSize(1);
    assertThat(laps.seams().get(0).lengthMm()).isCloseTo(100, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(doubles = {2, 3.3, 10, 25})
  void alongASlantingSeamOnAPlaneToo(double edges) {
    // The line x = y/3 from rim to rim, which it meets at a slant.
    Mesh plane = Shapes.plane(120, 60, 120, 84);
    Sides sides = Sides.of(plane, v -> plane.x(v) - plane.y(v) / 3, 0);
    Laps laps = lay(sides.mesh(), sides.section(2, 1), edges, 0);
    double length = 60 * Math.sqrt(10) / 3;
    // Against a rectangle on the seam the rim cuts a right triangle off at the acute end; at the
    // obtuse end a sector of a circle about the seam's end comes in addition.
    double slant = Math.atan(1.0 / 3);
    double lost = edges * edges / 2 * (Math.tan(slant) - slant);
    assertThat(laps.sections().get(1).activationLapMm2())
        .isCloseTo(length * edges - lost, PROMISED);
    assertThat(laps.sections().get(1).flashLapMm2()).isZero();
  }

  @ParameterizedTest
  @CsvSource({"0.25, 3", "0.25, 12", "0.1, 3", "0.1, 6", "0.05, 3", "0.05, 6"})
  void besideARoundSeamOfVeryShortEdges(double edgeMm, double width) {
    // A circle of radius 20 on a plane of oblong faces that are much finer where it runs.
    Mesh plane = Shapes.plane(80, 80, 53, 37);
    double[] p = plane.xyz();
    Mesh fine =
        Refinement.edges(
                plane,
                edgeMm,
                f -> {
                  int a = 3 * plane.corner()[3 * f];
                  return Math.abs(Math.hypot(p[a], p[a + 1]) - 20) < 1.5;
                })
            .mesh();
    Sides sides = Sides.of(fine, v -> Math.hypot(fine.x(v), fine.y(v)), 20);
    Laps laps = lay(sides.mesh(), sides.section(2, 1), width, 0);
    // A ring: pi ((R + w)^2 - R^2).
    double ring = Math.PI * ((20 + width) * (20 + width) - 20 * 20);
    assertThat(laps.sections().get(1).activationLapMm2()).isCloseTo(ring, PROMISED);
  }

  @ParameterizedTest
  @CsvSource({"2", "5", "17", "40"})
  void roundACylinder(double edges) {
    // 100 sides of 1 mm.
    double radius = 50 / Math.PI;
    Mesh cylinder = Shapes.cylinder(radius, 100, 100, 100, false);
    Sides sides = Sides.of(cylinder, cylinder::z, 3.21);
    Laps laps = lay(sides.mesh(), sides.section(1, 2), 0, edges);
    assertThat(laps.sections().get(1).flashLapMm2())
        .isCloseTo(2 * Math.PI * radius * edges, PROMISED);
    Laps turned = lay(sides.mesh(), sides.section(2, 1), 0, edges);
    assertThat(turned.sections().get(1).flashLapMm2())
        .isCloseTo(2 * Math.PI * radius * edges, PROMISED);
  }

  @ParameterizedTest
  @CsvSource({
    "0.5, 2, true", "0.5, 2, false", "0.5, 9, false", "0.9, 2, true", "0.9, 2, false",
    "0.9, 12, true", "0.9, 40, false", "1.4, 5, true", "1.4, 40, true", "1.4, 40, false"
  })
  void besideAParallelOfASphere(double colatitude, double edges, boolean poleward) {
    // 100 bands of latitude: an edge along a meridian is 1 mm.
    double radius = 100 / Math.PI;
    Mesh sphere = Shapes.sphere(radius, 100, 100);
    Sides sides = Sides.of(sphere, sphere::z, radius * Math.cos(colatitude));
    // The lap lies on the section worked first: the cap (above) for a lap towards the pole.
    int[] section = poleward ? sides.section(2, 1) : sides.section(1, 2);
    Laps laps = lay(sides.mesh(), section, edges, edges);
    double to = poleward ? Math.max(0, colatitude - edges / radius) : colatitude + edges / radius;
    // Zone of a sphere, 2 pi R h (any handbook of mathematics).
    double zone = 2 * Math.PI * radius * radius * Math.abs(Math.cos(colatitude) - Math.cos(to));
    assertThat(laps.sections().get(1).flashLapMm2()).isCloseTo(zone, PROMISED);
    assertThat(laps.seams().get(0).flashLapMm2())
        .isCloseTo(laps.sections().get(1).flashLapMm2(), within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"3, true", "3, false", "11, true", "11, false", "30, true"})
  void besideAParallelOfACone(double width, boolean inward) {
    // Radius 40 below, 10 above; 50 mm along the slant, in 50 rings of 1 mm.
    Mesh cone = Shapes.coneFrustum(40, 10, 40, 250, 50, false);
    double at = cone.bounds().minZ() + 0.8 * 15.3;
    Sides sides = Sides.of(cone, cone::z, at);
    int[] section = inward ? sides.section(2, 1) : sides.section(1, 2);
    Laps laps = lay(sides.mesh(), section, width / 2, width);
    double r = 40 - 0.6 * 15.3;
    for (Section s : laps.sections().subList(1, 2)) {
      assertThat(s.flashLapMm2()).isCloseTo(coneBand(r, width, inward), PROMISED);
      assertThat(s.activationLapMm2()).isCloseTo(coneBand(r, width / 2, inward), PROMISED);
    }
  }

  /** Frustum of a cone, pi (r1 + r2) s (any handbook of mathematics); radii shrink 0.6 per mm. */
  private static double coneBand(double r, double width, boolean inward) {
    double slant = inward ? width : Math.min(width, 15.3);
    double to = r + (inward ? -0.6 : 0.6) * slant;
    return Math.PI * (r + to) * slant;
  }

  @ParameterizedTest
  @ValueSource(doubles = {3, 6, 10})
  void whereThreeSectionsMeetAsMuchIsActivatedThriceAsTheAnglesSay(double width) {
    // A disc in three sectors of 120 degrees. With w the width, the first sector lies under the
    // bands of both others where r < w / sin(phi) for phi from its farther rim 60 to 90 degrees,
    // and r < w from 90 to 120, twice over: w² (1/√3 + π/6), integrated in polar coordinates.
    double[] r = new double[81];
    Arrays.setAll(r, i -> i / 2.0);
    Mesh disc = Shapes.lathe(r, new double[81], 120);
    int[] section = new int[disc.faceCount()];
    double[] centre = new double[3];
    for (int f = 0; f < section.length; f++) {
      Faces.centroid(disc, f, centre);
      double turn = Math.atan2(centre[1], centre[0]) / (2 * Math.PI);
      section[f] = 1 + (int) (3 * (turn < 0 ? turn + 1 : turn));
    }
    Laps laps = lay(disc, section, width, width);
    double thrice = 0;
    for (int f = 0; f < laps.section().length; f++) {
      thrice += laps.activations()[f] >= 3 ? Faces.area(laps.cut().mesh(), f) : 0;
    }
    double expected = width * width * (1 / Math.sqrt(3) + Math.PI / 6);
    assertThat(thrice).isCloseTo(expected, Percentage.withPercentage(1));
  }

  @Test
  void aLapRunsOnOverANarrowSectionWorkedBefore() {
    // Strips 0 to 30, 30 to 34 and 34 to 100 mm, worked in this order: the third one's lap of 10
    // mm covers the second strip and 6 mm of the first.
    Mesh plane = Shapes.plane(100, 50, 100, 50);
    int[] section = new int[plane.faceCount()];
    double[] centre = new double[3];
    for (int f = 0; f < section.length; f++) {
      Faces.centroid(plane, f, centre);
      section[f] = centre[0] < -20 ? 1 : centre[0] < -16 ? 2 : 3;
    }
    Laps laps = lay(plane, section, 2, 10);
    assertThat(laps.sections().get(1).flashLapMm2()).isCloseTo(500, within(1e-6));
    assertThat(laps.sections().get(2).flashLapMm2()).isCloseTo(500, within(1e-6));
    assertThat(laps.sections().get(2).activationLapMm2()).isCloseTo(100, within(1e-6));
    // It has no seam with the first section, so all of it goes to its only seam.
    assertThat(laps.seams()).hasSize(2);
    assertThat(laps.seams().get(1).flashLapMm2()).isCloseTo(500, within(1e-6));
    double[] byTimes = new double[4];
    for (int f = 0; f < laps.section().length; f++) {
      byTimes[laps.flashes()[f]] += Faces.area(laps.cut().mesh(), f);
    }
    // 300 mm² of the first strip lie under both laps.
    assertThat(byTimes[3]).isCloseTo(300, within(1e-6));
    assertThat(byTimes[2]).isCloseTo(200 + 200, within(1e-6));
  }

  @Test
  void threeQuartersRoundACorner() {
    // Quarters of a plane, worked 1 2 3 around with the fourth quarter bare: the lap of 2 lies on
    // 1, that of 3 on 2; at the middle point nothing is covered twice.
    Mesh plane = Shapes.plane(80, 80, 40, 40);
    int[] section = new int[plane.faceCount()];
    double[] centre = new double[3];
    for (int f = 0; f < section.length; f++) {
      Faces.centroid(plane, f, centre);
      section[f] = centre[0] < 0 ? (centre[1] < 0 ? 1 : 2) : (centre[1] < 0 ? 0 : 3);
    }
    double w = 6;
    Laps laps = lay(plane, section, w, w);
    // Band of 2 on 1: 40 by w. Band of 3 on 2: the same; round the end of its seam, in section 1,
    // a quarter of a disc, measured over plated faces only.
    assertThat(laps.sections().get(1).flashLapMm2()).isCloseTo(40 * w, within(1e-6));
    assertThat(laps.sections().get(2).flashLapMm2())
        .isCloseTo(40 * w + Math.PI * w * w / 4, PROMISED);
  }

  @Test
  void lapsThatReachPastOneAnotherAllCount() {
    // Five strips of 20 mm, laps of 12 mm: distances from neighbouring seams overlap, so they
    // can't share a field.
    Mesh plane = Shapes.plane(100, 50, 50, 25);
    int[] section = new int[plane.faceCount()];
    double[] centre = new double[3];
    for (int f = 0; f < section.length; f++) {
      Faces.centroid(plane, f, centre);
      section[f] = 1 + (int) ((centre[0] + 50) / 20);
    }
    Laps laps = lay(plane, section, 5, 12);
    for (int i = 1; i < 5; i++) {
      assertThat(laps.sections().get(i).activationLapMm2()).isCloseTo(250, within(1e-6));
      assertThat(laps.sections().get(i).flashLapMm2()).isCloseTo(600, within(1e-6));
    }
  }

  /** What is measured while sections are fitted is what the cut gives in the end. */
  @Test
  void measuresWithoutCuttingWhatTheCutGives() {
    Mesh sphere = Shapes.icosphere(20, 4);
    int[] section = new int[sphere.faceCount()];
    double[] centre = new double[3];
    for (int f = 0; f < section.length; f++) {
      Faces.centroid(sphere, f, centre);
      double longitude = Math.atan2(centre[1], centre[0]) + Math.PI;
      section[f] = centre[2] > 8 ? 1 : centre[2] < -9 ? 2 : 3 + (int) (longitude / 1.6);
    }
    Topology topology = Topology.of(sphere);
    SeamLines seams = SeamLines.of(sphere, EdgeRings.of(sphere, topology), section, 1);
    SeamDistance from = SeamDistance.of(sphere, topology, section, 1);
    Bands bands = Bands.of(from, seams, 6, 2.7, Progress.NONE);
    double[] measured = bands.lapMm2(sphere, section, 6, 2.7);
    Laps laps = lay(sphere, section, 1.1, 2.7);
    for (Section s : laps.sections()) {
      // A cut may move a crossing by a millionth of its edge.
      assertThat(s.flashLapMm2()).isCloseTo(measured[s.id()], within(1e-3));
    }
    assertThat(measured[6]).isPositive();
  }
}
