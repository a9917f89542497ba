package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seamwright.job.Job;
import org.seamwright.job.MarkWords;
import org.seamwright.region.Mark;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;
import org.seamwright.units.UnitFormat;

/** The marks of a job as a list to read. */
public final class MarkRows {
  private MarkRows() {}

  /**
   * A mark.
   *
   * @param index its place in the list, from 0
   * @param title its name, or what kind it is if it has none
   * @param name its name; may be empty
   * @param kind its kind, for people
   * @param treatment what becomes of the place, if it says that
   * @param changes area whose treatment it changes; empty while that is not known
   * @param isOn whether it is switched on
   */
  public record Row(
      int index,
      String title,
      String name,
      String kind,
      Optional<Treatment> treatment,
      String changes,
      boolean isOn) {}

  /** The rows of what the desk holds. */
  public static List<Row> of(DeskState state) {
    List<Row> rows = new ArrayList<>();
    if (state.job().isEmpty()) {
      return rows;
    }
    Job job = state.job().get();
    UnitFormat in = new UnitFormat(job.display(), Locale.ENGLISH);
    List<SurfaceMap.Effect> effects =
        state.isMarked() ? state.marked().orElseThrow().map().effects() : List.of();
    for (int i = 0; i < job.marks().size(); i++) {
      Mark mark = job.marks().get(i);
      Mark on = mark instanceof Mark.Off off ? off.mark() : mark;
      String kind = Messages.text("kind." + MarkWords.kindOf(on).toLowerCase(Locale.ROOT));
      String changes =
          mark instanceof Mark.Off
              ? Messages.text("marks.off")
              : i < effects.size() ? in.area(effects.get(i).changedMm2()) : "";
      rows.add(
          new Row(
              i,
              mark.name().isBlank() ? kind : mark.name(),
              mark.name(),
              kind,
              on instanceof Mark.Place place ? Optional.of(place.treatment()) : Optional.empty(),
              changes,
              !(mark instanceof Mark.Off)));
    }
    return rows;
  }
}
