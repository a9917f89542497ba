package org.seamwright.mask;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.geodesic.BoundaryLines;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.region.SubMesh;
import org.seamwright.region.SurfaceBands;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;

/**
 * Plans what covers the bare metal along plating: one mask per connected bare region that borders
 * on it, with tape along the border and lacquer beyond the tape up to the splash distance.
 *
 * <p>Borders are the edges of the surface map, cut exactly along the marks, and their length is
 * that of the model's polyline. Areas under tape and lacquer are measured along the surface from
 * the border, inside the region. What is out of scope is neither masked nor crossed.
 */
public final class Masking {
  /** Code of the notice that bare regions border on no plating, and so are not masked. */
  public static final String NOT_MASKED = "bare-not-masked";

  /** Code of the notice that bare regions are too narrow for any mask. */
  public static final String HAIRLINE = "bare-hairline";

  /** Code of the notice that the tape covers a region altogether. */
  public static final String TAPE_ONLY = "tape-covers-region";

  /** Code of the notice that no tape of the list follows an edge. */
  public static final String BY_HAND = "no-tape-bends-so";

  /** Code of the notice that the piece does not go into the vessel it is to be dipped in. */
  public static final String SMALL_VESSEL = "dip-vessel-small";

  /** Mean width below which a region is a slip between two marks and no place to mask: 1 µm. */
  private static final double HAIRLINE_MM = 1e-3;

  /** Share of a region that tape may leave over and still count as covering it. */
  private static final double COVERED = 1e-6;

  private final SurfaceMap map;
  private final MaskSettings settings;
  private final int[] ring;

  /** Working space of {@link SubMesh#of(Mesh, int[], int[])}. */
  private final int[] local;

  private final Optional<Dipped> dip;
  private final List<Notice> notices = new ArrayList<>();

  private Masking(SurfaceMap map, MaskSettings settings) {
    this.map = map;
    this.settings = settings;
    this.local = new int[map.mesh().vertexCount()];
    this.ring = EdgeRings.of(map.mesh(), Topology.of(map.mesh())).toArray();
    this.dip = settings.dip().map(d -> Dipped.of(map, settings, d));
    if (dip.isPresent() && dip.get().leftMl() == 0) {
      notices.add(
          new Notice(
              SMALL_VESSEL,
              1,
              String.format(
                  Locale.ROOT,
                  "The vessel holds %.0f ml, and the piece alone takes up %.0f ml of it: take a"
                      + " larger one.",
                  settings.dip().get().vesselMl(),
                  dip.get().displacedMl())));
    }
  }

  /**
   * Plans the masks.
   *
   * @param map the piece with its treatments
   * @param settings the shop's tape and lacquer
   * @param progress told the share done; may cancel
   */
  public static MaskPlan plan(SurfaceMap map, MaskSettings settings, Progress progress) {
    Masking masking = new Masking(map, settings);
    List<MaskPlan.Mask> masks = masking.masks(progress);
    progress.at(1);
    return new MaskPlan(masks, masks.isEmpty() ? Optional.empty() : masking.dip, masking.notices);
  }

  private List<MaskPlan.Mask> masks(Progress progress) {
    BareRegions regions = BareRegions.of(map, ring);
    List<MaskPlan.Mask> masks = new ArrayList<>();
    int apart = 0;
    int hairlines = 0;
    int tapeOnly = 0;
    Sum apartMm2 = new Sum();
    for (int i = 0; i < regions.count(); i++) {
      Progress share =
          progress.between((double) i / regions.count(), (double) (i + 1) / regions.count());
      share.at(0);
      int[] faces = regions.faces(i);
      double areaMm2 = Sum.over(faces.length, k -> Faces.area(map.mesh(), faces[k]));
      List<MaskEdge> edges = edges(faces);
      double edgeMm = total(edges);
      if (edges.isEmpty()) {
        apart++;
        apartMm2.add(areaMm2);
      } else if (areaMm2 < HAIRLINE_MM * edgeMm) {
        hairlines++;
      } else {
        MaskPlan.Mask mask = mask(faces, edges, edgeMm, areaMm2, share);
        tapeOnly += mask.tapeMm2() >= areaMm2 * (1 - COVERED) ? 1 : 0;
        masks.add(mask);
      }
    }
    tell(apart, apartMm2.value(), hairlines, tapeOnly);
    double byHand = masks.stream().mapToDouble(m -> m.bends().byHandMm()).sum();
    if (byHand > 0) {
      notices.add(
          new Notice(
              BY_HAND,
              1,
              String.format(
                  Locale.ROOT,
                  "No tape of the list bends as tightly as %.0f mm of edge: brush lacquer up to the"
                      + " line there, or cut a template.",
                  byHand)));
    }
    return numbered(masks);
  }

  private void tell(int apart, double apartMm2, int hairlines, int tapeOnly) {
    if (apart > 0) {
      notices.add(
          new Notice(
              NOT_MASKED,
              apart,
              String.format(
                  Locale.ROOT,
                  "Bare regions that border on no plating get no mask: %d, %.4g mm² in all.",
                  apart,
                  apartMm2)));
    }
    if (hairlines > 0) {
      notices.add(
          new Notice(
              HAIRLINE,
              hairlines,
              "Bare regions narrower than 0.001 mm were left out of the masking: "
                  + hairlines
                  + "."));
    }
    if (tapeOnly > 0) {
      notices.add(
          new Notice(
              TAPE_ONLY,
              tapeOnly,
              "Bare regions nowhere wider than the tape are covered by it alone: "
                  + tapeOnly
                  + "."));
    }
  }

  /** Largest edge first, then in the order of the regions; numbered from 1. */
  private static List<MaskPlan.Mask> numbered(List<MaskPlan.Mask> masks) {
    masks.sort(Comparator.comparingDouble(MaskPlan.Mask::edgeMm).reversed());
    List<MaskPlan.Mask> numbered = new ArrayList<>();
    for (MaskPlan.Mask m : masks) {
      numbered.add(m.withId(numbered.size() + 1));
    }
    return numbered;
  }

  private MaskPlan.Mask mask(
      int[] faces, List<MaskEdge> edges, double edgeMm, double areaMm2, Progress progress) {
    double tape = settings.tapeWidthMm();
    double reach = Math.max(tape, settings.splashMm());
    SubMesh part = SubMesh.of(map.mesh(), faces, local);
    double[] levels = reach > tape ? new double[] {tape, reach} : new double[] {tape};
    int[] borders = borders(faces);
    double[] areas = SurfaceBands.areasWithin(part.mesh(), borders, levels, progress);
    double tapeMm2 = Math.min(areas[0], areaMm2);
    double lacquerMm2 =
        dip.isPresent()
            ? Dipped.aboveMm2(part.mesh(), borders, levels, dip.get(), settings, progress)
            : Math.max(0, Math.min(areas[areas.length - 1], areaMm2) - tapeMm2);
    List<MaskPlan.TapeStrip> strips = new ArrayList<>();
    double tightest = Double.POSITIVE_INFINITY;
    int corners = 0;
    double byHand = 0;
    for (int i = 0; i < edges.size(); i++) {
      Tape.Laid laid = Tape.along(edges.get(i), i, settings);
      strips.addAll(laid.strips());
      tightest = Math.min(tightest, laid.shape().tightestMm());
      corners += laid.shape().corners();
      byHand += laid.byHandMm();
    }
    MaskPlan.Bends bends =
        new MaskPlan.Bends(tightest, corners, Wraps.alongMm(part.mesh(), edges, tape), byHand);
    return new MaskPlan.Mask(
        0,
        edges,
        edgeMm,
        List.copyOf(strips),
        tapeMm2,
        lacquerMm2,
        Lacquer.volumeMl(lacquerMm2, settings),
        areaMm2,
        MaskLines.middle(edges),
        bends);
  }

  /** Half-edges of a region's own mesh that border on plating. */
  private int[] borders(int[] faces) {
    int[] borders = new int[3 * faces.length];
    int count = 0;
    for (int i = 0; i < borders.length; i++) {
      if (bordersOnPlating(3 * faces[i / 3] + i % 3)) {
        borders[count++] = i;
      }
    }
    return Arrays.copyOf(borders, count);
  }

  private boolean bordersOnPlating(int h) {
    for (int g = ring[h]; g != h; g = ring[g]) {
      if (map.treatment()[g / 3] == Treatment.PLATE.code()) {
        return true;
      }
    }
    return false;
  }

  /** Lines between a region and plating, longest first. */
  private List<MaskEdge> edges(int[] faces) {
    // A small mesh of the region and the plated faces beside it has the same border.
    int[] both = new int[faces.length];
    int count = 0;
    for (int f : faces) {
      both[count++] = f;
    }
    for (int f : faces) {
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        for (int g = ring[h]; g != h; g = ring[g]) {
          if (map.treatment()[g / 3] == Treatment.PLATE.code()) {
            if (count == both.length) {
              both = Arrays.copyOf(both, count + (count >> 1) + 8);
            }
            both[count++] = g / 3;
          }
        }
      }
    }
    if (count == faces.length) {
      return List.of();
    }
    int regionFaces = faces.length;
    int[] distinct = distinct(both, regionFaces, count);
    Mesh mesh = SubMesh.of(map.mesh(), distinct, local).mesh();
    List<BoundaryLines.Line> lines =
        BoundaryLines.between(
            mesh, Topology.of(mesh), f -> f < regionFaces, f -> f >= regionFaces, false);
    return MaskLines.of(mesh, lines, regionFaces);
  }

  /** The list with what comes after the first entries sorted and each once. */
  private static int[] distinct(int[] list, int first, int count) {
    Arrays.sort(list, first, count);
    int kept = first;
    for (int i = first; i < count; i++) {
      if (i == first || list[i] != list[i - 1]) {
        list[kept++] = list[i];
      }
    }
    return Arrays.copyOf(list, kept);
  }

  private static double total(List<MaskEdge> edges) {
    Sum sum = new Sum();
    for (MaskEdge edge : edges) {
      sum.add(edge.lengthMm());
    }
    return sum.value();
  }
}
