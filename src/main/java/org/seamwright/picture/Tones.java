package org.seamwright.picture;

import java.util.List;
import org.seamwright.section.Seam;
import org.seamwright.section.SectionPlan;

/**
 * Gives each section a class of colour and pattern that none of its neighbours has, spread evenly:
 * greedily in the order of section numbers. With more than six neighbours of different classes one
 * has to repeat; the line between them still parts them.
 */
public final class Tones {
  private Tones() {}

  /** Class per section id; entry 0 stands for what is not plated. */
  public static int[] of(SectionPlan plan) {
    int last = 0;
    for (int id : plan.sectionOf()) {
      last = Math.max(last, id);
    }
    int[] tone = new int[last + 1];
    int[] used = new int[Palette.SIZE];
    for (int id = 1; id <= last; id++) {
      boolean[] taken = new boolean[Palette.SIZE];
      markNeighbours(plan.seams(), id, tone, taken);
      int best = -1;
      for (int k = 0; k < Palette.SIZE; k++) {
        // Start at a different class each time, so that ties don't favour the first.
        int candidate = (id - 1 + k) % Palette.SIZE;
        boolean better =
            best < 0
                || (taken[best] && !taken[candidate])
                || (taken[best] == taken[candidate] && used[candidate] < used[best]);
        if (better) {
          best = candidate;
        }
      }
      tone[id] = best;
      used[best]++;
    }
    return tone;
  }

  private static void markNeighbours(List<Seam> seams, int id, int[] tone, boolean[] taken) {
    for (Seam seam : seams) {
      int other = seam.earlier() == id ? seam.later() : seam.later() == id ? seam.earlier() : id;
      if (other < id) {
        taken[tone[other]] = true;
      }
    }
  }
}
