package org.seamwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected strings follow from the rounding rules in the class comment of {@link UnitFormat}. */
class UnitFormatTest {
  private static final UnitFormat METRIC =
      new UnitFormat(UnitSystem.METRIC, Locale.ROOT).withPlainSpaces();
  private static final UnitFormat INCH =
      new UnitFormat(UnitSystem.INCH, Locale.ROOT).withPlainSpaces();

  @ParameterizedTest
  @CsvSource({
    "0, 0 mm, 0 in",
    "152.4, 152.4 mm, 6 in",
    "3, 3 mm, 0.118 in",
    "6.35, 6.35 mm, 0.25 in",
    "0.0254, 0.0254 mm, 0.001 in",
    "1234.56, 1234.6 mm, 48.6 in",
    "12345, 12.35 m, 486.02 in",
    "-38.1, -38.1 mm, -1.5 in"
  })
  void lengths(double mm, String metric, String inch) {
    assertThat(METRIC.length(mm)).isEqualTo(metric);
    assertThat(INCH.length(mm)).isEqualTo(inch);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0 mm, 0 in",
    "4.7625, 4.76 mm, 3/16 in",
    "25.4, 25.4 mm, 1 in",
    "38.1, 38.1 mm, 1 1/2 in",
    "2, 2 mm, 2 mm (about 5/64 in)", // 5/64 in = 1.984 mm
    "5, 5 mm, 5 mm (about 13/64 in)", // 13/64 in = 5.159 mm, 12/64 = 4.7625
    "12.7, 12.7 mm, 1/2 in",
    "0.1, 0.1 mm, 0.1 mm"
  })
  void widths(double mm, String metric, String inch) {
    assertThat(METRIC.width(mm)).isEqualTo(metric);
    assertThat(INCH.width(mm)).isEqualTo(inch);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0 mm², 0 in²",
    "8020, 80.2 cm², 12.4 in²", // 8020 / 645.16 = 12.431
    "8000, 80.0 cm², 12.4 in²",
    "50, 50.0 mm², 0.0775 in²",
    "123456, 1235 cm², 191 in²",
    "999.6, 10.0 cm², 1.55 in²",
    "99.97, 1.00 cm², 0.155 in²",
    "645.16, 6.45 cm², 1.00 in²"
  })
  void areas(double mm2, String metric, String inch) {
    assertThat(METRIC.area(mm2)).isEqualTo(metric);
    assertThat(INCH.area(mm2)).isEqualTo(inch);
  }

  @ParameterizedTest
  @CsvSource({
    "0.5, 0.5 µm, 19.7 µin",
    "0.0762, 0.0762 µm, 3 µin",
    "2.54, 2.54 µm, 100 µin",
    "25.4, 25.4 µm, 1000 µin",
    "1, 1 µm, 39.4 µin"
  })
  void thicknesses(double um, String metric, String inch) {
    assertThat(METRIC.thickness(um)).isEqualTo(metric);
    assertThat(INCH.thickness(um)).isEqualTo(inch);
  }

  @ParameterizedTest
  @CsvSource({"0.9941, 0.99 g", "0.1, 0.10 g", "0.0341, 34.1 mg", "12.345, 12.35 g", "0, 0 g"})
  void masses(double g, String shown) {
    assertThat(METRIC.mass(g)).isEqualTo(shown);
    assertThat(INCH.mass(g)).isEqualTo(shown);
  }

  @ParameterizedTest
  @CsvSource({
    "25, 25.0 ml",
    "3.456, 3.46 ml",
    "1250, 1.25 l",
    "0.05, 0.0500 ml",
    "999.4, 999 ml",
    "999.9, 1.00 l"
  })
  void volumes(double ml, String shown) {
    assertThat(METRIC.volume(ml)).isEqualTo(shown);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0 s",
    "4.5, 4.5 s",
    "9.96, 10 s",
    "45, 45 s",
    "59.6, 1 min",
    "400, 6 min 40 s",
    "3599.6, 1 h",
    "4800, 1 h 20 min",
    "7199, 2 h",
    "360000, 100 h"
  })
  void times(double s, String shown) {
    assertThat(METRIC.time(s)).isEqualTo(shown);
  }

  @Test
  void charges() {
    assertThat(METRIC.charge(11.31)).isEqualTo("11.3 A·h");
    assertThat(METRIC.charge(0.0656544)).isEqualTo("0.0657 A·h");
  }

  @Test
  void numberAndUnitStayOnOneLine() {
    UnitFormat format = new UnitFormat(UnitSystem.METRIC, Locale.ROOT);
    assertThat(format.time(400)).isEqualTo("6\u00a0min\u00a040\u00a0s");
    assertThat(format.area(8020)).doesNotContain(" ");
  }

  @Test
  void decimalCommaWhereTheLocaleHasOne() {
    assertThat(new UnitFormat(UnitSystem.METRIC, Locale.GERMANY).withPlainSpaces().mass(0.99))
        .isEqualTo("0,99 g");
  }

  @Test
  void whatIsNoAmountIsNotShownAsOne() {
    assertThatThrownBy(() -> METRIC.area(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> METRIC.time(-1)).isInstanceOf(IllegalArgumentException.class);
  }

  /** Reading back gives the value within the rounding, and showing that gives the same text. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void readsBackWhatItShows(long seed) throws AmountException {
    Random random = new Random(seed);
    for (UnitSystem system : UnitSystem.values()) {
      for (Locale locale : new Locale[] {Locale.US, Locale.GERMANY}) {
        UnitFormat format = new UnitFormat(system, locale);
        for (int i = 0; i < 2000; i++) {
          double value = Math.pow(10, -3 + 9 * random.nextDouble());
          String hint = "seed " + seed + ", value " + value;
          double mm = Amounts.lengthMm(format.length(value));
          assertThat(mm).as(hint).isCloseTo(value, within(0.13 + value * 5.1e-3));
          assertThat(format.length(mm)).as(hint).isEqualTo(format.length(value));
          double mm2 = Amounts.areaMm2(format.area(value));
          assertThat(mm2).as(hint).isCloseTo(value, within(value * 5.1e-3));
          assertThat(format.area(mm2)).as(hint).isEqualTo(format.area(value));
          double um = Amounts.thicknessUm(format.thickness(value));
          assertThat(um).as(hint).isCloseTo(value, within(value * 5.1e-3));
          double g = Amounts.massG(format.mass(value));
          assertThat(g).as(hint).isCloseTo(value, within(0.005 + value * 5.1e-3));
          double ml = Amounts.volumeMl(format.volume(value));
          assertThat(ml).as(hint).isCloseTo(value, within(value * 5.1e-3));
          double s = Amounts.seconds(format.time(value));
          assertThat(s).as(hint).isCloseTo(value, within(value < 3600 ? 0.5 : 30.0));
        }
      }
    }
  }
}
