package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * Cut templates of a part of the surface: its connected patches, largest first, each laid flat in
 * as many pieces as the allowed stretch asks for. What would take pieces too narrow to handle gets
 * no template: it is told of, to be taped or painted.
 *
 * @param templates in order of patch and piece
 * @param byHand places without template, the largest first
 * @param areaMm2 area of all patches, mm²
 * @param notices what was left out or could not be kept
 */
public record Templates(
    List<Template> templates, List<ByHand> byHand, double areaMm2, List<Notice> notices) {
  /** Code of the notice that film would stretch by more than was allowed. */
  public static final String OVER_STRETCH = "template-over-stretch";

  /** Code of the notice that some of the surface has no template. */
  public static final String NOT_FLAT = "template-missing";

  /** Code of the notice that patches are too small to cut. */
  public static final String TOO_SMALL = "template-too-small";

  /** Code of the notice that an allowance would run over the film itself. */
  public static final String NO_ALLOWANCE = "template-allowance-left-out";

  /** Places below this area are slivers between marks: there is nothing to tape. */
  private static final double CRUMB_MM2 = 0.01;

  /** Copies the lists. */
  public Templates {
    templates = List.copyOf(templates);
    byHand = List.copyOf(byHand);
    notices = List.copyOf(notices);
  }

  /**
   * What the shop allows.
   *
   * @param stretchShare how much longer or shorter film may be than the surface under it, above 0;
   *     0.02 if the shop has no figure of its own (a setting, no source)
   * @param allowanceMm how far film laps over a piece laid before it, 0 or more
   * @param leastWidthMm film into which no circle of this diameter fits is not worth cutting, 0 or
   *     more
   */
  public record Settings(double stretchShare, double allowanceMm, double leastWidthMm) {
    /** Checks the ranges. */
    public Settings {
      if (!(stretchShare > 0 && stretchShare < 1)) {
        throw new IllegalArgumentException("Stretch must be between 0 and 1: " + stretchShare);
      }
      if (!(allowanceMm >= 0 && allowanceMm <= 100)) {
        throw new IllegalArgumentException("Allowance must be 0 to 100 mm: " + allowanceMm);
      }
      if (!(leastWidthMm >= 0 && leastWidthMm <= 1000)) {
        throw new IllegalArgumentException("Least width must be 0 to 1000 mm: " + leastWidthMm);
      }
    }
  }

  /** Why a place has no template. */
  public enum Why {
    /** Film there would be narrower than can be handled. */
    NARROW,
    /** Pieces that keep to the stretch would be. */
    STRETCHED,
    /** No layout without folds was found. */
    FOLDED
  }

  /**
   * A place to be taped or painted instead.
   *
   * @param why why it has no template
   * @param areaMm2 its area, mm²
   * @param stretchShare what film would stretch there at least; 0 where it is not known
   * @param faces the place itself
   */
  public record ByHand(Why why, double areaMm2, double stretchShare, Mesh faces) {
    /** A corner of the place, mm: x, y, z. */
    public double[] atMm() {
      return Arrays.copyOf(faces.xyz(), 3);
    }
  }

  /**
   * Makes the templates.
   *
   * @param mesh the piece, mm; any triangle soup
   * @param inside which faces are to be covered
   * @param progress told the share done; may cancel
   */
  public static Templates of(Mesh mesh, IntPredicate inside, Settings settings, Progress progress) {
    List<Mesh> patches = patches(mesh, inside);
    List<Template> templates = new ArrayList<>();
    Tally tally = new Tally();
    double area = 0;
    int number = 0;
    for (int i = 0; i < patches.size(); i++) {
      area += area(patches.get(i));
      Progress share = progress.between((double) i / patches.size(), (i + 1.0) / patches.size());
      Splitter.Result whole =
          Splitter.split(patches.get(i), settings.stretchShare(), settings.leastWidthMm(), share);
      List<Template> pieces = pieces(number + 1, whole, settings, tally);
      number += pieces.isEmpty() ? 0 : 1;
      templates.addAll(pieces);
    }
    progress.at(1);
    tally.byHand.sort(Comparator.comparingDouble(ByHand::areaMm2).reversed());
    return new Templates(templates, tally.byHand, area, tally.notices(settings));
  }

  /** Connected patches as meshes of their own, largest first, then by lowest face. */
  private static List<Mesh> patches(Mesh mesh, IntPredicate inside) {
    int[] faces = new int[mesh.faceCount()];
    int count = 0;
    for (int f = 0; f < faces.length; f++) {
      // A face without area has no place in a layout, and leaves no gap to speak of.
      if (inside.test(f) && Faces.area(mesh, f) > 0) {
        faces[count++] = f;
      }
    }
    Mesh all = Sheets.extract(mesh, Arrays.copyOf(faces, count)).mesh();
    Mesh open = Sheets.open(all, Topology.of(all), new boolean[all.corner().length]).mesh();
    Parts parts = Parts.of(open, Topology.of(open));
    int[] size = new int[parts.count()];
    for (int part : parts.of()) {
      size[part]++;
    }
    int[][] members = new int[parts.count()][];
    for (int p = 0; p < members.length; p++) {
      members[p] = new int[size[p]];
    }
    for (int f = count - 1; f >= 0; f--) {
      members[parts.of()[f]][--size[parts.of()[f]]] = f;
    }
    List<Mesh> patches = new ArrayList<>();
    for (int[] list : members) {
      patches.add(Sheets.extract(open, list).mesh());
    }
    patches.sort(Comparator.comparingDouble(Templates::area).reversed());
    return patches;
  }

  private static double area(Mesh mesh) {
    double sum = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      sum += Faces.area(mesh, f);
    }
    return sum;
  }

  private static List<Template> pieces(
      int patch, Splitter.Result whole, Settings settings, Tally tally) {
    Topology topology = Topology.of(whole.mesh());
    MatchMarks marks = new MatchMarks(whole.mesh());
    Set<Integer> narrow = new TreeSet<>();
    List<Splitter.Laid> flat = new ArrayList<>();
    List<List<Rim>> rims = new ArrayList<>();
    for (Splitter.Laid laid : whole.laid()) {
      List<Rim> own = laid.layout().isEmpty() ? List.of() : Rim.of(whole, topology, laid);
      Optional<Why> why = byHand(laid, own, settings);
      if (why.isPresent()) {
        if (why.get() == Why.NARROW) {
          narrow.add(laid.piece());
        } else {
          double stretch = laid.layout().map(l -> l.stretch().nearlyAll()).orElse(0.0);
          tally.add(why.get(), whole.mesh(), laid.faces(), stretch);
        }
        continue;
      }
      marks.choose(laid.piece(), own);
      flat.add(laid);
      rims.add(own);
    }
    for (int[] place : Places.connected(whole.piece(), topology, narrow)) {
      tally.add(Why.NARROW, whole.mesh(), place, 0);
    }
    List<Template> templates = new ArrayList<>();
    for (int i = 0; i < flat.size(); i++) {
      Splitter.Laid laid = flat.get(i);
      Outline outline = new Outline(rims.get(i));
      List<double[]> net = outline.net();
      List<double[]> cut = outline.cut(net, laid.piece(), settings.allowanceMm());
      tally.noAllowance += outline.leftOut();
      Layout layout = laid.layout().orElseThrow();
      templates.add(
          upright(
              new Template(
                  patch,
                  i + 1,
                  flat.size(),
                  layout.areaMm2(),
                  layout,
                  net,
                  cut,
                  marks.of(laid.piece(), rims.get(i)),
                  0,
                  0),
              Upright.turn(rims.get(i))));
    }
    return templates;
  }

  /** Why a piece is not worth cutting, if it is not. */
  private static Optional<Why> byHand(Splitter.Laid laid, List<Rim> rims, Settings settings) {
    if (laid.layout().isEmpty()) {
      return Optional.of(Why.FOLDED);
    }
    if (!Splitter.isGood(laid, settings.stretchShare())) {
      return Optional.of(Why.STRETCHED);
    }
    double rim = 0;
    for (Rim loop : rims) {
      rim += loop.lengthMm();
    }
    // In any outline a circle of twice the area by the rim fits: most need no closer look.
    boolean wide = 2 * laid.layout().get().areaMm2() >= settings.leastWidthMm() * rim;
    return wide || Outline.widestMm(new Outline(rims).net()) >= settings.leastWidthMm()
        ? Optional.empty()
        : Optional.of(Why.NARROW);
  }

  /** The template turned, with its corner at the origin. */
  private static Template upright(Template t, double turn) {
    double[] lo = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    double[] hi = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (double[] loop : t.cut()) {
      double[] turned = Upright.moved(loop, turn, 0, 0);
      for (int i = 0; i < turned.length; i++) {
        lo[i % 2] = Math.min(lo[i % 2], turned[i]);
        hi[i % 2] = Math.max(hi[i % 2], turned[i]);
      }
    }
    List<Template.MatchMark> marks = new ArrayList<>();
    for (Template.MatchMark m : t.marks()) {
      double[] at = Upright.moved(new double[] {m.x(), m.y()}, turn, -lo[0], -lo[1]);
      double[] to = Upright.moved(new double[] {m.dx(), m.dy()}, turn, 0, 0);
      marks.add(new Template.MatchMark(m.number(), at[0], at[1], to[0], to[1]));
    }
    Layout l = t.layout();
    return new Template(
        t.patch(),
        t.piece(),
        t.pieces(),
        t.areaMm2(),
        new Layout(
            l.mesh(),
            l.parent(),
            Upright.moved(l.uv(), turn, -lo[0], -lo[1]),
            l.stretch(),
            l.slit()),
        moved(t.net(), turn, lo),
        moved(t.cut(), turn, lo),
        marks,
        hi[0] - lo[0],
        hi[1] - lo[1]);
  }

  private static List<double[]> moved(List<double[]> loops, double turn, double[] lo) {
    return loops.stream().map(loop -> Upright.moved(loop, turn, -lo[0], -lo[1])).toList();
  }

  /** What has to be told at the end. */
  private static final class Tally {
    private final List<ByHand> byHand = new ArrayList<>();
    private int noAllowance;

    void add(Why why, Mesh mesh, int[] place, double stretch) {
      Mesh faces = Sheets.extract(mesh, place).mesh();
      if (area(faces) >= CRUMB_MM2) {
        byHand.add(new ByHand(why, area(faces), stretch, faces));
      }
    }

    private int count(Why why) {
      return (int) byHand.stream().filter(p -> p.why() == why).count();
    }

    private double areaMm2(Why why) {
      return byHand.stream().filter(p -> p.why() == why).mapToDouble(ByHand::areaMm2).sum();
    }

    List<Notice> notices(Settings settings) {
      List<Notice> notices = new ArrayList<>();
      if (count(Why.NARROW) > 0) {
        add(
            notices,
            TOO_SMALL,
            count(Why.NARROW),
            "Places narrower than %.3g mm get no template: %d, %.4g mm² in all. Tape or paint them.",
            settings.leastWidthMm(),
            count(Why.NARROW),
            areaMm2(Why.NARROW));
      }
      if (count(Why.FOLDED) > 0) {
        add(
            notices,
            NOT_FLAT,
            count(Why.FOLDED),
            "Rough places that no layout without folds was found for get no template: %d, %.4g mm²"
                + " in all. Tape or paint them.",
            count(Why.FOLDED),
            areaMm2(Why.FOLDED));
      }
      if (count(Why.STRETCHED) > 0) {
        add(
            notices,
            OVER_STRETCH,
            count(Why.STRETCHED),
            "Places where film keeps to %.3g%% only in pieces under %.3g mm get no template: %d,"
                + " %.4g mm² in all; that narrow it still stretches by up to %.3g%%. Tape or paint them.",
            100 * settings.stretchShare(),
            settings.leastWidthMm(),
            count(Why.STRETCHED),
            areaMm2(Why.STRETCHED),
            100 * byHand.stream().mapToDouble(ByHand::stretchShare).max().orElse(0));
      }
      if (noAllowance > 0) {
        add(
            notices,
            NO_ALLOWANCE,
            noAllowance,
            "Seams without allowance, which would run over the film itself: %d. Cover them with a"
                + " strip.",
            noAllowance);
      }
      return notices;
    }

    private static void add(
        List<Notice> notices, String code, int count, String text, Object... values) {
      notices.add(new Notice(code, count, String.format(Locale.ROOT, text, values)));
    }
  }
}
