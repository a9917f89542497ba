package org.seamwright.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LabelPlanTest {
  private static final int W = 500;
  private static final int H = 400;
  private static final double RADIUS = 13;

  /** A patchwork in an ellipse: each pixel belongs to the nearest of some random places. */
  private static int[] patchwork(long seed, int patches) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] x = new double[patches];
    double[] y = new double[patches];
    for (int i = 0; i < patches; i++) {
      x[i] = 80 + random.nextDouble() * (W - 160);
      y[i] = 20 + random.nextDouble() * (H - 40);
    }
    int[] region = new int[W * H];
    for (int i = 0; i < region.length; i++) {
      int px = i % W;
      int py = i / W;
      double e =
          Math.pow((px - W / 2.0) / (W / 2.0 - 70), 2)
              + Math.pow((py - H / 2.0) / (H / 2.0 - 10), 2);
      int best = 0;
      for (int k = 1; k < patches; k++) {
        if (Math.hypot(px - x[k], py - y[k]) < Math.hypot(px - x[best], py - y[best])) {
          best = k;
        }
      }
      region[i] = e > 1 ? Image.NOTHING : best + 1;
    }
    return region;
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void labelsKeepApartAndLeadersNeverCross(long seed) {
    int[] region = patchwork(seed, 8 + (int) (seed * 7));
    LabelPlan plan = LabelPlan.of(region, W, H, RADIUS);
    List<LabelPlan.Label> labels = plan.labels();
    assertThat(labels).as("seed %d", seed).isNotEmpty();
    for (LabelPlan.Label a : labels) {
      assertThat(a.x() - a.radius()).as("left").isGreaterThanOrEqualTo(0);
      assertThat(a.x() + a.radius()).as("right").isLessThanOrEqualTo(W);
      assertThat(a.y() - a.radius()).as("top").isGreaterThanOrEqualTo(0);
      assertThat(a.y() + a.radius()).as("bottom").isLessThanOrEqualTo(H);
      for (LabelPlan.Label b : labels) {
        if (a.region() < b.region()) {
          assertThat(Math.hypot(a.x() - b.x(), a.y() - b.y()))
              .as("seed %d: %s and %s", seed, a, b)
              .isGreaterThan(a.radius() + b.radius());
          if (a.leader() && b.leader()) {
            assertThat(
                    Leaders.cross(
                        a.anchorX(),
                        a.anchorY(),
                        a.portX(),
                        a.y(),
                        b.anchorX(),
                        b.anchorY(),
                        b.portX(),
                        b.y()))
                .as("seed %d: %s crosses %s", seed, a, b)
                .isFalse();
          }
        }
        if (a.leader() && a.region() != b.region()) {
          assertThat(distance(b.x(), b.y(), a))
              .as("seed %d: %s under leader of %s", seed, b, a)
              .isGreaterThan(b.radius());
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14})
  void numbersStandInsideTheirRegion(long seed) {
    int[] region = patchwork(seed, 25);
    for (LabelPlan.Label l : LabelPlan.of(region, W, H, RADIUS).labels()) {
      int anchor = ((int) l.anchorY()) * W + (int) l.anchorX();
      assertThat(region[anchor]).as("seed %d", seed).isEqualTo(l.region());
      if (!l.leader()) {
        for (int step = 0; step < 64; step++) {
          int x = (int) (l.x() + l.radius() * Math.cos(step * Math.PI / 32));
          int y = (int) (l.y() + l.radius() * Math.sin(step * Math.PI / 32));
          assertThat(region[y * W + x]).as("seed %d", seed).isEqualTo(l.region());
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23, 24, 25, 26})
  void everyRegionIsLabelledOrToldOf(long seed) {
    int[] region = patchwork(seed, 60);
    LabelPlan plan = LabelPlan.of(region, W, H, RADIUS);
    List<Integer> named = new ArrayList<>(plan.unplaced());
    plan.labels().forEach(l -> named.add(l.region()));
    int[] pixels = new int[61];
    for (int id : region) {
      if (id > 0) {
        pixels[id]++;
      }
    }
    for (int id = 1; id <= 60; id++) {
      // 24 pixels are the least that is labelled.
      assertThat(named.contains(id)).as("seed %d region %d", seed, id).isEqualTo(pixels[id] >= 24);
    }
  }

  private static double distance(double x, double y, LabelPlan.Label l) {
    double dx = l.portX() - l.anchorX();
    double dy = l.y() - l.anchorY();
    double t = ((x - l.anchorX()) * dx + (y - l.anchorY()) * dy) / (dx * dx + dy * dy);
    double s = Math.max(0, Math.min(1, t));
    return Math.hypot(x - l.anchorX() - s * dx, y - l.anchorY() - s * dy);
  }
}
