package org.seamwright.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

/** What the survey counts, and what it tells. */
class SurveyorTest {
  private static Survey survey(Mesh mesh) {
    return Surveyor.survey(mesh, Topology.of(mesh), 0, Progress.NONE);
  }

  private static Notice notice(Survey survey, String code) {
    return survey.notices().stream()
        .filter(n -> n.code().equals(code))
        .findFirst()
        .orElseThrow(() -> new AssertionError("No " + code + " in " + survey.notices()));
  }

  @Test
  void cleanCubeHasNothingToTell() {
    Survey survey = survey(Shapes.cube(2, 2));
    assertThat(survey.notices()).isEmpty();
    assertThat(survey.triangles()).isEqualTo(48);
    assertThat(survey.vertices()).isEqualTo(26);
    assertThat(survey.areaMm2()).isCloseTo(24, within(1e-13));
    assertThat(survey.volumeMm3()).isCloseTo(8, within(1e-13));
    assertThat(survey.parts()).isEqualTo(1);
    assertThat(survey.closed()).isTrue();
    assertThat(survey.bounds().sizeX()).isEqualTo(2);
  }

  @Test
  void holeIsTold() {
    Survey survey = survey(Shapes.without(Shapes.cube(2, 1), 0));
    assertThat(survey.openEdges()).isEqualTo(3);
    assertThat(survey.closed()).isFalse();
    assertThat(notice(survey, "open-edges").count()).isEqualTo(3);
  }

  @Test
  void flippedFaceIsTold() {
    Survey survey = survey(Shapes.withFlipped(Shapes.cube(2, 1), 5));
    assertThat(survey.flippedEdges()).isEqualTo(3);
    assertThat(survey.closed()).isTrue();
    assertThat(notice(survey, "flipped-edges").count()).isEqualTo(3);
  }

  @Test
  void branchingEdgeIsTold() {
    Survey survey = survey(Shapes.blades(3, 1, 2));
    assertThat(survey.branchingEdges()).isEqualTo(1);
    assertThat(survey.closed()).isFalse();
    assertThat(notice(survey, "branching-edges").count()).isEqualTo(1);
  }

  @Test
  void repeatedFacesAreCountedWhicheverWayTheyAreTurned() {
    Mesh cube = Shapes.cube(2, 1);
    Mesh repeated = Shapes.withRepeated(cube, 0, 3, 3);
    Mesh turned = Shapes.withFlipped(repeated, 12);
    for (Mesh mesh : new Mesh[] {repeated, turned, Shapes.shuffled(repeated, 1)}) {
      Survey survey = survey(mesh);
      assertThat(survey.duplicateTriangles()).isEqualTo(3);
      assertThat(notice(survey, "duplicate-triangles").count()).isEqualTo(3);
    }
  }

  @Test
  void faceLyingOnItsTwinIsADuplicateThoughItsEdgesHaveTwoFaces() {
    Mesh lone = Mesh.of(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0}, new int[] {0, 1, 2, 0, 2, 1});
    assertThat(survey(lone).duplicateTriangles()).isEqualTo(1);
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"closed", "open"})
  void aFaceThatNamesACornerTwiceChangesNoArea(String kind) {
    Mesh mesh =
        kind.equals("closed") ? Shapes.icosphere(10, 2) : Shapes.cylinder(6, 15, 20, 2, false);
    int[][] faces = {{0, 0, 1}, {0, 1, 1}, {5, 2, 5}, {3, 3, 3}};
    int[] corner = Arrays.copyOf(mesh.corner(), mesh.corner().length + 3 * faces.length);
    for (int i = 0; i < faces.length; i++) {
      System.arraycopy(faces[i], 0, corner, mesh.corner().length + 3 * i, 3);
    }
    Survey survey = survey(Mesh.of(mesh.xyz(), corner));
    Survey without = survey(mesh);
    assertThat(survey.areaMm2()).isEqualTo(without.areaMm2());
    assertThat(survey.smooth()).isEqualTo(without.smooth());
    assertThat(survey.degenerateTriangles()).isEqualTo(faces.length);
  }

  @Test
  void facesWithoutAreaAreCountedWithThoseDroppedBefore() {
    Mesh mesh =
        Mesh.of(
            new double[] {0, 0, 0, 0.1, 0.2, 0.3, 0.3, 0.6, 0.9, 0, 1, 0},
            new int[] {0, 1, 2, 0, 2, 3});
    Survey survey = Surveyor.survey(mesh, Topology.of(mesh), 4, Progress.NONE);
    assertThat(survey.degenerateTriangles()).isEqualTo(5);
    assertThat(notice(survey, "degenerate-triangles").count()).isEqualTo(5);
  }

  @Test
  void partsAreToldWithTheShareOfTheLargest() {
    Mesh mesh = Shapes.join(Shapes.cube(2, 1), Shapes.moved(Shapes.cube(1, 1), 5, 0, 0));
    Survey survey = survey(mesh);
    assertThat(survey.parts()).isEqualTo(2);
    // 24 of 30 mm².
    assertThat(notice(survey, "several-parts").text()).contains("80% of the area");
  }

  @Test
  void insideOutPieceIsTold() {
    Mesh cube = Shapes.cube(2, 1);
    int[] all = java.util.stream.IntStream.range(0, 12).toArray();
    assertThat(notice(survey(Shapes.withFlipped(cube, all)), "inside-out").count()).isEqualTo(1);
  }

  @Test
  void cornersWrittenWithDifferentLastDigitsAreTold() {
    // Two squares beside each other whose shared corners differ by 1e-6 of the size.
    Mesh left = Shapes.plane(1, 1, 1, 1);
    Mesh right = Shapes.moved(left, 1 + 1e-6, 0, 0);
    Survey survey = survey(Shapes.join(left, right));
    assertThat(survey.openEdges()).isEqualTo(8);
    assertThat(notice(survey, "nearly-closed-edges").count()).isEqualTo(2);
    Survey apart = survey(Shapes.join(left, Shapes.moved(left, 1.001, 0, 0)));
    assertThat(apart.notices()).extracting(Notice::code).doesNotContain("nearly-closed-edges");
  }

  @Test
  void coarsePrismIsToldToBeUncertain() {
    Survey survey = survey(Shapes.cylinder(10, 30, 6, 1, true));
    assertThat(notice(survey, "coarse-facets").count()).isEqualTo(1);
    // Whether it is a hexagonal rod or a round one, the bar holds its area.
    double round = 2 * Math.PI * 10 * 30 + 2 * Math.PI * 100;
    double hexagonal = 6 * 10 * 30 + 2 * 1.5 * Math.sqrt(3) * 100;
    assertThat(survey.smooth().lowMm2()).isLessThanOrEqualTo(hexagonal);
    assertThat(survey.smooth().highMm2()).isGreaterThanOrEqualTo(round * 0.99);
  }

  @Test
  void surveyCanBeCancelled() {
    Mesh mesh = Shapes.sphere(1, 50, 50);
    assertThatThrownBy(
            () ->
                Surveyor.survey(
                    mesh,
                    Topology.of(mesh),
                    0,
                    fraction -> {
                      throw new CancellationException();
                    }))
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void surveySurvivesAnySoup() {
    for (long seed = 1; seed <= 20; seed++) {
      java.util.Random random = new java.util.Random(seed);
      double[] xyz = random.doubles(90, -1, 1).toArray();
      int[] corner = random.ints(240, 0, 30).toArray();
      Survey survey = survey(Mesh.of(xyz, corner));
      assertThat(survey.smooth().areaMm2()).as("seed %d", seed).isFinite().isNotNegative();
      assertThat(survey.smooth().lowMm2()).isLessThanOrEqualTo(survey.smooth().areaMm2());
      assertThat(survey.smooth().highMm2()).isGreaterThanOrEqualTo(survey.smooth().areaMm2());
    }
  }
}
