package org.seamwright.window;

import java.util.concurrent.Executor;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;
import org.seamwright.desk.Watched;

/**
 * Short tones made here, played in the background. A computer without sound loses nothing but the
 * tones, and says so through {@link #isHeard}.
 */
final class Tones {
  private static final float RATE_HZ = 44_100;
  private static final double PITCH_HZ = 880;
  private static final double BEEP_SECONDS = 0.18;
  private static final double PAUSE_SECONDS = 0.12;

  /** Swelling and fading this long keeps a tone from clicking. */
  private static final double FADE_SECONDS = 0.01;

  private static final double LOUDNESS = 0.6;

  private final Executor background;
  private final Executor userInterface;
  private final Watched<Boolean> heard = new Watched<>(true);

  Tones(Executor background, Executor userInterface) {
    this.background = background;
    this.userInterface = userInterface;
  }

  /** Whether the last tone could be played, as far as that is known. */
  Watched<Boolean> isHeard() {
    return heard;
  }

  /** Plays some beeps one after the other. */
  void beep(int count) {
    background.execute(
        () -> {
          boolean played = play(samples(count));
          userInterface.execute(() -> heard.set(played));
        });
  }

  /** A sine as 16-bit samples, low byte first. */
  static byte[] samples(int count) {
    int beep = (int) (BEEP_SECONDS * RATE_HZ);
    int pause = (int) (PAUSE_SECONDS * RATE_HZ);
    byte[] bytes = new byte[2 * count * (beep + pause)];
    for (int b = 0; b < count; b++) {
      for (int i = 0; i < beep; i++) {
        double fade = Math.min(1, Math.min(i, beep - i) / (FADE_SECONDS * RATE_HZ));
        double wave = Math.sin(2 * Math.PI * PITCH_HZ * i / RATE_HZ);
        int sample = (int) Math.round(LOUDNESS * fade * wave * Short.MAX_VALUE);
        int at = 2 * (b * (beep + pause) + i);
        bytes[at] = (byte) sample;
        bytes[at + 1] = (byte) (sample >> 8);
      }
    }
    return bytes;
  }

  private static boolean play(byte[] samples) {
    AudioFormat format = new AudioFormat(RATE_HZ, 16, 1, true, false);
    try (SourceDataLine line = AudioSystem.getSourceDataLine(format)) {
      line.open(format);
      line.start();
      line.write(samples, 0, samples.length);
      line.drain();
      return true;
    } catch (LineUnavailableException | IllegalArgumentException | SecurityException e) {
      // No device, none for this format, or none for us: the warning on the screen stands alone.
      return false;
    }
  }
}
