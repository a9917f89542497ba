package org.seamwright.paper;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.DoubleFunction;
import org.seamwright.job.PlannedJob;
import org.seamwright.picture.Background;
import org.seamwright.picture.Exposure;
import org.seamwright.picture.Finish;
import org.seamwright.picture.Image;
import org.seamwright.picture.Letterhead;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Scene;
import org.seamwright.picture.View;
import org.seamwright.plating.Band;
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

  /** What people care to see, gold before bare metal. */
  private static final double GOLD_COUNTS = 1;

  private static final double BARE_COUNTS = 0.3;

  /** How many times more another side must show to replace the usual one. */
  private static final double MUCH_MORE = 1.5;

  final PlannedJob planned;
  final Letterhead shop;
  final UnitFormat format;
  final LocalDate date;
  private final Map<Integer, PlatingPlan.SectionAmounts> amounts = new HashMap<>();
  private final Map<Integer, List<Seam>> lapsOf = new TreeMap<>();
  private Scene sections;
  private Exposure exposure;
  private List<Integer> views;
  private List<View> portraits;

  Brief(PlannedJob planned, LocalDate date) {
    this(planned, Letterhead.NONE, date);
  }

  Brief(PlannedJob planned, Letterhead shop, LocalDate date) {
    this.planned = planned;
    this.shop = shop;
    this.date = date;
    format = new UnitFormat(planned.job().display(), Locale.ROOT);
    planned.plating().sections().forEach(a -> amounts.put(a.id(), a));
    for (Seam seam : planned.sections().seams()) {
      lapsOf.computeIfAbsent(seam.later(), id -> new ArrayList<>()).add(seam);
    }
  }

  /** The metal that is laid down, in one lower-case word. */
  String laid() {
    return planned.settings().deposit().metal();
  }

  /** How the metal laid down looks. */
  Finish look() {
    return Pictures.look(laid());
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

  /** "12.1 to 14.0 g in 8 of 10 jobs", or nothing for a figure known to a point. */
  String range(Band band, DoubleFunction<String> shown) {
    return band.isWide()
        ? shown.apply(band.p10()) + " to " + shown.apply(band.p90()) + " in 8 of 10 jobs"
        : "";
  }

  double areaMm2(Treatment treatment) {
    return planned.map().areaMm2(treatment);
  }

  double thicknessUm() {
    return planned.settings().flashUm() + planned.settings().buildUm();
  }

  /**
   * The look of the metal that is plated. Brass and bronze stay grey: in their own colour nobody
   * could tell them from gold.
   */
  Finish metal() {
    String base = planned.settings().recipe().base().toLowerCase(Locale.ROOT);
    return base.startsWith("copper")
        ? Finish.COPPER
        : base.startsWith("nickel") ? Finish.NICKEL : Finish.BARE;
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

  /**
   * Two sides for pictures of the whole piece: the usual one, or a steeper one where that shows
   * much more, as of a flat piece; and one turned away from it that shows much of the work. The
   * piece stands on a table: nobody looks at it from below.
   */
  List<View> portraits() {
    if (portraits == null) {
      int[] region = new int[planned.map().mesh().faceCount()];
      for (int f = 0; f < region.length; f++) {
        region[f] = planned.map().of(f).code();
      }
      List<View> sides = new ArrayList<>();
      sides.add(View.THREE_QUARTER);
      View.around().stream().filter(v -> v.z() >= 0).forEach(sides::add);
      Exposure work = Exposure.of(planned.map().mesh(), region, sides);
      double[] weight = {GOLD_COUNTS, BARE_COUNTS};
      int first = 0;
      for (int v = 1; v < sides.size(); v++) {
        boolean fromTheFront = sides.get(v).x() == 0 && sides.get(v).y() <= 0;
        if (fromTheFront && shown(work, v, weight) > MUCH_MORE * shown(work, first, weight)) {
          first = v;
        }
      }
      int second = work.furthest(weight, List.of(sides.get(first)));
      portraits = List.of(sides.get(first), sides.get(second));
    }
    return portraits;
  }

  private static double shown(Exposure work, int view, double[] weight) {
    double shown = 0;
    for (int region = 0; region < weight.length; region++) {
      shown += weight[region] * work.seenMm2(view, region);
    }
    return shown;
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
