package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers are read to the nearest double, as the Java library reads them. */
class DecimalsTest {
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "-0, -0.0",
    "1, 1",
    "+1.5, 1.5",
    ".5, 0.5",
    "5., 5",
    "1e3, 1000",
    "1E-3, 0.001",
    "0.986544E+00, 0.986544",
    "0.1D+02, 10",
    "1d2, 100",
    "0.5-100, 0.5e-100",
    "1+2, 100",
    "000000000000000000000000000001, 1",
    "0.00000000000000000000000000000000001, 1e-35",
    "123456789012345678901234567890, 123456789012345678901234567890",
    "1e999, Infinity",
    "1e-999, 0",
    "1e99999999999, Infinity",
    "9007199254740993, 9007199254740993"
  })
  void readsWhatCAndFortranWrite(String text, double wanted) {
    assertThat(Decimals.parse(text)).isEqualTo(wanted);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "+",
        "-",
        ".",
        "e5",
        "1e",
        "1e+",
        "1,5",
        "1.2.3",
        "0x1p3",
        "1f",
        "NaN",
        "Infinity",
        "1 ",
        "--1",
        "1e5.5",
        "+-1",
        "1e+-5",
        "１"
      })
  void refusesWhatIsNoNumber(String text) {
    assertThat(Decimals.parse(text)).isNaN();
  }

  @Test
  void agreesWithTheLibraryOnRandomNumbers() {
    long seed = 20240601;
    Random random = new Random(seed);
    for (int i = 0; i < 200_000; i++) {
      double value = Double.longBitsToDouble(random.nextLong());
      if (Double.isFinite(value)) {
        String text =
            switch (i % 4) {
              case 0 -> Double.toString(value);
              case 1 -> Float.toString((float) value).replace("Infinity", "1");
              case 2 -> String.format(Locale.ROOT, "%.5f", random.nextGaussian() * 1000);
              default -> random.nextInt() + "e" + (random.nextInt(60) - 30);
            };
        if (Decimals.parse(text) != Double.parseDouble(text)) {
          fail("seed %d: %s read as %s", seed, text, Decimals.parse(text));
        }
      }
    }
  }
}
