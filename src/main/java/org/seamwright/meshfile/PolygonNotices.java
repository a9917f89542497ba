package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seamwright.basis.Notice;

/** What there is to tell of polygons after they were split; the same words for every format. */
final class PolygonNotices {
  private PolygonNotices() {}

  /** Notices of a splitter, none if all its polygons were flat and simple. */
  static List<Notice> of(PolygonSplitter splitter) {
    List<Notice> notices = new ArrayList<>();
    if (splitter.notFlat() > 0) {
      notices.add(
          new Notice(
              "polygons-not-flat",
              splitter.notFlat(),
              String.format(
                  Locale.ROOT,
                  "%,d polygons are not flat (corners up to %.3g file units off their mean plane);"
                      + " split into triangles they are %.2g%% larger than flat ones, other"
                      + " programs may split them otherwise.",
                  splitter.notFlat(),
                  splitter.deviation(),
                  100 * splitter.excess())));
    }
    if (splitter.tangled() > 0) {
      notices.add(
          new Notice(
              "polygons-crossing-themselves",
              splitter.tangled(),
              String.format(
                  Locale.ROOT,
                  "%,d polygons cross themselves or double back; their area is uncertain.",
                  splitter.tangled())));
    }
    return notices;
  }

  /** Lines and points, which have no area. */
  static Notice withoutArea(long count) {
    return new Notice(
        "lines-and-points-skipped",
        count,
        String.format(
            Locale.ROOT, "%,d lines, curves or points have no area and were left out.", count));
  }

  /** Colours, which no figure depends on. */
  static Notice colours(long count, String what) {
    return new Notice(
        "colours-ignored",
        count,
        String.format(Locale.ROOT, "Colours of %,d %s were not used.", count, what));
  }
}
