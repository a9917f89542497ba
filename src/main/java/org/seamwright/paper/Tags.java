package org.seamwright.paper;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/**
 * The structure of a paper for readers that speak or reflow it: headings, paragraphs, tables,
 * figures with what they show in words, in the order they were set. What is only decoration is
 * marked as such. As ISO 32000-1, 14.7 and 14.8.
 */
final class Tags {
  private final PDStructureTreeRoot root = new PDStructureTreeRoot();
  private final Deque<PDStructureElement> open = new ArrayDeque<>();
  private final Map<PDPage, List<PDStructureElement>> marked = new LinkedHashMap<>();

  /** Above 0 while everything set is decoration. */
  private int decoration;

  Tags() {
    PDStructureElement whole = new PDStructureElement("Document", root);
    root.appendKid(whole);
    open.push(whole);
  }

  /** Opens an element inside the one that is open. */
  PDStructureElement begin(String type) {
    PDStructureElement element = new PDStructureElement(type, open.getFirst());
    if (decoration == 0) {
      open.getFirst().appendKid(element);
    }
    open.push(element);
    return element;
  }

  void end() {
    open.pop();
  }

  /** From here to {@link #endDecoration} nothing is content. */
  void beginDecoration() {
    decoration++;
  }

  void endDecoration() {
    decoration--;
  }

  /** Something is drawn. */
  @FunctionalInterface
  interface Drawing {
    void draw() throws IOException;
  }

  /** Draws content of the open element, of a paragraph of its own if none is. */
  void content(PDPage page, PDPageContentStream stream, Drawing drawing) throws IOException {
    if (decoration > 0) {
      decoration(stream, drawing);
      return;
    }
    boolean alone = open.size() == 1;
    PDStructureElement element = alone ? begin("P") : open.getFirst();
    List<PDStructureElement> onPage = marked.computeIfAbsent(page, p -> new ArrayList<>());
    int number = onPage.size();
    onPage.add(element);
    PDMarkedContentReference reference = new PDMarkedContentReference();
    reference.setMCID(number);
    reference.setPage(page);
    element.appendKid(reference);
    stream.beginMarkedContent(COSName.getPDFName(element.getStructureType()), number);
    drawing.draw();
    stream.endMarkedContent();
    if (alone) {
      end();
    }
  }

  /** Draws what readers may skip. */
  static void decoration(PDPageContentStream stream, Drawing drawing) throws IOException {
    stream.beginMarkedContent(COSName.ARTIFACT);
    drawing.draw();
    stream.endMarkedContent();
  }

  /** Puts the structure into the document. */
  void write(PDDocument document, List<PDPage> pages, String language) {
    Map<Integer, PDParentTreeValue> parents = new LinkedHashMap<>();
    for (int i = 0; i < pages.size(); i++) {
      COSArray elements = new COSArray();
      marked.getOrDefault(pages.get(i), List.of()).forEach(elements::add);
      parents.put(i, new PDParentTreeValue(elements));
      pages.get(i).setStructParents(i);
      // Structure order, not that of rows or columns, leads through the page.
      pages.get(i).getCOSObject().setName(COSName.getPDFName("Tabs"), "S");
    }
    PDNumberTreeNode tree = new PDNumberTreeNode(PDParentTreeValue.class);
    tree.setNumbers(parents);
    root.setParentTree(tree);
    root.setParentTreeNextKey(pages.size());
    PDMarkInfo info = new PDMarkInfo();
    info.setMarked(true);
    document.getDocumentCatalog().setMarkInfo(info);
    document.getDocumentCatalog().setStructureTreeRoot(root);
    document.getDocumentCatalog().setLanguage(language);
    PDViewerPreferences show = new PDViewerPreferences(new COSDictionary());
    show.setDisplayDocTitle(true);
    document.getDocumentCatalog().setViewerPreferences(show);
  }
}
