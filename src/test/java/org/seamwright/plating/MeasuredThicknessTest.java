package org.seamwright.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.plating.MeasuredThickness.Figure;
import org.seamwright.plating.MeasuredThickness.Spots;

class MeasuredThicknessTest {
  private static final Deposit ZINC = new Deposit("zinc", "Zinc", 7.14, 65.38, 2, "test");
  private static final Deposit CHROMIUM = new Deposit("cr", "Chromium", 7.19, 51.996, 3, "test");
  private static final Deposit GOLD = new Deposit("gold", "Gold", 19.3, 196.96657, 1, "test");

  /** OpenStax Chemistry 2e, 17.7: 0.100 mm of zinc on 16.5 m² takes 11.8 kg, 25.5 A for 379 h. */
  @Test
  void zincOfTheTextbook() {
    Figure area = new Figure(16.5e6, 0);
    assertThat(MeasuredThickness.fromMassGain(ZINC, 1000, 12_800, 0, area).um())
        .isCloseTo(100, within(0.5));
    assertThat(
            MeasuredThickness.fromCharge(ZINC, new Figure(25.5 * 379, 0), new Figure(1, 0), area)
                .um())
        .isCloseTo(100, within(0.5));
  }

  /** OpenStax Chemistry 2e, 17.7: 0.010 mm of Cr(III) on 3.3 m² at 33.46 A takes 11.0 h. */
  @Test
  void chromiumOfTheTextbook() {
    assertThat(
            MeasuredThickness.fromCharge(
                    CHROMIUM, new Figure(33.46 * 11.0, 0), new Figure(1, 0), new Figure(3.3e6, 0))
                .um())
        .isCloseTo(10, within(0.1));
  }

  /** Gold weighs 1.47 troy oz per ft² at 0.001 in (handbook table). */
  @Test
  void goldByTheSquareFoot() {
    double gain = 1.47 * 31.1034768;
    assertThat(MeasuredThickness.fromMassGain(GOLD, 0, gain, 0, new Figure(304.8 * 304.8, 0)).um())
        .isCloseTo(25.4, within(0.2));
  }

  /** 10 g/l × 100 ml × 0.5 = 0.5 g; over 19.3 g/cm³ × 100 cm² = 2.59067 µm. */
  @Test
  void solutionUsed() {
    MeasuredThickness got =
        MeasuredThickness.fromSolution(
            GOLD, new Figure(10, 0), new Figure(100, 3), new Figure(0.5, 0.02), new Figure(1e4, 0));
    assertThat(got.um()).isCloseTo(0.5 / (19.3 * 100) * 1e4, within(1e-12));
    // Relative 3 % and 4 % in squares make 5 %.
    assertThat(got.standardUm() / got.um()).isCloseTo(0.05, within(1e-12));
  }

  /** JCGM 100:2008, F.2.2.1: u = 0.29 δx for a reading of resolution δx. */
  @Test
  void resolutionOfAnInstrument() {
    assertThat(Figure.read(1, 0.01).standard() / 0.01).isCloseTo(0.29, within(0.002));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void propagationAgreesWithDrawing(long seed) {
    Random random = new Random(seed);
    double resolution = 0.01;
    double gain = 0.5;
    double uArea = 200;
    int n = 200_000;
    double[] drawn = new double[n];
    for (int i = 0; i < n; i++) {
      double after = gain + resolution * (random.nextDouble() - 0.5);
      double before = resolution * (random.nextDouble() - 0.5);
      double area = 1e4 + uArea * random.nextGaussian();
      drawn[i] = (after - before) / (19.3 * area) * 1e6;
    }
    MeasuredThickness got =
        MeasuredThickness.fromMassGain(GOLD, 0, gain, resolution, new Figure(1e4, uArea));
    // First order only: at 2 % the next order is below 1 %, and so is the noise of the drawing.
    assertThat(got.standardUm())
        .isCloseTo(Spots.of(drawn).spreadUm(), within(0.01 * got.standardUm()));
  }

  @Test
  void whatIsMissing() {
    MeasuredThickness.Missing got = new MeasuredThickness(1.5, 0.1).missing(GOLD, 2.5, 1e4, 0.5, 6);
    assertThat(got.um()).isCloseTo(1, within(1e-12));
    // 1 µm × 100 cm² × 19.3 g/cm³ = 0.193 g; 6 s × 100 = 10 min.
    assertThat(got.massG()).isCloseTo(0.193, within(1e-12));
    assertThat(Faraday.massG(GOLD, got.chargeAh(), 0.5)).isCloseTo(0.193, within(1e-12));
    assertThat(got.minutes()).isCloseTo(10, within(1e-12));
    assertThat(new MeasuredThickness(3, 0.1).missing(GOLD, 2.5, 1e4, 0.5, 6).massG()).isZero();
  }

  @Test
  void spots() {
    // 2 4 4 4 5 5 7 9: mean 5, squares add up to 32, so the sample deviation is √(32/7).
    Spots got = Spots.of(2, 4, 4, 4, 5, 5, 7, 9);
    assertThat(got.meanUm()).isEqualTo(5);
    assertThat(got.spreadUm()).isCloseTo(Math.sqrt(32.0 / 7), within(1e-15));
    assertThat(got.leastUm()).isEqualTo(2);
    assertThat(Spots.of(1.5)).isEqualTo(new Spots(1, 1.5, 0, 1.5));
  }

  @Test
  void noGainIsRefused() {
    assertThatThrownBy(() -> MeasuredThickness.fromMassGain(GOLD, 2, 2, 0.01, new Figure(100, 1)))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
