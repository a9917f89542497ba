package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a plan for another metal than gold tells the customer. */
class PlanMetalTest {
  @TempDir private Path folder;

  /** A customer who orders silver must not sign for gold, nor for gold's thickness classes. */
  @Test
  void theCustomersSheetNamesTheMetalThatIsLaid() throws Exception {
    Path job = folder.resolve("plaque.json");
    Files.copy(Path.of("models/plaque.obj"), folder.resolve("plaque.obj"));
    String gold = Files.readString(Path.of("models/plaque.json"));
    Files.writeString(job, gold.replace("\"gold-hard\"", "\"silver\""));

    Run run = Run.of("plan", job, "--out", folder.resolve("out"));

    assertThat(run.code()).isEqualTo(ExitCode.DONE);
    assertThat(run.out()).contains("Silver  ");
    try (PDDocument sheet =
        Loader.loadPDF(folder.resolve("out").resolve("customer-sheet.pdf").toFile())) {
      assertThat(new PDFTextStripper().getText(sheet))
          .contains("Silver plating, for your approval", "Silver goes on")
          .doesNotContainIgnoringCase("gold")
          .doesNotContain("B488");
    }
  }
}
