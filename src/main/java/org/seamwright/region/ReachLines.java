package org.seamwright.region;

import java.util.Arrays;

/**
 * Cuts faces along a straight line each, and tells on which side of it their pieces lie.
 *
 * <p>Neighbours may see the line end at different places of the edge between them, as facets of a
 * curve do. An end that is not yet a corner's distance off another is moved there; else the edge is
 * split at both.
 */
final class ReachLines {
  /** Numbers of a line: a place on it, and the unit vector across it to the free side. */
  static final int NUMBERS = 6;

  /** Corners nearer to the line than this share of the radius are on it, and so are crossings. */
  private static final double SNAP = 5e-4;

  /** Edges shorter than this share of the radius are not cut. */
  private static final double SMALL = 1 / 400.0;

  private final EditableSurface surface;
  private final double radiusMm;

  /** One entry per face: where its line begins; -1 for none. */
  private int[] lineOf = {};

  private double[] lines = new double[64 * NUMBERS];
  private int used;

  /** One entry per face: another piece of the same face, or -1. */
  private int[] nextPiece = {};

  /** One entry per face. */
  private boolean[] barred = {};

  ReachLines(EditableSurface surface, double radiusMm) {
    this.surface = surface;
    this.radiusMm = radiusMm;
  }

  /** Gives a face its line, in place of an earlier one. */
  void put(int face, double[] from, int at) {
    if (face >= lineOf.length) {
      int known = lineOf.length;
      lineOf = Arrays.copyOf(lineOf, EditableSurface.grown(face + 1));
      Arrays.fill(lineOf, known, lineOf.length, -1);
    }
    if (lineOf[face] < 0) {
      lines = used == lines.length ? Arrays.copyOf(lines, 2 * used) : lines;
      lineOf[face] = used;
      used += NUMBERS;
    }
    System.arraycopy(from, at, lines, lineOf[face], NUMBERS);
  }

  /**
   * Cuts.
   *
   * @param faces that have a line
   * @param free one entry per face: whether it is free where it has none
   * @return one entry per face of the cut surface: whether it is barred
   */
  boolean[] cut(int[] faces, boolean[] free) {
    int known = surface.faceCount();
    barred = new boolean[known];
    for (int f = 0; f < known; f++) {
      barred[f] = !free[f];
    }
    nextPiece = new int[known];
    Arrays.fill(nextPiece, -1);
    for (int f : faces) {
      cut(f);
    }
    return Arrays.copyOf(barred, surface.faceCount());
  }

  private void cut(int face) {
    int line = lineOf[face];
    for (int piece = face; piece >= 0; piece = nextPiece[piece]) {
      // New pieces come right after the one that they were cut off, so all are met.
      for (int h = crossed(piece, line); h >= 0; h = crossed(piece, line)) {
        split(h, share(h, line));
      }
    }
    for (int piece = face; piece >= 0; piece = nextPiece[piece]) {
      double sum = 0;
      for (int h = 3 * piece; h < 3 * piece + 3; h++) {
        sum += value(surface.from(h), line);
      }
      barred[piece] = sum < 0;
    }
  }

  /** A half-edge of a piece that is to be split where the line crosses it; -1 if there is none. */
  private int crossed(int piece, int line) {
    for (int h = 3 * piece; h < 3 * piece + 3; h++) {
      double a = value(surface.from(h), line);
      double b = value(surface.to(h), line);
      double least = SNAP * radiusMm;
      if ((a > least && b < -least) || (a < -least && b > least)) {
        double share = a / (a - b);
        double length = surface.length(h);
        if (length > SMALL * radiusMm
            && Math.min(share, 1 - share) * length > least
            && surface.splitsSoundly(h, share)) {
          return h;
        }
      }
    }
    return -1;
  }

  private double share(int h, int line) {
    double a = value(surface.from(h), line);
    return a / (a - value(surface.to(h), line));
  }

  /** How far a vertex lies to the free side of a line, mm. */
  private double value(int vertex, int line) {
    double value = 0;
    for (int axis = 0; axis < 3; axis++) {
      value += (surface.at(vertex, axis) - lines[line + axis]) * lines[line + 3 + axis];
    }
    return value;
  }

  private void split(int h, double share) {
    int known = surface.faceCount();
    int member = h;
    int[] split = new int[4];
    int count = 0;
    do {
      split = count == split.length ? Arrays.copyOf(split, 2 * count) : split;
      split[count++] = member / 3;
      member = surface.ring(member);
    } while (member != h);
    surface.splitEdge(h, share);
    if (surface.faceCount() > barred.length) {
      int room = EditableSurface.grown(surface.faceCount());
      barred = Arrays.copyOf(barred, room);
      nextPiece = Arrays.copyOf(nextPiece, room);
    }
    for (int i = 0; i < count; i++) {
      barred[known + i] = barred[split[i]];
      nextPiece[known + i] = nextPiece[split[i]];
      nextPiece[split[i]] = known + i;
    }
  }
}
