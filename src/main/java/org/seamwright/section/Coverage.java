package org.seamwright.section;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The plated area near seams, sorted by which section it is part of and which seams' bands lie over
 * it, whatever the order of work may be. From it follows, for any order, how much is covered by
 * later sections and how often: no distance need be measured again.
 *
 * <p>A seam's band is laid by the later of its two sections, and lies over all sections worked
 * before that one.
 *
 * @param sections number of sections
 * @param section one entry per patch: the section it is part of
 * @param begin one entry per patch and one more: its first entry in {@code low} and {@code high}
 * @param low lower section of a seam over the patch
 * @param high higher section of that seam
 * @param areaMm2 one entry per patch
 */
record Coverage(int sections, int[] section, int[] begin, int[] low, int[] high, double[] areaMm2) {

  /** Number of patches. */
  int count() {
    return section.length;
  }

  /**
   * How many sections lap onto a patch when worked by position.
   *
   * @param patch which
   * @param position one entry per section: its place in the order
   */
  int laps(int patch, int[] position) {
    int own = position[section[patch]];
    int laps = 0;
    for (int i = begin[patch]; i < begin[patch + 1]; i++) {
      int later = later(i, position);
      if (position[later] > own && (i == begin[patch] || !seenBefore(patch, i, later, position))) {
        laps++;
      }
    }
    return laps;
  }

  /** The section that lays the band of entry i. */
  int later(int i, int[] position) {
    return position[low[i]] > position[high[i]] ? low[i] : high[i];
  }

  /** Whether an entry of the patch before entry i is laid by the same section. */
  boolean seenBefore(int patch, int i, int later, int[] position) {
    for (int j = begin[patch]; j < i; j++) {
      if (later(j, position) == later) {
        return true;
      }
    }
    return false;
  }

  /** Collects patches; equal ones are added up. */
  static final class Builder {
    private final int sections;
    private final Map<List<Integer>, double[]> areas =
        new TreeMap<>(
            (a, b) -> {
              for (int i = 0; i < Math.min(a.size(), b.size()); i++) {
                int order = Integer.compare(a.get(i), b.get(i));
                if (order != 0) {
                  return order;
                }
              }
              return Integer.compare(a.size(), b.size());
            });

    Builder(int sections) {
      this.sections = sections;
    }

    /**
     * Adds area of a section that lies under the bands of some seams.
     *
     * @param section the section
     * @param seams numbers of seams, ascending
     */
    void add(int section, int[] seams, double areaMm2) {
      List<Integer> key = new ArrayList<>(seams.length + 1);
      key.add(section);
      Arrays.stream(seams).forEach(key::add);
      areas.computeIfAbsent(key, k -> new double[1])[0] += areaMm2;
    }

    /** Builds; seam numbers are positions in {@code seams}. */
    Coverage build(Borders seams) {
      int[] section = new int[areas.size()];
      int[] begin = new int[section.length + 1];
      double[] area = new double[section.length];
      int entries = areas.keySet().stream().mapToInt(k -> k.size() - 1).sum();
      int[] low = new int[entries];
      int[] high = new int[entries];
      int patch = 0;
      int at = 0;
      for (Map.Entry<List<Integer>, double[]> entry : areas.entrySet()) {
        List<Integer> key = entry.getKey();
        section[patch] = key.get(0);
        area[patch] = entry.getValue()[0];
        for (int seam : key.subList(1, key.size())) {
          low[at] = seams.low()[seam];
          high[at++] = seams.high()[seam];
        }
        begin[++patch] = at;
      }
      return new Coverage(sections, section, begin, low, high, area);
    }
  }
}
