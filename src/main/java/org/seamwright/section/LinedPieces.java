package org.seamwright.section;

import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import org.seamwright.basis.Sum;
import org.seamwright.region.SurfaceCuts;

/**
 * Connected pieces that laid lines part some sections in. Pieces on either side of a line are told
 * apart as sides 0 and 1, group by group of pieces that lines lie between. O(n).
 */
final class LinedPieces {
  /** The face is in none of the sections. */
  static final int NONE = -1;

  private final SurfaceCuts cuts;
  private final int[] label;

  /** One entry per face: its piece, or {@link #NONE}. */
  private final int[] of;

  private int[] section = new int[8];
  private double[] areaMm2;
  private int count;

  /** Pieces are joined to groups by parity: a piece's side is that of its root, or the other. */
  private final int[] root;

  private final int[] parity;
  private boolean looseEnd;
  private boolean twisted;

  /**
   * Finds the pieces.
   *
   * @param label one entry per face: its section
   * @param sections which sections
   */
  LinedPieces(SurfaceCuts cuts, int[] label, IntPredicate sections) {
    this.cuts = cuts;
    this.label = label;
    of = new int[label.length];
    Arrays.fill(of, NONE);
    flood(sections);
    areaMm2 = areas();
    root = new int[count];
    Arrays.setAll(root, i -> i);
    parity = new int[count];
    groupByLines();
  }

  private void flood(IntPredicate sections) {
    int[] queue = new int[64];
    for (int f = 0; f < of.length; f++) {
      if (of[f] >= 0 || label[f] < 0 || !sections.test(label[f])) {
        continue;
      }
      if (count == section.length) {
        section = Arrays.copyOf(section, 2 * count);
      }
      section[count] = label[f];
      int end = 0;
      queue[end++] = f;
      of[f] = count;
      while (end > 0) {
        int face = queue[--end];
        for (int h = 3 * face; h < 3 * face + 3; h++) {
          if (cuts.isOnLine(h)) {
            continue;
          }
          for (int g = cuts.ring(h); g != h; g = cuts.ring(g)) {
            if (of[g / 3] < 0 && label[g / 3] == label[f]) {
              if (end == queue.length) {
                queue = Arrays.copyOf(queue, 2 * end);
              }
              of[g / 3] = count;
              queue[end++] = g / 3;
            }
          }
        }
      }
      count++;
    }
  }

  private double[] areas() {
    Sum[] sums = new Sum[count];
    Arrays.setAll(sums, i -> new Sum());
    for (int f = 0; f < of.length; f++) {
      if (of[f] >= 0) {
        sums[of[f]].add(cuts.area(f));
      }
    }
    return Arrays.stream(sums).mapToDouble(Sum::value).toArray();
  }

  private void groupByLines() {
    for (int h = 0; h < 3 * of.length; h++) {
      int a = of[h / 3];
      if (a < 0 || !cuts.isOnLine(h)) {
        continue;
      }
      for (int g = cuts.ring(h); g != h; g = cuts.ring(g)) {
        int b = of[g / 3];
        if (b >= 0 && section[b] == section[a]) {
          if (a == b) {
            looseEnd = true;
          } else {
            oppose(a, b);
          }
        }
      }
    }
  }

  private void oppose(int a, int b) {
    int ra = rootOf(a);
    int rb = rootOf(b);
    if (ra == rb) {
      twisted |= side(a) == side(b);
      return;
    }
    int differ = 1 ^ side(a) ^ side(b);
    int low = Math.min(ra, rb);
    int high = Math.max(ra, rb);
    root[high] = low;
    parity[high] = differ;
  }

  private int rootOf(int piece) {
    int top = piece;
    while (root[top] != top) {
      top = root[top];
    }
    return top;
  }

  /** Number of pieces. */
  int count() {
    return count;
  }

  /** Piece of a face, or {@link #NONE}. */
  int of(int face) {
    return of[face];
  }

  /** Section of a piece. */
  int section(int piece) {
    return section[piece];
  }

  /** Area of a piece, mm². */
  double areaMm2(int piece) {
    return areaMm2[piece];
  }

  /** Group of a piece: the lowest piece of it. */
  int group(int piece) {
    return rootOf(piece);
  }

  /** Side of a piece within its group. */
  int side(int piece) {
    int side = 0;
    for (int top = piece; root[top] != top; top = root[top]) {
      side ^= parity[top];
    }
    return side;
  }

  /** Whether some of a line has the same piece on both its sides. */
  boolean hasLooseEnd() {
    return looseEnd;
  }

  /** Whether sides can't be told apart. */
  boolean isTwisted() {
    return twisted;
  }

  /** Whether lines part a section. */
  boolean parts(int wanted) {
    int first = NONE;
    for (int i = 0; i < count; i++) {
      if (section[i] == wanted) {
        if (first != NONE) {
          return true;
        }
        first = i;
      }
    }
    return false;
  }

  /**
   * Lengths of the borders of a piece.
   *
   * @param acrossLines whether those count that are lines, or those that aren't
   * @param sections by section beyond, and not by piece beyond
   * @return by section or piece; those outside have section {@code label}, and no piece
   */
  Map<Integer, Double> borders(int piece, boolean acrossLines, boolean sections) {
    Map<Integer, Double> lengths = new TreeMap<>();
    for (int h = 0; h < 3 * of.length; h++) {
      if (of[h / 3] != piece || cuts.isOnLine(h) != acrossLines) {
        continue;
      }
      for (int g = cuts.ring(h); g != h; g = cuts.ring(g)) {
        int beyond = sections ? label[g / 3] : of[g / 3];
        if (beyond >= 0 && of[g / 3] != piece && !(sections && beyond == section[piece])) {
          lengths.merge(beyond, cuts.length(h), Double::sum);
        }
      }
    }
    return lengths;
  }

  /** The entry with the greatest value, the lowest of equals; {@link #NONE} if there is none. */
  static int longest(Map<Integer, Double> lengths) {
    int best = NONE;
    double most = 0;
    for (Map.Entry<Integer, Double> entry : lengths.entrySet()) {
      if (entry.getValue() > most) {
        most = entry.getValue();
        best = entry.getKey();
      }
    }
    return best;
  }
}
