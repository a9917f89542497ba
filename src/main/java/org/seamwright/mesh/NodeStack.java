package org.seamwright.mesh;

import java.util.Arrays;

/**
 * The nodes and leaves that a search of a {@link BoxTree} has yet to visit, of each node's children
 * the nearest on top.
 *
 * <p>Which of four boxes is nearest, and which are near enough, can't be foreseen; a wrong guess of
 * the processor costs it as much as the boxes did. So neither is decided by a branch: an entry is
 * one number, its measure (a float of 0 or more, whose bits are ordered as it is) above its
 * reference, and a fixed net of five exchanges sorts four.
 */
final class NodeStack {
  /** Entries to begin with: more than near a surface of a million faces. */
  private static final int ROOM = 48;

  /** Entry that no limit admits. */
  private static final long NEVER = Long.MAX_VALUE;

  private long[] entry = new long[ROOM];
  private int top;

  /**
   * The entry of a child.
   *
   * @param measure how near it is; 0 or more, no NaN
   */
  static long key(float measure, int reference) {
    return (long) Float.floatToRawIntBits(measure) << 32 | (reference & 0xFFFFFFFFL);
  }

  /** The same, or one that is never pushed if another number is below 0. */
  static long keyUnless(float below, float measure, int reference) {
    return key(measure, reference) | (NEVER & (Float.floatToRawIntBits(below) >> 31));
  }

  /** Pushes those of four entries whose measure is at most a limit, the nearest last. */
  void push(long a, long b, long c, long d, float limit) {
    if (top + BoxTree.CHILDREN > entry.length) {
      entry = Arrays.copyOf(entry, 2 * entry.length);
    }
    long most = key(limit, -1);
    long ab = over(b - a);
    long cd = over(d - c);
    long farAb = a + ab;
    long nearAb = b - ab;
    long farCd = c + cd;
    long nearCd = d - cd;
    long far = over(farCd - farAb);
    long near = over(nearCd - nearAb);
    long second = farCd - far;
    long third = nearAb + near;
    long middle = over(third - second);
    add(farAb + far, most);
    add(second + middle, most);
    add(third - middle, most);
    add(nearCd - near, most);
  }

  /** A difference, or 0 if it is below. */
  private static long over(long difference) {
    return difference & ~(difference >> 63);
  }

  /** Writes an entry, and keeps it if it is at most a limit. */
  private void add(long key, long most) {
    entry[top] = key;
    top += 1 - (int) ((most - key) >>> 63);
  }

  boolean isEmpty() {
    return top == 0;
  }

  /** Takes the reference on top. */
  int pop() {
    return (int) entry[--top];
  }

  /** Measure of the entry taken last. */
  float popped() {
    return Float.intBitsToFloat((int) (entry[top] >> 32));
  }
}
