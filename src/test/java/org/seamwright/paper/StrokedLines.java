package org.seamwright.paper;

import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;

/** Straight lines drawn on a page, ends in points: x1, y1, x2, y2. */
final class StrokedLines extends PDFGraphicsStreamEngine {
  private final List<float[]> lines = new ArrayList<>();
  private Point2D at = new Point2D.Float();

  private StrokedLines(PDPage page) {
    super(page);
  }

  static List<float[]> of(PDPage page) throws IOException {
    StrokedLines reader = new StrokedLines(page);
    reader.processPage(page);
    return reader.lines;
  }

  @Override
  public void moveTo(float x, float y) {
    at = new Point2D.Float(x, y);
  }

  @Override
  public void lineTo(float x, float y) {
    lines.add(new float[] {(float) at.getX(), (float) at.getY(), x, y});
    at = new Point2D.Float(x, y);
  }

  @Override
  public Point2D getCurrentPoint() {
    return at;
  }

  @Override
  public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {}

  @Override
  public void drawImage(PDImage pdImage) {}

  @Override
  public void clip(int windingRule) {}

  @Override
  public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {}

  @Override
  public void closePath() {}

  @Override
  public void endPath() {}

  @Override
  public void strokePath() {}

  @Override
  public void fillPath(int windingRule) {}

  @Override
  public void fillAndStrokePath(int windingRule) {}

  @Override
  public void shadingFill(COSName shadingName) {}
}
