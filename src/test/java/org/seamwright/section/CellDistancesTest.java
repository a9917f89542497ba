package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.Refinement;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

class CellDistancesTest {
  @Test
  void isExactOnAPlane() {
    Mesh plane = Shapes.plane(90, 60, 45, 20);
    int seed = 333;
    CellDistances distances =
        CellDistances.from(Surface.of(plane), new int[] {seed}, new double[1], Progress.NONE);
    for (int v = 0; v < plane.vertexCount(); v++) {
      assertThat(distances.key(v, 0)).isCloseTo(Faces.length(plane, seed, v), within(1e-2));
    }
  }

  @Test
  void isExactOnAPlaneOfNeedles() {
    // A fan of needles from one corner, refined: what flat faces of a drawing look like.
    int n = 40;
    double[] p = new double[3 * (n + 2)];
    int[] corner = new int[3 * n];
    for (int i = 0; i <= n; i++) {
      p[3 * i + 3] = 100;
      p[3 * i + 4] = i;
    }
    for (int i = 0; i < n; i++) {
      corner[3 * i + 1] = i + 1;
      corner[3 * i + 2] = i + 2;
    }
    CutMesh fine = Refinement.edges(Mesh.of(p, corner), 8, f -> true);
    int seed = 20;
    CellDistances distances =
        CellDistances.from(Surface.of(fine.mesh()), new int[] {seed}, new double[1], Progress.NONE);
    for (int v = 0; v < fine.mesh().vertexCount(); v++) {
      double straight = Faces.length(fine.mesh(), seed, v);
      assertThat(distances.key(v, 0)).isCloseTo(straight, within(1e-2));
    }
  }

  @Test
  void followsGreatCirclesOnASphere() {
    double radius = 10;
    Mesh sphere = Shapes.icosphere(radius, 4);
    CellDistances distances =
        CellDistances.from(Surface.of(sphere), new int[] {5}, new double[1], Progress.NONE);
    for (int v = 0; v < sphere.vertexCount(); v++) {
      double cosine =
          (sphere.x(5) * sphere.x(v) + sphere.y(5) * sphere.y(v) + sphere.z(5) * sphere.z(v))
              / (radius * radius);
      double arc = radius * Math.acos(Math.max(-1, Math.min(1, cosine)));
      // Fronts carried straight over a curved surface come a little early on the far side.
      assertThat(distances.key(v, 0)).isCloseTo(arc, within(0.015 * Math.PI * radius));
    }
  }

  /** Weighted cells of a plane are known at every vertex: the least distance minus weight. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void cellsOfAPlaneAreTheNearestByWeight(long seedOfRandom) {
    Mesh plane = Shapes.plane(100, 80, 50, 40);
    Random random = new Random(seedOfRandom);
    int cells = 9;
    int[] seed = random.ints(cells, 0, plane.vertexCount()).distinct().toArray();
    double[] weight = random.doubles(seed.length, 0, 6).toArray();
    CellDistances distances = CellDistances.from(Surface.of(plane), seed, weight, Progress.NONE);
    for (int v = 0; v < plane.vertexCount(); v++) {
      double least = Double.POSITIVE_INFINITY;
      for (int i = 0; i < seed.length; i++) {
        least = Math.min(least, Faces.length(plane, seed[i], v) - weight[i]);
      }
      assertThat(distances.key(v, distances.cell(v))).isCloseTo(least, within(2e-2));
    }
  }

  @Test
  void measuresTwoHalvesOfARectangle() {
    // Seeds at the middles of the left and right half: the border is the middle line, 60 long.
    Mesh plane = Shapes.plane(100, 60, 40, 30);
    int[] seed = {nearest(plane, -25, 0), nearest(plane, 25, 0)};
    Surface surface = Surface.of(plane);
    double shift = 4;
    CellDistances distances =
        CellDistances.from(surface, seed, new double[] {shift, 0}, Progress.NONE);
    CellMeasure measure = CellMeasure.of(surface, distances, 2);
    double sum = measure.areaMm2()[0] + measure.areaMm2()[1];
    assertThat(sum).isCloseTo(6000, within(1e-6));
    // A branch of a hyperbola with the seeds, 50 apart, as foci, and vertex at shift/2 = a:
    // x = a sqrt(1 + (y/b)²), b² = 25² - a². Integrated over y from -30 to 30.
    double a = shift / 2;
    double b = Math.sqrt(25 * 25 - a * a);
    double y = 30 / b;
    double beyond = a * b * (y * Math.sqrt(1 + y * y) + Math.log(y + Math.sqrt(1 + y * y)));
    assertThat(measure.areaMm2()[0]).isCloseTo(3000 + beyond, within(0.5));
    assertThat(measure.borders().count()).isOne();
    assertThat(measure.borders().lengthMm()[0]).isBetween(60.0, 60.5);
  }

  private static int nearest(Mesh mesh, double x, double y) {
    int best = 0;
    for (int v = 1; v < mesh.vertexCount(); v++) {
      if (Math.hypot(mesh.x(v) - x, mesh.y(v) - y)
          < Math.hypot(mesh.x(best) - x, mesh.y(best) - y)) {
        best = v;
      }
    }
    return best;
  }
}
