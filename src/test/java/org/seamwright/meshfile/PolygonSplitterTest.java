package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Splitting keeps the polygon's area, whose exact value is the shoelace formula's. */
class PolygonSplitterTest {
  private final Growing.Ints corner = new Growing.Ints();
  private final PolygonSplitter splitter = new PolygonSplitter(corner);

  /** Splits a polygon given in its plane, laid into space by two orthonormal axes and an origin. */
  private double[][] split(double[] u, double[] v, double[] along, double[] across, double[] at) {
    Growing.Doubles points = new Growing.Doubles();
    Growing.Ints polygon = new Growing.Ints();
    for (int i = 0; i < u.length; i++) {
      for (int axis = 0; axis < 3; axis++) {
        points.add(at[axis] + u[i] * along[axis] + v[i] * across[axis]);
      }
      polygon.add(i);
    }
    int triangles = splitter.split(points, polygon, 0, u.length);
    assertThat(triangles).isEqualTo(u.length - 2);
    assertThat(corner.size()).isEqualTo(3 * triangles);
    double[][] areas = new double[triangles][];
    for (int t = 0; t < triangles; t++) {
      int a = corner.get(3 * t);
      int b = corner.get(3 * t + 1);
      int c = corner.get(3 * t + 2);
      double signed = ((u[b] - u[a]) * (v[c] - v[a]) - (v[b] - v[a]) * (u[c] - u[a])) / 2;
      areas[t] = new double[] {signed};
    }
    return areas;
  }

  private double[][] splitFlat(double[] u, double[] v) {
    return split(u, v, new double[] {1, 0, 0}, new double[] {0, 1, 0}, new double[] {0, 0, 0});
  }

  private static double sum(double[][] areas) {
    double sum = 0;
    for (double[] area : areas) {
      sum += area[0];
    }
    return sum;
  }

  private static double shoelace(double[] u, double[] v) {
    double sum = 0;
    for (int i = 0; i < u.length; i++) {
      int j = (i + 1) % u.length;
      sum += u[i] * v[j] - u[j] * v[i];
    }
    return sum / 2;
  }

  private void assertExact(double[] u, double[] v) {
    double[][] areas = splitFlat(u, v);
    double area = shoelace(u, v);
    assertThat(sum(areas)).isCloseTo(area, within(1e-12 * Math.abs(area)));
    for (double[] part : areas) {
      assertThat(part[0] * Math.signum(area)).as("no triangle turned over").isNotNegative();
    }
    assertThat(splitter.tangled()).isZero();
    assertThat(splitter.notFlat()).isZero();
  }

  @Test
  void concaveQuadIsCutThroughItsNotch() {
    // Two darts: cutting from wing to wing would cover more than the dart.
    assertExactAnyTurn(new double[] {0, 2, 0.5, 0}, new double[] {0, 0, 0.5, 2});
    assertExactAnyTurn(new double[] {0, 4, 3, 4}, new double[] {0, -1, 0, 1});
  }

  private static void assertExactAnyTurn(double[] u, double[] v) {
    for (int turn = 0; turn < 4; turn++) {
      double[] a = new double[4];
      double[] b = new double[4];
      for (int i = 0; i < 4; i++) {
        a[i] = u[(i + turn) % 4];
        b[i] = v[(i + turn) % 4];
      }
      PolygonSplitterTest other = new PolygonSplitterTest();
      other.assertExact(a, b);
    }
  }

  @Test
  void cornersInLineDoNotMakeFacesWithoutArea() {
    double[][] areas = splitFlat(new double[] {0, 1, 2, 2, 2, 0}, new double[] {0, 0, 0, 1, 2, 2});
    assertThat(sum(areas)).isEqualTo(4);
    for (double[] area : areas) {
      assertThat(area[0]).isPositive();
    }
  }

  @Test
  void combKeepsItsArea() {
    double[] u = new double[2 * 9 + 2];
    double[] v = new double[u.length];
    for (int i = 0; i <= 18; i++) {
      u[i] = 18 - i;
      v[i] = i % 2 == 0 ? 10 : 1;
    }
    u[19] = 0;
    v[19] = 0;
    u = java.util.Arrays.copyOf(u, 21);
    v = java.util.Arrays.copyOf(v, 21);
    u[20] = 18;
    v[20] = 0;
    assertExact(u, v);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void starShapedPolygonsKeepTheirAreaInAnyPlane(long seed) {
    Random random = new Random(seed);
    int n = 5 + random.nextInt(200);
    double[] u = new double[n];
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      double radius = 0.1 + random.nextDouble();
      u[i] = radius * Math.cos(2 * Math.PI * i / n);
      v[i] = radius * Math.sin(2 * Math.PI * i / n);
    }
    double tilt = random.nextDouble() * Math.PI;
    double turn = random.nextDouble() * Math.PI;
    double[] along = {Math.cos(turn), Math.sin(turn), 0};
    double[] across = {
      -Math.sin(turn) * Math.cos(tilt), Math.cos(turn) * Math.cos(tilt), Math.sin(tilt)
    };
    double[][] areas = split(u, v, along, across, new double[] {5, -3, 2});
    double area = shoelace(u, v);
    assertThat(sum(areas)).as("seed %d", seed).isCloseTo(area, within(1e-12 * area));
    for (double[] part : areas) {
      assertThat(part[0]).as("seed %d", seed).isGreaterThan(-1e-14);
    }
    assertThat(splitter.tangled()).isZero();
    assertThat(splitter.notFlat()).isZero();
  }

  @Test
  void polygonWithABridgeToItsHoleKeepsItsArea() {
    // A 4 x 4 square with a 2 x 2 hole, joined by a bridge walked both ways: area 12.
    double[] u = {0, 4, 4, 0, 0, 1, 1, 3, 3, 1};
    double[] v = {0, 0, 4, 4, 0, 1, 3, 3, 1, 1};
    assertThat(sum(splitFlat(u, v))).isCloseTo(12, within(1e-12));
  }

  @Test
  void repeatedCornersBecomeFacesToBeDropped() {
    double[] u = {0, 0, 2, 2, 2, 0};
    double[] v = {0, 0, 0, 2, 2, 2};
    double[][] areas = splitFlat(u, v);
    assertThat(sum(areas)).isEqualTo(4);
    assertThat(splitter.tangled()).isZero();
  }

  @Test
  void polygonThatCrossesItselfIsTold() {
    splitFlat(new double[] {0, 2, 0, 1}, new double[] {0, 2, 2, 0});
    assertThat(splitter.tangled()).isEqualTo(1);
  }
}
