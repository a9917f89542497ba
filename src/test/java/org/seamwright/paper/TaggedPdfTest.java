package org.seamwright.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDMarkedContent;
import org.apache.pdfbox.text.PDFMarkedContentExtractor;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.units.UnitSystem;

/** Reads the structure of the papers back, as a program that speaks them would. */
class TaggedPdfTest {
  @TempDir static Path dir;

  @BeforeAll
  static void write() throws Exception {
    Papers.writeAll(
        TestJobs.goblet("Goblet of a test", 3, UnitSystem.METRIC),
        dir,
        LocalDate.of(2026, 3, 9),
        Progress.NONE);
  }

  /** An element with the text of its own content. */
  private record Element(String type, String parent, String alt, String text) {}

  private static final class Structure {
    final List<Element> elements = new ArrayList<>();
    final Map<PDPage, Map<Integer, PDStructureElement>> owners = new HashMap<>();
    private final Map<PDPage, Map<Integer, String>> texts = new HashMap<>();

    /** Letters that belong to no element and are no decoration, and of decoration. */
    String loose = "";

    String decoration = "";

    Structure(PDDocument document) throws Exception {
      for (PDPage page : document.getPages()) {
        PDFMarkedContentExtractor extractor = new PDFMarkedContentExtractor();
        extractor.processPage(page);
        Map<Integer, String> byNumber = new HashMap<>();
        for (PDMarkedContent content : extractor.getMarkedContents()) {
          StringBuilder text = new StringBuilder();
          for (Object inside : content.getContents()) {
            if (inside instanceof TextPosition letter) {
              text.append(letter.getUnicode());
            }
          }
          if (content.getTag().equals("Artifact")) {
            decoration += text + "\n";
          } else if (content.getMCID() < 0) {
            loose += text;
          } else {
            byNumber.put(content.getMCID(), text.toString());
          }
        }
        texts.put(page, byNumber);
      }
      walk(document.getDocumentCatalog().getStructureTreeRoot(), "");
    }

    private void walk(PDStructureNode node, String parent) {
      StringBuilder text = new StringBuilder();
      int at = elements.size();
      String type = node instanceof PDStructureElement e ? e.getStructureType() : "";
      elements.add(null);
      for (Object kid : node.getKids()) {
        if (kid instanceof PDStructureElement element) {
          walk(element, type);
        } else if (kid instanceof PDMarkedContentReference mark) {
          owners
              .computeIfAbsent(mark.getPage(), p -> new HashMap<>())
              .put(mark.getMCID(), (PDStructureElement) node);
          text.append(texts.get(mark.getPage()).getOrDefault(mark.getMCID(), "")).append(' ');
        }
      }
      String alt =
          node instanceof PDStructureElement e && e.getAlternateDescription() != null
              ? e.getAlternateDescription()
              : "";
      elements.set(at, new Element(type, parent, alt, text.toString().replace('\u00a0', ' ')));
    }

    List<String> texts(String type) {
      return elements.stream()
          .filter(e -> e.type().equals(type))
          .map(e -> e.text().strip())
          .toList();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"bench-sheet", "customer-sheet", "trial-sheet"})
  void allThatIsSaidBelongsToTheStructure(String name) throws Exception {
    try (PDDocument document = Loader.loadPDF(dir.resolve(name + ".pdf").toFile())) {
      assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
      assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
      assertThat(document.getDocumentInformation().getTitle()).endsWith(": Goblet of a test");
      assertThat(document.getDocumentCatalog().getViewerPreferences().displayDocTitle()).isTrue();
      Structure structure = new Structure(document);
      assertThat(structure.loose).isEmpty();
      // Heads and feet alone, and table heads said again.
      assertThat(structure.decoration).contains("Page 1 of ");
      structure.texts.forEach(
          (page, byNumber) ->
              assertThat(structure.owners.getOrDefault(page, Map.of()).keySet())
                  .as("every marked stretch has an element")
                  .isEqualTo(byNumber.keySet()));
      for (Element element : structure.elements) {
        switch (element.type()) {
          case "Figure" -> assertThat(element.alt()).isNotBlank();
          case "TR" -> assertThat(element.parent()).isEqualTo("Table");
          case "TH", "TD" -> assertThat(element.parent()).isEqualTo("TR");
          case "P", "H1", "H2", "H3", "Table" -> assertThat(element.parent()).isEqualTo("Document");
          case "Document", "" -> assertThat(element.text()).isBlank();
          default -> throw new AssertionError("Unexpected element " + element);
        }
      }
      assertThat(structure.texts("H1"))
          .singleElement()
          .asString()
          .startsWith(name.startsWith("trial") ? "Trial on scrap" : "Goblet of a test");
    }
  }

  @Test
  void theBenchSheetIsReadInOrder() throws Exception {
    try (PDDocument document = Loader.loadPDF(dir.resolve("bench-sheet.pdf").toFile())) {
      Structure structure = new Structure(document);
      assertThat(structure.texts("H2"))
          .containsSubsequence(
              "Read first",
              "The piece",
              "Sections, numbered in working order",
              "Mask",
              "Work the sections in this order",
              "Have ready",
              "How each number came about");
      assertThat(structure.texts("TH")).contains("Section");
      assertThat(structure.elements.stream().map(Element::alt))
          .anyMatch(a -> a.startsWith("Where section 3 is, seen from: "))
          .anyMatch(a -> a.startsWith("What to cover, seen from: "));
    }
  }

  @Test
  void thePagesLeadBackToTheElements() throws Exception {
    try (PDDocument document = Loader.loadPDF(dir.resolve("bench-sheet.pdf").toFile())) {
      Structure structure = new Structure(document);
      PDNumberTreeNode parents =
          document.getDocumentCatalog().getStructureTreeRoot().getParentTree();
      for (PDPage page : document.getPages()) {
        PDParentTreeValue value = (PDParentTreeValue) parents.getValue(page.getStructParents());
        COSArray elements = (COSArray) value.getCOSObject();
        Map<Integer, PDStructureElement> owners = structure.owners.get(page);
        assertThat(elements.size()).isEqualTo(owners.size());
        for (int i = 0; i < elements.size(); i++) {
          COSDictionary owner = owners.get(i).getCOSObject();
          assertThat(elements.getObject(i)).isSameAs(owner);
        }
      }
    }
  }
}
