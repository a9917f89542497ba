package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Blocks joined in any number against numbering by one plain map. */
class WeldBlockTest {
  private static final double[] VALUES = {0.0, -0.0, 1, -1, 0.5, 1e-300, 3e38, 1e6};

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void numberingIsThatOfOnePass(long seed) {
    Random random = new Random(seed);
    int corners = 3 * random.nextInt(1 << (2 + (int) seed));
    double[] p = new double[3 * corners];
    for (int i = 0; i < p.length; i++) {
      p[i] = seed % 2 == 0 ? VALUES[random.nextInt(VALUES.length)] : random.nextInt(12);
    }
    Map<List<Double>, Integer> numbers = new HashMap<>();
    int[] expected = new int[corners];
    for (int i = 0; i < corners; i++) {
      List<Double> key = List.of(p[3 * i] + 0.0, p[3 * i + 1] + 0.0, p[3 * i + 2] + 0.0);
      expected[i] = numbers.merge(key, numbers.size(), (old, fresh) -> old);
    }
    for (int count = 1; count <= 5; count++) {
      WeldBlock.Joined joined = join(p, corners, count, random.nextBoolean());
      assertThat(joined.corner()).as(count + " blocks").isEqualTo(expected);
      assertThat(joined.xyz()).hasSize(3 * numbers.size());
      for (int i = 0; i < corners; i++) {
        for (int axis = 0; axis < 3; axis++) {
          assertThat(joined.xyz()[3 * expected[i] + axis]).isEqualTo(p[3 * i + axis] + 0.0);
        }
      }
    }
  }

  private static WeldBlock.Joined join(double[] p, int corners, int count, boolean shared) {
    int[] corner = new int[corners];
    WeldBlock[] blocks = new WeldBlock[count];
    for (int b = 0; b < count; b++) {
      int from = corners / 3 * b / count * 3;
      int to = corners / 3 * (b + 1) / count * 3;
      blocks[b] = shared ? WeldBlock.in(corner, from, to - from) : WeldBlock.ofAbout(7);
      for (int i = from; i < to; i++) {
        blocks[b].put(p[3 * i], p[3 * i + 1], p[3 * i + 2]);
      }
      blocks[b].close();
    }
    return WeldBlock.join(blocks);
  }
}
