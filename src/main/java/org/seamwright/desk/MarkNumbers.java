package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.seamwright.basis.InputException;
import org.seamwright.job.MarkWords;
import org.seamwright.region.Mark;
import org.seamwright.units.UnitFormat;
import org.seamwright.units.UnitSystem;

/** The numbers of a mark that can be typed after the fact. */
public final class MarkNumbers {
  private MarkNumbers() {}

  /**
   * A number.
   *
   * @param key as in the job file
   * @param text as it could be typed
   */
  public record Entry(String key, String text) {
    /** What it is, for people. */
    public String title() {
      return Messages.text("mark-number." + key);
    }
  }

  /** The numbers of a mark. */
  public static List<Entry> of(Mark mark, UnitSystem display) {
    UnitFormat in = new UnitFormat(display, Locale.ENGLISH).withPlainSpaces();
    List<Entry> all = new ArrayList<>();
    if (mark instanceof Mark.Near m) {
      all.add(new Entry("radius", in.length(m.radiusMm())));
    } else if (mark instanceof Mark.OutOfReach m) {
      all.add(new Entry("radius", in.length(m.radiusMm())));
    } else if (mark instanceof Mark.Smooth m) {
      all.add(new Entry("radius", in.length(m.radiusMm())));
    } else if (mark instanceof Mark.Grow m) {
      all.add(new Entry("by", in.length(m.byMm())));
    } else if (mark instanceof Mark.CreaseFill m) {
      all.add(new Entry("angle", plain(m.angleDegrees())));
      all.add(new Entry("closeGaps", in.length(m.gapsMm())));
    } else if (mark instanceof Mark.Facing m) {
      all.add(new Entry("angle", plain(m.angleDegrees())));
    } else if (mark instanceof Mark.Turn m) {
      all.add(new Entry("count", Integer.toString(m.count())));
    } else if (mark instanceof Mark.Sector m) {
      all.add(new Entry("from", plain(m.fromDegrees())));
      all.add(new Entry("to", plain(m.toDegrees())));
    } else if (mark instanceof Mark.Ring m) {
      addFinite(all, "low", m.fromMm(), in);
      addFinite(all, "high", m.toMm(), in);
      if (m.innerMm() > 0) {
        addFinite(all, "inner", m.innerMm(), in);
      }
      addFinite(all, "outer", m.outerMm(), in);
    }
    return all;
  }

  private static void addFinite(List<Entry> all, String key, double mm, UnitFormat in) {
    if (!Double.isInfinite(mm)) {
      all.add(new Entry(key, in.length(mm)));
    }
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }

  /**
   * The mark with another number.
   *
   * @throws InputException if it can't be that; the problem and the remedy are for people
   */
  public static Mark typed(Mark mark, String key, String text, UnitSystem display)
      throws InputException {
    for (Entry number : of(mark, display)) {
      if (number.key().equals(key) && number.text().equals(text.strip())) {
        // What is shown is rounded; leaving it as it is must not round the mark.
        return mark;
      }
    }
    return MarkWords.changed(mark, Map.of(key, text.strip()));
  }
}
