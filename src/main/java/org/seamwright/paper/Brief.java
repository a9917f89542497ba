package org.seamwright.paper;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.seamwright.job.PlannedJob;
import org.seamwright.picture.Background;
import org.seamwright.picture.Exposure;
import org.seamwright.picture.Finish;
import org.seamwright.picture.Image;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Scene;
import org.seamwright.picture.View;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.region.Treatment;
import org.seamwright.section.Seam;
import org.seamwright.section.Section;
import org.seamwright.units.UnitFormat;

/** A planned job as papers need it: figures in the user's units, looked up by section; pictures. */
final class Brief {
  /** A section counts as shown where it shows so much of what its best side shows. */
  private static final double SHOWN_WELL = 0.75;

  private static final int MOST_VIEWS = 8;

  final PlannedJob planned;
  final UnitFormat format;
  final LocalDate date;
  private final Map<Integer, PlatingPlan.SectionAmounts> amounts = new HashMap<>();
  private final Map<Integer, List<Seam>> lapsOf = new TreeMap<>();
  private Scene sections;
  private Exposure exposure;
  private List<Integer> views;

  Brief(PlannedJob planned, LocalDate date) {
    this.planned = planned;
    this.date = date;
    format = new UnitFormat(planned.job().display(), Locale.ROOT);
    planned.plating().sections().forEach(a -> amounts.put(a.id(), a));
    for (Seam seam : planned.sections().seams()) {
      lapsOf.computeIfAbsent(seam.later(), id -> new ArrayList<>()).add(seam);
    }
  }

  /** The date as it is written everywhere: 2026-03-09 (ISO 8601). */
  String dateText() {
    return date.toString();
  }

  String piece() {
    String name = planned.job().piece();
    return name.isBlank() ? "Piece without a name" : name;
  }

  List<Section> sections() {
    return planned.sections().sections();
  }

  /** Amounts of a section; none if the plan has none for it. */
  PlatingPlan.SectionAmounts amounts(int section) {
    PlatingPlan.SectionAmounts found = amounts.get(section);
    if (found == null) {
      throw new IllegalArgumentException("Plan has no amounts for section " + section);
    }
    return found;
  }

  /** Seams with sections worked earlier, onto which a section laps. */
  List<Seam> laps(int section) {
    return lapsOf.getOrDefault(section, List.of());
  }

  boolean overLimit(Section section) {
    // Sums of areas carry rounding far below what anyone measures.
    return section.workedMm2() > planned.limitMm2() * (1 + 1e-9);
  }

  double areaMm2(Treatment treatment) {
    return planned.map().areaMm2(treatment);
  }

  double thicknessUm() {
    return planned.settings().flashUm() + planned.settings().buildUm();
  }

  Scene sectionScene() {
    if (sections == null) {
      sections = Pictures.sectionScene(planned.sections(), planned.map());
    }
    return sections;
  }

  Exposure exposure() {
    if (exposure == null) {
      exposure =
          Exposure.of(planned.sections().mesh(), planned.sections().sectionOf(), View.around());
    }
    return exposure;
  }

  /** Few sides that together show every section that can be seen, as numbers in the exposure. */
  List<Integer> views() {
    if (views == null) {
      List<Integer> ids = sections().stream().map(Section::id).toList();
      views = new ArrayList<>(exposure().cover(ids, SHOWN_WELL, MOST_VIEWS));
      // Two pictures fill a page; one more side helps to find one's way.
      if (views.size() % 2 == 1) {
        double[] weight = new double[ids.size() + 1];
        ids.forEach(id -> weight[id] = 1);
        List<View> others = views.stream().map(v -> exposure().views().get(v)).toList();
        views.add(exposure().furthest(weight, others));
      }
    }
    return views;
  }

  /** The numbered sections from one of {@link #views}. */
  Pictures.Labelled sectionPicture(int view, int width, int height) {
    return Pictures.numbered(
        sectionScene(), exposure().views().get(view), width, height, Background.WHITE);
  }

  /** Whether any side shows a section at all. */
  boolean canBeSeen(int section) {
    return exposure().seenMm2(exposure().best(section), section) > 0;
  }

  View bestView(int section) {
    return exposure().views().get(exposure().best(section));
  }

  /** One section in its colour on the pale piece, from its best side. */
  Image whereItIs(int section, int width, int height) {
    int[] of = planned.sections().sectionOf();
    byte[] finish = new byte[of.length];
    for (int f = 0; f < of.length; f++) {
      finish[f] = (of[f] == section ? Finish.SECTION : Finish.GHOST).code();
    }
    return Pictures.plain(
        sectionScene().withFinish(finish), bestView(section), width, height, Background.WHITE);
  }
}
