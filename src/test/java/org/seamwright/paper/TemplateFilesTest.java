package org.seamwright.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.basis.Progress;
import org.seamwright.flatten.Template;
import org.seamwright.flatten.Templates;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** What is read back from the files is the template that was written. */
class TemplateFilesTest {
  /** All of the piece is under film. */
  private static final Mesh NOTHING = Mesh.of(new double[0], new int[0]);

  private static final TemplateWords WORDS = new TemplateWords("Box & <lid> Ø", "bare");

  @TempDir private Path folder;

  private static Templates templates(Mesh mesh) {
    return Templates.of(mesh, f -> true, new Templates.Settings(0.02, 3, 5), Progress.NONE);
  }

  private static Template rectangle() {
    return templates(Shapes.plane(120, 70, 6, 4)).templates().get(0);
  }

  @Test
  void svgHoldsTheOutlineInMillimetres() throws Exception {
    Template t = rectangle();
    String text = TemplateSvg.text(t, WORDS);
    Document document =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
    Element svg = document.getDocumentElement();
    assertThat(svg.getAttribute("width")).endsWith("mm");
    assertThat(svg.getAttribute("viewBox"))
        .startsWith("0 0 " + svg.getAttribute("width").replace("mm", ""));
    Element cut = (Element) svg.getElementsByTagName("g").item(0);
    assertThat(cut.getAttribute("id")).isEqualTo("CUT");
    String d = ((Element) cut.getElementsByTagName("path").item(0)).getAttribute("d");
    List<Double> numbers = new ArrayList<>();
    for (String number : d.replaceAll("[MLZ]", " ").strip().split("\\s+")) {
      numbers.add(Double.parseDouble(number));
    }
    assertThat(area(numbers)).isCloseTo(120 * 70, within(0.1));
    assertThat(text).contains("Box &amp; &lt;lid&gt; Ø, bare 1");
  }

  @Test
  void dxfHoldsTheOutlineInMillimetres() {
    Template t = rectangle();
    String[] lines = TemplateDxf.text(t, WORDS).split("\n");
    assertThat(lines.length % 2).isZero();
    List<Double> numbers = new ArrayList<>();
    boolean inCut = false;
    for (int i = 0; i < lines.length; i += 2) {
      int code = Integer.parseInt(lines[i].strip());
      String value = lines[i + 1];
      if (code == 0) {
        inCut = value.equals("VERTEX") && lines[i + 3].equals("CUT");
      } else if (inCut && (code == 10 || code == 20)) {
        numbers.add(Double.parseDouble(value));
      }
    }
    assertThat(numbers).hasSize(8);
    assertThat(area(numbers)).isCloseTo(120 * 70, within(0.1));
    assertThat(lines).contains("AC1009", "CUT", "MARK", "TEXT", "EOF", "Box & <lid> _, bare 1");
  }

  /** Shoelace formula, unsigned. */
  private static double area(List<Double> xy) {
    double doubled = 0;
    int n = xy.size() / 2;
    for (int i = 0; i < n; i++) {
      int k = (i + 1) % n;
      doubled += xy.get(2 * i) * xy.get(2 * k + 1) - xy.get(2 * k) * xy.get(2 * i + 1);
    }
    return Math.abs(doubled / 2);
  }

  @Test
  void pdfTilesWhatIsLargerThanAPageAndSaysHowPagesJoin() throws IOException {
    Templates large = templates(Shapes.plane(400, 300, 8, 6));
    Path file = folder.resolve("templates.pdf");
    TemplateSheets.write(large, NOTHING, WORDS, file, PaperSize.A4, 0.02);
    try (PDDocument pdf = Loader.loadPDF(file.toFile())) {
      // The list, then 400 × 300 mm on frames of about 166 × 215 mm: 2 × 2 if turned.
      assertThat(pdf.getNumberOfPages()).isEqualTo(5);
      assertThat(pdf.getPage(1).getMediaBox().getWidth())
          .isCloseTo((float) (210 / 25.4 * 72), within(0.01f));
      String text = new PDFTextStripper().getText(pdf);
      assertThat(text)
          .contains("50 mm: measure this bar before cutting", "to page 3", "part 1 of 4");
      assertThat(text).contains("Print at 100%");
    }
  }

  @Test
  void barAndOutlineArePrintedTrueToSize() throws IOException {
    Path file = folder.resolve("templates.pdf");
    TemplateSheets.write(
        templates(Shapes.plane(120, 70, 6, 4)), NOTHING, WORDS, file, PaperSize.A4, 0.02);
    try (PDDocument pdf = Loader.loadPDF(file.toFile())) {
      List<float[]> lines = StrokedLines.of(pdf.getPage(1));
      assertThat(lines).anySatisfy(l -> assertLength(l, 50));
      assertThat(lines).anySatisfy(l -> assertLength(l, 120));
      assertThat(lines).anySatisfy(l -> assertLength(l, 70));
    }
  }

  private static void assertLength(float[] line, double mm) {
    double points = Math.hypot(line[2] - line[0], line[3] - line[1]);
    assertThat(points * 25.4 / 72).isCloseTo(mm, within(0.01));
  }

  @Test
  void sameTemplatesSameBytes() throws IOException {
    Templates box = templates(Shapes.box(40, 30, 20, 4));
    Path first = folder.resolve("a.pdf");
    Path second = folder.resolve("b.pdf");
    TemplateSheets.write(box, NOTHING, WORDS, first, PaperSize.LETTER, 0.02);
    TemplateSheets.write(box, NOTHING, WORDS, second, PaperSize.LETTER, 0.02);
    assertThat(Files.readAllBytes(second)).isEqualTo(Files.readAllBytes(first));
  }
}
