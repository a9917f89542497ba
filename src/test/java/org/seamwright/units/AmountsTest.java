package org.seamwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Conversion factors beside the cases are the exact definitions of NIST SP 811, appendix B (from
 * memory): inch 25.4 mm, foot 12 in, mil 0.001 in, troy ounce 31.1034768 g, US fluid ounce
 * 29.5735295625 ml.
 */
class AmountsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "6 in         | 152.4", // 6 × 25.4; in binary that product is 152.39999999999998
        "6in          | 152.4",
        "6 IN         | 152.4",
        "6\"          | 152.4",
        "6″           | 152.4",
        "6 inches     | 152.4",
        "152.4 mm     | 152.4",
        "152,4 mm     | 152.4",
        "1/4 in       | 6.35",
        "1 1/2 in     | 38.1",
        "1-1/2 in     | 38.1",
        "1½ in        | 38.1",
        "½\"          | 12.7",
        "2 ft         | 609.6",
        "2 ft 3 in    | 685.8",
        "2ft 3 1/2in  | 698.5",
        "2' 3\"       | 685.8",
        "1 m 20 cm    | 1200",
        "10 µin       | 0.000254",
        "1e-3 m       | 1",
        ".5 mm        | 0.5",
        "0,125 in     | 3.175",
        "0 mm         | 0",
        "+3 mm        | 3",
      })
  void lengths(String text, double mm) throws AmountException {
    assertThat(Amounts.lengthMm(text)).isEqualTo(mm);
  }

  @ParameterizedTest
  @CsvSource({"-3 mm, -3", "−1/4 in, -6.35", "-2 ft 3 in, -685.8", "6 in, 152.4"})
  void coordinatesMayBeNegative(String text, double mm) throws AmountException {
    assertThat(Amounts.coordinateMm(text)).isEqualTo(mm);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.5 um  | 0.5",
        "0.5 µm  | 0.5", // U+00B5
        "0.5 μm  | 0.5", // U+03BC
        "0,5 µm  | 0.5",
        "0.5 micron | 0.5",
        "175 nm  | 0.175",
        "10 µin  | 0.254",
        "10 μin  | 0.254",
        "10 uin  | 0.254",
        "7 microinches | 0.1778",
        "0.5 mil | 12.7",
        "1 thou  | 25.4",
        "0.001 in | 25.4",
        "0.1 mm  | 100",
      })
  void thicknesses(String text, double um) throws AmountException {
    assertThat(Amounts.thicknessUm(text)).isEqualTo(um);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "40 in2   | 25806.4", // 40 × 645.16
        "40 in²   | 25806.4",
        "40in^2   | 25806.4",
        "40 sq in | 25806.4",
        "40 sq. in. | 25806.4",
        "80 cm2   | 8000",
        "1 dm²    | 10000",
        "1 m2     | 1000000",
        "1 ft2    | 92903.04",
        "1 1/2 in2 | 967.74",
      })
  void areas(String text, double mm2) throws AmountException {
    assertThat(Amounts.areaMm2(text)).isEqualTo(mm2);
  }

  @ParameterizedTest
  @CsvSource({
    "1 tr oz, 31.1034768",
    "1 ozt, 31.1034768",
    "2 troy ounces, 62.2069536",
    "1 dwt, 1.55517384",
    "0.99 g, 0.99",
    "250 mg, 0.25",
    "1.2 kg, 1200"
  })
  void masses(String text, double g) throws AmountException {
    assertThat(Amounts.massG(text)).isEqualTo(g);
  }

  @ParameterizedTest
  @CsvSource({
    "25 ml, 25",
    "25 mL, 25",
    "25 cc, 25",
    "25 cm³, 25",
    "2 fl oz, 59.147059125",
    "1.5 fl oz, 44.36029434375",
    "0.25 l, 250",
    "1 US gal, 3785.411784"
  })
  void volumes(String text, double ml) throws AmountException {
    assertThat(Amounts.volumeMl(text)).isEqualTo(ml);
  }

  @ParameterizedTest
  @CsvSource({
    "45 s, 45",
    "2 min, 120",
    "1 h 20 min, 4800",
    "1h 20min, 4800",
    "1h20min, 4800",
    "1h2min, 3720",
    "6 min 40 s, 400",
    "1.5 h, 5400",
    "1/2 h, 1800"
  })
  void times(String text, double s) throws AmountException {
    assertThat(Amounts.seconds(text)).isEqualTo(s);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "6",
        "0",
        "in",
        "6 foo",
        "6 g",
        "6 in2",
        "1 234 mm",
        "1,234 mm",
        "1.234,5 mm",
        "1.2.3 mm",
        "NaN mm",
        "Infinity mm",
        "-6 in",
        "6 in 2 ft",
        "6 in 2 in",
        "6 in 2",
        "1/0 in",
        "6 in extra",
        "1e99 m 1e999 mm",
        "--6 in",
        "6 M2",
        "6 oz"
      })
  void refusedAsLengths(String text) {
    assertThatThrownBy(() -> Amounts.lengthMm(text)).isInstanceOf(AmountException.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1 oz", "1 ounce", "1 gr", "1 ml", "1"})
  void refusedAsMasses(String text) {
    assertThatThrownBy(() -> Amounts.massG(text)).isInstanceOf(AmountException.class);
  }

  @Test
  void refusalNamesTheTextAndTheUnits() {
    assertThatThrownBy(() -> Amounts.lengthMm("6"))
        .hasMessageContainingAll("\"6\"", "unit is missing", "mm", "cm", "in", "ft", "µin");
    assertThatThrownBy(() -> Amounts.thicknessUm("6 ft"))
        .hasMessageContainingAll("\"ft\" does not measure a length", "µm", "mil");
    assertThatThrownBy(() -> Amounts.massG("1 oz"))
        .hasMessageContainingAll("troy or common", "tr oz");
  }

  @Test
  void refusalOfAnAmbiguousCommaOffersBothReadings() {
    assertThatThrownBy(() -> Amounts.lengthMm("1,234 mm"))
        .hasMessageContainingAll("comma", "1.234", "1234");
  }

  @Test
  void refusesHugeTextAtOnce() {
    assertThatThrownBy(() -> Amounts.lengthMm("1".repeat(1_000_000) + " mm"))
        .hasMessageContaining("too long");
  }

  @ParameterizedTest
  @CsvSource({"mm, 1", "cm, 10", "m, 1000", "in, 25.4", "IN, 25.4", "ft, 304.8", "µm, 0.001"})
  void meshUnits(String symbol, double mm) throws AmountException {
    assertThat(LengthUnit.mmPer(symbol)).isEqualTo(mm);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "furlong", "g", "mm2"})
  void otherMeshUnitsAreRefused(String symbol) {
    assertThatThrownBy(() -> LengthUnit.mmPer(symbol))
        .hasMessageContaining("um, mm, cm, m, in, ft");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1'500 mm", "1’500 mm", "1' 500.5 mm", "2 ft 3 mm"})
  void thousandsMarkedByAnApostropheAreNotTakenForFeet(String text) {
    assertThatThrownBy(() -> Amounts.lengthMm(text))
        .isInstanceOf(AmountException.class)
        .hasMessageContaining("after feet only inches");
  }
}
