package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Bounds;

/** Pixels and rays against {@link Pinhole} and against each other. */
class OrbitCameraTest {
  private static final double WIDTH = 900;
  private static final double HEIGHT = 700;

  /** A pixel is far coarser than the single-precision rotations. */
  private static final double PIXEL = 0.02;

  private static final double TAN = Math.tan(Math.toRadians(OrbitCamera.FIELD_OF_VIEW_DEGREES) / 2);

  private static OrbitCamera camera(Bounds b) {
    double[] corners = new double[24];
    for (int i = 0; i < 8; i++) {
      corners[3 * i] = (i & 1) == 0 ? b.minX() : b.maxX();
      corners[3 * i + 1] = (i & 2) == 0 ? b.minY() : b.maxY();
      corners[3 * i + 2] = (i & 4) == 0 ? b.minZ() : b.maxZ();
    }
    OrbitCamera camera = new OrbitCamera(b, corners);
    camera.resize(WIDTH, HEIGHT);
    return camera;
  }

  private static Bounds box(double x, double y, double z) {
    return new Bounds(x - 60, y - 40, z - 20, x + 60, y + 40, z + 20);
  }

  @Test
  void putsKnownPointsWhereSimilarTrianglesSay() {
    OrbitCamera camera = camera(box(0, 0, 0));
    camera.moveTo(new OrbitCamera.Pose(0, 0, 0, 0, 0, 500));
    // In front: x to the right, z up, the viewer at y = -500.
    OrbitCamera.OnScreen middle = camera.project(0, 0, 0);
    assertThat(middle.x()).isCloseTo(WIDTH / 2, within(PIXEL));
    assertThat(middle.y()).isCloseTo(HEIGHT / 2, within(PIXEL));
    assertThat(middle.depthMm()).isCloseTo(500, within(1e-3));
    OrbitCamera.OnScreen near = camera.project(30, -100, 20);
    assertThat(near.x()).isCloseTo(WIDTH / 2 + 30 / (400 * TAN) * HEIGHT / 2, within(PIXEL));
    assertThat(near.y()).isCloseTo(HEIGHT / 2 - 20 / (400 * TAN) * HEIGHT / 2, within(PIXEL));
    // The upper edge of the viewport is half the angle of view up.
    assertThat(camera.project(0, 0, 500 * TAN).y()).isCloseTo(0, within(PIXEL));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void agreesWithAPinholeAndCastsBack(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 200; i++) {
      double far = i % 2 == 0 ? 0 : 1e5;
      OrbitCamera camera = camera(box(far, -far, far));
      camera.moveTo(
          new OrbitCamera.Pose(
              720 * random.nextDouble() - 360,
              180 * random.nextDouble() - 90,
              far + 50 * random.nextGaussian(),
              -far + 50 * random.nextGaussian(),
              far + 50 * random.nextGaussian(),
              300 + 500 * random.nextDouble()));
      double x = far + 120 * random.nextDouble() - 60;
      double y = -far + 80 * random.nextDouble() - 40;
      double z = far + 40 * random.nextDouble() - 20;
      OrbitCamera.OnScreen at = camera.project(x, y, z);
      double[] expected = Pinhole.pixel(camera.pose(), WIDTH, HEIGHT, x, y, z);
      assertThat(at.x()).as("seed %d, x", seed).isCloseTo(expected[0], within(PIXEL));
      assertThat(at.y()).as("seed %d, y", seed).isCloseTo(expected[1], within(PIXEL));
      PickRay ray = camera.ray(at.x(), at.y());
      double distance =
          (x - ray.ox()) * ray.dx() + (y - ray.oy()) * ray.dy() + (z - ray.oz()) * ray.dz();
      // A thousandth of a millimetre at some 500 mm: single precision allows 500 · 2^-23 · a few.
      assertThat(ray.at(distance, 0)).as("seed %d", seed).isCloseTo(x, within(1e-3));
      assertThat(ray.at(distance, 1)).as("seed %d", seed).isCloseTo(y, within(1e-3));
      assertThat(ray.at(distance, 2)).as("seed %d", seed).isCloseTo(z, within(1e-3));
      assertThat(distance).isPositive();
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12})
  void drawsWithTheSameCameraAsItPicks(long seed) {
    Random random = new Random(seed);
    OrbitCamera camera = camera(box(70, -30, 10));
    for (int i = 0; i < 100; i++) {
      camera.moveTo(
          new OrbitCamera.Pose(
              360 * random.nextDouble(), 180 * random.nextDouble() - 90, 75, -20, 5, 400));
      double x = 70 + 20 * random.nextGaussian();
      double y = -30 + 20 * random.nextGaussian();
      double z = 10 + 20 * random.nextGaussian();
      double[] m = camera.cameraMatrix();
      // The inverse of a rigid motion: turned back, about the piece's middle.
      double[] p = {x - 70 - m[3], y + 30 - m[7], z - 10 - m[11]};
      double[] c = new double[3];
      for (int axis = 0; axis < 3; axis++) {
        c[axis] = m[axis] * p[0] + m[4 + axis] * p[1] + m[8 + axis] * p[2];
      }
      OrbitCamera.OnScreen at = camera.project(x, y, z);
      double scale = HEIGHT / 2 / TAN / c[2];
      assertThat(WIDTH / 2 + scale * c[0]).isCloseTo(at.x(), within(PIXEL));
      assertThat(HEIGHT / 2 + scale * c[1]).isCloseTo(at.y(), within(PIXEL));
      assertThat(c[2]).isBetween(camera.nearClipMm(), camera.farClipMm());
    }
  }

  @ParameterizedTest
  @EnumSource(StandardView.class)
  void fitsTheOutlineTightlyIntoTheMiddle(StandardView view) {
    Bounds b = box(300, 200, -100);
    OrbitCamera camera = camera(b);
    camera.moveTo(camera.fitted(view));
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double top = Double.POSITIVE_INFINITY;
    double bottom = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < 8; i++) {
      OrbitCamera.OnScreen at =
          camera.project(
              (i & 1) == 0 ? b.minX() : b.maxX(),
              (i & 2) == 0 ? b.minY() : b.maxY(),
              (i & 4) == 0 ? b.minZ() : b.maxZ());
      left = Math.min(left, at.x());
      right = Math.max(right, at.x());
      top = Math.min(top, at.y());
      bottom = Math.max(bottom, at.y());
    }
    double share = Math.max((right - left) / WIDTH, (bottom - top) / HEIGHT);
    assertThat(left).isGreaterThan(0);
    assertThat(right).isLessThan(WIDTH);
    assertThat(top).isGreaterThan(0);
    assertThat(bottom).isLessThan(HEIGHT);
    assertThat(share).isCloseTo(OrbitCamera.FIT_FILL, within(0.03));
    // The wider of the two extents lies in the middle; perspective shifts the other a little.
    boolean wide = (right - left) / WIDTH > (bottom - top) / HEIGHT;
    assertThat(wide ? left + right - WIDTH : top + bottom - HEIGHT).isCloseTo(0, within(0.5));
  }

  @Test
  void showsEachSideFromItsStandardView() {
    OrbitCamera camera = camera(box(0, 0, 0));
    // Which way x, y and z run on the screen: right is positive, up is positive.
    assertRuns(camera, StandardView.FRONT, 1, 0, 1);
    assertRuns(camera, StandardView.BACK, -1, 0, 1);
    assertRuns(camera, StandardView.TOP, 1, 1, 0);
    assertRuns(camera, StandardView.BOTTOM, 1, -1, 0);
    camera.moveTo(camera.fitted(StandardView.RIGHT));
    assertThat(camera.project(0, 20, 0).x()).isGreaterThan(camera.project(0, 0, 0).x() + 10);
    assertThat(camera.project(20, 0, 0).depthMm()).isLessThan(camera.project(0, 0, 0).depthMm());
    camera.moveTo(camera.fitted(StandardView.LEFT));
    assertThat(camera.project(0, 20, 0).x()).isLessThan(camera.project(0, 0, 0).x() - 10);
  }

  private static void assertRuns(OrbitCamera camera, StandardView view, int x, int y, int z) {
    camera.moveTo(camera.fitted(view));
    OrbitCamera.OnScreen o = camera.project(0, 0, 0);
    assertThat(Math.signum(camera.project(20, 0, 0).x() - o.x())).as("%s x", view).isEqualTo(x);
    double up = z == 0 ? camera.project(0, 20, 0).y() : camera.project(0, 0, 20).y();
    assertThat(Math.signum(o.y() - up)).as("%s up", view).isEqualTo(z == 0 ? y : z);
  }

  @Test
  void keepsThePointUnderThePointerWhileZooming() {
    OrbitCamera camera = camera(box(10, 20, 30));
    camera.moveTo(new OrbitCamera.Pose(40, 20, 12, 18, 31, 600));
    double[] anchor = {40, 0, 45};
    OrbitCamera.OnScreen before = camera.project(40, 0, 45);
    camera.zoom(0.5, anchor);
    OrbitCamera.OnScreen after = camera.project(40, 0, 45);
    assertThat(after.x()).isCloseTo(before.x(), within(PIXEL));
    assertThat(after.y()).isCloseTo(before.y(), within(PIXEL));
    assertThat(after.depthMm()).isCloseTo(before.depthMm() / 2, within(1e-3));
    double[] aside = camera.atOrbitDepth(700, 100);
    camera.zoom(1.7, aside);
    OrbitCamera.OnScreen same = camera.project(aside[0], aside[1], aside[2]);
    assertThat(same.x()).isCloseTo(700, within(PIXEL));
    assertThat(same.y()).isCloseTo(100, within(PIXEL));
  }

  @Test
  void stopsZoomingBeforeItReachesThePieceOrLosesIt() {
    OrbitCamera camera = camera(box(0, 0, 0));
    for (int i = 0; i < 100; i++) {
      camera.zoom(0.5, new double[] {0, 0, 0});
    }
    assertThat(camera.pose().distance()).isPositive();
    assertThat(camera.nearClipMm()).isPositive().isLessThan(camera.pose().distance());
    for (int i = 0; i < 100; i++) {
      camera.zoom(2, new double[] {0, 0, 0});
    }
    assertThat(camera.pose().distance()).isLessThan(1e5);
  }

  @Test
  void movesWhatIsOrbitedWithThePointer() {
    OrbitCamera camera = camera(box(0, 0, 0));
    camera.moveTo(new OrbitCamera.Pose(-70, 35, 5, 6, 7, 450));
    camera.pan(83, -41);
    OrbitCamera.OnScreen at = camera.project(5, 6, 7);
    assertThat(at.x()).isCloseTo(WIDTH / 2 + 83, within(PIXEL));
    assertThat(at.y()).isCloseTo(HEIGHT / 2 - 41, within(PIXEL));
  }

  @Test
  void neverTipsOverThePoles() {
    OrbitCamera camera = camera(box(0, 0, 0));
    camera.orbit(10, 400);
    assertThat(camera.pose().elevationDegrees()).isEqualTo(90);
    camera.orbit(0, -900);
    assertThat(camera.pose().elevationDegrees()).isEqualTo(-90);
  }

  @Test
  void turnsTheShorterWayRound() {
    OrbitCamera.Pose from = new OrbitCamera.Pose(170, 0, 0, 0, 0, 100);
    OrbitCamera.Pose to = new OrbitCamera.Pose(-170, 20, 2, 4, 6, 400);
    OrbitCamera.Pose half = from.towards(to, 0.5);
    assertThat(half.azimuthDegrees()).isCloseTo(180, within(1e-9));
    assertThat(half.elevationDegrees()).isCloseTo(10, within(1e-9));
    assertThat(half.z()).isCloseTo(3, within(1e-9));
    // Half-way between two distances as the eye sees it: their geometric mean.
    assertThat(half.distance()).isCloseTo(200, within(1e-9));
    assertThat(from.towards(to, 1).distance()).isCloseTo(400, within(1e-9));
  }
}
