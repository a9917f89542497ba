package org.seamwright.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.job.Planner;
import org.seamwright.plating.PlatingArithmetic;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.plating.SectionArea;
import org.seamwright.units.UnitFormat;

/**
 * The figures that stay in sight: plated area, gold, time, sections. They follow the marks at once,
 * without laps and marked as such ("about"), and become those of the plan when it is there.
 */
public final class RunningFigures {
  /** How far a figure can be trusted. */
  public enum Standing {
    /** Nothing is known yet. */
    NONE,
    /** Of an earlier version of the job; a new figure is being worked out. */
    EARLIER,
    /** Without laps, which the sections will tell. */
    ABOUT,
    /** Of the plan. */
    PLANNED
  }

  /**
   * One figure.
   *
   * @param key which: area, gold, time or sections
   * @param name for people
   * @param value with its unit; a dash where nothing is known
   * @param standing how far it can be trusted
   */
  public record Figure(String key, String name, String value, Standing standing) {}

  private RunningFigures() {}

  /** The figures of what the desk holds. */
  public static List<Figure> of(DeskState state) {
    if (state.job().isEmpty()) {
      return List.of();
    }
    Job job = state.job().get();
    UnitFormat in = new UnitFormat(job.display(), Locale.ENGLISH);
    if (state.isPlanned()) {
      return planned(state, in, Standing.PLANNED);
    }
    if (state.isMarked()) {
      return about(state, job, in);
    }
    if (state.plan().isPresent()) {
      return planned(state, in, Standing.EARLIER);
    }
    return List.of(none("area"), none("gold"), none("time"), none("sections"));
  }

  private static List<Figure> planned(DeskState state, UnitFormat in, Standing standing) {
    PlatingPlan.Totals totals = state.plan().orElseThrow().plating().totals();
    int sections = state.plan().get().sections().sections().size();
    return List.of(
        figure("area", in.area(totals.netMm2()), standing),
        figure("gold", in.mass(totals.goldG()), standing),
        figure("time", in.time(totals.seconds()), standing),
        figure("sections", Integer.toString(sections), standing));
  }

  private static List<Figure> about(DeskState state, Job job, UnitFormat in) {
    double net = state.marked().orElseThrow().plateMm2();
    Figure area = figure("area", in.area(net), Standing.PLANNED);
    Optional<PlatingPlan.Totals> totals = withoutLaps(job, net);
    if (totals.isEmpty()) {
      return List.of(area, none("gold"), none("time"), none("sections"));
    }
    return List.of(
        area,
        figure("gold", in.mass(totals.get().goldG()), Standing.ABOUT),
        figure("time", in.time(totals.get().seconds()), Standing.ABOUT),
        none("sections"));
  }

  private static Optional<PlatingPlan.Totals> withoutLaps(Job job, double netMm2) {
    if (!(netMm2 > 0)) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          PlatingArithmetic.plan(
                  List.of(new SectionArea(1, netMm2, 0, 0)), Planner.settings(job, Path.of("")))
              .totals());
    } catch (InputException e) {
      // The plan tells what is wrong with the settings.
      return Optional.empty();
    }
  }

  private static Figure none(String key) {
    return figure(key, "–", Standing.NONE);
  }

  private static Figure figure(String key, String value, Standing standing) {
    String shown = standing == Standing.ABOUT ? Messages.text("figures.about", value) : value;
    return new Figure(key, Messages.text("figures." + key), shown, standing);
  }
}
