package org.seamwright.geodesic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

class LabelCutTest {
  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void anyScoresOnAnySoupKeepAreaAndWeld(long seed) {
    Random random = new Random(seed);
    for (Mesh mesh : CutChecks.soups()) {
      int labels = 2 + random.nextInt(6);
      double[][] score = new double[labels][];
      for (int i = 0; i < labels; i++) {
        score[i] = CutChecks.waveringField(mesh, random);
        score[i][random.nextInt(score[i].length)] = Double.NEGATIVE_INFINITY;
      }
      int[] best = best(mesh, score);
      LabelCut.Result all = LabelCut.cut(mesh, best, (v, l) -> score[l][v], f -> true);
      CutChecks.assertSound(mesh, all.cut());
      assertEachPieceHasTheLabelOfItsCorners(mesh, best, all);
      LabelCut.Result some = LabelCut.cut(mesh, best, (v, l) -> score[l][v], f -> f % 3 != 0);
      CutChecks.assertSound(mesh, some.cut());
      for (int f = 0; f < some.faceLabel().length; f++) {
        assertThat(some.faceLabel()[f] < 0).isEqualTo(some.cut().parentFace()[f] % 3 == 0);
      }
    }
  }

  private static void assertEachPieceHasTheLabelOfItsCorners(
      Mesh before, int[] best, LabelCut.Result result) {
    int[] corner = result.cut().mesh().corner();
    for (int h = 0; h < corner.length; h++) {
      if (corner[h] < before.vertexCount()) {
        assertThat(result.faceLabel()[h / 3]).isEqualTo(best[corner[h]]);
      }
    }
  }

  private static int[] best(Mesh mesh, double[][] score) {
    int[] best = new int[mesh.vertexCount()];
    for (int v = 0; v < best.length; v++) {
      for (int l = 1; l < score.length; l++) {
        best[v] = score[l][v] > score[best[v]][v] ? l : best[v];
      }
    }
    return best;
  }

  @Test
  void linearScoresCutThreeRegionsExactly() {
    // Scores 0, x - 0.05 and y - 0.1 on the square [-1,1]²: 0 wins the rectangle of 1.05 by 1.1;
    // 2 wins above y = x + 0.05 and y = 0.1: 1.05 by 0.9 and half of 0.9 squared; 1 the rest. They
    // meet inside a face, and no label enters a face of which it has no corner.
    Mesh square = Shapes.plane(2, 2, 5, 5);
    LabelCut.ValueOf score = (v, l) -> l == 0 ? 0 : l == 1 ? square.x(v) - 0.05 : square.y(v) - 0.1;
    int[] best = new int[square.vertexCount()];
    Arrays.setAll(
        best,
        v -> {
          int b = score.at(v, 1) > 0 ? 1 : 0;
          return score.at(v, 2) > score.at(v, b) ? 2 : b;
        });
    LabelCut.Result result = LabelCut.cut(square, best, score, f -> true);
    double[] area = new double[3];
    for (int f = 0; f < result.faceLabel().length; f++) {
      area[result.faceLabel()[f]] += Faces.area(result.cut().mesh(), f);
    }
    assertThat(area[0]).isCloseTo(1.155, within(1e-12));
    assertThat(area[1]).isCloseTo(1.495, within(1e-12));
    assertThat(area[2]).isCloseTo(1.35, within(1e-12));
  }

  @Test
  void seamBetweenHalvesOfASphereIsItsEquator() {
    Mesh sphere = Shapes.sphere(10, 41, 80);
    int[] best = new int[sphere.vertexCount()];
    Arrays.setAll(best, v -> sphere.z(v) > 0 ? 1 : 0);
    LabelCut.Result result =
        LabelCut.cut(sphere, best, (v, l) -> l == 1 ? sphere.z(v) : -sphere.z(v), f -> true);
    Mesh cut = result.cut().mesh();
    List<BoundaryLines.Line> lines =
        BoundaryLines.between(cut, Topology.of(cut), f -> result.faceLabel()[f] == 1);
    assertThat(lines).hasSize(1);
    assertThat(lines.get(0).closed()).isTrue();
    // The mesh crosses z = 0 in a 160-gon half of whose corners lie inside the circle by the sag
    // of a cell, (pi/80)²/8 of the radius; the circle is 2 pi 10.
    assertThat(lines.get(0).lengthMm(cut)).isCloseTo(20 * Math.PI, within(0.1));
    // The inside is on the left: going round +z seen from above is counter-clockwise.
    int[] loop = lines.get(0).vertices();
    double turn = cut.x(loop[0]) * cut.y(loop[1]) - cut.y(loop[0]) * cut.x(loop[1]);
    assertThat(turn).isPositive();
  }
}
