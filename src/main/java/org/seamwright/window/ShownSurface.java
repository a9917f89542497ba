package org.seamwright.window;

import java.util.Arrays;
import org.seamwright.mesh.Mesh;

/**
 * What is shown of a piece: its faces, cut or not, each of a class that has a colour, and which
 * face of the uncut piece each is a part of. Immutable.
 */
final class ShownSurface {
  private final Mesh mesh;
  private final int[] origin;
  private final int[] faceClass;

  /** Parts of face f of the piece: {@code part[begin[f]]} to {@code part[begin[f + 1] - 1]}. */
  private final int[] begin;

  private final int[] part;

  /**
   * Makes a surface; takes the arrays over.
   *
   * @param mesh the cut piece
   * @param origin per face: the face of the piece that it is a part of
   * @param faceClass per face: its class
   * @param pieceFaces faces of the piece
   */
  ShownSurface(Mesh mesh, int[] origin, int[] faceClass, int pieceFaces) {
    this.mesh = mesh;
    this.origin = origin;
    this.faceClass = faceClass;
    begin = new int[pieceFaces + 1];
    for (int f : origin) {
      begin[f + 1]++;
    }
    for (int f = 0; f < pieceFaces; f++) {
      begin[f + 1] += begin[f];
    }
    int[] fill = Arrays.copyOf(begin, pieceFaces);
    part = new int[origin.length];
    for (int f = 0; f < origin.length; f++) {
      part[fill[origin[f]]++] = f;
    }
  }

  /** A piece that is not cut, all of one class. */
  static ShownSurface plain(Mesh mesh, int faceClass) {
    int[] same = new int[mesh.faceCount()];
    Arrays.setAll(same, f -> f);
    int[] classes = new int[mesh.faceCount()];
    Arrays.fill(classes, faceClass);
    return new ShownSurface(mesh, same, classes, mesh.faceCount());
  }

  Mesh mesh() {
    return mesh;
  }

  int faceClass(int face) {
    return faceClass[face];
  }

  int origin(int face) {
    return origin[face];
  }

  /** Number of parts of a face of the piece. */
  int parts(int pieceFace) {
    return begin[pieceFace + 1] - begin[pieceFace];
  }

  /** A part of a face of the piece. */
  int part(int pieceFace, int index) {
    return part[begin[pieceFace] + index];
  }

  /** The part of a face of the piece that holds a place on it; -1 if the face has no parts. */
  int partAt(int pieceFace, double x, double y, double z) {
    int best = -1;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = begin[pieceFace]; i < begin[pieceFace + 1]; i++) {
      double inside = begin[pieceFace + 1] - begin[pieceFace] == 1 ? 0 : inside(part[i], x, y, z);
      if (inside > most) {
        most = inside;
        best = part[i];
      }
    }
    return best;
  }

  /** The least of the barycentric weights of a place on a face: below 0 outside. */
  private double inside(int face, double x, double y, double z) {
    double[] p = mesh.xyz();
    int a = 3 * mesh.corner()[3 * face];
    int b = 3 * mesh.corner()[3 * face + 1];
    int c = 3 * mesh.corner()[3 * face + 2];
    double ux = p[b] - p[a];
    double uy = p[b + 1] - p[a + 1];
    double uz = p[b + 2] - p[a + 2];
    double vx = p[c] - p[a];
    double vy = p[c + 1] - p[a + 1];
    double vz = p[c + 2] - p[a + 2];
    double wx = x - p[a];
    double wy = y - p[a + 1];
    double wz = z - p[a + 2];
    double uu = ux * ux + uy * uy + uz * uz;
    double uv = ux * vx + uy * vy + uz * vz;
    double vv = vx * vx + vy * vy + vz * vz;
    double wu = wx * ux + wy * uy + wz * uz;
    double wv = wx * vx + wy * vy + wz * vz;
    double d = uu * vv - uv * uv;
    if (!(d > 0)) {
      return -Double.MAX_VALUE;
    }
    double s = (vv * wu - uv * wv) / d;
    double t = (uu * wv - uv * wu) / d;
    return Math.min(1 - s - t, Math.min(s, t));
  }

  /**
   * A number for each chunk that changes when anything drawn of it does: faces, their places, their
   * classes. FNV-1a of 64 bits over the bits of the coordinates (G. Fowler, L. Noll, K.-P. Vo); a
   * change is missed by a chance of one in 10¹⁹.
   */
  long[] hashes(PieceModel model) {
    long[] hash = new long[model.chunks()];
    for (int c = 0; c < hash.length; c++) {
      long h = 0xCBF29CE484222325L;
      for (int pieceFace : model.chunk(c)) {
        for (int i = begin[pieceFace]; i < begin[pieceFace + 1]; i++) {
          h = hash(h, part[i]);
        }
        h = (h ^ pieceFace) * PRIME;
      }
      hash[c] = h;
    }
    return hash;
  }

  private static final long PRIME = 0x100000001B3L;

  private long hash(long start, int face) {
    long h = (start ^ faceClass[face]) * PRIME;
    for (int k = 3 * face; k < 3 * face + 3; k++) {
      int v = 3 * mesh.corner()[k];
      for (int axis = 0; axis < 3; axis++) {
        h = (h ^ Double.doubleToRawLongBits(mesh.xyz()[v + axis])) * PRIME;
        h ^= h >>> 32;
      }
    }
    return h;
  }
}
