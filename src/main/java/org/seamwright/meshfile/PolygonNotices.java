package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seamwright.basis.Count;
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
              Count.of(splitter.notFlat(), "polygon is", "polygons are")
                  + String.format(
                      Locale.ROOT,
                      " not flat (corners up to %.3g file units off the mean plane). Split into"
                          + " triangles the area is %.2g%% larger than laid flat; other programs may"
                          + " split otherwise.",
                      splitter.deviation(),
                      100 * splitter.excess())));
    }
    if (splitter.tangled() > 0) {
      notices.add(
          new Notice(
              "polygons-crossing-themselves",
              splitter.tangled(),
              Count.of(
                  splitter.tangled(),
                  "polygon crosses itself or doubles back, so that its area is uncertain.",
                  "polygons cross themselves or double back, so that their area is uncertain.")));
    }
    return notices;
  }

  /** Lines and points, which have no area. */
  static Notice withoutArea(long count) {
    return new Notice(
        "lines-and-points-skipped",
        count,
        Count.of(
            count,
            "line, curve or point has no area and was left out.",
            "lines, curves or points have no area and were left out."));
  }

  /** Colours, which no figure depends on; of vertices, faces or bodies. */
  static Notice colours(long count, String one, String several) {
    return new Notice(
        "colours-ignored",
        count,
        "Colours of " + Count.of(count, one, several) + " were not used.");
  }
}
