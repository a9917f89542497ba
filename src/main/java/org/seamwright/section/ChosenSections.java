package org.seamwright.section;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.SurfaceMap;

/**
 * Sections the way the user asks for: the plated faces are first cut as the way says, then the
 * pieces over the limit are divided as {@link Sectioning} does without a way, then edits are
 * carried out in order.
 *
 * <p>A piece whose laps on its neighbours take it over the limit is divided in another round; there
 * are at most {@value #ROUNDS}.
 */
final class ChosenSections {
  private static final int ROUNDS = 4;

  private final SurfaceMap map;
  private final boolean[] show;
  private final SectionSettings settings;
  private final SectionChoices choices;
  private final List<Notice> notices = new ArrayList<>();

  /**
   * Prepares.
   *
   * @param show one entry per face of the map: whether seams are better kept away from it
   */
  ChosenSections(SurfaceMap map, boolean[] show, SectionSettings settings, SectionChoices choices) {
    this.map = map;
    this.show = show;
    this.settings = settings;
    this.choices = choices;
  }

  /** The sections with all edits, lapped. */
  SectionPlan plan(Progress progress) throws SectionException {
    Sectioning.Divided divided = divided(progress.between(0, 0.8));
    Progress lapping = progress.between(0.8, 1);
    if (choices.edits().isEmpty() && settings.rings()) {
      return withNotices(Sectioning.plan(divided.fine(), divided.layout(), settings, lapping));
    }
    SectionEditor editor = editor(divided);
    for (int i = 0; i < choices.edits().size(); i++) {
      editor.apply(i, choices.edits().get(i));
    }
    return withNotices(editor.plan(divided.fine().then(divided.layout().cut().cut()), lapping));
  }

  /** An editor of the sections as they are before any edit. */
  SectionEditor editor(Sectioning.Divided divided) {
    SectionEditor editor = SectionEditor.of(divided.layout(), settings);
    int left = settings.rings() ? 0 : editor.openRings();
    if (left > 0) {
      notices.add(
          new Notice(
              SectionPlan.RING,
              left,
              "Sections that close on themselves though none should: halving did not open them"));
    }
    return editor;
  }

  /** What was found on the way. */
  List<Notice> notices() {
    return List.copyOf(notices);
  }

  /** What was found on the way, before what the plan itself tells. */
  SectionPlan withNotices(SectionPlan plan) {
    List<Notice> all = new ArrayList<>(notices);
    all.addAll(plan.notices());
    return plan.with(plan.sections(), all);
  }

  /** The sections before any edit. */
  Sectioning.Divided divided(Progress progress) throws SectionException {
    int[] plated = Sectioning.plated(map);
    if (choices.symmetry().isPresent()) {
      return Repeats.divide(
          map.mesh(), plated, show, choices.symmetry().get(), settings, notices, progress);
    }
    if (choices.way().isEmpty()) {
      return Sectioning.divide(map.mesh(), plated, f -> false, show, settings, progress);
    }
    WayCut cut = WayCut.of(map.mesh(), plated, choices.way().get(), settings, notices);
    return byWay(cut, progress);
  }

  private Sectioning.Divided byWay(WayCut cut, Progress progress) {
    double[] areaMm2 =
        Layout.areas(cut.mesh(), cut.label(), IntStream.of(cut.label()).max().orElse(-1) + 1);
    boolean[] divide = new boolean[cut.mesh().faceCount()];
    for (int f = 0; f < divide.length; f++) {
      divide[f] = cut.label()[f] >= 0 && areaMm2[cut.label()[f]] > settings.limitMm2();
    }
    boolean[] shown = new boolean[divide.length];
    for (int f = 0; f < shown.length; f++) {
      shown[f] = show[cut.parentFace()[f]];
    }
    Sectioning.Divided divided = null;
    for (int round = 0; round < ROUNDS; round++) {
      divided =
          Sectioning.divide(
              cut.mesh(),
              cut.label(),
              f -> divide[f],
              shown,
              settings,
              progress.between((double) round / ROUNDS, (round + 1.0) / ROUNDS));
      if (!addOver(divided, divide)) {
        break;
      }
    }
    CutMesh fine = divided.fine();
    int[] parent = IntStream.of(fine.parentFace()).map(f -> cut.parentFace()[f]).toArray();
    return new Sectioning.Divided(ofFaces(fine.mesh(), parent), divided.layout());
  }

  /** Marks the faces of sections over the limit; says whether any was not marked before. */
  private boolean addOver(Sectioning.Divided divided, boolean[] divide) {
    Layout layout = divided.layout();
    boolean any = false;
    int[] label = layout.cut().label();
    for (int f = 0; f < label.length; f++) {
      if (label[f] >= 0 && layout.workedMm2()[label[f]] > settings.limitMm2()) {
        int before = divided.fine().parentFace()[layout.cut().cut().parentFace()[f]];
        any |= !divide[before];
        divide[before] = true;
      }
    }
    return any;
  }

  /** A cut of which only the faces are known. */
  static CutMesh ofFaces(Mesh mesh, int[] parentFace) {
    return new CutMesh(mesh, parentFace, mesh.vertexCount(), new int[0], new int[0], new double[0]);
  }
}
