package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.PlannedJob;
import org.seamwright.job.Planner;
import org.seamwright.mesh.Mesh;
import org.seamwright.plating.PlatingArithmetic;
import org.seamwright.plating.SectionArea;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;
import org.seamwright.section.SectionEdit;
import org.seamwright.section.SectionException;
import org.seamwright.section.SectionFigures;
import org.seamwright.section.SectionSession;

/**
 * Tries edits of sections out: sections are found once, then each edit costs what it touches.
 * Belongs to one thread.
 */
final class SectionBench {
  private Optional<Key> key = Optional.empty();
  private SectionSession session;
  private SurfaceMap map;

  /** What sections are found from, their edits apart. */
  private record Key(
      Mesh mesh,
      Treatment ground,
      List<org.seamwright.region.Mark> marks,
      Job.SectionRules rules,
      double limitMm2) {
    static Key of(PlannedJob plan) {
      Job job = plan.job();
      Job.SectionRules rules = job.sections();
      return new Key(
          plan.mesh(),
          job.ground(),
          job.marks(),
          rules.withChoices(rules.choices().withEdits(List.of())),
          plan.limitMm2());
    }

    boolean isSame(Key other) {
      return mesh == other.mesh
          && ground == other.ground
          && marks.equals(other.marks)
          && rules.equals(other.rules)
          && limitMm2 == other.limitMm2;
    }
  }

  /** Has the sections of a plan ready. */
  void ready(PlannedJob plan, Progress progress) throws SectionException {
    Key now = Key.of(plan);
    List<SectionEdit> edits = plan.job().sections().choices().edits();
    if (key.isEmpty() || !key.get().isSame(now)) {
      key = Optional.empty();
      map = plan.map();
      session =
          SectionSession.of(
              map,
              Planner.sectionSettings(plan.job(), plan.limitMm2()),
              plan.job().sections().choices(),
              progress);
      key = Optional.of(now);
      return;
    }
    int same = 0;
    List<SectionEdit> made = session.edits();
    while (same < Math.min(made.size(), edits.size()) && made.get(same).equals(edits.get(same))) {
      same++;
    }
    for (int i = made.size(); i > same; i--) {
      session.undo();
    }
    for (SectionEdit edit : edits.subList(same, edits.size())) {
      session.edit(edit);
    }
  }

  /**
   * What an edit would do to the sections of a plan.
   *
   * @param section the section that is split, or the later of two that are merged
   */
  SectionDraft tried(PlannedJob plan, SectionEdit edit, int section, Progress progress) {
    try {
      ready(plan, progress);
      SectionFigures figures = session.edit(edit);
      try {
        return new SectionDraft(edit, Optional.of(shown(plan, section, figures)), "");
      } finally {
        session.undo();
      }
    } catch (SectionException e) {
      return SectionDraft.refused(edit, Trouble.sentence(e.problem()) + " " + e.remedy());
    }
  }

  private SectionDraft.Shown shown(PlannedJob plan, int section, SectionFigures figures) {
    int[] parent = session.parentFace();
    int[] after = session.sectionOf();
    int before = plan.sections().sections().size();
    int[] number = numbersBefore(section, before, figures.sections().size());
    int[] origin = new int[parent.length];
    int[] sectionOf = new int[parent.length];
    for (int f = 0; f < parent.length; f++) {
      origin[f] = map.parentFace()[parent[f]];
      sectionOf[f] =
          after[f] > 0 ? number[after[f]] : map.of(parent[f]) == Treatment.OUT_OF_SCOPE ? -1 : 0;
    }
    List<SectionArea> areas = new ArrayList<>();
    figures
        .sections()
        .forEach(
            s ->
                areas.add(
                    new SectionArea(s.id(), s.netMm2(), s.activationLapMm2(), s.flashLapMm2())));
    return new SectionDraft.Shown(
        session.mesh(),
        origin,
        sectionOf,
        figures.sections(),
        PlatingArithmetic.plan(areas, plan.settings()),
        figures.twiceMm2(),
        figures.moreMm2());
  }

  /**
   * For each number after an edit the number before it: parts split off come right after the rest
   * and take numbers beyond those there were; of two that are merged the earlier number stays.
   */
  private static int[] numbersBefore(int section, int before, int after) {
    int[] number = new int[after + 1];
    int more = after - before;
    for (int id = 1; id <= after; id++) {
      if (more > 0) {
        number[id] = id <= section ? id : id <= section + more ? before + id - section : id - more;
      } else {
        number[id] = id < section ? id : id - more;
      }
    }
    return number;
  }
}
