package org.seamwright.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Geometry of single faces, and what a mesh refuses. */
class FacesTest {
  @Test
  void rightTriangleHasHalfTheRectangle() {
    Mesh mesh = Mesh.of(new double[] {1, 1, 1, 4, 1, 1, 1, 5, 1}, new int[] {0, 1, 2});
    assertThat(Faces.area(mesh, 0)).isEqualTo(6);
    double[] normal = new double[3];
    Faces.normal(mesh, 0, normal);
    assertThat(normal).containsExactly(0, 0, 1);
    double[] centroid = new double[3];
    Faces.centroid(mesh, 0, centroid);
    assertThat(centroid).containsExactly(2, 7.0 / 3, 1);
    assertThat(Faces.length(mesh, 1, 2)).isEqualTo(5);
  }

  @Test
  void areaAgreesWithHeronInFiftyDigits() {
    // Heron's formula from exact squared sides: 16 A² = 4 a²b² - (a² + b² - c²)².
    Random random = new Random(42);
    for (int i = 0; i < 200; i++) {
      double[] xyz = random.doubles(9, -100, 100).toArray();
      Mesh mesh = Mesh.of(xyz, new int[] {0, 1, 2});
      BigDecimal a = side2(xyz, 0, 1);
      BigDecimal b = side2(xyz, 1, 2);
      BigDecimal c = side2(xyz, 2, 0);
      BigDecimal d = a.add(b).subtract(c);
      double heron =
          new BigDecimal(4)
                  .multiply(a)
                  .multiply(b)
                  .subtract(d.multiply(d))
                  .sqrt(new MathContext(50))
                  .doubleValue()
              / 4;
      assertThat(Faces.area(mesh, 0)).isCloseTo(heron, within(1e-13 * heron));
    }
  }

  private static BigDecimal side2(double[] p, int v, int w) {
    BigDecimal sum = BigDecimal.ZERO;
    for (int axis = 0; axis < 3; axis++) {
      BigDecimal d = new BigDecimal(p[3 * v + axis]).subtract(new BigDecimal(p[3 * w + axis]));
      sum = sum.add(d.multiply(d));
    }
    return sum;
  }

  @Test
  void faceWithoutAreaHasNoNormal() {
    Mesh mesh = Mesh.of(new double[] {0, 0, 0, 1, 1, 1, 2, 2, 2}, new int[] {0, 1, 2});
    double[] normal = {7, 7, 7};
    Faces.normal(mesh, 0, normal);
    assertThat(normal).containsExactly(0, 0, 0);
    assertThat(Faces.area(mesh, 0)).isZero();
  }

  @Test
  void meshRefusesCornersThatAreNotThere() {
    assertThatThrownBy(() -> Mesh.of(new double[9], new int[] {0, 1, 3}))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("vertex 3 of 3");
    assertThatThrownBy(() -> Mesh.of(new double[9], new int[] {0, -1, 2}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Mesh.of(new double[8], new int[] {0, 1, 2}))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void boundsLeaveOutUnusedVertices() {
    Mesh mesh = Mesh.of(new double[] {0, 0, 0, 1, 0, 0, 0, 2, 0, 99, 99, 99}, new int[] {0, 1, 2});
    assertThat(mesh.bounds()).isEqualTo(new Bounds(0, 0, 0, 1, 2, 0));
  }
}
