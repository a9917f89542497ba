package org.seamwright.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.units.UnitSystem;

class PlatingFormTest {
  private static final Job JOB =
      NewJobs.of(Path.of("cup.stl"), new Job.Scale.Unit("mm"), UnitSystem.METRIC);

  @ParameterizedTest
  @EnumSource(PlatingForm.Field.class)
  void leavesTheJobAsItIsWhenAFieldIsLeftAsItIs(PlatingForm.Field field) throws Exception {
    for (UnitSystem display : UnitSystem.values()) {
      Job job = PlatingForm.withDisplay(JOB, display);
      assertThat(PlatingForm.typed(job, field, PlatingForm.text(job, field))).isEqualTo(job);
    }
  }

  @Test
  void readsAmountsInAnyUnit() throws Exception {
    // A micro-inch is 0.0254 µm by definition of the inch.
    Job job = PlatingForm.typed(JOB, PlatingForm.Field.THICKNESS, "40 uin");
    assertThat(job.plating().thicknessUm()).isCloseTo(40 * 0.0254, within(1e-12));
    job = PlatingForm.typed(job, PlatingForm.Field.LOSS, "25");
    assertThat(job.plating().lossShare()).isCloseTo(0.25, within(1e-12));
    job = PlatingForm.typed(job, PlatingForm.Field.EFFICIENCY, "70,5 %");
    assertThat(job.plating().efficiency()).isCloseTo(0.705, within(1e-12));
    job = PlatingForm.limitedByArea(job, true, 12_345.6);
    job = PlatingForm.typed(job, PlatingForm.Field.LIMIT, "10 in2");
    // An inch is 25.4 mm.
    assertThat(((Job.Limit.Area) job.sections().limit()).mm2())
        .isCloseTo(10 * 25.4 * 25.4, within(1e-9));
    assertThat(PlatingForm.limitedByArea(job, false, 1).sections().limit())
        .isInstanceOf(Job.Limit.Wet.class);
  }

  @ParameterizedTest
  @CsvSource({
    "THICKNESS,0.01 µm",
    "THICKNESS,5",
    "FLASH,0 µm",
    "LOSS,a third",
    "LOSS,-1",
    "USABLE,101",
    "USABLE,0",
    "EFFICIENCY,0 %",
    "SPEED,0 s",
    "LIMIT,0 s",
    "FLASH_LAP,wide",
  })
  void refusesWhatCannotBeWithAProblemAndARemedy(PlatingForm.Field field, String text) {
    assertThatThrownBy(() -> PlatingForm.typed(JOB, field, text))
        .isInstanceOfSatisfying(
            InputException.class,
            e -> {
              assertThat(e.problem()).isNotBlank();
              assertThat(e.remedy()).isNotBlank();
            });
  }
}
