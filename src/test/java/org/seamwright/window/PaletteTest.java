package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.section.Seam;

class PaletteTest {
  private static final OptionalInt NONE = OptionalInt.empty();

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void givesNeighboursDifferentColours(long seed) {
    // Each section meets at most 6 earlier ones, so 7 colours are enough for a greedy choice.
    Random random = new Random(seed);
    List<Seam> seams = new ArrayList<>();
    for (int id = 2; id <= 60; id++) {
      for (int i = 0; i < 6; i++) {
        seams.add(new Seam(1 + random.nextInt(id - 1), id, 1, 0, 0));
      }
    }
    Palette palette = Palette.of(60, seams);
    for (Seam seam : seams) {
      assertThat(palette.swatch(seam.earlier()))
          .as("seed %d, %s", seed, seam)
          .isNotEqualTo(palette.swatch(seam.later()));
    }
  }

  @Test
  void changesOnlyTheSectionThatIsPointedAt() {
    Palette palette = Palette.of(4, List.of());
    int[] rest = palette.colours(Palette.Look.SECTIONS, NONE, NONE);
    int[] lit = palette.colours(Palette.Look.SECTIONS, OptionalInt.of(3), NONE);
    for (int c = 0; c < rest.length; c++) {
      assertThat(lit[c] != rest[c]).as("class %d", c).isEqualTo(FaceClasses.section(c) == 3);
    }
  }

  @Test
  void fadesAllOthersWhenASectionIsChosen() {
    Palette palette = Palette.of(4, List.of());
    int[] rest = palette.colours(Palette.Look.GOLD, NONE, NONE);
    int[] chosen = palette.colours(Palette.Look.GOLD, NONE, OptionalInt.of(2));
    for (int c = 2; c < rest.length; c++) {
      assertThat(chosen[c]).isNotEqualTo(rest[c]);
    }
    assertThat(chosen[FaceClasses.plain(1)]).isEqualTo(chosen[FaceClasses.plain(4)]);
    assertThat(chosen[FaceClasses.plain(1)]).isNotEqualTo(chosen[FaceClasses.plain(2)]);
    assertThat(chosen[FaceClasses.BARE]).isEqualTo(rest[FaceClasses.BARE]);
  }

  @Test
  void drawsLapBandsDarkerAndHidesThemInGold() {
    Palette palette = Palette.of(2, List.of());
    int[] sections = palette.colours(Palette.Look.SECTIONS, NONE, NONE);
    int[] gold = palette.colours(Palette.Look.GOLD, NONE, NONE);
    for (int id = 1; id <= 2; id++) {
      assertThat(brightness(sections[FaceClasses.lap(id)]))
          .isLessThan(brightness(sections[FaceClasses.plain(id)]) - 60);
      assertThat(gold[FaceClasses.lap(id)]).isEqualTo(gold[FaceClasses.plain(id)]);
    }
  }

  @Test
  void mixesChannelByChannel() {
    assertThat(Palette.mix(0x000000, 0xFF8040, 0.5)).isEqualTo(0x804020);
    assertThat(Palette.mix(0x102030, 0xFFFFFF, 0)).isEqualTo(0x102030);
    assertThat(Palette.mix(0x102030, 0xFFFFFF, 1)).isEqualTo(0xFFFFFF);
  }

  private static int brightness(int rgb) {
    return (rgb >> 16 & 0xFF) + (rgb >> 8 & 0xFF) + (rgb & 0xFF);
  }
}
