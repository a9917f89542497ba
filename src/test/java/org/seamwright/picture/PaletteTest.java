package org.seamwright.picture;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PaletteTest {
  @Test
  void coloursAreThePublishedOnes() {
    // Okabe and Ito 2008, RGB in their table: orange 230,159,0; sky blue 86,180,233; bluish green
    // 0,158,115; yellow 240,228,66; blue 0,114,178; vermillion 213,94,0; reddish purple 204,121,167
    // (from memory).
    int[][] table = {
      {230, 159, 0},
      {86, 180, 233},
      {0, 158, 115},
      {240, 228, 66},
      {0, 114, 178},
      {213, 94, 0},
      {204, 121, 167}
    };
    for (int tone = 0; tone < Palette.SIZE; tone++) {
      int rgb = Palette.published(tone);
      assertThat(new int[] {rgb >> 16, rgb >> 8 & 255, rgb & 255}).isEqualTo(table[tone]);
    }
  }

  @Test
  void patternsDifferWithoutColour() {
    // Rows, columns and diagonals of ink: no two patterns ink the same places, none is solid or
    // empty.
    int n = 240;
    boolean[][] ink = new boolean[Palette.SIZE][n * n];
    for (int tone = 0; tone < Palette.SIZE; tone++) {
      int count = 0;
      for (int i = 0; i < n * n; i++) {
        ink[tone][i] = Palette.inked(tone, (i % n) / 20.0, Math.floorDiv(i, n) / 20.0);
        count += ink[tone][i] ? 1 : 0;
      }
      assertThat(count / (double) (n * n)).as("share of ink, class %d", tone).isBetween(0.05, 0.35);
    }
    for (int a = 0; a < Palette.SIZE; a++) {
      for (int b = a + 1; b < Palette.SIZE; b++) {
        int differ = 0;
        int either = 0;
        for (int i = 0; i < n * n; i++) {
          differ += ink[a][i] != ink[b][i] ? 1 : 0;
          either += ink[a][i] || ink[b][i] ? 1 : 0;
        }
        assertThat(differ / (double) either).as("classes %d and %d", a, b).isGreaterThan(0.5);
      }
    }
  }
}
