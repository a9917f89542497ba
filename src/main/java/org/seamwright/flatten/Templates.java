package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.IntPredicate;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * Cut templates of a part of the surface: its connected patches, largest first, each laid flat in
 * as many pieces as the allowed stretch asks for.
 *
 * @param templates in order of patch and piece
 * @param areaMm2 area of all patches, mm²
 * @param notices what was left out or could not be kept
 */
public record Templates(List<Template> templates, double areaMm2, List<Notice> notices) {
  /** Code of the notice that a piece is stretched by more than was allowed. */
  public static final String OVER_STRETCH = "template-over-stretch";

  /** Code of the notice that some of the surface has no template. */
  public static final String NOT_FLAT = "template-missing";

  /** Code of the notice that patches are too small to cut. */
  public static final String TOO_SMALL = "template-too-small";

  /** Code of the notice that an allowance would run over the film itself. */
  public static final String NO_ALLOWANCE = "template-allowance-left-out";

  /** Film this small cannot be handled; such places are painted. */
  private static final double LEAST_PATCH_MM2 = 4;

  /** Copies the lists. */
  public Templates {
    templates = List.copyOf(templates);
    notices = List.copyOf(notices);
  }

  /**
   * What the shop allows.
   *
   * @param stretchShare how much longer or shorter film may be than the surface under it, above 0;
   *     0.02 if the shop has no figure of its own (a setting, no source)
   * @param allowanceMm how far film laps over a piece laid before it, 0 or more
   */
  public record Settings(double stretchShare, double allowanceMm) {
    /** Checks the ranges. */
    public Settings {
      if (!(stretchShare > 0 && stretchShare < 1)) {
        throw new IllegalArgumentException("Stretch must be between 0 and 1: " + stretchShare);
      }
      if (!(allowanceMm >= 0 && allowanceMm <= 100)) {
        throw new IllegalArgumentException("Allowance must be 0 to 100 mm: " + allowanceMm);
      }
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
      double patchMm2 = area(patches.get(i));
      area += patchMm2;
      if (patchMm2 < LEAST_PATCH_MM2) {
        tally.small++;
        tally.smallMm2 += patchMm2;
        continue;
      }
      Progress share = progress.between((double) i / patches.size(), (i + 1.0) / patches.size());
      Splitter.Result whole = Splitter.split(patches.get(i), settings.stretchShare(), share);
      templates.addAll(pieces(++number, whole, settings, tally));
    }
    progress.at(1);
    return new Templates(templates, area, tally.notices(settings));
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
    List<Splitter.Laid> flat = new ArrayList<>();
    List<List<Rim>> rims = new ArrayList<>();
    for (Splitter.Laid laid : whole.laid()) {
      if (laid.layout().isEmpty()) {
        tally.missing++;
        for (int f : laid.faces()) {
          tally.missingMm2 += Faces.area(whole.mesh(), f);
        }
        continue;
      }
      List<Rim> own = Rim.of(whole, topology, laid);
      marks.choose(laid.piece(), own);
      flat.add(laid);
      rims.add(own);
    }
    List<Template> templates = new ArrayList<>();
    for (int i = 0; i < flat.size(); i++) {
      Splitter.Laid laid = flat.get(i);
      Outline outline = new Outline(rims.get(i));
      List<double[]> net = outline.net();
      List<double[]> cut = outline.cut(net, laid.piece(), settings.allowanceMm());
      tally.noAllowance += outline.leftOut();
      Layout layout = laid.layout().orElseThrow();
      tally.over += layout.stretch().nearlyAll() > settings.stretchShare() ? 1 : 0;
      tally.worst = Math.max(tally.worst, layout.stretch().nearlyAll());
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
    private int small;
    private double smallMm2;
    private int missing;
    private double missingMm2;
    private int over;
    private double worst;
    private int noAllowance;

    List<Notice> notices(Settings settings) {
      List<Notice> notices = new ArrayList<>();
      if (small > 0) {
        add(
            notices,
            TOO_SMALL,
            small,
            "Places of less than 4 mm² get no template: %d, %.4g mm² in all.",
            small,
            smallMm2);
      }
      if (missing > 0) {
        add(
            notices,
            NOT_FLAT,
            missing,
            "Rough places that no layout without folds was found for get no template: %d, %.4g mm²"
                + " in all. Mask them by hand.",
            missing,
            missingMm2);
      }
      if (over > 0) {
        add(
            notices,
            OVER_STRETCH,
            over,
            "Pieces stretched by more than the %.3g%% allowed: %d, by up to %.3g%%. They are as"
                + " small as is worth cutting; ease the film on, or mask there by hand.",
            100 * settings.stretchShare(),
            over,
            100 * worst);
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
