package org.seamwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every unit against the Units of Measurement library (JSR 385, Indriya). */
class UnitModelTest {
  @ParameterizedTest
  @EnumSource(KnownUnit.class)
  void worthIsThatOfTheLibrary(KnownUnit unit) {
    assertThat(UnitModel.worth(unit)).isEqualByComparingTo(UnitModel.worthByLibrary(unit));
  }
}
