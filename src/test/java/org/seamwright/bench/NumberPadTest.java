package org.seamwright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Figures typed with large keys. */
class NumberPadTest {
  private static NumberPad typed(String keys) {
    NumberPad pad = NumberPad.EMPTY;
    for (int i = 0; i < keys.length(); i++) {
      char key = keys.charAt(i);
      pad = key == '<' ? pad.erase() : pad.type(key);
    }
    return pad;
  }

  @Test
  void takesCommaOrPoint() {
    assertThat(typed("2,75").value()).hasValue(2.75);
    assertThat(typed("2.75").value()).hasValue(2.75);
    assertThat(typed(",5").value()).hasValue(0.5);
    assertThat(typed("5,").value()).hasValue(5);
    assertThat(typed("812,41").text()).isEqualTo("812,41");
  }

  @Test
  void takesNothingElse() {
    assertThat(typed("1,2.3,4").text()).isEqualTo("1,234");
    assertThat(typed("-1e5x 2").text()).isEqualTo("152");
    assertThat(typed("123456789012").text()).isEqualTo("123456789");
    assertThat(typed("12<<<").value()).isEmpty();
  }

  @Test
  void tellsTheStepThatWasRead() {
    assertThat(typed("12").resolution()).isEqualTo(1);
    assertThat(typed("12,5").resolution()).isEqualTo(0.1);
    assertThat(typed("12.50").resolution()).isEqualTo(0.01);
  }
}
