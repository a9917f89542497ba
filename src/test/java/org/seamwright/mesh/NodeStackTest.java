package org.seamwright.mesh;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The stack gives what a list does that is filtered and sorted by branches. */
class NodeStackTest {
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void fourAreFilteredAndTheNearestComesFirst(long seed) {
    Random random = new Random(seed);
    NodeStack stack = new NodeStack();
    List<Float> expected = new ArrayList<>();
    for (int round = 0; round < 2000; round++) {
      float limit = random.nextInt(10) == 0 ? Float.MAX_VALUE : random.nextInt(6);
      long[] key = new long[4];
      List<Float> some = new ArrayList<>();
      for (int k = 0; k < 4; k++) {
        // Few values, so that many are equal or just at the limit.
        float measure = random.nextInt(20) == 0 ? Float.POSITIVE_INFINITY : random.nextInt(8);
        boolean missed = random.nextInt(5) == 0;
        int reference = random.nextInt();
        key[k] =
            random.nextBoolean() && !missed
                ? NodeStack.key(measure, reference)
                : NodeStack.keyUnless(missed ? -0.5f : 0, measure, reference);
        if (!missed && measure <= limit) {
          some.add(measure);
        }
      }
      stack.push(key[0], key[1], key[2], key[3], limit);
      some.sort((a, b) -> Float.compare(b, a));
      expected.addAll(some);
      for (int pops = random.nextInt(5); pops > 0 && !expected.isEmpty(); pops--) {
        stack.pop();
        assertThat(stack.popped())
            .as("seed " + seed + ", round " + round)
            .isEqualTo(expected.remove(expected.size() - 1));
      }
      assertThat(stack.isEmpty()).isEqualTo(expected.isEmpty());
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, -1, Integer.MAX_VALUE, Integer.MIN_VALUE})
  void referencesComeBackAsTheyWere(int reference) {
    NodeStack stack = new NodeStack();

    stack.push(
        NodeStack.key(3, 7),
        NodeStack.key(2, reference),
        NodeStack.key(9, 8),
        NodeStack.key(4, 9),
        5);

    assertThat(stack.pop()).isEqualTo(reference);
    assertThat(stack.pop()).isEqualTo(7);
    assertThat(stack.pop()).isEqualTo(9);
    assertThat(stack.isEmpty()).isTrue();
  }
}
