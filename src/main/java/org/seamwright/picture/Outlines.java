package org.seamwright.picture;

import java.util.Arrays;

/**
 * Lines of a drawing, found between neighbouring samples of a rendered picture: outlines where the
 * depth jumps, creases where the normal turns, seams where the region changes, edges of lap bands.
 *
 * <p>Working on samples instead of on the mesh's edges keeps lines whole on any mesh, however fine
 * or broken. Cost: O(samples + line samples × line width²).
 *
 * <p>Reference: T. Saito and T. Takahashi, "Comprehensible rendering of 3-D shapes", SIGGRAPH 1990.
 */
final class Outlines {
  /** Kinds of line, the stronger the higher. */
  static final byte NONE = 0;

  static final byte CREASE = 1;
  static final byte LAP = 2;
  static final byte OUTLINE = 3;
  static final byte SEAM = 4;
  static final byte EDGE = 5;

  /** Width of each kind in pixels of a picture 1200 high. Choice of this program. */
  private static final double[] WIDTH = {0, 0.9, 0.9, 1.5, 2.3, 3.2};

  private static final int[] COLOUR = {0, 0x1A1F26, 0x1A1F26, 0x2B323B, 0x14181D, 0x101418};
  private static final int[] STRENGTH = {0, 110, 130, 215, 240, 250};
  private static final double REFERENCE_HEIGHT = 1200;

  /**
   * A jump in depth counts as an outline if it exceeds this many times what the slopes of both
   * sides explain.
   */
  private static final float JUMP = 2.5f;

  /** Slope beyond which a surface is seen edge-on. */
  private static final float STEEPEST = 12;

  private static final int BAND_ROWS = 64;

  private final FaceBuffer buffer;
  private final Scene scene;
  private final Camera camera;
  private final int[] normal;
  private final float creaseCosine = (float) Math.cos(Math.toRadians(CornerNormals.CREASE_DEGREES));

  private Outlines(FaceBuffer buffer, Scene scene, Camera camera, int[] normal) {
    this.buffer = buffer;
    this.scene = scene;
    this.camera = camera;
    this.normal = normal;
  }

  /**
   * Draws the lines over shaded samples.
   *
   * @param normal packed normal of each sample, see {@link #pack}
   * @param rgb colours of the samples, changed in place
   */
  static void draw(FaceBuffer buffer, Scene scene, Camera camera, int[] normal, int[] rgb) {
    Outlines outlines = new Outlines(buffer, scene, camera, normal);
    byte[] found = outlines.find();
    outlines.thicken(found, rgb);
  }

  /** A unit normal in 3 × 10 bits. */
  static int pack(float x, float y, float z) {
    return (Math.round(x * 511) + 512) << 20
        | (Math.round(y * 511) + 512) << 10
        | (Math.round(z * 511) + 512);
  }

  private static float part(int packed, int shift) {
    return ((packed >> shift & 1023) - 512) / 511f;
  }

  private byte[] find() {
    byte[] found = new byte[buffer.face.length];
    int bands = (buffer.height + BAND_ROWS - 1) / BAND_ROWS;
    // A line sits on the nearer of two samples, which may be in the next row: rows of two passes.
    Bands.each(bands, b -> findAcross(b * BAND_ROWS, found));
    byte[] down = new byte[found.length];
    Bands.each(bands, b -> findDown(b * BAND_ROWS, down));
    Bands.ranges(
        found.length,
        1 << 16,
        (from, to) -> {
          for (int i = from; i < to; i++) {
            found[i] = (byte) Math.max(found[i], down[i]);
          }
        });
    return found;
  }

  private void findAcross(int top, byte[] found) {
    int bottom = Math.min(buffer.height, top + BAND_ROWS);
    for (int y = top; y < bottom; y++) {
      for (int x = 0; x + 1 < buffer.width; x++) {
        int i = y * buffer.width + x;
        mark(i, i + 1, found);
      }
    }
  }

  private void findDown(int top, byte[] found) {
    // Pairs that start in this band write at most into its last row and the first row of the next,
    // so each band handles the pairs that end in it and keeps marks within its own rows.
    int bottom = Math.min(buffer.height, top + BAND_ROWS);
    for (int y = Math.max(1, top); y <= bottom && y < buffer.height; y++) {
      for (int x = 0; x < buffer.width; x++) {
        int below = y * buffer.width + x;
        int above = below - buffer.width;
        byte kind = kind(above, below);
        if (kind != NONE) {
          int at = nearer(above, below);
          int row = at / buffer.width;
          if (row >= top && row < bottom) {
            found[at] = (byte) Math.max(found[at], kind);
          }
        }
      }
    }
  }

  private void mark(int i, int j, byte[] found) {
    byte kind = kind(i, j);
    if (kind != NONE) {
      int at = nearer(i, j);
      found[at] = (byte) Math.max(found[at], kind);
    }
  }

  private int nearer(int i, int j) {
    return buffer.depth[j] < buffer.depth[i] ? j : i;
  }

  private byte kind(int i, int j) {
    int f = buffer.face[i];
    int g = buffer.face[j];
    if (f == g) {
      return NONE;
    }
    if (f < 0 || g < 0 || jumps(i, j)) {
      return OUTLINE;
    }
    if (scene.region(f) != scene.region(g)) {
      return scene.finish(f) == scene.finish(g) ? SEAM : EDGE;
    }
    if (scene.finish(f) != scene.finish(g)) {
      return EDGE;
    }
    if (scene.lap(f) != scene.lap(g)) {
      return LAP;
    }
    return turns(i, j) ? CREASE : NONE;
  }

  private boolean jumps(int i, int j) {
    double jump = Math.abs(camera.distanceMm(buffer.depth[i]) - camera.distanceMm(buffer.depth[j]));
    double samplesPerMm = camera.pixelsPerMm() * buffer.perPixel;
    return jump * samplesPerMm > JUMP * (1 + slope(normal[i]) + slope(normal[j]));
  }

  private static float slope(int packed) {
    float z = Math.abs(part(packed, 0));
    return z * STEEPEST < 1 ? STEEPEST : Math.min(STEEPEST, (float) Math.sqrt(1 - z * z) / z);
  }

  private boolean turns(int i, int j) {
    float dot = 0;
    for (int shift = 0; shift <= 20; shift += 10) {
      dot += part(normal[i], shift) * part(normal[j], shift);
    }
    return dot < creaseCosine;
  }

  /** Paints a disc of the kind's width around each line sample; the stronger kind wins. */
  private void thicken(byte[] found, int[] rgb) {
    int[][] disc = new int[WIDTH.length][];
    double perWidth = buffer.height / REFERENCE_HEIGHT;
    int reach = 0;
    for (int kind = 1; kind < WIDTH.length; kind++) {
      double radius = Math.max(WIDTH[kind] * perWidth, 0.9 * buffer.perPixel) / 2;
      disc[kind] = disc(radius);
      reach = Math.max(reach, (int) radius);
    }
    int around = reach;
    int bands = (buffer.height + BAND_ROWS - 1) / BAND_ROWS;
    Bands.each(bands, b -> thickenBand(found, rgb, b * BAND_ROWS, disc, around));
  }

  private void thickenBand(byte[] found, int[] rgb, int top, int[][] disc, int reach) {
    int width = buffer.width;
    int bottom = Math.min(buffer.height, top + BAND_ROWS);
    byte[] line = new byte[(bottom - top) * width];
    int to = Math.min(buffer.height, bottom + reach);
    for (int y = Math.max(0, top - reach); y < to; y++) {
      for (int x = 0; x < width; x++) {
        byte kind = found[y * width + x];
        if (kind != NONE) {
          int[] d = disc[kind];
          for (int k = 0; k < d.length; k += 2) {
            int px = x + d[k];
            int py = y + d[k + 1];
            if (px >= 0 && px < width && py >= top && py < bottom) {
              int at = (py - top) * width + px;
              line[at] = (byte) Math.max(line[at], kind);
            }
          }
        }
      }
    }
    for (int i = 0; i < line.length; i++) {
      if (line[i] != NONE) {
        int at = top * width + i;
        rgb[at] = blend(rgb[at], COLOUR[line[i]], STRENGTH[line[i]]);
      }
    }
  }

  private static int[] disc(double radius) {
    int reach = (int) radius;
    int[] offsets = new int[2 * (2 * reach + 1) * (2 * reach + 1)];
    int count = 0;
    for (int dy = -reach; dy <= reach; dy++) {
      for (int dx = -reach; dx <= reach; dx++) {
        if (dx * dx + dy * dy <= radius * radius) {
          offsets[count++] = dx;
          offsets[count++] = dy;
        }
      }
    }
    return Arrays.copyOf(offsets, count);
  }

  private static int blend(int under, int over, int strength) {
    int rgb = 0;
    for (int shift = 16; shift >= 0; shift -= 8) {
      int u = under >> shift & 255;
      int o = over >> shift & 255;
      rgb |= ((u * (255 - strength) + o * strength + 127) / 255) << shift;
    }
    return rgb;
  }
}
