package org.seamwright.section;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.LabelCut;
import org.seamwright.geodesic.Refinement;
import org.seamwright.measure.Revolution;
import org.seamwright.measure.TurnSymmetry;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Sections that repeat round an axis. The piece is cut in as many sectors as it repeats, where that
 * makes the shortest cuts; the first is divided by the automatic way, and its seams are turned into
 * every sector, the first included, so that all are drawn alike.
 *
 * <p>On a mesh that repeats itself the areas of copies are equal to rounding; on one that has the
 * shape but other triangles, to what the triangles are off. Where laps on neighbouring sectors take
 * a section over the limit, the first sector is divided anew with a lower one, at most {@value
 * #TRIES} times. Cost: O(n) per sector besides the dividing.
 */
final class Repeats {
  private static final int TRIES = 5;

  /** Angles looked at for the shortest cut, per repeat. */
  private static final int ANGLES = 90;

  private static final double EDGES_PER_SIDE = 10;

  /** A limit lowered in proportion leaves this much room for seams that move. */
  private static final double ROOM = 0.99;

  private final SectionSettings settings;
  private final int count;
  private final Axis axis;

  /** The piece cut in sectors and refined. */
  private final Mesh mesh;

  private final int[] parent;

  /** One entry per face: its sector, -1 where nothing is plated. */
  private final int[] sector;

  /** One entry per face. */
  private final boolean[] show;

  private Repeats(
      SectionSettings settings,
      int count,
      Axis axis,
      Mesh mesh,
      int[] parent,
      int[] sector,
      boolean[] show) {
    this.settings = settings;
    this.count = count;
    this.axis = axis;
    this.mesh = mesh;
    this.parent = parent;
    this.sector = sector;
    this.show = show;
  }

  /**
   * Divides.
   *
   * @param whole the piece
   * @param plated one entry per face: 0 where plated, -1 elsewhere
   * @param show one entry per face: whether seams are better kept away from it
   * @param notices receives what was found
   * @return the sections, and the piece cut for them
   */
  static Sectioning.Divided divide(
      Mesh whole,
      int[] plated,
      boolean[] show,
      SectionSymmetry symmetry,
      SectionSettings settings,
      List<Notice> notices,
      Progress progress)
      throws SectionException {
    Axis axis = Axis.of(symmetry.axis(), whole, "sections.symmetry", notices);
    int count = symmetry.count() > 0 ? symmetry.count() : found(whole, axis, notices);
    if (symmetry.axis().zero().isEmpty()) {
      axis = axis.turned(shortest(whole, plated, axis, count));
    }
    WayCut sectors = WayCut.sectors(whole, plated, axis, count);
    double platedMm2 = 0;
    for (int f = 0; f < plated.length; f++) {
      platedMm2 += plated[f] >= 0 ? Faces.area(whole, f) : 0;
    }
    double side = Math.sqrt(Math.min(settings.limitMm2(), platedMm2 / count));
    CutMesh fine =
        Refinement.edges(sectors.mesh(), side / EDGES_PER_SIDE, f -> sectors.label()[f] >= 0);
    int[] parent = IntStream.of(fine.parentFace()).map(f -> sectors.parentFace()[f]).toArray();
    boolean[] shown = new boolean[parent.length];
    for (int f = 0; f < shown.length; f++) {
      shown[f] = show[parent[f]];
    }
    int[] sector = fine.carryFaces(sectors.label());
    return new Repeats(settings, count, axis, fine.mesh(), parent, sector, shown).run(progress);
  }

  private static int found(Mesh mesh, Axis axis, List<Notice> notices) throws SectionException {
    Revolution about = new Revolution(Revolution.Kind.AXIS, axis.point(), axis.direction(), 1);
    Optional<TurnSymmetry> found = TurnSymmetry.about(about, mesh);
    if (found.isEmpty()) {
      throw new SectionException(
          "sections.symmetry",
          "sections.symmetry.count",
          "the piece shows no count by which it repeats round the axis",
          "Give a count.");
    }
    notices.add(
        new Notice(
            SectionPlan.REPEATS,
            found.get().count(),
            String.format(
                Locale.ROOT,
                "Sections repeat %d times round the axis, as the piece does; %.0f%% of what is not"
                    + " plain turned fits.",
                found.get().count(),
                100 * found.get().confidence())));
    return found.get().count();
  }

  /** Where in a repeat, in turns, half planes cut the least length of plated surface. */
  private static double shortest(Mesh mesh, int[] plated, Axis axis, int count) {
    double[] length = new double[ANGLES];
    double[] at = new double[3];
    double[] normal = new double[3];
    for (int f = 0; f < plated.length; f++) {
      if (plated[f] < 0) {
        continue;
      }
      Faces.centroid(mesh, f, at);
      Faces.normal(mesh, f, normal);
      double radius = axis.radius(at[0], at[1], at[2]);
      if (radius > 0) {
        double turns = axis.turns(at[0], at[1], at[2]);
        Vector3D round = axis.at(turns + 0.25);
        double across = round.dot(Vector3D.of(normal));
        // Area times how fast the angle changes over it: length times angle (the coarea formula).
        double slope = Math.sqrt(Math.max(0, 1 - across * across)) / radius;
        int bin = (int) (turns * count * ANGLES) % ANGLES;
        length[bin] += Faces.area(mesh, f) * slope;
      }
    }
    int best = 0;
    for (int i = 1; i < ANGLES; i++) {
      best = smoothed(length, i) < smoothed(length, best) ? i : best;
    }
    return (best + 0.5) / ANGLES / count;
  }

  /** Faces lie in the bin of their centroid: neighbours are looked at together. */
  private static double smoothed(double[] length, int i) {
    double sum = 0;
    for (int j = -2; j <= 2; j++) {
      sum += length[(i + j + ANGLES) % ANGLES];
    }
    return sum;
  }

  private Sectioning.Divided run(Progress progress) {
    double limitMm2 = settings.limitMm2();
    Sectioning.Divided best = null;
    double least = Double.POSITIVE_INFINITY;
    int[] first = IntStream.of(sector).map(s -> s == 0 ? 0 : -1).toArray();
    for (int i = 0; i < TRIES; i++) {
      Progress part = progress.between((double) i / TRIES, (i + 1.0) / TRIES);
      SectionSettings inner =
          new SectionSettings(
              limitMm2,
              settings.activationLapMm(),
              settings.flashLapMm(),
              OrderPins.NONE,
              settings.seams());
      Sectioning.Divided one =
          Sectioning.divide(mesh, first, f -> false, show, inner, part.between(0, 0.5));
      Sectioning.Divided all = repeated(one, part.between(0.5, 1));
      double most = Arrays.stream(all.layout().workedMm2()).max().orElse(0);
      if (most < least) {
        least = most;
        best = all;
      }
      if (most <= settings.limitMm2()) {
        break;
      }
      limitMm2 *= ROOM * settings.limitMm2() / most;
    }
    return best;
  }

  /** Turns the seams of the first sector into all of them. */
  private Sectioning.Divided repeated(Sectioning.Divided one, Progress progress) {
    TurnedLabels turned = TurnedLabels.of(one.layout().cut(), mesh, sector);
    CutMesh cut = CutMesh.none(mesh);
    int[] label = new int[sector.length];
    Arrays.fill(label, -1);
    for (int k = 0; k < count; k++) {
      turned.enter(axis, (double) k / count, k, cut);
      int own = k;
      int[] parentFace = cut.parentFace();
      LabelCut.Result next =
          LabelCut.cut(
              cut.mesh(), turned.vertexLabel(), turned::score, f -> sector[parentFace[f]] == own);
      label = next.cut().carryFaces(label);
      for (int f = 0; f < label.length; f++) {
        if (sector[parentFace[next.cut().parentFace()[f]]] == k) {
          label[f] = k * turned.labels() + next.faceLabel()[f];
        }
      }
      cut = cut.then(next.cut());
    }
    Mesh finer = cut.mesh();
    EdgeRings rings = EdgeRings.of(finer, Topology.of(finer));
    Islands.merge(finer, rings, label, count * turned.labels());
    // What is left is sections as they are.
    SectionSettings whole =
        new SectionSettings(
            Double.MAX_VALUE,
            settings.activationLapMm(),
            settings.flashLapMm(),
            settings.pins(),
            settings.seams());
    Sectioning.Divided all = Sectioning.divide(finer, label, f -> false, whole, progress);
    int[] before = cut.parentFace();
    int[] parents = IntStream.of(all.fine().parentFace()).map(f -> parent[before[f]]).toArray();
    return new Sectioning.Divided(ChosenSections.ofFaces(all.fine().mesh(), parents), all.layout());
  }
}
