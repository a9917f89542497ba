package org.seamwright.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.testsupport.Shapes;

/** Facet area and volume against sums in 22 digits, near the origin and far from it. */
class ExactSumsTest {
  private static final MathContext DIGITS = new MathContext(22);

  private static Survey survey(Mesh mesh) {
    return Surveyor.survey(mesh, Topology.of(mesh), 0, Progress.NONE);
  }

  private static BigDecimal[] edge(Mesh mesh, int from, int to) {
    BigDecimal[] edge = new BigDecimal[3];
    for (int axis = 0; axis < 3; axis++) {
      edge[axis] =
          new BigDecimal(mesh.xyz()[3 * to + axis])
              .subtract(new BigDecimal(mesh.xyz()[3 * from + axis]));
    }
    return edge;
  }

  private static BigDecimal[] cross(BigDecimal[] a, BigDecimal[] b) {
    BigDecimal[] c = new BigDecimal[3];
    for (int i = 0; i < 3; i++) {
      int j = (i + 1) % 3;
      int k = (i + 2) % 3;
      c[i] = a[j].multiply(b[k], DIGITS).subtract(a[k].multiply(b[j], DIGITS), DIGITS);
    }
    return c;
  }

  private static BigDecimal dot(BigDecimal[] a, BigDecimal[] b) {
    BigDecimal sum = BigDecimal.ZERO;
    for (int i = 0; i < 3; i++) {
      sum = sum.add(a[i].multiply(b[i], DIGITS), DIGITS);
    }
    return sum;
  }

  private static void assertExact(Mesh mesh) {
    BigDecimal area = BigDecimal.ZERO;
    BigDecimal volume = BigDecimal.ZERO;
    int[] corner = mesh.corner();
    for (int h = 0; h < corner.length; h += 3) {
      BigDecimal[] normal =
          cross(edge(mesh, corner[h], corner[h + 1]), edge(mesh, corner[h], corner[h + 2]));
      area = area.add(dot(normal, normal).sqrt(DIGITS), DIGITS);
      volume = volume.add(dot(edge(mesh, corner[0], corner[h]), normal), DIGITS);
    }
    double exactArea = area.doubleValue() / 2;
    double exactVolume = volume.doubleValue() / 6;
    Survey survey = survey(mesh);
    assertThat(survey.areaMm2()).isCloseTo(exactArea, within(1e-12 * exactArea));
    assertThat(survey.volumeMm3())
        .isCloseTo(exactVolume, within(1e-12 * Math.max(Math.abs(exactVolume), exactArea)));
    assertThat(survey.areaMm2()).isEqualTo(Area.ofFaces(mesh));
  }

  @ParameterizedTest
  @ValueSource(strings = {"cup.stl", "plaque.obj"})
  void sampleModels(String name) throws Exception {
    assertExact(MeshFiles.read(Path.of("models", name), Progress.NONE).mesh());
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 1e-6, 25.4, 1000, 1e9})
  void anyUnit(double factor) {
    assertExact(Shapes.torus(30, 7, 60, 30).scaledBy(factor));
  }

  @Test
  void farFromTheOrigin() {
    // The coordinates are rounded by moving; the sums are of the rounded ones.
    assertExact(Shapes.moved(Shapes.torus(30, 7, 60, 30), 1e6, -1e6, 1e6));
  }

  /**
   * A torus of radii 200 and 40 mm with ripples of 1.5 and 0.4 mm, vertices in single precision;
   * the area was summed over the same vertices in 80-bit arithmetic by a program in C.
   */
  @Test
  void rippledTorusOfAMillionFacets() {
    int nu = 1000;
    int nv = 500;
    double[] xyz = new double[3 * nu * nv];
    for (int u = 0; u < nu; u++) {
      for (int v = 0; v < nv; v++) {
        double a = 2 * Math.PI * u / nu;
        double b = 2 * Math.PI * v / nv;
        double r = 40 + 1.5 * Math.sin(9 * a) * Math.cos(5 * b) + 0.4 * Math.sin(41 * b);
        int at = 3 * (u * nv + v);
        xyz[at] = (float) ((200 + r * Math.cos(b)) * Math.cos(a));
        xyz[at + 1] = (float) ((200 + r * Math.cos(b)) * Math.sin(a));
        xyz[at + 2] = (float) (r * Math.sin(b));
      }
    }
    int[] corner = new int[6 * nu * nv];
    int n = 0;
    for (int u = 0; u < nu; u++) {
      for (int v = 0; v < nv; v++) {
        int a = u * nv + v;
        int b = (u + 1) % nu * nv + v;
        int c = (u + 1) % nu * nv + (v + 1) % nv;
        int d = u * nv + (v + 1) % nv;
        for (int vertex : new int[] {a, b, c, a, c, d}) {
          corner[n++] = vertex;
        }
      }
    }
    Survey survey = survey(Mesh.of(xyz, corner));
    // Sines may differ in the last digit between languages and so a few vertices in single
    // precision.
    assertThat(survey.areaMm2()).isCloseTo(329846.084139178, within(1e-6));
    // The surface itself, by the trapezoidal rule over its parameters (which converges beyond any
    // power of the step on periodic functions; 400 x 800 and 1000 x 2400 points agree in 14
    // digits).
    assertThat(survey.smooth().areaMm2()).isCloseTo(330122.109108677, within(0.1 * 276.0));
    assertThat(survey.smooth().lowMm2()).isLessThan(330122.109);
    assertThat(survey.smooth().highMm2()).isGreaterThan(330122.110);
  }

  @Test
  void oneThreadGivesTheSameDigitsAsMany() throws Exception {
    Mesh mesh = Meshing.JITTERED.lay(KnownSurface.torus(50, 5), 60_000, new java.util.Random(1));
    Survey many = survey(mesh);
    ForkJoinPool one = new ForkJoinPool(1);
    try {
      assertThat(one.submit(() -> survey(mesh)).get()).isEqualTo(many);
    } finally {
      one.shutdown();
    }
  }
}
