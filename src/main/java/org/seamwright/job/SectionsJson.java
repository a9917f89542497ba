package org.seamwright.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seamwright.section.Section;
import org.seamwright.section.SectionChoices;
import org.seamwright.section.SectionPoints;

/** The sections of a job as JSON, for scripts: what is asked of them and what came of it. */
public final class SectionsJson {
  private SectionsJson() {}

  /**
   * The sections as JSON text.
   *
   * @param job the job
   * @param planned its plan; without it only what is asked is told
   * @param written whether the job's file was changed
   */
  public static String text(Job job, Optional<PlannedJob> planned, boolean written) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("piece", job.piece());
    tree.put("written", written);
    SectionChoices choices = job.sections().choices();
    SectionChoiceWriter.write(choices, job.display(), tree);
    planned.ifPresent(
        done -> {
          List<Map<String, Object>> sections = new ArrayList<>();
          for (Section section : done.sections().sections()) {
            Map<String, Object> entry = new LinkedHashMap<>();
            entry.put("number", section.id());
            entry.put("name", section.name());
            entry.put(
                "point", RepairWriter.vector(SectionPoints.inside(done.sections(), section.id())));
            entry.put("netMm2", section.netMm2());
            entry.put("workedMm2", section.workedMm2());
            entry.put("limitMm2", done.limitMm2());
            sections.add(entry);
          }
          tree.put("sections", sections);
          tree.put("notices", MeasureJson.notices(done.notices()));
        });
    return JsonText.of(tree);
  }
}
