package org.seamwright.paper;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import org.seamwright.basis.Progress;
import org.seamwright.job.PlannedJob;

/**
 * The paper for the bench: cautions, the piece, masks, steps, a block per section in working order
 * with boxes to tick and lines to fill in, what to have ready, and how each number came about.
 */
public final class BenchSheet {
  /** Text of 11.5 points becomes one of 15: read at arm's length, through goggles. */
  private static final double LARGE = 1.3;

  private BenchSheet() {}

  /**
   * Writes the sheet as PDF.
   *
   * @param planned the job
   * @param file replaced if it exists
   * @param paper size of the pages
   * @param date shown on each page
   * @param progress told of the share done; may cancel
   * @throws IOException if the file can't be written
   */
  public static void write(
      PlannedJob planned, Path file, PaperSize paper, LocalDate date, Progress progress)
      throws IOException {
    write(new Brief(planned, date), file, paper, false, progress);
  }

  static void write(Brief brief, Path file, PaperSize paper, boolean largeType, Progress progress)
      throws IOException {
    double zoom = largeType ? LARGE : 1;
    try (Sheet sheet = new Sheet(paper, zoom, "Bench sheet", brief.piece(), brief.dateText())) {
      title(sheet, brief);
      CautionPages.write(sheet);
      progress.at(0.02);
      PiecePages.write(sheet, brief);
      progress.at(0.1);
      PiecePages.sectionPictures(sheet, brief);
      UnrolledPage.write(sheet, brief);
      progress.at(0.35);
      MaskPages.write(sheet, brief);
      progress.at(0.45);
      StepPages.write(sheet, brief);
      SectionPages.write(sheet, brief, progress.between(0.45, 0.95));
      TotalPages.write(sheet, brief);
      LapPages.write(sheet, brief);
      PricePages.write(sheet, brief);
      TotalPages.trace(sheet, brief);
      sheet.save(file);
      progress.at(1);
    }
  }

  private static void title(Sheet sheet, Brief brief) throws IOException {
    ShopHead.set(sheet, brief.shop, 34);
    sheet.y +=
        sheet.block("Bench sheet", Style.LABEL.sized(12), sheet.left(), sheet.y, sheet.width());
    sheet.y += sheet.block(brief.piece(), Style.TITLE, sheet.left(), sheet.y, sheet.width(), 2);
    if (!brief.planned.job().note().isBlank()) {
      sheet.y +=
          sheet.block(
              brief.planned.job().note(), Style.BODY, sheet.left(), sheet.y + 2, sheet.width(), 3);
    }
    sheet.gap(12);
    // Figures with a range below them take two more small lines.
    double panel =
        brief.planned.plating().bands().seconds().isWide()
                || brief.planned.plating().bands().goldG().isWide()
            ? 58 + 2 * Style.SMALL.leading()
            : 58;
    sheet.fill(sheet.left(), sheet.y, sheet.width(), panel, Style.PANEL);
    Figure.row(
        sheet,
        TotalPages.headline(brief),
        Style.LARGE_FIGURE,
        sheet.left() + 12,
        sheet.y + 9,
        sheet.width() - 24);
    sheet.y += panel + 14;
    if (brief.planned.breaksLimit()) {
      sheet.paragraph(
          "A section is larger than its limit: it may dry before it is done. See the notices.",
          Style.WARNING);
      sheet.gap(8);
    }
  }
}
