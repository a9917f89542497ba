package org.seamwright.paper;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFStreamEngine;
import org.apache.pdfbox.contentstream.operator.DrawObject;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.state.Concatenate;
import org.apache.pdfbox.contentstream.operator.state.Restore;
import org.apache.pdfbox.contentstream.operator.state.Save;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.apache.pdfbox.util.Matrix;

/** What a PDF shows, read back: text, glyphs, pictures, fonts. Points, y down. */
final class ReadPdf {
  final List<Page> pages = new ArrayList<>();
  final List<String> fonts = new ArrayList<>();
  boolean allFontsEmbedded = true;

  /** A glyph and the box of its ink, about: from the baseline up to the height of its letters. */
  record Glyph(String text, double baseline, Rectangle2D box) {}

  /** One page. */
  static final class Page {
    double width;
    double height;
    String text = "";
    final List<Glyph> glyphs = new ArrayList<>();
    final List<Rectangle2D> pictures = new ArrayList<>();
  }

  static ReadPdf of(Path file) throws IOException {
    ReadPdf read = new ReadPdf();
    try (PDDocument document = Loader.loadPDF(file.toFile())) {
      for (int i = 0; i < document.getNumberOfPages(); i++) {
        read.pages.add(read.page(document, i));
      }
    }
    return read;
  }

  String text() {
    StringBuilder all = new StringBuilder();
    pages.forEach(p -> all.append(p.text).append('\n'));
    return all.toString();
  }

  private Page page(PDDocument document, int index) throws IOException {
    PDPage source = document.getPage(index);
    Page page = new Page();
    page.width = source.getMediaBox().getWidth();
    page.height = source.getMediaBox().getHeight();
    PDFTextStripper stripper =
        new PDFTextStripper() {
          @Override
          protected void writeString(String text, List<TextPosition> positions) throws IOException {
            for (TextPosition p : positions) {
              if (!p.getUnicode().isBlank()) {
                double h = p.getHeightDir();
                page.glyphs.add(
                    new Glyph(
                        p.getUnicode(),
                        p.getYDirAdj(),
                        new Rectangle2D.Double(
                            p.getXDirAdj(), p.getYDirAdj() - h, p.getWidthDirAdj(), h)));
              }
            }
            super.writeString(text, positions);
          }
        };
    stripper.setSortByPosition(true);
    stripper.setSuppressDuplicateOverlappingText(false);
    stripper.setStartPage(index + 1);
    stripper.setEndPage(index + 1);
    StringWriter text = new StringWriter();
    stripper.writeText(document, text);
    // No-break spaces join figures and units.
    page.text = text.toString().replace('\u00a0', ' ');
    new Pictures(page).processPage(source);
    for (COSName name : source.getResources().getFontNames()) {
      PDFont font = source.getResources().getFont(name);
      fonts.add(font.getName());
      allFontsEmbedded &= font.isEmbedded();
    }
    return page;
  }

  /** Collects where pictures are drawn. */
  private static final class Pictures extends PDFStreamEngine {
    private final Page page;

    Pictures(Page page) {
      this.page = page;
      addOperator(new Concatenate(this));
      addOperator(new Save(this));
      addOperator(new Restore(this));
      addOperator(new DrawObject(this));
    }

    @Override
    protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
      if (operator.getName().equals("Do")) {
        Matrix m = getGraphicsState().getCurrentTransformationMatrix();
        page.pictures.add(
            new Rectangle2D.Double(
                m.getTranslateX(),
                page.height - m.getTranslateY() - m.getScalingFactorY(),
                m.getScalingFactorX(),
                m.getScalingFactorY()));
      }
      super.processOperator(operator, operands);
    }
  }
}
