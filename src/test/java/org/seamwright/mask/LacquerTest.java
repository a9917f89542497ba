package org.seamwright.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked checks printed in coating makers' general notes, and amounts by hand. */
class LacquerTest {
  @ParameterizedTest
  @CsvSource({
    // Printed: solids %, dry µm, m²/l with the digits printed.
    "65, 125, 5.2, 0.05",
    "71, 125, 5.7, 0.05",
    "100, 25, 40.0, 0.05",
    "60, 50, 12.0, 0.05",
    // By the formula 10 × solids % ÷ dry µm.
    "30, 25, 12.0, 1e-12",
    "20, 25, 8.0, 1e-12",
    "25, 50, 5.0, 1e-12"
  })
  void spreadingRate(double solids, double dryUm, double printed, double digits) {
    assertThat(Lacquer.spreadingM2PerL(solids / 100, dryUm)).isCloseTo(printed, within(digits));
  }

  @Test
  void spreadingRateInUsUnits() {
    // Printed: 65 % at 5 mil gives 208.52 ft²/gal, with 1604 for the 1604.17 of the units.
    double rate = Lacquer.spreadingFt2PerUsGallon(0.65, 5 * 25.4);
    assertThat(rate).isCloseTo(208.52, within(208.52 * 0.17 / 1604));
    // 231 in³ spread one mil thin are 231 000 in², 144 to the square foot.
    assertThat(Lacquer.spreadingFt2PerUsGallon(1, 25.4)).isCloseTo(231000 / 144.0, within(1e-9));
  }

  @Test
  void wetFilm() {
    // Printed: a wet film of 100 µm is 10 m²/l.
    double solids = 0.4;
    double dry = 40;
    assertThat(Lacquer.wetUm(solids, dry)).isCloseTo(100, within(1e-9));
    assertThat(Lacquer.spreadingM2PerL(solids, dry)).isCloseTo(10, within(1e-9));
  }

  @Test
  void volumeForAnArea() {
    // 0.5 m², two coats at 10 m²/l: 0.1 l; of what is bought 20 % is lost: 0.125 l.
    MaskSettings settings = new MaskSettings(12, 5, 1000, 50, 0.25, 25, 2, 0.2);
    assertThat(Lacquer.volumeMl(500_000, settings)).isCloseTo(125, within(1e-9));
    assertThat(Lacquer.volumeMl(0, settings)).isZero();
  }

  @Test
  void solidsAreAShare() {
    assertThatThrownBy(() -> Lacquer.spreadingM2PerL(65, 125))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Lacquer.spreadingM2PerL(0.65, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
