package org.seamwright.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lengths of tape with its laps; roll 1000 mm, overlap 10 mm. */
class TapeTest {
  private static final MaskSettings SHOP = new MaskSettings(6, 10, 1000, 50, 0.25, 25, 2, 0.1);

  @ParameterizedTest
  @CsvSource({
    // closed, length, strips, each: n strips have n laps closed and n - 1 open.
    "true, 314, 1, 324",
    "true, 990, 1, 1000",
    "true, 991, 2, 505.5",
    "true, 2970, 3, 1000",
    "false, 314, 1, 314",
    "false, 1000, 1, 1000",
    "false, 1990, 2, 1000",
    "false, 1991, 3, 670.3333333333333"
  })
  void stripsAndLaps(boolean closed, double length, int strips, double each) {
    List<MaskPlan.TapeStrip> tape = Tape.along(line(closed, length), 0, SHOP).strips();
    assertThat(tape).hasSize(strips);
    for (MaskPlan.TapeStrip strip : tape) {
      assertThat(strip.widthMm()).isEqualTo(6);
      assertThat(strip.lengthMm()).isCloseTo(each, within(1e-9)).isLessThanOrEqualTo(1000 + 1e-9);
    }
  }

  /** A straight line, or a regular polygon with so long a way round. */
  private static MaskEdge line(boolean closed, double length) {
    int n = closed ? 64 : 2;
    double[] points = new double[3 * n];
    double r = length / n / (2 * Math.sin(Math.PI / n));
    for (int i = 0; i < n; i++) {
      points[3 * i] = closed ? r * Math.cos(2 * Math.PI * i / n) : i * length;
      points[3 * i + 1] = closed ? r * Math.sin(2 * Math.PI * i / n) : 0;
    }
    return new MaskEdge(points, closed, length);
  }
}
