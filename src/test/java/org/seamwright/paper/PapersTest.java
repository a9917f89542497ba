package org.seamwright.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Rectangle2D;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.basis.Progress;
import org.seamwright.job.PlannedJob;
import org.seamwright.picture.Background;
import org.seamwright.picture.Finish;
import org.seamwright.picture.Image;
import org.seamwright.picture.Letterhead;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Scene;
import org.seamwright.picture.View;
import org.seamwright.plating.BenchPace;
import org.seamwright.plating.Cautions;
import org.seamwright.plating.Step;
import org.seamwright.section.Section;
import org.seamwright.testsupport.Shapes;
import org.seamwright.units.UnitSystem;

class PapersTest {
  private static final LocalDate DATE = LocalDate.of(2026, 3, 9);

  @TempDir static Path dir;
  private static PlannedJob planned;
  private static ReadPdf bench;
  private static ReadPdf customer;

  @BeforeAll
  static void write() throws Exception {
    planned = TestJobs.goblet("Goblet of a test", 3, UnitSystem.METRIC);
    Papers.writeAll(planned, dir, DATE, Progress.NONE);
    bench = ReadPdf.of(dir.resolve("bench-sheet.pdf"));
    customer = ReadPdf.of(dir.resolve("customer-sheet.pdf"));
  }

  @Test
  void writesExactlyTheNamedFiles() throws Exception {
    try (var files = Files.list(dir)) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .containsExactlyInAnyOrderElementsOf(Papers.names());
    }
  }

  @Test
  void everyPageBearsPieceDateAndNumber() {
    for (ReadPdf pdf : List.of(bench, customer)) {
      int n = pdf.pages.size();
      for (int i = 0; i < n; i++) {
        assertThat(pdf.pages.get(i).text)
            .contains("Goblet of a test", "2026-03-09", "Page " + (i + 1) + " of " + n);
      }
    }
    assertThat(customer.pages.size()).isLessThanOrEqualTo(2);
  }

  @Test
  void cautionsComeFirst() {
    String text = bench.text();
    assertThat(text.indexOf("Read first")).isPositive().isLessThan(text.indexOf("The piece"));
    for (Cautions.Caution caution : Cautions.all()) {
      assertThat(text).contains(caution.title());
    }
  }

  @Test
  void stepsMasksAndTotalsAreThere() {
    String text = bench.text();
    for (Step step : planned.settings().recipe().steps()) {
      assertThat(text).contains(step.name());
    }
    planned.plating().trace().forEach(t -> assertThat(text).contains(t.figure().split(" ")[0]));
    assertThat(text)
        .contains("M1", "12.7 mm tape", "Have ready", "How each number came about", "Lap onto 1");
    planned.notices().forEach(n -> assertThat(text).contains(n.text()));
  }

  @Test
  void everySectionHasItsBlockWithItsFigures() {
    Brief brief = new Brief(planned, DATE);
    String text = bench.text();
    for (Section section : planned.sections().sections()) {
      assertThat(text)
          .contains(plain(brief.format.area(section.workedMm2())))
          .contains(plain(brief.format.mass(brief.amounts(section.id()).goldG())));
    }
    assertThat(text).contains("\u201cFoot and stem\u201d.");
    int from = text.indexOf("Work the sections in this order");
    assertThat(text.substring(from).split("Gold used", -1)).hasSize(6 + 1);
  }

  @Test
  void customerSeesThePriceAndTheShopHowItCameAbout() {
    String total = planned.quote().orElseThrow().total().toPlainString();
    assertThat(customer.text()).contains(total + " XTS", "Holds until 2026-04-08");
    assertThat(bench.text()).contains("Price, in XTS", "Overhead", "(this job)", total);
    assertThat(bench.text()).contains("in 8 of 10 jobs", "dips", "of it as gel", "for gel: 25 %");
  }

  @Test
  void aTurnedPieceIsRolledOutWithEverySectionNumbered() {
    String page =
        bench.pages.stream()
            .map(p -> p.text)
            .filter(t -> t.contains("Rolled out"))
            .findFirst()
            .orElseThrow();
    assertThat(page)
        .contains("Outer side", "Inner side", "50 mm, for all sides above")
        .doesNotContain("Not on this page", "without a number");
  }

  @Test
  void sectionsOverTheLimitAreCalledOut() {
    long over =
        planned.sections().sections().stream()
            .filter(s -> s.workedMm2() > planned.limitMm2())
            .count();
    assertThat(over).as("the fixture has some").isPositive();
    assertThat(bench.text().split("OVER THE LIMIT", -1)).hasSize((int) over + 1);
  }

  @Test
  void theTrialSheetIsOnePageForTheStepsOfTheRecipe() throws Exception {
    ReadPdf trial = ReadPdf.of(dir.resolve("trial-sheet.pdf"));
    assertThat(trial.pages).hasSize(1);
    String text = trial.pages.get(0).text;
    for (String step : BenchPace.wetSteps(planned.settings().recipe())) {
      assertThat(text).contains(step);
    }
    // The job's window, handling and pace: (45 − 7) ÷ 0.5 = 76.
    assertThat(text).contains("(45 − 7) ÷ 0.5 = 76 cm²");
    assertTidy(trial);
  }

  @Test
  void fontsAreEmbeddedAndTheProgramsOwn() {
    for (ReadPdf pdf : List.of(bench, customer)) {
      assertThat(pdf.allFontsEmbedded).isTrue();
      assertThat(pdf.fonts).isNotEmpty().allMatch(name -> name.contains("LiberationSans"));
    }
  }

  @Test
  void nothingLiesOutsideThePageOrOverOtherThings() {
    assertTidy(bench);
    assertTidy(customer);
  }

  @Test
  void sizeOfPaperFollowsTheUnits() throws Exception {
    // ISO 216: 210 × 297 mm; Letter: 8.5 × 11 in; 72 points to the inch.
    assertThat(bench.pages.get(0).width).isCloseTo(210 / 25.4 * 72, within(0.1));
    assertThat(bench.pages.get(0).height).isCloseTo(297 / 25.4 * 72, within(0.1));
    assertThat(PaperSize.forUnits(UnitSystem.INCH).width()).isEqualTo(8.5 * 72);
    assertThat(PaperSize.forUnits(UnitSystem.INCH).height()).isEqualTo(11 * 72);
  }

  @Test
  void sameJobSameBytes(@TempDir Path again) throws Exception {
    Papers.writeAll(planned, again, DATE, Progress.NONE);
    for (String name : Papers.names()) {
      assertThat(again.resolve(name)).as(name).hasSameBinaryContentAs(dir.resolve(name));
    }
  }

  @Test
  void awkwardNamesStayInTheirPlace(@TempDir Path other) throws Exception {
    String name =
        "Cup\n\u0007of W".repeat(3) + "o".repeat(400) + " \u4e2d\u6587 \ud83c\udfc6 (é ß ž Ω) ";
    PlannedJob odd = TestJobs.goblet(name, 1, UnitSystem.INCH);
    Path file = other.resolve("customer.pdf");
    CustomerSheet.write(odd, file, PaperSize.LETTER, DATE);
    ReadPdf read = ReadPdf.of(file);
    assertTidy(read);
    assertThat(read.text()).contains("…");
  }

  @Test
  void largeTypeIsLargerAndAsTidy(@TempDir Path other) throws Exception {
    Path file = other.resolve("large.pdf");
    BenchSheet.write(new Brief(planned, DATE), file, PaperSize.A4, true, Progress.NONE);
    ReadPdf large = ReadPdf.of(file);
    assertTidy(large);
    assertThat(large.pages.size()).isGreaterThan(bench.pages.size());
    // "Read first", a heading: 1.3 times as high as in plain type.
    assertThat(heading(large) / heading(bench)).isCloseTo(1.3, within(0.01));
    assertThat(large.text()).contains("OVER THE LIMIT", "Rolled out", "How each number came about");
  }

  private static double heading(ReadPdf pdf) {
    String wanted = "Read first".replace(" ", "");
    List<ReadPdf.Glyph> glyphs = pdf.pages.get(0).glyphs;
    for (int i = 0; i + wanted.length() <= glyphs.size(); i++) {
      StringBuilder word = new StringBuilder();
      glyphs.subList(i, i + wanted.length()).forEach(g -> word.append(g.text()));
      if (word.toString().equals(wanted)) {
        return glyphs.get(i).box().getHeight();
      }
    }
    throw new AssertionError("no heading");
  }

  @Test
  void theShopHeadsBothSheets(@TempDir Path other) throws Exception {
    Image logo =
        Pictures.plain(
            Scene.plain(Shapes.cube(1, 1), Finish.GOLD), View.FRONT, 300, 90, Background.WHITE);
    Letterhead head =
        new Letterhead(
            "Example Plating Shop, of a test",
            List.of("1 Invented Street", "00000 Nowhere"),
            Optional.of(logo));
    Brief brief = new Brief(planned, head, DATE);
    CustomerSheet.write(brief, other.resolve("c.pdf"), PaperSize.A4);
    BenchSheet.write(brief, other.resolve("b.pdf"), PaperSize.LETTER, false, Progress.NONE);
    for (String name : List.of("c.pdf", "b.pdf")) {
      ReadPdf read = ReadPdf.of(other.resolve(name));
      assertThat(read.pages.get(0).text)
          .contains("Example Plating Shop, of a test", "1 Invented Street", "00000 Nowhere");
      assertThat(read.pages.get(0).pictures)
          .anyMatch(p -> p.getMaxY() < 150 && p.getWidth() / p.getHeight() > 3);
      assertTidy(read);
    }
    assertThat(customer.pages.get(0).text).doesNotContain("Example Plating Shop");
  }

  @Test
  void cancellingStops(@TempDir Path other) {
    Progress stop =
        fraction -> {
          if (fraction > 0) {
            throw new CancellationException();
          }
        };
    assertThatThrownBy(() -> Papers.writeAll(planned, other, DATE, stop))
        .isInstanceOf(CancellationException.class);
  }

  private static String plain(String amount) {
    return amount.replace('\u00a0', ' ');
  }

  /**
   * All glyphs within the page's margins of a quarter inch that printers leave, none over another
   * or over a picture.
   */
  private static void assertTidy(ReadPdf pdf) {
    double edge = 18;
    for (int p = 0; p < pdf.pages.size(); p++) {
      ReadPdf.Page page = pdf.pages.get(p);
      Rectangle2D paper =
          new Rectangle2D.Double(edge, edge, page.width - 2 * edge, page.height - 2 * edge);
      List<String> trouble = new ArrayList<>();
      for (Rectangle2D picture : page.pictures) {
        if (!paper.contains(picture)) {
          trouble.add("picture outside: " + picture);
        }
      }
      for (int i = 0; i < page.glyphs.size(); i++) {
        ReadPdf.Glyph a = page.glyphs.get(i);
        if (!paper.contains(a.box())) {
          trouble.add("outside: " + a);
        }
        for (Rectangle2D picture : page.pictures) {
          if (over(a.box(), picture)) {
            trouble.add("over a picture: " + a);
          }
        }
        for (int j = i + 1; j < page.glyphs.size(); j++) {
          if (over(a.box(), page.glyphs.get(j).box())) {
            trouble.add(a + " over " + page.glyphs.get(j));
          }
        }
      }
      assertThat(trouble).as("page %d", p + 1).isEmpty();
    }
  }

  /** Overlap by more than a side bearing, which letters may have by design. */
  private static boolean over(Rectangle2D a, Rectangle2D b) {
    double x = Math.min(a.getMaxX(), b.getMaxX()) - Math.max(a.getMinX(), b.getMinX());
    double y = Math.min(a.getMaxY(), b.getMaxY()) - Math.max(a.getMinY(), b.getMinY());
    return x > 0.6 && y > 0.6;
  }
}
