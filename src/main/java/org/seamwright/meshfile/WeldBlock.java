package org.seamwright.meshfile;

import java.util.Arrays;
import org.seamwright.basis.Parallel;

/**
 * The welded corners of one run of a file's faces. Blocks are filled side by side, each with a
 * table of its own, and then joined; the numbering is that of one pass over all corners in order,
 * whatever the number of blocks.
 */
final class WeldBlock {
  /** Corners looked up together: as many as their cache lines fit the first-level cache. */
  static final int BATCH = 192;

  private static final int NEW = -1;

  private static final int LEAST_PER_RANGE = 1 << 14;

  private final VertexTable table;

  /** Numbers in this block's table, from {@code from} on. */
  private int[] corner;

  private final int from;
  private int to;

  /** The batch: coordinates, hashes, and which earlier corner of the batch is the same. */
  private final double[] p = new double[3 * BATCH];

  private final long[] hash = new long[BATCH];
  private final int[] same = new int[BATCH];
  private int batch;

  /** Keeps the compiler from leaving the touching out. */
  @SuppressWarnings("unused")
  private int unused;

  private WeldBlock(VertexTable table, int[] corner, int from) {
    this.table = table;
    this.corner = corner;
    this.from = from;
    this.to = from;
  }

  /** A block that writes to its part of an array all blocks share. */
  static WeldBlock in(int[] corner, int from, int corners) {
    return new WeldBlock(new VertexTable(expected(corners)), corner, from);
  }

  /** Distinct points that a table is first sized for: a closed mesh has one to six corners. */
  private static long expected(long corners) {
    return corners / 6 + corners / 256 + 64;
  }

  /** A block for a number of corners known only roughly. */
  static WeldBlock ofAbout(long corners) {
    int room = (int) Math.max(64, Math.min(corners, 1 << 26));
    return new WeldBlock(new VertexTable(expected(room)), new int[room], 0);
  }

  /** Adds the next corner to a batch of whole faces; {@link #flush} ends it. */
  void put(double x, double y, double z) {
    int i = batch++;
    p[3 * i] = x + 0.0;
    p[3 * i + 1] = y + 0.0;
    p[3 * i + 2] = z + 0.0;
    if (batch == BATCH) {
      flush();
    }
  }

  /**
   * Numbers the corners of the batch, in loops of their own that the compiler takes one by one: in
   * a short run its work is much of the time.
   */
  void flush() {
    compare();
    touch();
    while (to + batch > corner.length) {
      corner = Arrays.copyOf(corner, Growing.longer(corner.length));
    }
    number();
    to += batch;
    batch = 0;
  }

  /** Finds the corners that the face before has too: most, and they need no looking up. */
  private void compare() {
    Arrays.fill(same, 0, Math.min(3, batch), NEW);
    for (int face = 3; face < batch; face += 3) {
      int end = Math.min(face + 3, batch);
      for (int i = face; i < end; i++) {
        same[i] = likeOf(3 * i, 3 * face - 9);
      }
    }
  }

  private int likeOf(int i, int face) {
    double x = p[i];
    double y = p[i + 1];
    double z = p[i + 2];
    for (int k = face; k < face + 9; k += 3) {
      if (p[k] == x && p[k + 1] == y && p[k + 2] == z) {
        return k / 3;
      }
    }
    return NEW;
  }

  /** Touches the slots of all others before any is looked up, so that the waits overlap. */
  private void touch() {
    int touched = 0;
    for (int i = 0; i < batch; i++) {
      if (same[i] == NEW) {
        long h = VertexTable.hash(p[3 * i], p[3 * i + 1], p[3 * i + 2]);
        hash[i] = h;
        touched += table.touch(h);
      }
    }
    unused = touched;
  }

  private void number() {
    for (int i = 0; i < batch; i++) {
      corner[to + i] =
          same[i] == NEW
              ? table.number(p[3 * i], p[3 * i + 1], p[3 * i + 2], hash[i])
              : corner[to + same[i]];
    }
  }

  /** Corners added so far. */
  int count() {
    return to - from;
  }

  /**
   * All blocks as one.
   *
   * @param xyz distinct points, numbered by the first corner that has them
   * @param corner a point number per corner
   */
  record Joined(double[] xyz, int[] corner) {}

  /** Says that no more corners come. */
  void close() {
    flush();
    table.close();
  }

  /** Joins closed blocks in the order of the file; they can't be used after it. */
  static Joined join(WeldBlock[] blocks) {
    int[][] number = new int[blocks.length][];
    int points = blocks[0].table.count();
    for (int b = 1; b < blocks.length; b++) {
      number[b] = findInEarlier(blocks, number, b);
      points = numberNew(number[b], points);
    }
    for (WeldBlock block : blocks) {
      block.table.forget();
    }
    int all = points;
    double[][] xyz = new double[1][];
    int[][] corner = new int[1][];
    Parallel.each(
        2,
        task -> {
          if (task == 0) {
            xyz[0] = points(blocks, number, all);
          } else {
            corner[0] = corners(blocks, number);
          }
        });
    return new Joined(xyz[0], corner[0]);
  }

  private static double[] points(WeldBlock[] blocks, int[][] number, int all) {
    VertexTable first = blocks[0].table;
    if (all == first.count()) {
      return first.toArray();
    }
    double[] xyz = new double[Math.multiplyExact(3, all)];
    first.copyAll(xyz);
    int next = first.count();
    for (int b = 1; b < blocks.length; b++) {
      next = copyNew(blocks[b].table, number[b], next, xyz);
    }
    return xyz;
  }

  /** Numbers of a block's points that an earlier block has too; -1 for new ones. */
  private static int[] findInEarlier(WeldBlock[] blocks, int[][] number, int b) {
    VertexTable own = blocks[b].table;
    int[] found = new int[own.count()];
    Parallel.split(
        found.length,
        Parallel.ranges(found.length, LEAST_PER_RANGE),
        (from, to) -> {
          for (int v = from; v < to; v++) {
            found[v] = -1;
            for (int e = 0; e < b && found[v] < 0; e++) {
              int there = blocks[e].table.find(own, v);
              found[v] = there < 0 || e == 0 ? there : number[e][there];
            }
          }
        });
    return found;
  }

  private static int numberNew(int[] number, int before) {
    int next = before;
    for (int v = 0; v < number.length; v++) {
      if (number[v] < 0) {
        number[v] = next++;
      }
    }
    return next;
  }

  private static int copyNew(VertexTable table, int[] number, int before, double[] xyz) {
    int next = before;
    for (int v = 0; v < number.length; v++) {
      if (number[v] == next) {
        table.copy(v, xyz, next++);
      }
    }
    return next;
  }

  private static int[] corners(WeldBlock[] blocks, int[][] number) {
    long all = 0;
    boolean shared = true;
    for (WeldBlock block : blocks) {
      shared &= block.corner == blocks[0].corner && block.from == all;
      all += block.count();
    }
    int[] corner =
        shared && all == blocks[0].corner.length ? blocks[0].corner : new int[Math.toIntExact(all)];
    int at = 0;
    for (int b = 0; b < blocks.length; b++) {
      WeldBlock block = blocks[b];
      int[] renumbered = number[b];
      int shift = at - block.from;
      if (renumbered == null) {
        if (corner != block.corner) {
          System.arraycopy(block.corner, block.from, corner, at, block.count());
        }
      } else {
        Parallel.split(
            block.count(),
            Parallel.ranges(block.count(), LEAST_PER_RANGE),
            (from, to) -> {
              for (int i = block.from + from; i < block.from + to; i++) {
                corner[i + shift] = renumbered[block.corner[i]];
              }
            });
      }
      at += block.count();
    }
    return corner;
  }
}
