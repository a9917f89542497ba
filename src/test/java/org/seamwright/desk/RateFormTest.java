package org.seamwright.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.section.SectionAxis;
import org.seamwright.section.SectionWay;

/** Tool, hold, prices and the way of sections as they are typed and chosen. */
class RateFormTest {
  private final Job job = job();

  private static Job job() {
    try {
      return JobFile.read(Path.of("models/plaque.json"));
    } catch (InputException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void figuresOfTheToolAreTypedAndTakenAway() throws Exception {
    assertThat(RateForm.ToolField.DIP.text(job)).isEmpty();
    Job with = RateForm.ToolField.DIP.typed(job, "3 ml");
    with = RateForm.ToolField.CONTACT.typed(with, "4 cm2");
    with = RateForm.ToolField.DENSITY.typed(with, "0,5");
    assertThat(with.plating().tool().dipMl()).isEqualTo(OptionalDouble.of(3));
    assertThat(with.plating().tool().contactMm2()).isEqualTo(OptionalDouble.of(400));
    assertThat(with.plating().tool().amperesPerCm2()).isEqualTo(OptionalDouble.of(0.5));
    assertThat(RateForm.ToolField.DIP.text(with)).isEqualTo("3 ml");
    Job without = RateForm.ToolField.DIP.typed(with, " ");
    assertThat(without.plating().tool().dipMl()).isEmpty();
    assertThat(without.plating().tool().contactMm2()).isPresent();
    assertThatThrownBy(() -> RateForm.ToolField.DENSITY.typed(job, "-1"))
        .isInstanceOf(InputException.class);
    assertThatThrownBy(() -> RateForm.ToolField.CHARGE.typed(job, "much"))
        .isInstanceOf(InputException.class);
  }

  @Test
  void theHoldIsChosenAndItsAngleTyped() throws Exception {
    assertThat(RateForm.up(job)).isEqualTo(RateForm.Up.UNTOLD);
    Job held = RateForm.withUp(job, RateForm.Up.FRONT);
    assertThat(held.plating().hold().orElseThrow().up()).isEqualTo(Vector3D.of(0, -1, 0));
    Job steep = RateForm.STEEPER.typed(held, "45");
    assertThat(steep.plating().hold().orElseThrow().steeperDegrees()).isEqualTo(45);
    assertThat(RateForm.withUp(steep, RateForm.Up.TOP).plating().hold().orElseThrow())
        .isEqualTo(new Job.Hold(Vector3D.Unit.PLUS_Z, 45));
    assertThat(RateForm.withUp(steep, RateForm.Up.UNTOLD)).isEqualTo(job);
    assertThatThrownBy(() -> RateForm.STEEPER.typed(held, "200"))
        .isInstanceOf(InputException.class);
    assertThat(RateForm.ups(job)).doesNotContain(RateForm.Up.OTHER);
  }

  @Test
  void pricesAreTyped() throws Exception {
    Job plain = RateForm.priced(job, false);
    assertThat(RateForm.PriceField.TAX.typed(plain, "20 %")).isEqualTo(plain);
    Job priced = RateForm.priced(plain, true);
    priced = RateForm.PriceField.LABOUR.typed(priced, "60");
    priced = RateForm.PriceField.TAX.typed(priced, "20 %");
    assertThat(priced.quote().orElseThrow().labourPerHour()).isEqualTo(60);
    assertThat(priced.quote().orElseThrow().tax()).isEqualTo(0.2);
    assertThat(RateForm.PriceField.TAX.text(priced)).isEqualTo("20 %");
    Job as = priced;
    assertThatThrownBy(() -> RateForm.PriceField.MARGIN.typed(as, "-5 %"))
        .isInstanceOf(InputException.class);
    assertThat(RateForm.priced(priced, false)).isEqualTo(plain);
  }

  @Test
  void theWayOfSectionsIsChosen() {
    assertThat(WayForm.of(job)).isEqualTo(WayForm.Way.AUTOMATIC);
    for (WayForm.Way way : WayForm.Way.values()) {
      Job with = WayForm.with(job, way, 3);
      if (way != WayForm.Way.OTHER) {
        assertThat(WayForm.of(with)).isEqualTo(way);
        assertThat(WayForm.count(with)).isEqualTo(way.counts() ? 3 : 0);
      }
    }
    assertThat(WayForm.with(job, WayForm.Way.SECTORS, 5).sections().choices().way())
        .contains(new SectionWay.Sectors(SectionAxis.FOUND, 5));
  }
}
