package org.seamwright.section;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.IntPredicate;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.Refinement;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;

/**
 * Splits the plated surface into sections, each one piece whose net area and wider lap keep within
 * a limit, chooses the order to work them in and lays the laps.
 *
 * <p>Components that keep the limit are sections as they are. The others are divided into weighted
 * geodesic Voronoi cells of equal worked area ({@link Division}, {@link Fitting}), cut along smooth
 * lines ({@link SeamCut}), ordered ({@link WorkingOrder}) and lapped ({@link Laps}). Faces with
 * long edges are refined first, so that seams can run where they should.
 *
 * <p>Where the limit can't be kept the plan still comes, with a notice for each section over it.
 * The same input gives the same plan. Cost: a few seconds for 200,000 faces and 40 sections.
 */
public final class Sectioning {
  /** Shortest side of a cell in edges: enough for a border to bend. */
  private static final double LEAST_EDGES_PER_SIDE = 12;

  /** The same for few cells: enough to go through lettering without steps. */
  private static final double MOST_EDGES_PER_SIDE = 40;

  /** Edges of all cells' sides, squared: what refining a piece of large faces may come to. */
  private static final double EDGES_SQUARED = 16_000;

  /** Shortest line of edges that seams keep to, in sides of a section. */
  static final double LEAST_LINE = 0.3;

  private Sectioning() {}

  /**
   * Splits the plated faces of a piece.
   *
   * @param map the piece with its treatments
   * @param settings limit and lap widths
   * @param progress told how far it is; may cancel
   * @return sections in working order; none if nothing is plated
   */
  public static SectionPlan split(SurfaceMap map, SectionSettings settings, Progress progress) {
    return split(map, new boolean[map.mesh().faceCount()], settings, progress);
  }

  /**
   * Splits the plated faces of a piece some of which are show faces.
   *
   * @param map the piece with its treatments
   * @param show one entry per face: whether seams are better kept away from it
   * @param settings limit, lap widths, and what seams cost
   * @param progress told how far it is; may cancel
   * @return sections in working order; none if nothing is plated
   */
  public static SectionPlan split(
      SurfaceMap map, boolean[] show, SectionSettings settings, Progress progress) {
    try {
      return split(map, show, settings, SectionChoices.NONE, progress);
    } catch (SectionException e) {
      throw new IllegalStateException("Refused without a choice", e);
    }
  }

  /**
   * Splits the plated faces of a piece the way the user asks for.
   *
   * @param map the piece with its treatments
   * @param settings limit and lap widths
   * @param choices way, symmetry and edits
   * @param progress told how far it is; may cancel
   * @return sections in working order; none if nothing is plated
   * @throws SectionException if a way or an edit can't be carried out on this piece
   */
  public static SectionPlan split(
      SurfaceMap map, SectionSettings settings, SectionChoices choices, Progress progress)
      throws SectionException {
    return split(map, new boolean[map.mesh().faceCount()], settings, choices, progress);
  }

  /**
   * Splits the plated faces of a piece some of which are show faces the way the user asks for.
   *
   * @param map the piece with its treatments
   * @param show one entry per face: whether seams are better kept away from it
   * @param settings limit, lap widths, and what seams cost
   * @param choices way, symmetry and edits
   * @param progress told how far it is; may cancel
   * @return sections in working order; none if nothing is plated
   * @throws SectionException if a way or an edit can't be carried out on this piece
   */
  public static SectionPlan split(
      SurfaceMap map,
      boolean[] show,
      SectionSettings settings,
      SectionChoices choices,
      Progress progress)
      throws SectionException {
    return new ChosenSections(map, show, settings, choices).plan(progress);
  }

  /** One entry per face: 0 where it is plated, -1 elsewhere. */
  static int[] plated(SurfaceMap map) {
    int[] plated = new int[map.mesh().faceCount()];
    for (int f = 0; f < plated.length; f++) {
      plated[f] = map.treatment()[f] == Treatment.PLATE.code() ? 0 : -1;
    }
    return plated;
  }

  /**
   * A piece divided.
   *
   * @param fine the piece with long edges halved
   * @param layout its sections
   */
  record Divided(CutMesh fine, Layout layout) {}

  /**
   * Divides labelled faces; no section has faces of two labels.
   *
   * @param label one entry per face: 0 or more where plated, -1 elsewhere
   * @param mustDivide faces of pieces to divide though their area is within the limit
   */
  static Divided divide(
      Mesh mesh,
      int[] label,
      IntPredicate mustDivide,
      SectionSettings settings,
      Progress progress) {
    return divide(mesh, label, mustDivide, new boolean[mesh.faceCount()], settings, progress);
  }

  /**
   * Divides labelled faces some of which are show faces.
   *
   * @param show one entry per face
   */
  static Divided divide(
      Mesh mesh,
      int[] label,
      IntPredicate mustDivide,
      boolean[] show,
      SectionSettings settings,
      Progress progress) {
    Pieces pieces = Pieces.of(mesh, EdgeRings.of(mesh, Topology.of(mesh)), label);
    Components components = Components.of(pieces, settings.limitMm2(), mustDivide);
    CutMesh fine = refine(mesh, components, settings.limitMm2());
    progress.at(0.05);
    Ground ground =
        Ground.of(
            fine.mesh(),
            fine.carryFaces(components.divided()),
            components.dividedCount(),
            settings.seams(),
            f -> show[fine.parentFace()[f]] ? settings.seams().show() : 1,
            LEAST_LINE * Math.sqrt(settings.limitMm2()));
    double lapMm = Math.max(settings.activationLapMm(), settings.flashLapMm());
    Division.Start start =
        Division.coarse(ground.domain(), settings.limitMm2(), lapMm, progress.between(0.05, 0.35));
    if (settings.seams().hidden() < 1) {
      ground.hide(mesh, start, settings.seams().hidden());
    }
    Layout layout =
        new Fitting(
                fine.mesh(),
                fine.carryFaces(components.whole()),
                components.wholeCount(),
                ground,
                start,
                settings)
            .run(progress.between(0.35, 1));
    return new Divided(fine, layout);
  }

  /** The piece with its large faces refined, as it is before seams are cut. */
  static CutMesh refined(SurfaceMap map, double limitMm2) {
    Mesh mesh = map.mesh();
    Pieces pieces = Pieces.of(mesh, EdgeRings.of(mesh, Topology.of(mesh)), plated(map));
    return refine(mesh, Components.of(pieces, limitMm2, f -> false), limitMm2);
  }

  /**
   * Which components are divided and which are sections as they are, numbered apart.
   *
   * @param divided one entry per face: number among the divided, or -1
   * @param whole one entry per face: number among the others, or -1
   * @param dividedMm2 area to divide
   */
  private record Components(
      int[] divided, int dividedCount, int[] whole, int wholeCount, double dividedMm2) {
    static Components of(Pieces pieces, double limitMm2, IntPredicate mustDivide) {
      boolean[] over = new boolean[pieces.count()];
      for (int i = 0; i < over.length; i++) {
        over[i] = pieces.areaMm2()[i] > limitMm2;
      }
      int[] divided = new int[pieces.of().length];
      for (int f = 0; f < divided.length; f++) {
        if (pieces.of()[f] >= 0 && mustDivide.test(f)) {
          over[pieces.of()[f]] = true;
        }
      }
      int[] whole = new int[divided.length];
      Arrays.fill(divided, -1);
      Arrays.fill(whole, -1);
      int[] number = new int[pieces.count()];
      int dividedCount = 0;
      int wholeCount = 0;
      double dividedMm2 = 0;
      for (int i = 0; i < number.length; i++) {
        if (over[i]) {
          number[i] = dividedCount++;
          dividedMm2 += pieces.areaMm2()[i];
        } else {
          number[i] = wholeCount++;
        }
      }
      for (int f = 0; f < divided.length; f++) {
        int piece = pieces.of()[f];
        if (piece >= 0) {
          (over[piece] ? divided : whole)[f] = number[piece];
        }
      }
      return new Components(divided, dividedCount, whole, wholeCount, dividedMm2);
    }
  }

  private static CutMesh refine(Mesh mesh, Components components, double limitMm2) {
    if (components.dividedCount() == 0) {
      return CutMesh.none(mesh);
    }
    double cell = Math.max(limitMm2, components.dividedMm2() / Division.MOST_CELLS);
    double edges = Math.sqrt(EDGES_SQUARED * cell / components.dividedMm2());
    edges = Math.max(LEAST_EDGES_PER_SIDE, Math.min(MOST_EDGES_PER_SIDE, edges));
    return Refinement.edges(mesh, Math.sqrt(cell) / edges, f -> components.divided()[f] >= 0);
  }

  /** Lays the laps of sections that are found. */
  static SectionPlan plan(
      CutMesh fine, Layout layout, SectionSettings settings, Progress progress) {
    Laps laps =
        Laps.of(
            layout.cut().cut().mesh(),
            layout.section(),
            layout.order().length,
            layout.seams(),
            layout.bands(),
            settings.activationLapMm(),
            settings.flashLapMm(),
            progress);
    CutMesh whole = fine.then(layout.cut().cut()).then(laps.cut());
    List<Notice> notices = overLimit(laps.sections(), settings.limitMm2());
    notices.addAll(Needles.told(laps.sections(), laps.seams()));
    notices.addAll(
        SectionOrder.broken(whole.mesh(), laps.section(), laps.sections().size(), settings.pins()));
    Sum[] times = {new Sum(), new Sum(), new Sum(), new Sum()};
    for (int f = 0; f < laps.section().length; f++) {
      times[Math.min(3, laps.activations()[f])].add(Faces.area(whole.mesh(), f));
    }
    return new SectionPlan(
        whole.mesh(),
        whole.parentFace(),
        laps.section(),
        laps.activations(),
        laps.flashes(),
        laps.sections(),
        laps.seams(),
        times[1].value(),
        times[2].value(),
        times[3].value(),
        Junctions.of(layout.from(), Math.max(settings.activationLapMm(), settings.flashLapMm())),
        RingClosings.of(layout.cut().cut().mesh(), layout.seams(), netById(laps.sections())),
        notices);
  }

  private static double[] netById(List<Section> sections) {
    double[] net = new double[sections.size() + 1];
    sections.forEach(s -> net[s.id()] = s.netMm2());
    return net;
  }

  static List<Notice> overLimit(List<Section> sections, double limitMm2) {
    List<Notice> notices = new ArrayList<>();
    for (Section section : sections) {
      if (section.workedMm2() > limitMm2) {
        notices.add(
            new Notice(
                SectionPlan.OVER_LIMIT,
                1,
                String.format(
                    Locale.ROOT,
                    "Section %d: worked area %.1f mm² is over the limit of %.1f mm²",
                    section.id(),
                    section.workedMm2(),
                    limitMm2)));
      }
    }
    return notices;
  }
}
