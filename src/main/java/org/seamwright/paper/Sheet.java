package org.seamwright.paper;

import java.awt.image.BufferedImage;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.util.Matrix;
import org.seamwright.picture.Image;
import org.seamwright.picture.Typeface;

/**
 * A paper in the making: pages filled from the top, with a line at the head and foot of each.
 * Lengths are points (1/72 in), y runs down from the top of the page. {@link #y} is where the next
 * thing goes. Same content, same bytes: no dates or random numbers inside.
 */
final class Sheet implements Closeable {
  /** Margin at all sides: room for a clip or a ring binder. */
  static final double MARGIN = 48;

  private static final double PART_GAP = 18;
  private static final double HEAD = 30;
  private static final double FOOT = 26;

  /** Circle by four cubic curves: distance of control points over the radius. */
  private static final double KAPPA = 0.5522847498;

  private final PDDocument document = new PDDocument();
  private final PaperSize size;
  private final double zoom;
  private final double pageWidth;
  private final double pageHeight;
  private final double margin;
  private final String title;
  private final String piece;
  private final String date;
  private final Face regular;
  private final Face bold;
  private final List<PDPage> pages = new ArrayList<>();
  private final Tags tags = new Tags();
  private PDPageContentStream content;

  /** The heading that was set last, for what pictures show if nothing else is said. */
  private String lastHeading;

  /** Whether the paper has its main heading. */
  private boolean titled;

  /** Where the next thing goes. */
  double y;

  Sheet(PaperSize size, String title, String piece, String date) throws IOException {
    this(size, 1, title, piece, date);
  }

  /**
   * A paper on which everything is set larger.
   *
   * @param zoom how many times; lengths are those before
   */
  Sheet(PaperSize size, double zoom, String title, String piece, String date) throws IOException {
    this.size = size;
    this.zoom = zoom;
    pageWidth = size.width() / zoom;
    pageHeight = size.height() / zoom;
    // Larger type takes its room from the margins first.
    margin = MARGIN / (zoom * zoom);
    this.title = title;
    this.piece = piece;
    this.date = date;
    lastHeading = title;
    regular = Face.load(document, Typeface.REGULAR);
    bold = Face.load(document, Typeface.BOLD);
    newPage();
  }

  double left() {
    return margin;
  }

  double right() {
    return pageWidth - margin;
  }

  double width() {
    return right() - left();
  }

  double top() {
    return margin + HEAD;
  }

  double bottom() {
    return pageHeight - margin - FOOT;
  }

  void newPage() throws IOException {
    if (content != null) {
      content.close();
    }
    PDPage page = new PDPage(size.box());
    document.addPage(page);
    pages.add(page);
    content =
        new PDPageContentStream(document, page, PDPageContentStream.AppendMode.OVERWRITE, true);
    enlarge();
    y = top();
  }

  private void enlarge() throws IOException {
    if (zoom != 1) {
      content.transform(Matrix.getScaleInstance((float) zoom, (float) zoom));
    }
  }

  /** Goes to a new page unless so much room is left on this one. */
  void need(double height) throws IOException {
    if (y + height > bottom() && y > top()) {
      newPage();
    }
  }

  /** Starts a part: on this page if at least so much of it is free, else on a new one. */
  void part(String heading, double keepWith) throws IOException {
    if (y > top()) {
      y += PART_GAP;
    }
    heading(heading, keepWith);
  }

  double roomLeft() {
    return bottom() - y;
  }

  Face face(Style style) {
    return style.bold() ? bold : regular;
  }

  double width(String text, Style style) throws IOException {
    Face face = face(style);
    return face.width(face.settable(text)) * style.size();
  }

  /** Breaks text into lines of a width; the last allowed one ends in "…" if more would follow. */
  List<String> wrap(String text, Style style, double width, int mostLines) throws IOException {
    Face face = face(style);
    return Wrap.lines(face.settable(text), face, width / style.size(), mostLines);
  }

  double height(String text, Style style, double width) throws IOException {
    return text.isEmpty()
        ? 0
        : wrap(text, style, width, Integer.MAX_VALUE).size() * style.leading();
  }

  /** Sets text from a top edge, wrapped, and returns the height it took. */
  double block(String text, Style style, double x, double top, double width, int mostLines)
      throws IOException {
    if (text.isEmpty()) {
      return 0;
    }
    double at = top;
    boolean title = !titled && (style.equals(Style.TITLE) || style.equals(Style.HEADING));
    titled |= title;
    tags.begin(title ? "H1" : "P");
    for (String line : wrap(text, style, width, mostLines)) {
      line(line, style, x, at + style.rise());
      at += style.leading();
    }
    tags.end();
    return at - top;
  }

  double block(String text, Style style, double x, double top, double width) throws IOException {
    return block(text, style, x, top, width, Integer.MAX_VALUE);
  }

  /** Sets text across the page at {@link #y}, going on over the page's end line by line. */
  void paragraph(String text, Style style) throws IOException {
    paragraph(text, style, left(), width());
  }

  void paragraph(String text, Style style, double x, double width) throws IOException {
    tags.begin("P");
    for (String line : wrap(text, style, width, Integer.MAX_VALUE)) {
      need(style.leading());
      line(line, style, x, y + style.rise());
      y += style.leading();
    }
    tags.end();
  }

  void gap(double height) {
    y += height;
  }

  /** Sets one line with its baseline at a height. */
  void line(String text, Style style, double x, double baseline) throws IOException {
    Face face = face(style);
    String shown = face.settable(text);
    if (shown.isBlank()) {
      return;
    }
    tags.content(
        page(),
        content,
        () -> {
          content.beginText();
          content.setFont(face.font(), (float) style.size());
          fillColour(style.rgb());
          content.newLineAtOffset((float) x, (float) (pageHeight - baseline));
          content.showText(shown);
          content.endText();
        });
  }

  void lineRight(String text, Style style, double right, double baseline) throws IOException {
    line(text, style, right - width(text, style), baseline);
  }

  void lineCentred(String text, Style style, double middle, double baseline) throws IOException {
    line(text, style, middle - width(text, style) / 2, baseline);
  }

  /** One line, cut short with "…" where it would be wider. */
  void fitted(String text, Style style, double x, double baseline, double width)
      throws IOException {
    line(wrap(text, style, width, 1).get(0), style, x, baseline);
  }

  /** A heading with a gold rule under it, kept together with what follows. */
  void heading(String text, double keepWith) throws IOException {
    need(Style.HEADING.leading() + 14 + keepWith);
    lastHeading = text;
    tags.begin(titled ? "H2" : "H1");
    titled = true;
    line(text, Style.HEADING, left(), y + Style.HEADING.rise());
    tags.end();
    y += Style.HEADING.leading() + 3;
    fill(left(), y, width(), 1.6, Style.GOLD);
    y += 11;
  }

  void subheading(String text, double keepWith) throws IOException {
    need(Style.SUBHEADING.leading() + 4 + keepWith);
    tags.begin("H3");
    line(text, Style.SUBHEADING, left(), y + Style.SUBHEADING.rise());
    tags.end();
    y += Style.SUBHEADING.leading() + 4;
  }

  void fill(double x, double top, double width, double height, int rgb) throws IOException {
    Tags.decoration(
        content,
        () -> {
          fillColour(rgb);
          content.addRect(
              (float) x, (float) (pageHeight - top - height), (float) width, (float) height);
          content.fill();
        });
  }

  void frame(double x, double top, double width, double height, double line, int rgb)
      throws IOException {
    Tags.decoration(
        content,
        () -> {
          content.setLineWidth((float) line);
          strokeColour(rgb);
          content.addRect(
              (float) x, (float) (pageHeight - top - height), (float) width, (float) height);
          content.stroke();
        });
  }

  /** A horizontal line. */
  void rule(double x, double at, double width, double line, int rgb) throws IOException {
    Tags.decoration(
        content,
        () -> {
          content.setLineWidth((float) line);
          strokeColour(rgb);
          content.moveTo((float) x, (float) (pageHeight - at));
          content.lineTo((float) (x + width), (float) (pageHeight - at));
          content.stroke();
        });
  }

  /** A line through points x, y of the page; dashed if asked for. */
  void path(double[] xy, boolean closed, double line, int rgb, boolean dashed) throws IOException {
    Tags.decoration(content, () -> stroke(xy, closed, line, rgb, dashed));
  }

  private void stroke(double[] xy, boolean closed, double line, int rgb, boolean dashed)
      throws IOException {
    content.setLineWidth((float) line);
    strokeColour(rgb);
    content.setLineDashPattern(dashed ? new float[] {4, 3} : new float[0], 0);
    content.moveTo((float) xy[0], (float) (pageHeight - xy[1]));
    for (int i = 2; i < xy.length; i += 2) {
      content.lineTo((float) xy[i], (float) (pageHeight - xy[i + 1]));
    }
    if (closed) {
      content.closePath();
    }
    content.stroke();
    content.setLineDashPattern(new float[0], 0);
  }

  /** Shows nothing outside a box until {@link #endClip}. */
  void clip(double x, double top, double width, double height) throws IOException {
    content.saveGraphicsState();
    content.addRect((float) x, (float) (pageHeight - top - height), (float) width, (float) height);
    content.clip();
  }

  void endClip() throws IOException {
    content.restoreGraphicsState();
  }

  void disc(double x, double middleY, double radius, int rgb) throws IOException {
    Tags.decoration(content, () -> fillDisc(x, middleY, radius, rgb));
  }

  private void fillDisc(double x, double middleY, double radius, int rgb) throws IOException {
    fillColour(rgb);
    float cx = (float) x;
    float cy = (float) (pageHeight - middleY);
    float r = (float) radius;
    float k = (float) (radius * KAPPA);
    content.moveTo(cx + r, cy);
    content.curveTo(cx + r, cy + k, cx + k, cy + r, cx, cy + r);
    content.curveTo(cx - k, cy + r, cx - r, cy + k, cx - r, cy);
    content.curveTo(cx - r, cy - k, cx - k, cy - r, cx, cy - r);
    content.curveTo(cx + k, cy - r, cx + r, cy - k, cx + r, cy);
    content.fill();
  }

  /** A number in a filled disc. */
  void badge(String text, double x, double middleY, double radius) throws IOException {
    disc(x, middleY, radius, Style.INK);
    double points = radius * (text.length() <= 2 ? 1.15 : 0.85);
    Style style = new Style(true, points, 0xFFFFFF);
    lineCentred(text, style, x, middleY + points * 0.36);
  }

  /** A box to tick. */
  void tick(double x, double top, double side) throws IOException {
    frame(x, top, side, side, 1.2, Style.INK);
  }

  /** A label with a line to write on after it. */
  void blank(String label, double x, double baseline, double width) throws IOException {
    line(label, Style.LABEL, x, baseline);
    double from = x + width(label, Style.LABEL) + 5;
    rule(from, baseline + 2, Math.max(0, x + width - from), 0.8, Style.SOFT);
  }

  /** A picture of what the last heading says, as large as fits into a box, in its middle. */
  void picture(Image image, double x, double top, double width, double height) throws IOException {
    picture(image, "Picture: " + lastHeading, x, top, width, height);
  }

  /**
   * A picture, as large as fits into a box, in its middle.
   *
   * @param shows what it shows, in words, for those who can't see it
   */
  void picture(Image image, String shows, double x, double top, double width, double height)
      throws IOException {
    BufferedImage pixels = image.toBufferedImage();
    PDImageXObject object = LosslessFactory.createFromImage(document, pixels);
    double scale = Math.min(width / image.width(), height / image.height());
    double w = image.width() * scale;
    double h = image.height() * scale;
    tags.begin("Figure").setAlternateDescription(shows);
    tags.content(
        page(),
        content,
        () ->
            content.drawImage(
                object,
                (float) (x + (width - w) / 2),
                (float) (pageHeight - top - (height - h) / 2 - h),
                (float) w,
                (float) h));
    tags.end();
  }

  /** Opens an element of the paper's structure, such as "Table". */
  void begin(String type) {
    tags.begin(type);
  }

  void end() {
    tags.end();
  }

  /** What is set from here to {@link #endDecoration} is skipped by readers that speak. */
  void beginDecoration() {
    tags.beginDecoration();
  }

  void endDecoration() {
    tags.endDecoration();
  }

  private PDPage page() {
    return pages.get(pages.size() - 1);
  }

  private void fillColour(int rgb) throws IOException {
    content.setNonStrokingColor(part(rgb, 16), part(rgb, 8), part(rgb, 0));
  }

  private void strokeColour(int rgb) throws IOException {
    content.setStrokingColor(part(rgb, 16), part(rgb, 8), part(rgb, 0));
  }

  private static float part(int rgb, int shift) {
    return (rgb >> shift & 255) / 255f;
  }

  /** Numbers the pages and writes the file. */
  void save(Path file) throws IOException {
    content.close();
    for (int i = 0; i < pages.size(); i++) {
      content =
          new PDPageContentStream(
              document, pages.get(i), PDPageContentStream.AppendMode.APPEND, true, true);
      enlarge();
      headAndFoot(i + 1);
      content.close();
    }
    content = null;
    PDDocumentInformation about = new PDDocumentInformation();
    about.setTitle(title + ": " + piece);
    about.setProducer("Seamwright");
    document.setDocumentInformation(about);
    tags.write(document, pages, "en");
    // Left alone, the id holds the time of day.
    document.setDocumentId(1L);
    try (OutputStream out = Files.newOutputStream(file)) {
      document.save(out);
    }
  }

  private void headAndFoot(int page) throws IOException {
    tags.beginDecoration();
    double head = margin + 6;
    double dateWidth = width(date, Style.LABEL);
    fitted(piece, Style.LABEL.in(Style.INK), left(), head, width() - dateWidth - 20);
    lineRight(date, Style.LABEL, right(), head);
    rule(left(), head + 7, width(), 0.6, Style.HAIRLINE);
    double foot = pageHeight - margin;
    rule(left(), foot - 13, width(), 0.6, Style.HAIRLINE);
    line(title, Style.LABEL, left(), foot);
    lineRight("Page " + page + " of " + pages.size(), Style.LABEL.in(Style.INK), right(), foot);
    tags.endDecoration();
  }

  int pageCount() {
    return pages.size();
  }

  @Override
  public void close() throws IOException {
    if (content != null) {
      content.close();
    }
    document.close();
  }
}
