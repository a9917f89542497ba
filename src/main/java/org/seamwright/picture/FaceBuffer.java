package org.seamwright.picture;

import java.util.Arrays;
import org.seamwright.mesh.Mesh;

/**
 * Which face is seen at each sample of a picture, and how far it is: a z-buffer.
 *
 * <p>Corners are rounded to 1/256 of a sample and edges tested in whole numbers with a tie rule, so
 * that faces sharing an edge leave neither gap nor double cover. The nearer face wins; of two at
 * the same depth the one with the lower number. Faces are drawn from both sides.
 *
 * <p>Cost: O(faces + covered samples), rows in parallel in bands that own their rows. Limits: 16
 * 000 samples a side; a piece in front of the eye.
 *
 * <p>Reference: J. Pineda, "A parallel algorithm for polygon rasterization", SIGGRAPH 1988.
 */
final class FaceBuffer {
  /** Face number where nothing is seen. */
  static final int NOTHING = -1;

  private static final int SUB_BITS = 8;
  private static final int SUB = 1 << SUB_BITS;
  private static final int HALF = SUB / 2;
  private static final int LARGEST_SIDE = 16_000;
  private static final int BAND_ROWS = 32;
  private static final int VERTEX_BLOCK = 1 << 15;

  /** Farthest a corner may lie outside the picture, in samples, to keep products within 64 bits. */
  private static final double OUTSIDE = 4 * LARGEST_SIDE;

  final int width;
  final int height;

  /** Samples per pixel along each axis. */
  final int perPixel;

  /** Face seen, row by row; {@link #NOTHING} for background. */
  final int[] face;

  /** Its depth, as the camera gives it. */
  final float[] depth;

  /** Sample coordinates of each vertex in 1/256. */
  final int[] vx;

  final int[] vy;

  /** Depth of each vertex. */
  final float[] vz;

  private FaceBuffer(int width, int height, int perPixel, int vertices) {
    this.width = width;
    this.height = height;
    this.perPixel = perPixel;
    face = new int[width * height];
    depth = new float[width * height];
    vx = new int[vertices];
    vy = new int[vertices];
    vz = new float[vertices];
  }

  /**
   * Draws a mesh.
   *
   * @param mesh the piece
   * @param camera maps it to the picture
   * @param perPixel samples per pixel along each axis, at least 1
   */
  static FaceBuffer of(Mesh mesh, Camera camera, int perPixel) {
    int width = camera.width() * perPixel;
    int height = camera.height() * perPixel;
    if (width > LARGEST_SIDE || height > LARGEST_SIDE) {
      throw new IllegalArgumentException("Picture too large: " + width + " × " + height);
    }
    FaceBuffer buffer = new FaceBuffer(width, height, perPixel, mesh.vertexCount());
    buffer.placeVertices(mesh, camera);
    buffer.draw(mesh.corner());
    return buffer;
  }

  private void placeVertices(Mesh mesh, Camera camera) {
    double[] p = mesh.xyz();
    Bands.ranges(
        mesh.vertexCount(),
        VERTEX_BLOCK,
        (from, to) -> {
          double[] at = new double[3];
          for (int v = from; v < to; v++) {
            camera.project(p[3 * v], p[3 * v + 1], p[3 * v + 2], at);
            vx[v] = fixed(at[0] * perPixel);
            vy[v] = fixed(at[1] * perPixel);
            vz[v] = (float) at[2];
          }
        });
  }

  private static int fixed(double samples) {
    return (int) Math.round(Math.max(-OUTSIDE, Math.min(OUTSIDE, samples)) * SUB);
  }

  private void draw(int[] corner) {
    int bands = (height + BAND_ROWS - 1) / BAND_ROWS;
    int[] start = new int[bands + 1];
    int faces = corner.length / 3;
    for (int f = 0; f < faces; f++) {
      int last = lastRow(corner, f);
      int first = firstRow(corner, f);
      for (int b = first / BAND_ROWS; first <= last && b <= last / BAND_ROWS; b++) {
        start[b + 1]++;
      }
    }
    for (int b = 0; b < bands; b++) {
      start[b + 1] += start[b];
    }
    int[] fill = Arrays.copyOf(start, bands);
    int[] list = new int[start[bands]];
    for (int f = 0; f < faces; f++) {
      int last = lastRow(corner, f);
      int first = firstRow(corner, f);
      for (int b = first / BAND_ROWS; first <= last && b <= last / BAND_ROWS; b++) {
        list[fill[b]++] = f;
      }
    }
    Bands.each(
        bands,
        b -> {
          int top = b * BAND_ROWS;
          int bottom = Math.min(height, top + BAND_ROWS) - 1;
          Arrays.fill(face, top * width, (bottom + 1) * width, NOTHING);
          Arrays.fill(depth, top * width, (bottom + 1) * width, Float.POSITIVE_INFINITY);
          for (int i = start[b]; i < start[b + 1]; i++) {
            drawFace(corner, list[i], top, bottom);
          }
        });
  }

  /** First row whose sample centres are not above the face, within the picture. */
  private int firstRow(int[] corner, int f) {
    int y = Math.min(vy[corner[3 * f]], Math.min(vy[corner[3 * f + 1]], vy[corner[3 * f + 2]]));
    return Math.max(0, firstCentre(y));
  }

  /** Last row whose sample centres are not below the face, within the picture. */
  private int lastRow(int[] corner, int f) {
    int y = Math.max(vy[corner[3 * f]], Math.max(vy[corner[3 * f + 1]], vy[corner[3 * f + 2]]));
    return Math.min(height - 1, lastCentre(y));
  }

  private static int firstCentre(int fixed) {
    return (fixed - HALF + SUB - 1) >> SUB_BITS;
  }

  private static int lastCentre(int fixed) {
    return (fixed - HALF) >> SUB_BITS;
  }

  private void drawFace(int[] corner, int f, int top, int bottom) {
    int a = corner[3 * f];
    int b = corner[3 * f + 1];
    int c = corner[3 * f + 2];
    long area = cross(a, b, c);
    if (area == 0) {
      return;
    }
    if (area < 0) {
      int swap = b;
      b = c;
      c = swap;
      area = -area;
    }
    int x0 = Math.max(0, firstCentre(Math.min(vx[a], Math.min(vx[b], vx[c]))));
    int x1 = Math.min(width - 1, lastCentre(Math.max(vx[a], Math.max(vx[b], vx[c]))));
    int y0 = Math.max(top, firstCentre(Math.min(vy[a], Math.min(vy[b], vy[c]))));
    int y1 = Math.min(bottom, lastCentre(Math.max(vy[a], Math.max(vy[b], vy[c]))));
    if (x0 > x1 || y0 > y1) {
      return;
    }
    long px = ((long) x0 << SUB_BITS) + HALF;
    long py = ((long) y0 << SUB_BITS) + HALF;
    long rowA = edge(b, c, px, py);
    long rowB = edge(c, a, px, py);
    long rowC = edge(a, b, px, py);
    long stepAx = stepX(b, c);
    long stepBx = stepX(c, a);
    long stepCx = stepX(a, b);
    long tieA = tie(b, c);
    long tieB = tie(c, a);
    long tieC = tie(a, b);
    double perArea = 1.0 / area;
    double za = vz[a];
    double zb = (vz[b] - za) * perArea;
    double zc = (vz[c] - za) * perArea;
    for (int y = y0; y <= y1; y++) {
      long ea = rowA;
      long eb = rowB;
      long ec = rowC;
      int at = y * width + x0;
      for (int x = x0; x <= x1; x++, at++) {
        if (ea >= tieA && eb >= tieB && ec >= tieC) {
          float z = (float) (za + eb * zb + ec * zc);
          // Faces come in order of number, so an equal depth leaves the lower one.
          if (z < depth[at]) {
            depth[at] = z;
            face[at] = f;
          }
        }
        ea += stepAx;
        eb += stepBx;
        ec += stepCx;
      }
      rowA += stepY(b, c);
      rowB += stepY(c, a);
      rowC += stepY(a, b);
    }
  }

  private long cross(int a, int b, int c) {
    return (long) (vx[b] - vx[a]) * (vy[c] - vy[a]) - (long) (vy[b] - vy[a]) * (vx[c] - vx[a]);
  }

  private long edge(int from, int to, long px, long py) {
    return (vx[to] - vx[from]) * (py - vy[from]) - (vy[to] - vy[from]) * (px - vx[from]);
  }

  private long stepX(int from, int to) {
    return -(long) (vy[to] - vy[from]) * SUB;
  }

  private long stepY(int from, int to) {
    return (long) (vx[to] - vx[from]) * SUB;
  }

  /** Least value that counts as inside: 0 on one of the two faces of an edge, 1 on the other. */
  private long tie(int from, int to) {
    int dy = vy[to] - vy[from];
    return dy > 0 || (dy == 0 && vx[to] > vx[from]) ? 0 : 1;
  }

  /** Whether a face turns its back to the eye: its corners run clockwise in the picture. */
  boolean facesAway(int[] corner, int f) {
    return cross(corner[3 * f], corner[3 * f + 1], corner[3 * f + 2]) > 0;
  }

  /**
   * Weights of a face's corners at a sample's centre, adding up to 1, in the order of its corners.
   *
   * @param perspective whether to weigh by nearness, so that the weights are those on the piece
   */
  void weights(int[] corner, int f, int x, int y, boolean perspective, float[] into) {
    int a = corner[3 * f];
    int b = corner[3 * f + 1];
    int c = corner[3 * f + 2];
    long px = ((long) x << SUB_BITS) + HALF;
    long py = ((long) y << SUB_BITS) + HALF;
    double wa = edge(b, c, px, py);
    double wb = edge(c, a, px, py);
    double wc = edge(a, b, px, py);
    if (perspective) {
      wa *= -vz[a];
      wb *= -vz[b];
      wc *= -vz[c];
    }
    double sum = wa + wb + wc;
    into[0] = (float) (wa / sum);
    into[1] = (float) (wb / sum);
    into[2] = (float) (wc / sum);
  }
}
