package org.seamwright.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeshTest {
  /** Few corners are checked on one thread, many on several. */
  @ParameterizedTest
  @CsvSource({
    "9, 0, -1",
    "9, 8, 3",
    "9, 4, 2147483647",
    "1500000, 1499999, 3",
    "1500000, 700000, -2147483648",
    "1500000, 0, -7"
  })
  void cornersOutsideTheVerticesAreRefusedAndNamed(int corners, int place, int vertex) {
    int[] corner = new int[corners];
    for (int h = 0; h < corners; h++) {
      corner[h] = h % 3;
    }
    assertThat(Mesh.of(new double[9], corner.clone()).faceCount()).isEqualTo(corners / 3);

    corner[place] = vertex;

    assertThatThrownBy(() -> Mesh.of(new double[9], corner))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("Corner " + place + " names vertex " + vertex + " of 3");
  }
}
