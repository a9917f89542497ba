package org.seamwright.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** Facet area and volume against closed formulas, and what must not change them. */
class AreaAndVolumeTest {
  @Test
  void cubeHasTheAreaAndVolumeOfTheSchoolBook() {
    Mesh cube = Shapes.cube(3, 4);
    assertThat(Area.ofFaces(cube)).isCloseTo(54, within(1e-13));
    assertThat(Volume.ofFaces(cube)).isCloseTo(27, within(1e-13));
  }

  @ParameterizedTest
  @CsvSource({
    "6, 0.954929658551",
    "12, 0.988615929465",
    "64, 0.99959845315",
    "128, 0.999899604216"
  })
  void prismInACylinderHasTheAreaOfItsFormula(int sides, double ratio) {
    // Lateral area of the inscribed prism over that of the cylinder: n sin(pi/n) / pi.
    double area = Area.ofFaces(Shapes.cylinder(2, 5, sides, 3, false));
    assertThat(area / (2 * Math.PI * 2 * 5)).isCloseTo(ratio, within(1e-11));
  }

  @ParameterizedTest
  @CsvSource({
    "0, 9.574541383274",
    "1, 11.665931391718",
    "2, 12.329848595235",
    "4, 12.551353880096"
  })
  void icospheresHaveTheirAreas(int level, double area) {
    // Level 0 is 5 sqrt(3) edge² with edge 1.0514622242383; the others by midpoint subdivision.
    assertThat(Area.ofFaces(Shapes.icosphere(1, level))).isCloseTo(area, within(1e-11));
  }

  @ParameterizedTest
  @CsvSource({"0, 0.6054613829, 1e-10", "1, 0.8734531573, 1e-7"})
  void icospheresFillTheSphereAsPublished(int level, double share, double digits) {
    // Volume over that of the sphere, published for the first two levels; the second figure is
    // good to seven digits (a sum of determinants in another language gives 0.8734532000).
    assertThat(Volume.ofFaces(Shapes.icosphere(1, level)) / (4 * Math.PI / 3))
        .isCloseTo(share, within(digits));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void rotationsOrderAndFlipsDoNotChangeTheArea(long seed) {
    Random random = new Random(seed);
    Mesh torus = Shapes.torus(30, 7, 40, 24);
    double area = Area.ofFaces(torus);
    Mesh turned =
        Shapes.rotated(
            torus,
            random.nextGaussian(),
            random.nextGaussian(),
            random.nextGaussian(),
            (double) seed);
    assertThat(Area.ofFaces(turned)).as("seed %d", seed).isCloseTo(area, within(1e-12 * area));
    assertThat(Area.ofFaces(Shapes.shuffled(torus, seed)))
        .as("seed %d", seed)
        .isCloseTo(area, within(1e-14 * area));
    int[] some = random.ints(50, 0, torus.faceCount()).distinct().toArray();
    assertThat(Area.ofFaces(Shapes.withFlipped(torus, some)))
        .as("seed %d", seed)
        .isCloseTo(area, within(1e-14 * area));
    assertThat(Volume.ofFaces(turned))
        .as("seed %d", seed)
        .isCloseTo(Volume.ofFaces(torus), within(1e-12 * area));
  }

  @Test
  void pieceFarFromTheOriginKeepsItsAreaAndVolume() {
    // A coordinate at 1e6 mm is rounded to 1.2e-10 mm; edges here are longer than 1 mm, so that
    // each facet errs by less than 1e-9 of its area, and the errors are of both signs.
    Mesh torus = Shapes.torus(30, 7, 40, 24);
    Mesh far = Shapes.moved(torus, 1e6, -1e6, 1e6);
    double area = Area.ofFaces(torus);
    assertThat(Area.ofFaces(far)).isCloseTo(area, within(1e-10 * area));
    double volume = Volume.ofFaces(torus);
    assertThat(Volume.ofFaces(far)).isCloseTo(volume, within(1e-9 * volume));
  }

  @Test
  void insideOutMeshHasNegativeVolume() {
    Mesh cube = Shapes.cube(2, 1);
    int[] all = java.util.stream.IntStream.range(0, cube.faceCount()).toArray();
    assertThat(Volume.ofFaces(Shapes.withFlipped(cube, all))).isCloseTo(-8, within(1e-13));
  }

  @Test
  void areaScalesWithTheSquareOfLength() {
    Mesh sphere = Shapes.sphere(5, 20, 20);
    double area = Area.ofFaces(sphere);
    for (double factor : new double[] {1e-6, 25.4, 1000, 1e9}) {
      double scaled = Area.ofFaces(sphere.scaledBy(factor));
      assertThat(scaled / (factor * factor)).isCloseTo(area, within(1e-12 * area));
    }
  }
}
