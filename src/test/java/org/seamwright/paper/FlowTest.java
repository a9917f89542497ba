package org.seamwright.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FlowTest {
  private static Sheet sheet() throws Exception {
    return new Sheet(PaperSize.A4, "Test", "Piece", "2026-03-09");
  }

  /** Pages that blocks come to stand on. */
  private static List<Integer> pages(int blocks, double height, double gap, double startGap)
      throws Exception {
    try (Sheet sheet = sheet()) {
      sheet.gap(startGap);
      List<Integer> pages = new ArrayList<>();
      Flow flow = new Flow(sheet);
      for (int i = 0; i < blocks; i++) {
        flow.add(
            height,
            gap,
            () -> {
              assertThat(sheet.y + height).isLessThanOrEqualTo(sheet.bottom() + 1e-9);
              pages.add(sheet.pageCount());
            });
      }
      flow.set();
      return pages;
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {10, 18, 22, 23, 24, 25, 26, 27, 30, 46, 47, 48, 49, 50, 75})
  void noPageEndsAFlowWithABlockOrTwo(int blocks) throws Exception {
    for (double start : new double[] {0, 37, 200, 500}) {
      List<Integer> pages = pages(blocks, 25, 7, start);
      int last = pages.get(blocks - 1);
      assertThat(pages).hasSize(blocks).isSorted();
      if (pages.get(0) < last) {
        assertThat(Collections.frequency(pages, last))
            .as("%d blocks from %s", blocks, start)
            .isGreaterThanOrEqualTo(3);
      }
    }
  }

  @Test
  void narrowerGapsBringTheLastBlockBack() throws Exception {
    try (Sheet sheet = sheet()) {
      double room = sheet.bottom() - sheet.top();
      int blocks = 20;
      // One block too many with whole gaps, all of them with gaps a fifth narrower.
      double gap = 10;
      double height = (room - 0.85 * gap * (blocks - 1)) / blocks;
      assertThat(blocks * height + gap * (blocks - 1)).isGreaterThan(room);
      assertThat(pages(blocks, height, gap, 0)).containsOnly(1);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 20, 25, 26, 27, 28, 29, 30, 31, 32, 33, 60, 61})
  void noRowOfATableStandsAlone(int rows) throws Exception {
    for (double start : new double[] {0, 11, 300, 640, 660, 680}) {
      try (Sheet sheet = sheet()) {
        sheet.gap(start);
        List<List<String>> all = new ArrayList<>();
        for (int i = 0; i < rows; i++) {
          all.add(List.of("row " + i));
        }
        int before = sheet.pageCount();
        new Table(sheet, Style.BODY, new Table.Column("What", 1, false)).rows(all);
        double one = Style.BODY.leading() + 10;
        double onLast = sheet.y - sheet.top() - (sheet.pageCount() > before ? 0 : start);
        assertThat(onLast).as("%d rows from %s", rows, start).isGreaterThan(2 * one);
      }
    }
  }
}
