package org.seamwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {
  /** Counted by hand: one letter added, dropped, changed or swapped is 1. */
  @ParameterizedTest
  @CsvSource({
    "mark, mark, 0",
    "mark, marks, 1",
    "peice, piece, 1",
    "kitten, sitting, 3",
    "'', ab, 2"
  })
  void countsSlips(String a, String b, int slips) {
    assertThat(Nearest.distance(a, b)).isEqualTo(slips);
    assertThat(Nearest.distance(b, a)).isEqualTo(slips);
  }

  @Test
  void offersNothingFarOff() {
    assertThat(Nearest.to("radus", List.of("path", "radius"))).contains("radius");
    assertThat(Nearest.to("Radius", List.of("path", "radius"))).contains("radius");
    assertThat(Nearest.to("colour", List.of("path", "radius"))).isEmpty();
  }
}
