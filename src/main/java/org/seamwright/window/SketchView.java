package org.seamwright.window;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;

/** The brush, the stroke under way, corners and ends: drawn over the picture at once. */
final class SketchView extends Pane {
  private static final Color SWATH = Color.rgb(0x2F, 0x8F, 0xC4);
  private static final Color INK = Color.rgb(0x12, 0x1A, 0x22);
  private static final double DOT = 4;

  /** The swath is one colour however often it was passed over, so it has a canvas of its own. */
  private final Canvas swath = new Canvas();

  private final Canvas ink = new Canvas();

  SketchView() {
    swath.setOpacity(0.5);
    setMouseTransparent(true);
    setManaged(false);
    getChildren().addAll(swath, ink);
  }

  void fit(double width, double height) {
    resize(width, height);
    for (Canvas canvas : List.of(swath, ink)) {
      canvas.setWidth(width);
      canvas.setHeight(height);
    }
  }

  void draw(Sketch sketch, OrbitCamera camera) {
    GraphicsContext fill = swath.getGraphicsContext2D();
    GraphicsContext line = ink.getGraphicsContext2D();
    fill.clearRect(0, 0, getWidth(), getHeight());
    line.clearRect(0, 0, getWidth(), getHeight());
    fill.setFill(SWATH);
    double[][] before = null;
    for (double[] ring : sketch.swath()) {
      double[][] now = project(ring, camera);
      fill.fillPolygon(now[0], now[1], now[0].length);
      if (before != null && before[0].length == now[0].length) {
        bridge(fill, before, now);
      }
      before = now;
    }
    if (sketch.ring().length > 0) {
      double[][] ring = project(sketch.ring(), camera);
      stroke(line, ring, true);
    }
    if (sketch.line().length > 3) {
      stroke(line, project(sketch.line(), camera), sketch.isClosed());
    }
    for (double[] dot : sketch.dots()) {
      double[][] p = project(dot, camera);
      line.setFill(Color.WHITE);
      line.fillOval(p[0][0] - DOT - 1.5, p[1][0] - DOT - 1.5, 2 * DOT + 3, 2 * DOT + 3);
      line.setFill(INK);
      line.fillOval(p[0][0] - DOT, p[1][0] - DOT, 2 * DOT, 2 * DOT);
    }
  }

  /** Fills what lies between two rings one after the other: a quad for each pair of neighbours. */
  private static void bridge(GraphicsContext fill, double[][] a, double[][] b) {
    int n = a[0].length;
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      fill.fillPolygon(
          new double[] {a[0][i], a[0][j], b[0][j], b[0][i]},
          new double[] {a[1][i], a[1][j], b[1][j], b[1][i]},
          4);
    }
  }

  /** A dark line on a light one, so that it shows on gold, on grey and on the background. */
  private static void stroke(GraphicsContext line, double[][] p, boolean closed) {
    for (int pass = 0; pass < 2; pass++) {
      line.setStroke(pass == 0 ? Color.WHITE : INK);
      line.setLineWidth(pass == 0 ? 3.5 : 1.5);
      if (closed) {
        line.strokePolygon(p[0], p[1], p[0].length);
      } else {
        line.strokePolyline(p[0], p[1], p[0].length);
      }
    }
  }

  private static double[][] project(double[] xyz, OrbitCamera camera) {
    List<OrbitCamera.OnScreen> at = new ArrayList<>();
    for (int i = 0; i < xyz.length; i += 3) {
      at.add(camera.project(xyz[i], xyz[i + 1], xyz[i + 2]));
    }
    return new double[][] {
      at.stream().mapToDouble(OrbitCamera.OnScreen::x).toArray(),
      at.stream().mapToDouble(OrbitCamera.OnScreen::y).toArray()
    };
  }
}
