package org.seamwright.section;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.IntPredicate;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.region.SurfaceCuts;

/**
 * Carries out edits of sections, one after the other: lines are cut through the triangles, faces
 * change sections. The working order stays as it was found but for what an edit says of it: a
 * merged section takes the earlier of the two places, a part split off comes right after the rest.
 *
 * <p>Cost: O(n) of simple passes per edit; ways and distances are looked for within the sections
 * that are edited. After a refusal the editor is of no more use; edit a copy.
 */
final class SectionEditor {
  /** A point farther off the surface than this share of the diagonal is not on this piece. */
  private static final double FAR = 0.05;

  private final SurfaceCuts cuts;

  /** Rounds of halving rings: a band falls open in one, a torus in two. */
  private static final int OPENINGS = 4;

  private final SectionSettings settings;
  private int[] label;
  private final List<Integer> order;
  private final List<String> names;

  private SectionEditor(
      SurfaceCuts cuts,
      SectionSettings settings,
      int[] label,
      List<Integer> order,
      List<String> names) {
    this.cuts = cuts;
    this.settings = settings;
    this.label = label;
    this.order = order;
    this.names = names;
  }

  /** Starts with sections as they were found. */
  static SectionEditor of(Layout found, SectionSettings settings) {
    List<Integer> order = new ArrayList<>();
    List<String> names = new ArrayList<>();
    for (int section : found.order()) {
      order.add(section);
      names.add("");
    }
    return new SectionEditor(
        SurfaceCuts.of(found.cut().cut().mesh()),
        settings,
        found.cut().label().clone(),
        order,
        names);
  }

  /** An independent copy. */
  SectionEditor copy() {
    return new SectionEditor(
        cuts.copy(), settings, label.clone(), new ArrayList<>(order), new ArrayList<>(names));
  }

  /** Makes what points are looked up with, so that the first edit need not wait for it. */
  void warm() {
    cuts.farOff(Vector3D.ZERO);
  }

  /** The surface as it is now. */
  SurfaceCuts cuts() {
    return cuts;
  }

  /** One entry per face: its section by a number that lasts as long as it does, or negative. */
  int[] label() {
    return label;
  }

  /** Sections, by those numbers, in working order. */
  List<Integer> order() {
    return order;
  }

  /** What a section is called; may be empty. */
  String name(int section) {
    return names.get(section);
  }

  /**
   * Carries out an edit.
   *
   * @param index its place in the list, from 0
   * @throws SectionException if it can't be carried out
   */
  void apply(int index, SectionEdit edit) throws SectionException {
    EditPlace place = new EditPlace(index, edit);
    if (edit instanceof SectionEdit.Merge merge) {
      merge(place, merge);
    } else if (edit instanceof SectionEdit.SplitAlong split) {
      splitAlong(place, split);
    } else if (edit instanceof SectionEdit.SplitEvenly split) {
      int section = sectionAt(place, "point", split.at());
      splitEvenly(section, split.count());
    } else if (edit instanceof SectionEdit.MoveSeam move) {
      moveSeam(place, move);
    } else if (edit instanceof SectionEdit.Pin pin) {
      pin(place, pin);
    } else if (edit instanceof SectionEdit.Rename rename) {
      names.set(sectionAt(place, "point", rename.at()), rename.name());
    } else if (edit instanceof SectionEdit.Renumber renumber) {
      renumber(place, renumber);
    }
  }

  private int faceAt(EditPlace place, String key, Vector3D point) throws SectionException {
    if (order.isEmpty()) {
      throw place.refuse(key, "there are no sections", "Delete the edit.");
    }
    double far = cuts.farOff(point);
    if (far > FAR * cuts.diagonalMm()) {
      throw place.refuse(
          key,
          String.format(
              Locale.ROOT,
              "no section can be found at (%.2f, %.2f, %.2f): that is %.1f mm off the surface",
              point.getX(),
              point.getY(),
              point.getZ(),
              far),
          "Name the section by a point on it, in mm; or delete the edit.");
    }
    int face = cuts.faceAt(point).orElseThrow();
    return label[face] >= 0 ? face : nearestPlated(point);
  }

  private int nearestPlated(Vector3D point) {
    Mesh mesh = cuts.toMesh();
    double least = Double.POSITIVE_INFINITY;
    int nearest = -1;
    for (int f = 0; f < label.length; f++) {
      if (label[f] >= 0) {
        double far = Faces.squaredDistance(mesh, f, point.getX(), point.getY(), point.getZ());
        if (far < least) {
          least = far;
          nearest = f;
        }
      }
    }
    return nearest;
  }

  /** The section that a point names. */
  private int sectionAt(EditPlace place, String key, Vector3D point) throws SectionException {
    return label[faceAt(place, key, point)];
  }

  private int number(int section) {
    return order.indexOf(section) + 1;
  }

  private void renumber(EditPlace place, SectionEdit.Renumber edit) throws SectionException {
    Integer section = sectionAt(place, "point", edit.at());
    if (edit.number() > order.size()) {
      throw place.refuse(
          "number",
          "there are only " + order.size() + " sections",
          "Give a number from 1 to " + order.size() + ".");
    }
    order.remove(section);
    order.add(edit.number() - 1, section);
  }

  private void merge(EditPlace place, SectionEdit.Merge edit) throws SectionException {
    int[] both = two(place, "points", edit.a(), edit.b());
    boolean aFirst = number(both[0]) < number(both[1]);
    int kept = aFirst ? both[0] : both[1];
    int gone = aFirst ? both[1] : both[0];
    for (int f = 0; f < label.length; f++) {
      label[f] = label[f] == gone ? kept : label[f];
    }
    order.remove((Integer) gone);
    if (names.get(kept).isEmpty()) {
      names.set(kept, names.get(gone));
    }
  }

  /** Two sections that meet. */
  private int[] two(EditPlace place, String key, Vector3D a, Vector3D b) throws SectionException {
    int first = sectionAt(place, key + "[0]", a);
    int second = sectionAt(place, key + "[1]", b);
    if (first == second) {
      throw place.refuse(
          key,
          "both points lie in section " + number(first),
          "Give one point in each of two sections.");
    }
    for (int h = 0; h < 3 * label.length; h++) {
      if (label[h / 3] == first) {
        for (int g = cuts.ring(h); g != h; g = cuts.ring(g)) {
          if (label[g / 3] == second) {
            return new int[] {first, second};
          }
        }
      }
    }
    throw place.refuse(
        key,
        "sections " + number(first) + " and " + number(second) + " do not meet",
        "Give points in two sections with a seam between them.");
  }

  /** Lays a line and leads its ends, where they lie inside a section, to its edge. */
  private void lay(EditPlace place, List<Vector3D> path, boolean ahead, IntPredicate sections)
      throws SectionException {
    cuts.clearLines();
    SurfaceCuts.Laid laid = cuts.lay(path, f -> label[f] >= 0);
    label = cuts.carried(label);
    if (laid.broken() > 0) {
      throw place.refuse(
          "path",
          "no plated surface leads along the line from one of its points to the next",
          "Give points of the line on the same plated part.");
    }
    int last = path.size() - 1;
    for (int end : new int[] {0, last}) {
      Vector3D from = path.get(end == 0 ? 1 : last - 1);
      Vector3D direction = path.get(end).subtract(from);
      LineEnd lineEnd = new LineEnd(cuts, label, laid.vertices()[end]);
      int section = lineEnd.sectionRound();
      if (section >= 0 && sections.test(section)) {
        List<Vector3D> on = lineEnd.toEdge(direction, ahead);
        if (!on.isEmpty()) {
          cuts.lay(on, f -> label[f] == section);
          label = cuts.carried(label);
        }
      }
    }
  }

  private int newSection(int after) {
    int section = names.size();
    names.add("");
    order.add(order.indexOf(after) + 1, section);
    return section;
  }

  private void splitAlong(EditPlace place, SectionEdit.SplitAlong edit) throws SectionException {
    int section = sectionAt(place, "point", edit.at());
    lay(place, edit.path(), true, s -> s == section);
    LinedPieces pieces = new LinedPieces(cuts, label, s -> s == section);
    cuts.clearLines();
    if (!pieces.parts(section)) {
      throw notParted(place, section);
    }
    int[] into = new int[pieces.count()];
    int keeps = pieces.of(faceAt(place, "point", edit.at()));
    int before = section;
    for (int i = 0; i < into.length; i++) {
      into[i] = i == keeps ? section : newSection(before);
      before = i == keeps ? before : into[i];
    }
    take(pieces, into);
  }

  private SectionException notParted(EditPlace place, int section) {
    return place.refuse(
        "path",
        "the line does not part section " + number(section),
        "Draw it over the section from one of its edges to another.");
  }

  private void take(LinedPieces pieces, int[] into) {
    for (int f = 0; f < label.length; f++) {
      int piece = pieces.of(f);
      label[f] = piece >= 0 ? into[piece] : label[f];
    }
  }

  private void moveSeam(EditPlace place, SectionEdit.MoveSeam edit) throws SectionException {
    int[] both = two(place, "between", edit.a(), edit.b());
    IntPredicate either = s -> s == both[0] || s == both[1];
    lay(place, edit.path(), false, either);
    LinedPieces pieces = new LinedPieces(cuts, label, either);
    cuts.clearLines();
    if (pieces.isTwisted() || (!pieces.parts(both[0]) && !pieces.parts(both[1]))) {
      throw place.refuse(
          "path",
          "the line parts neither section " + number(both[0]) + " nor " + number(both[1]),
          "Draw where the seam is to run, from edge to edge of the two sections or from one place"
              + " of the old seam to another.");
    }
    int[] anchor = {
      pieces.of(faceAt(place, "between[0]", edit.a())),
      pieces.of(faceAt(place, "between[1]", edit.b()))
    };
    int[] keptSide = keptSides(pieces, anchor);
    int[] into = new int[pieces.count()];
    for (int i = 0; i < into.length; i++) {
      boolean stays = pieces.side(i) == keptSide[pieces.group(i)];
      int own = pieces.section(i);
      into[i] = stays ? own : own == both[0] ? both[1] : both[0];
    }
    take(pieces, into);
    for (int i = 0; i < 2; i++) {
      requireOnePiece(place, both[i]);
    }
  }

  /** By group: the side that keeps its section. It has the anchor, or else most of the area. */
  private static int[] keptSides(LinedPieces pieces, int[] anchor) {
    double[] balance = new double[pieces.count()];
    for (int i = 0; i < pieces.count(); i++) {
      balance[pieces.group(i)] += (pieces.side(i) == 0 ? 1 : -1) * pieces.areaMm2(i);
    }
    int[] kept = new int[pieces.count()];
    Arrays.setAll(kept, g -> balance[g] >= 0 ? 0 : 1);
    for (int piece : anchor) {
      kept[pieces.group(piece)] = pieces.side(piece);
    }
    return kept;
  }

  private void requireOnePiece(EditPlace place, int section) throws SectionException {
    int pieces = new LinedPieces(cuts, label, s -> s == section).count();
    if (pieces != 1) {
      throw place.refuse(
          "path",
          pieces == 0
              ? "the line leaves nothing of one of the two sections"
              : "the line leaves one of the two sections in " + pieces + " pieces",
          "Draw it so that each section stays in one piece; both points of \"between\" lie in what"
              + " stays with their sections.");
    }
  }

  private void pin(EditPlace place, SectionEdit.Pin edit) throws SectionException {
    lay(place, edit.path(), true, s -> true);
    LinedPieces pieces = new LinedPieces(cuts, label, s -> true);
    double[] areaMm2 = new double[names.size()];
    for (int i = 0; i < pieces.count(); i++) {
      areaMm2[pieces.section(i)] += pieces.areaMm2(i);
    }
    int[] keptSide = keptSides(pieces, new int[0]);
    int[] into = new int[pieces.count()];
    boolean parts = false;
    for (int i = 0; i < into.length; i++) {
      int own = pieces.section(i);
      into[i] = own;
      if (pieces.side(i) != keptSide[pieces.group(i)]) {
        parts = true;
        int neighbour = LinedPieces.longest(pieces.borders(i, false, true));
        boolean joins =
            neighbour >= 0 && areaMm2[neighbour] + pieces.areaMm2(i) <= settings.limitMm2();
        into[i] = joins ? neighbour : newSection(own);
        if (joins) {
          areaMm2[neighbour] += pieces.areaMm2(i);
        }
      }
    }
    cuts.clearLines();
    if (pieces.isTwisted() || (pieces.hasLooseEnd() && !parts)) {
      throw place.refuse(
          "path",
          "the line has the same section on both its sides, whatever is done",
          "Draw it on, from edge to edge of a section.");
    }
    take(pieces, into);
  }

  private void splitEvenly(int section, int count) {
    if (count < 2) {
      return;
    }
    int lower = count / 2;
    int upper = halve(section, EvenSplit.of(cuts.toMesh(), label, section, (double) lower / count));
    splitEvenly(section, lower);
    splitEvenly(upper, count - lower);
  }

  /**
   * Halves sections that are rings ({@link RingShapes}), and halves that still are.
   *
   * @return how many stay rings
   */
  int openRings() {
    for (int round = 0; round < OPENINGS; round++) {
      int[] rings = rings();
      if (rings.length == 0) {
        return 0;
      }
      for (int section : rings) {
        halve(section, EvenSplit.opening(cuts.toMesh(), label, section));
      }
      Mesh mesh = cuts.toMesh();
      Islands.merge(mesh, EdgeRings.of(mesh, Topology.of(mesh)), label, names.size());
    }
    return rings().length;
  }

  private int[] rings() {
    Mesh mesh = cuts.toMesh();
    boolean[] ring =
        RingShapes.of(mesh, EdgeRings.of(mesh, Topology.of(mesh)), label, names.size());
    return order.stream().mapToInt(s -> s).filter(s -> ring[s]).sorted().toArray();
  }

  /** Cuts a section in two; gives the number of the upper part. */
  private int halve(int section, EvenSplit split) {
    double[] value = new double[cuts.vertexCount()];
    Arrays.fill(value, 1);
    split.writeTo(value);
    double[] field = cuts.alongZero(value, f -> label[f] == section);
    label = cuts.carried(label);
    int upper = newSection(section);
    for (int f = 0; f < label.length; f++) {
      if (label[f] == section) {
        double sum = 0;
        for (int h = 3 * f; h < 3 * f + 3; h++) {
          sum += field[cuts.from(h)];
        }
        label[f] = sum > 0 ? upper : section;
      }
    }
    return upper;
  }

  /** The sections as they are now, lapped. */
  SectionPlan plan(CutMesh before, Progress progress) {
    Mesh mesh = cuts.toMesh();
    EdgeRings rings = EdgeRings.of(mesh, Topology.of(mesh));
    // A split along a field may leave crumbs apart; they go with what they lie in.
    Islands.merge(mesh, rings, label, names.size());
    int[] live = order.stream().mapToInt(s -> s).sorted().toArray();
    int[] own = new int[label.length];
    for (int f = 0; f < own.length; f++) {
      own[f] = label[f] < 0 ? label[f] : Arrays.binarySearch(live, label[f]);
    }
    int[] positions = order.stream().mapToInt(s -> Arrays.binarySearch(live, s)).toArray();
    SeamCut cut = new SeamCut(CutMesh.none(mesh), rings, own, live);
    double lapMm = Math.max(settings.activationLapMm(), settings.flashLapMm());
    Layout layout = Layout.of(cut, positions, lapMm, progress.between(0, 0.5));
    int[] parent = cuts.parents();
    for (int f = 0; f < parent.length; f++) {
      parent[f] = before.parentFace()[parent[f]];
    }
    SectionPlan plan =
        Sectioning.plan(
            ChosenSections.ofFaces(mesh, parent), layout, settings, progress.between(0.5, 1));
    List<Section> named = new ArrayList<>();
    for (Section section : plan.sections()) {
      named.add(section.named(names.get(order.get(section.id() - 1))));
    }
    return plan.with(named, plan.notices());
  }
}
