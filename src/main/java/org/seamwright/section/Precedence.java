package org.seamwright.section;

import java.util.BitSet;

/**
 * Which sections must be worked before which others, with all that follows from it. A demand that
 * contradicts earlier ones is not taken up.
 *
 * <p>Cost: O(n²/64) per demand, n² bits.
 */
final class Precedence {
  private final BitSet[] before;
  private final BitSet[] after;
  private boolean any;

  private Precedence(int sections) {
    before = new BitSet[sections];
    after = new BitSet[sections];
    for (int s = 0; s < sections; s++) {
      before[s] = new BitSet(sections);
      after[s] = new BitSet(sections);
    }
  }

  /** No demands. */
  static Precedence none(int sections) {
    return new Precedence(sections);
  }

  /** Demands that one section be worked before another; false if that can't be any more. */
  boolean require(int first, int second) {
    if (first == second || before[first].get(second)) {
      return false;
    }
    if (before[second].get(first)) {
      return true;
    }
    any = true;
    BitSet earlier = (BitSet) before[first].clone();
    earlier.set(first);
    BitSet later = (BitSet) after[second].clone();
    later.set(second);
    for (int a = earlier.nextSetBit(0); a >= 0; a = earlier.nextSetBit(a + 1)) {
      after[a].or(later);
    }
    for (int b = later.nextSetBit(0); b >= 0; b = later.nextSetBit(b + 1)) {
      before[b].or(earlier);
    }
    return true;
  }

  /** Number of sections. */
  int sections() {
    return before.length;
  }

  /** Whether nothing is demanded. */
  boolean isFree() {
    return !any;
  }

  /** Whether the first must be worked before the second. */
  boolean isBefore(int first, int second) {
    return after[first].get(second);
  }

  /** Sections that must be worked before one. Not to be changed. */
  BitSet allBefore(int section) {
    return before[section];
  }

  /** Whether an order keeps to all demands. */
  boolean allows(int[] order) {
    BitSet done = new BitSet(order.length);
    for (int s : order) {
      BitSet missing = (BitSet) before[s].clone();
      missing.andNot(done);
      if (!missing.isEmpty()) {
        return false;
      }
      done.set(s);
    }
    return true;
  }
}
