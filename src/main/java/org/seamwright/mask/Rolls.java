package org.seamwright.mask;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * How many rolls hold the pieces of a tape, each cut from one roll: first-fit decreasing, which
 * takes at most 11/9 of the fewest and one more (Johnson 1973); with pieces far shorter than a roll
 * hardly ever one more than the fewest.
 */
final class Rolls {
  /** A piece exactly as long as what is left fits, whatever the last digit says. */
  private static final double ROUNDING = 1e-9;

  private Rolls() {}

  static int count(List<MaskPlan.TapeStrip> strips, double rollMm) {
    List<MaskPlan.TapeStrip> longest = new ArrayList<>(strips);
    longest.sort(Comparator.comparingDouble(MaskPlan.TapeStrip::lengthMm).reversed());
    List<Double> left = new ArrayList<>();
    for (MaskPlan.TapeStrip strip : longest) {
      for (int piece = 0; piece < strip.pieces(); piece++) {
        int roll = 0;
        while (roll < left.size() && left.get(roll) < strip.lengthMm() - ROUNDING * rollMm) {
          roll++;
        }
        if (roll == left.size()) {
          left.add(rollMm);
        }
        left.set(roll, left.get(roll) - strip.lengthMm());
      }
    }
    return left.size();
  }
}
