package org.seamwright.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;

/** The marks of a job as JSON, for scripts: as in the job file, with what each of them does. */
public final class MarksJson {
  private MarksJson() {}

  /**
   * The marks as JSON text.
   *
   * @param job the job
   * @param done its marks carried out; without it no areas are told
   * @param written whether the job's file was changed
   */
  public static String text(Job job, Optional<MarkedJob> done, boolean written) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("piece", job.piece());
    tree.put("written", written);
    tree.put("ground", JobKeys.word(JobKeys.TREATMENTS, job.ground()));
    List<Map<String, Object>> marks = new ArrayList<>();
    for (int i = 0; i < job.marks().size(); i++) {
      Map<String, Object> entry = new LinkedHashMap<>();
      entry.put("number", i + 1);
      if (done.isPresent()) {
        SurfaceMap.Effect effect = done.get().map().effects().get(i);
        entry.put("coveredMm2", effect.coveredMm2());
        entry.put("changedMm2", effect.changedMm2());
      }
      entry.put("mark", MarkKinds.write(job.marks().get(i), job.display()));
      marks.add(entry);
    }
    tree.put("marks", marks);
    if (done.isPresent()) {
      Map<String, Object> areas = new LinkedHashMap<>();
      JobKeys.TREATMENTS.forEach(
          (word, treatment) -> areas.put(word, area(done.get().map(), treatment)));
      tree.put("areasMm2", areas);
      tree.put("notices", MeasureJson.notices(done.get().notices()));
    }
    return JsonText.of(tree);
  }

  private static double area(SurfaceMap map, Treatment treatment) {
    return map.areaMm2(treatment);
  }
}
