package org.seamwright.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleFunction;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Bends within the surface against geodesic curvatures in closed form. */
class EdgeShapeTest {
  private static final int SIDES = 2000;

  private static MaskEdge line(
      boolean closed, DoubleFunction<double[]> place, DoubleFunction<double[]> normal) {
    double[] points = new double[3 * SIDES];
    double[] normals = new double[3 * SIDES];
    double length = 0;
    for (int i = 0; i < SIDES; i++) {
      double t = i / (double) (closed ? SIDES : SIDES - 1);
      System.arraycopy(place.apply(t), 0, points, 3 * i, 3);
      System.arraycopy(normal.apply(t), 0, normals, 3 * i, 3);
    }
    for (int i = 0; i < (closed ? SIDES : SIDES - 1); i++) {
      int j = (i + 1) % SIDES;
      length +=
          Math.hypot(
              Math.hypot(points[3 * j] - points[3 * i], points[3 * j + 1] - points[3 * i + 1]),
              points[3 * j + 2] - points[3 * i + 2]);
    }
    return new MaskEdge(points, closed, length, normals);
  }

  private static double[] round(double r, double t, double z) {
    return new double[] {r * Math.cos(2 * Math.PI * t), r * Math.sin(2 * Math.PI * t), z};
  }

  @ParameterizedTest
  @ValueSource(doubles = {8, 20, 150})
  void circleOnAPlaneBendsWithItsRadius(double r) {
    EdgeShape shape = EdgeShape.of(line(true, t -> round(r, t, 0), t -> new double[] {0, 0, 1}));
    assertThat(shape.closed()).isTrue();
    assertThat(shape.tightestMm()).isCloseTo(r, Percentage.withPercentage(1));
  }

  /** A circle of 60 mm drawn with sides of 9.4 mm must not seem to have sharp bends at them. */
  @Test
  void coarsePolygonIsNoTighterThanItsCircle() {
    int n = 40;
    double[] points = new double[3 * n];
    double[] normals = new double[3 * n];
    for (int i = 0; i < n; i++) {
      System.arraycopy(round(60, i / (double) n, 0), 0, points, 3 * i, 3);
      normals[3 * i + 2] = 1;
    }
    double length = 2 * n * 60 * Math.sin(Math.PI / n);
    assertThat(EdgeShape.of(new MaskEdge(points, true, length, normals)).tightestMm())
        .isCloseTo(60, Percentage.withPercentage(15));
  }

  /** A parallel at polar angle θ has geodesic curvature cot θ / R (do Carmo, 4-4). */
  @ParameterizedTest
  @ValueSource(doubles = {0.3, 0.8, 1.4})
  void parallelOfASphere(double polar) {
    double r = 60;
    EdgeShape shape =
        EdgeShape.of(
            line(
                true,
                t -> round(r * Math.sin(polar), t, r * Math.cos(polar)),
                t -> round(Math.sin(polar), t, Math.cos(polar))));
    assertThat(shape.tightestMm()).isCloseTo(r * Math.tan(polar), Percentage.withPercentage(1));
  }

  /** A helix is straight on the unrolled cylinder: no tape has to bend for it. */
  @Test
  void helixIsStraight() {
    EdgeShape shape = EdgeShape.of(line(false, t -> round(25, t, 80 * t), t -> round(1, t, 0)));
    assertThat(shape.corners()).isZero();
    assertThat(shape.tightestMm()).isGreaterThan(1000);
  }

  /**
   * A plane at a slope m through a cylinder of radius R cuts it in an ellipse that unrolls to z = m
   * R sin(x / R), whose tightest bend, at the crests, has the radius 1 / |z″| = R / m.
   */
  @Test
  void ellipseOnACylinderUnrollsToASine() {
    double r = 40;
    double slope = 1.5;
    EdgeShape shape =
        EdgeShape.of(
            line(
                true,
                t -> round(r, t, slope * r * Math.sin(2 * Math.PI * t)),
                t -> round(1, t, 0)));
    assertThat(shape.tightestMm()).isCloseTo(r / slope, Percentage.withPercentage(2));
  }

  @Test
  void squareHasFourCornersAndStraightSides() {
    double[] points = {0, 0, 0, 50, 0, 0, 50, 50, 0, 0, 50, 0};
    double[] normals = {0, 0, 1, 0, 0, 1, 0, 0, 1, 0, 0, 1};
    EdgeShape shape = EdgeShape.of(new MaskEdge(points, true, 200, normals));
    assertThat(shape.closed()).isFalse();
    assertThat(shape.stretches()).hasSize(4);
    assertThat(shape.tightestMm()).isGreaterThan(1000);
    double places = shape.stretches().stream().mapToInt(s -> s.length - 1).sum();
    assertThat(places * shape.stepMm()).isCloseTo(200, within(1e-9));
  }
}
