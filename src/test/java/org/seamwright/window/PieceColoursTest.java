package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.seamwright.picture.Palette;
import org.seamwright.picture.Tones;
import org.seamwright.section.Seam;
import org.seamwright.section.SectionPlan;

class PieceColoursTest {
  private static final OptionalInt NONE = OptionalInt.empty();

  @Test
  void givesNeighboursDifferentColoursTheSameAsOnThePapers() {
    SectionPlan plan = PlannedFixture.ring(64, 32).sections();
    PieceColours colours = PieceColours.of(plan);
    int[] tone = Tones.of(plan);
    for (Seam seam : plan.seams()) {
      assertThat(colours.swatch(seam.earlier()))
          .as("%s", seam)
          .isNotEqualTo(colours.swatch(seam.later()));
      assertThat(colours.swatch(seam.later())).isEqualTo(Palette.light(tone[seam.later()]));
    }
  }

  @Test
  void changesOnlyTheSectionThatIsPointedAt() {
    PieceColours palette = PieceColours.of(PlannedFixture.ring(64, 32).sections());
    int[] rest = palette.colours(PieceColours.Look.SECTIONS, NONE, NONE);
    int[] lit = palette.colours(PieceColours.Look.SECTIONS, OptionalInt.of(3), NONE);
    for (int c = 0; c < rest.length; c++) {
      assertThat(lit[c] != rest[c]).as("class %d", c).isEqualTo(FaceClasses.section(c) == 3);
    }
  }

  @Test
  void fadesAllOthersWhenASectionIsChosen() {
    PieceColours palette = PieceColours.of(PlannedFixture.ring(64, 32).sections());
    int[] rest = palette.colours(PieceColours.Look.GOLD, NONE, NONE);
    int[] chosen = palette.colours(PieceColours.Look.GOLD, NONE, OptionalInt.of(2));
    for (int c = 2; c < rest.length; c++) {
      assertThat(chosen[c]).isNotEqualTo(rest[c]);
    }
    assertThat(chosen[FaceClasses.plain(1)]).isEqualTo(chosen[FaceClasses.plain(4)]);
    assertThat(chosen[FaceClasses.plain(1)]).isNotEqualTo(chosen[FaceClasses.plain(2)]);
    assertThat(chosen[FaceClasses.BARE]).isEqualTo(rest[FaceClasses.BARE]);
  }

  @Test
  void drawsLapBandsDarkerAndHidesThemInGold() {
    PieceColours palette = PieceColours.of(PlannedFixture.ring(64, 32).sections());
    int[] sections = palette.colours(PieceColours.Look.SECTIONS, NONE, NONE);
    int[] gold = palette.colours(PieceColours.Look.GOLD, NONE, NONE);
    for (int id = 1; id <= 12; id++) {
      assertThat(brightness(sections[FaceClasses.lap(id)]))
          .isLessThan(brightness(sections[FaceClasses.plain(id)]) - 60);
      assertThat(gold[FaceClasses.lap(id)]).isEqualTo(gold[FaceClasses.plain(id)]);
    }
  }

  @Test
  void heatIsDarkerWithEachActivationAndTheSameInAllSections() {
    PieceColours palette = PieceColours.of(PlannedFixture.ring(64, 32).sections());
    int[] heat = palette.colours(PieceColours.Look.AGAIN, NONE, NONE);
    for (int id = 1; id <= 12; id++) {
      assertThat(heat[FaceClasses.plain(id)]).isEqualTo(PieceColours.again(1));
      assertThat(heat[FaceClasses.lap(id)]).isEqualTo(PieceColours.again(1));
      assertThat(heat[FaceClasses.twice(id)]).isEqualTo(PieceColours.again(2));
      assertThat(heat[FaceClasses.more(id)]).isEqualTo(PieceColours.again(3));
    }
    for (int times = 2; times <= 3; times++) {
      assertThat(brightness(PieceColours.again(times)))
          .isLessThan(brightness(PieceColours.again(times - 1)) - 100);
    }
  }

  @Test
  void mixesChannelByChannel() {
    assertThat(PieceColours.mix(0x000000, 0xFF8040, 0.5)).isEqualTo(0x804020);
    assertThat(PieceColours.mix(0x102030, 0xFFFFFF, 0)).isEqualTo(0x102030);
    assertThat(PieceColours.mix(0x102030, 0xFFFFFF, 1)).isEqualTo(0xFFFFFF);
  }

  private static int brightness(int rgb) {
    return (rgb >> 16 & 0xFF) + (rgb >> 8 & 0xFF) + (rgb & 0xFF);
  }
}
