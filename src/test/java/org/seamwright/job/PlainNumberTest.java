package org.seamwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PlainNumberTest {
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "-0.0, -0.0",
    "5, 5",
    "-0.5, -0.5",
    "100, 100",
    "1e7, 10000000",
    "1e-7, 0.0000001",
    // Double.toString has an exponent here, and before Java 19 a surplus digit in 2.0E23.
    "2e-3, 0.002",
    "2e23, 200000000000000000000000",
    "0.1, 0.1",
    "123456.789, 123456.789"
  })
  void isPlainAndShort(double value, String text) {
    assertThat(PlainNumber.of(value)).isEqualTo(text);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2})
  void readsBackToTheSameDouble(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 20_000; i++) {
      double value = Double.longBitsToDouble(random.nextLong());
      if (Double.isFinite(value)) {
        assertThat(Double.parseDouble(PlainNumber.of(value))).isEqualTo(value);
      }
    }
  }

  @Test
  void refusesWhatNoFileCanHold() {
    assertThatThrownBy(() -> PlainNumber.of(Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
