package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import org.junit.jupiter.api.Test;

/** The warning's tone. */
class TonesTest {
  private static final double RATE_HZ = 44_100;

  private static int sample(byte[] bytes, int i) {
    return (bytes[2 * i] & 0xFF) | bytes[2 * i + 1] << 8;
  }

  @Test
  void isASineOfItsPitchThatBeginsAndEndsInSilence() {
    byte[] tone = Tones.samples(1);
    int beep = (int) (0.18 * RATE_HZ);
    assertThat(sample(tone, 0)).isZero();
    assertThat(Math.abs(sample(tone, beep - 1))).isLessThan(200);
    int rises = 0;
    int loudest = 0;
    for (int i = 1; i < beep; i++) {
      rises += sample(tone, i - 1) < 0 && sample(tone, i) >= 0 ? 1 : 0;
      loudest = Math.max(loudest, Math.abs(sample(tone, i)));
    }
    // 880 Hz for 0.18 s is 158 turns.
    assertThat(rises).isBetween(156, 159);
    assertThat(loudest).isBetween(19_000, 19_661);
    assertThat(Tones.samples(3)).hasSize(3 * tone.length);
  }

  @Test
  void aComputerWithoutSoundBreaksNothing() {
    Tones tones = new Tones(Runnable::run, Runnable::run);
    assertThatCode(() -> tones.beep(1)).doesNotThrowAnyException();
  }
}
