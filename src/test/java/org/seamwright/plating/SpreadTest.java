package org.seamwright.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpreadTest {
  /**
   * The triangular distribution from 0 over 1 to 1 has F(x) = x², from 0 over 0 to 1 1 − (1−x)².
   */
  @Test
  void quantilesOfRightTrianglesAreRoots() {
    assertThat(new Spread(0, 1, 1).quantile(0.1)).isCloseTo(Math.sqrt(0.1), within(1e-15));
    assertThat(new Spread(0, 0, 1).quantile(0.9)).isCloseTo(1 - Math.sqrt(0.1), within(1e-15));
    assertThat(new Spread(0, 0.5, 1).quantile(0.5)).isCloseTo(0.5, within(1e-15));
  }

  @ParameterizedTest
  @CsvSource({"0.2, 0.33, 0.5", "1, 1, 3", "-2, 4, 4", "5, 5, 5"})
  void quantileInvertsTheDistribution(double low, double likely, double high) {
    Spread spread = new Spread(low, likely, high);
    assertThat(spread.quantile(0)).isEqualTo(low);
    assertThat(spread.quantile(1)).isEqualTo(high);
    for (double p = 0.05; p < 1 && !spread.isPoint(); p += 0.05) {
      assertThat(spread.atMost(spread.quantile(p))).isCloseTo(p, within(1e-12));
    }
  }

  /** (a² + b² + c² − ab − ac − bc) / 18; for a symmetric one half-width / √6 (JCGM 100, 4.3.9). */
  @Test
  void standardDeviationHasItsClosedForm() {
    assertThat(new Spread(2, 5, 8).standardDeviation()).isCloseTo(3 / Math.sqrt(6), within(1e-15));
    assertThat(new Spread(1, 2, 4).standardDeviation())
        .isCloseTo(Math.sqrt((1 + 4 + 16 - 2 - 4 - 8) / 18.0), within(1e-15));
    assertThat(Spread.point(3).standardDeviation()).isZero();
  }

  @Test
  void orderIsChecked() {
    assertThatThrownBy(() -> new Spread(1, 0.5, 2)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Spread(0, Double.NaN, 2))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /**
   * X and Y symmetric and alike on 0 … 1: X + Y has density of the fourth-order B-spline; its
   * lowest piece is F(s) = 4 s⁴/6 for s ≤ 1/2 (∫₀ˢ 2 (s−x)² · 4x dx), and its median is 1.
   */
  @Test
  void sumOfTwoTrianglesHasItsClosedForm() {
    Spread half = new Spread(0, 0.5, 1);
    SpreadSum sum = new SpreadSum(0, 1, half, 1, half);
    double p = 4 * Math.pow(0.4, 4) / 6;
    assertThat(sum.quantile(p)).isCloseTo(0.4, within(1e-12));
    assertThat(sum.quantile(0.5)).isCloseTo(1, within(1e-12));
    assertThat(sum.quantile(1 - p)).isCloseTo(1.6, within(1e-12));
  }

  @Test
  void pointsOnlyShiftTheSum() {
    Spread spread = new Spread(1, 2, 4);
    assertThat(new SpreadSum(3, 2, Spread.point(5), 7, spread).quantile(0.9))
        .isEqualTo(3 + 2 * 5 + 7 * spread.quantile(0.9));
    assertThat(new SpreadSum(3, 2, spread, 7, Spread.point(5)).quantile(0.1))
        .isEqualTo(3 + 2 * spread.quantile(0.1) + 7 * 5);
  }

  /**
   * Against draws by the inverse method: 400,000 put the standard error of a quantile near 0.1%.
   */
  @ParameterizedTest
  @CsvSource({"1, 2.5, 0.7", "2, 0, 1", "3, 40, 3"})
  void sumAgreesWithDraws(long seed, double fixed, double b) {
    Spread x = new Spread(0.2, 0.33, 0.8);
    Spread y = new Spread(10, 10, 30);
    SplittableRandom random = new SplittableRandom(seed);
    double[] draws = new double[400_000];
    for (int i = 0; i < draws.length; i++) {
      draws[i] = fixed + 9 * x.quantile(random.nextDouble()) + b * y.quantile(random.nextDouble());
    }
    Arrays.sort(draws);
    SpreadSum sum = new SpreadSum(fixed, 9, x, b, y);
    double width = draws[draws.length - 1] - draws[0];
    for (double p : new double[] {0.1, 0.5, 0.9}) {
      assertThat(sum.quantile(p))
          .as("seed %d, p %s", seed, p)
          .isCloseTo(draws[(int) (p * draws.length)], within(0.005 * width));
    }
  }
}
