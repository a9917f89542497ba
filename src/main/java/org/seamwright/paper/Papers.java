package org.seamwright.paper;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.seamwright.basis.Progress;
import org.seamwright.job.PlannedJob;
import org.seamwright.picture.Background;
import org.seamwright.picture.Image;
import org.seamwright.picture.Letterhead;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Png;
import org.seamwright.picture.Scene;
import org.seamwright.picture.View;

/** All papers of a planned job at one go. */
public final class Papers {
  private static final int WIDTH = 1600;
  private static final int HEIGHT = 1200;

  /** Pictures on one sheet of sections are this wide each. */
  private static final int TILE_WIDTH = 1000;

  private static final int TILE_HEIGHT = 750;

  private Papers() {}

  /** Names of the files that {@link #writeAll} writes. */
  public static List<String> names() {
    return List.of(
        "bench-sheet.pdf",
        "customer-sheet.pdf",
        "trial-sheet.pdf",
        "sections.png",
        "customer.png",
        "sections.csv",
        "seams.csv",
        "junctions.csv",
        "masks.csv");
  }

  /**
   * Writes all papers with today's date.
   *
   * @param planned the job
   * @param dir an existing directory; files in it are replaced. After a failure it may hold some of
   *     them: write to a temporary one and move it
   * @param progress told of the share done; may cancel
   * @throws IOException if a file can't be written
   */
  public static void writeAll(PlannedJob planned, Path dir, Progress progress) throws IOException {
    writeAll(planned, dir, LocalDate.now(ZoneId.systemDefault()), progress);
  }

  /**
   * Writes all papers: the same job and date give the same bytes.
   *
   * @param planned the job
   * @param dir an existing directory, as above
   * @param date shown on the papers
   * @param progress told of the share done; may cancel
   * @throws IOException if a file can't be written
   */
  public static void writeAll(PlannedJob planned, Path dir, LocalDate date, Progress progress)
      throws IOException {
    writeAll(planned, Letterhead.NONE, dir, date, progress);
  }

  /**
   * Writes all papers, headed by the shop's name, address and logo.
   *
   * @param planned the job
   * @param head who makes the piece
   * @param dir an existing directory, as above
   * @param date shown on the papers
   * @param progress told of the share done; may cancel
   * @throws IOException if a file can't be written
   */
  public static void writeAll(
      PlannedJob planned, Letterhead head, Path dir, LocalDate date, Progress progress)
      throws IOException {
    writeAll(planned, head, false, dir, date, progress);
  }

  /**
   * Writes all papers, the bench sheet in large type if asked for.
   *
   * @param planned the job
   * @param head who makes the piece
   * @param largeType whether the bench sheet is set 1.3 times as large, on more pages
   * @param dir an existing directory, as above
   * @param date shown on the papers
   * @param progress told of the share done; may cancel
   * @throws IOException if a file can't be written
   */
  public static void writeAll(
      PlannedJob planned,
      Letterhead head,
      boolean largeType,
      Path dir,
      LocalDate date,
      Progress progress)
      throws IOException {
    Brief brief = new Brief(planned, head, date);
    PaperSize paper = PaperSize.forUnits(planned.job().display());
    progress.at(0);
    Csv.sections(planned, dir.resolve("sections.csv"));
    Csv.seams(planned, dir.resolve("seams.csv"));
    Csv.junctions(planned, dir.resolve("junctions.csv"));
    Csv.masks(planned, dir.resolve("masks.csv"));
    Scene after = Pictures.customerScene(planned.map(), brief.look(), brief.metal());
    Png.write(
        Pictures.photograph(after, brief.portraits().get(0), WIDTH, HEIGHT, Background.SOFT),
        dir.resolve("customer.png"));
    progress.at(0.1);
    Png.write(sections(brief), dir.resolve("sections.png"));
    progress.at(0.25);
    CustomerSheet.write(brief, dir.resolve("customer-sheet.pdf"), paper);
    TrialSheet.write(planned, dir.resolve("trial-sheet.pdf"), paper, date);
    progress.at(0.35);
    BenchSheet.write(
        brief, dir.resolve("bench-sheet.pdf"), paper, largeType, progress.between(0.35, 1));
  }

  /** The numbered sections from few sides on one picture. */
  private static Image sections(Brief brief) {
    List<Image> tiles = new ArrayList<>();
    for (int view : brief.views()) {
      tiles.add(brief.sectionPicture(view, TILE_WIDTH, TILE_HEIGHT).image());
    }
    if (tiles.isEmpty()) {
      return Pictures.plain(
          brief.sectionScene(), View.THREE_QUARTER, WIDTH, HEIGHT, Background.WHITE);
    }
    return Pictures.sheet(tiles, Math.min(2, tiles.size()));
  }
}
