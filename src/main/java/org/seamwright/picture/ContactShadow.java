package org.seamwright.picture;

import java.util.Arrays;
import org.seamwright.mesh.Mesh;

/**
 * The soft shadow of a piece on the table that it stands on, so that a photograph doesn't float:
 * how much of the sky's light each place of the table misses, the more the nearer the piece is
 * above it.
 *
 * <p>A map of the table, {@value #CELLS} cells a side, holds the height of the lowest place of the
 * surface over each cell; light is taken off by the height and then blurred. A sketch of ambient
 * occlusion, not a measure of light. Cost O(vertices + cells). Same bytes on any number of cores.
 */
final class ContactShadow {
  private static final int CELLS = 192;

  /** How far the map reaches beyond the piece, over the piece's longest extent across. */
  private static final double BEYOND = 0.35;

  /** Height, over the piece's longest extent, at which a surface takes off 1/e of the light. */
  private static final double HEIGHT = 0.06;

  /** Radius of the blur over the piece's longest extent; applied three times. */
  private static final double BLUR = 0.06;

  /** Share of the light that is missing right below the piece. */
  private static final double DARKEST = 0.5;

  /** Least slope of the view downwards at which the table is in view. */
  private static final double DOWNWARD = 0.05;

  private final double tableZ;
  private final double lowX;
  private final double lowY;
  private final double cellMm;
  private final float[] dark;
  private final Camera camera;

  private ContactShadow(
      double tableZ, double lowX, double lowY, double cellMm, float[] dark, Camera camera) {
    this.tableZ = tableZ;
    this.lowX = lowX;
    this.lowY = lowY;
    this.cellMm = cellMm;
    this.dark = dark;
    this.camera = camera;
  }

  /**
   * The shadow in a picture.
   *
   * @return null where the table isn't looked at from above
   */
  static ContactShadow of(Mesh mesh, Camera camera) {
    if (mesh.faceCount() == 0 || camera.axes()[8] < DOWNWARD) {
      return null;
    }
    var box = mesh.bounds();
    double extent = Math.max(box.sizeX(), box.sizeY());
    double size = extent * (1 + 2 * BEYOND);
    if (!(size > 0)) {
      return null;
    }
    double lowX = (box.minX() + box.maxX() - size) / 2;
    double lowY = (box.minY() + box.maxY() - size) / 2;
    double cell = size / CELLS;
    float[] height = heights(mesh, lowX, lowY, cell, box.minZ());
    float[] dark = new float[height.length];
    double longest = Math.max(extent, box.sizeZ());
    for (int i = 0; i < dark.length; i++) {
      dark[i] = (float) (DARKEST * Math.exp(-height[i] / (HEIGHT * longest)));
    }
    int radius = (int) Math.max(1, Math.round(BLUR * extent / cell));
    for (int pass = 0; pass < 3; pass++) {
      dark = blurred(blurred(dark, radius, 1, CELLS), radius, CELLS, 1);
    }
    return new ContactShadow(box.minZ(), lowX, lowY, cell, dark, camera);
  }

  /** Height over the table of the lowest place of the surface over each cell, mm. */
  private static float[] heights(Mesh mesh, double lowX, double lowY, double cell, double tableZ) {
    float[] height = new float[CELLS * CELLS];
    Arrays.fill(height, Float.POSITIVE_INFINITY);
    double[] p = mesh.xyz();
    for (int f = 0; f < mesh.faceCount(); f++) {
      int a = 3 * mesh.corner()[3 * f];
      int b = 3 * mesh.corner()[3 * f + 1];
      int c = 3 * mesh.corner()[3 * f + 2];
      // Points in steps of less than a cell cover the face without a rasterizer of its own.
      double longest = Math.max(flat(p, a, b), Math.max(flat(p, b, c), flat(p, c, a))) / cell * 1.5;
      int steps = (int) Math.min(2 * CELLS, Math.ceil(longest));
      for (int i = 0; i <= steps; i++) {
        for (int j = 0; i + j <= steps; j++) {
          double u = steps == 0 ? 0 : i / (double) steps;
          double v = steps == 0 ? 0 : j / (double) steps;
          double x = p[a] + u * (p[b] - p[a]) + v * (p[c] - p[a]);
          double y = p[a + 1] + u * (p[b + 1] - p[a + 1]) + v * (p[c + 1] - p[a + 1]);
          double z = p[a + 2] + u * (p[b + 2] - p[a + 2]) + v * (p[c + 2] - p[a + 2]);
          int row = (int) ((y - lowY) / cell);
          int at = row * CELLS + (int) ((x - lowX) / cell);
          height[at] = Math.min(height[at], (float) (z - tableZ));
        }
      }
    }
    return height;
  }

  private static double flat(double[] p, int a, int b) {
    return Math.hypot(p[a] - p[b], p[a + 1] - p[b + 1]);
  }

  /** Means over a window along one way; beyond the map there is light. */
  private static float[] blurred(float[] from, int radius, int step, int across) {
    float[] to = new float[from.length];
    for (int line = 0; line < CELLS; line++) {
      double sum = 0;
      for (int i = -radius; i < CELLS; i++) {
        if (i + radius < CELLS) {
          sum += from[line * across + (i + radius) * step];
        }
        if (i - radius - 1 >= 0) {
          sum -= from[line * across + (i - radius - 1) * step];
        }
        if (i >= 0) {
          to[line * across + i * step] = (float) (sum / (2 * radius + 1));
        }
      }
    }
    return to;
  }

  /**
   * A colour of the background with the shadow over it.
   *
   * @param rgb 0xRRGGBB
   * @param px place in the picture, pixels
   * @param py place in the picture, pixels
   */
  int over(int rgb, double px, double py) {
    double light = 1 - darkness(px, py);
    int r = (int) ((rgb >> 16 & 255) * light + 0.5);
    int g = (int) ((rgb >> 8 & 255) * light + 0.5);
    int b = (int) ((rgb & 255) * light + 0.5);
    return r << 16 | g << 8 | b;
  }

  private double darkness(double px, double py) {
    double[] at = new double[2];
    if (!camera.onLevel(px, py, tableZ, at)) {
      return 0;
    }
    double x = (at[0] - lowX) / cellMm - 0.5;
    double y = (at[1] - lowY) / cellMm - 0.5;
    int i = (int) Math.floor(x);
    int j = (int) Math.floor(y);
    if (i < 0 || j < 0 || i + 1 >= CELLS || j + 1 >= CELLS) {
      return 0;
    }
    double u = x - i;
    double v = y - j;
    int k = j * CELLS + i;
    return (1 - v) * ((1 - u) * dark[k] + u * dark[k + 1])
        + v * ((1 - u) * dark[k + CELLS] + u * dark[k + CELLS + 1]);
  }
}
