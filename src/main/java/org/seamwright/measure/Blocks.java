package org.seamwright.measure;

import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.seamwright.basis.Progress;

/** Runs numbered blocks of work side by side, telling progress between waves of them. */
final class Blocks {
  /** Blocks between two reports of progress: some 20 ms of work. */
  private static final int WAVE = 64;

  private Blocks() {}

  /** Runs {@code work} for each number below {@code count}, in any order. */
  static void run(int count, Progress progress, IntConsumer work) {
    for (int wave = 0; wave < count; wave += WAVE) {
      progress.at((double) wave / count);
      IntStream range = IntStream.range(wave, Math.min(count, wave + WAVE));
      (count > 1 ? range.parallel() : range).forEach(work);
    }
    progress.at(1);
  }
}
