package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** The shop's name, address and logo, from the shop book to the papers. */
class ShopHeadTest extends PlanFixture {
  private Run set(Path book, String key, Object value) {
    return Run.of("shop", "set", key, value, "--book", book);
  }

  @Test
  void theShopIsOnBothSheetsAndThePage() throws Exception {
    Path book = folder.resolve("shop.db");
    Path logo = folder.resolve("logo.png");
    ImageIO.write(new BufferedImage(80, 40, BufferedImage.TYPE_INT_RGB), "png", logo.toFile());
    assertThat(set(book, "shopName", "Example Plating Shop").code()).isZero();
    assertThat(set(book, "shopAddress", "1 Invented Street; 00000 Nowhere").code()).isZero();
    assertThat(set(book, "shopLogo", logo).code()).isZero();
    job("\"sections\": {\"limit\": \"900 cm2\"}");

    Run run = Run.of("plan", jobFile, "--out", out, "--book", book);
    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    for (String name : new String[] {"bench-sheet.pdf", "customer-sheet.pdf"}) {
      try (PDDocument document = Loader.loadPDF(out.resolve(name).toFile())) {
        PDFTextStripper first = new PDFTextStripper();
        first.setEndPage(1);
        assertThat(first.getText(document))
            .contains("Example Plating Shop", "1 Invented Street", "00000 Nowhere");
      }
    }
    Path page = folder.resolve("cube.html");
    assertThat(Run.of("share", jobFile, "--out", page, "--book", book).code()).isZero();
    assertThat(Files.readString(page)).contains("<strong>Example Plating Shop</strong>");

    Files.delete(logo);
    assertThat(Run.of("share", jobFile, "--out", page, "--book", book).err())
        .contains("logo.png", "shop set shopLogo");
  }

  @Test
  void aLogoThatIsNoneIsRefusedAtOnce() throws Exception {
    Path book = folder.resolve("shop.db");
    Path text = Files.writeString(folder.resolve("logo.txt"), "not a picture");
    Run run = set(book, "shopLogo", text);
    assertThat(run.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("neither PNG nor JPEG");
    assertThat(set(book, "shopAddress", "x".repeat(300)).err()).contains("too long");
    assertThat(Run.of("share", jobFile, "--out", "x.html", "--book", folder.resolve("no.db")).err())
        .contains("no such shop book");
  }
}
