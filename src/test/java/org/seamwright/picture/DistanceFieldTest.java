package org.seamwright.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DistanceFieldTest {
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void agreesWithTryingAllPairs(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int w = 5 + random.nextInt(40);
    int h = 5 + random.nextInt(40);
    boolean[] blocked = new boolean[w * h];
    for (int i = 0; i < 1 + random.nextInt(12); i++) {
      blocked[random.nextInt(w * h)] = true;
    }
    float[] squared = DistanceField.squared(blocked, w, h);
    for (int i = 0; i < blocked.length; i++) {
      float best = Float.POSITIVE_INFINITY;
      for (int j = 0; j < blocked.length; j++) {
        if (blocked[j]) {
          float dx = i % w - j % w;
          float dy = i / w - j / w;
          best = Math.min(best, dx * dx + dy * dy);
        }
      }
      assertThat(squared[i]).as("seed %d pixel %d", seed, i).isEqualTo(best);
    }
  }
}
