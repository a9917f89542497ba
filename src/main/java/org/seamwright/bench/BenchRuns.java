package org.seamwright.bench;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.seamwright.bench.BenchEvent.What;
import org.seamwright.bench.BenchState.Entry;
import org.seamwright.bench.BenchState.SectionState;
import org.seamwright.plating.Step;
import org.seamwright.shop.LaidDown;
import org.seamwright.shop.Run;
import org.seamwright.shop.ShopException;

/**
 * What a run at the bench comes to as entries of the shop book: one for each section that was
 * worked on, and one for the whole piece where it was weighed or measured as a whole.
 *
 * <p>Solution and charge told several times add up; of voltage, current and weights the last
 * counts. Solution that was not told is that of the dips, where the shop knows what one takes up.
 * Minutes are those of flash and build; there are none if the program was away in one of them.
 */
public final class BenchRuns {
  private static final double MS_PER_MINUTE = 60_000;

  private final BenchPlan plan;
  private final BenchState state;
  private final ZoneId zone;

  /**
   * The entries of a run.
   *
   * @param zone that of the dates
   */
  public BenchRuns(BenchPlan plan, BenchState state, ZoneId zone) {
    this.plan = plan;
    this.state = state;
    this.zone = zone;
  }

  /** Numbers of the sections with an entry, in order; 0 for the whole piece. */
  public List<Integer> sections() {
    List<Integer> all = new ArrayList<>();
    for (int id = 0; id <= plan.sections().size(); id++) {
      int section = id;
      boolean told = state.entries().stream().anyMatch(e -> e.section() == section);
      boolean worked =
          id > 0 && state.sections().get(id - 1).spentMs().stream().anyMatch(ms -> ms > 0);
      if (told || worked) {
        all.add(id);
      }
    }
    return all;
  }

  /** What is in the notes of every entry of this run and of no other. */
  public String mark() {
    return "bench run of " + Instant.ofEpochMilli(state.startedMs());
  }

  /** The entry of a section, or of the whole piece for 0. */
  public Run run(int section) {
    return new Run(
        0,
        plan.figures().piece().isBlank() ? "unnamed" : plan.figures().piece(),
        Integer.toString(section),
        plan.figures().deposit().id(),
        "",
        Instant.ofEpochMilli(state.startedMs()).atZone(zone).toLocalDate().toString(),
        solutionMl(section),
        plan.gPerL(),
        plan.usableShare(),
        minutes(section),
        sum(section, What.CHARGE_AH),
        last(section, What.BEFORE_G),
        last(section, What.AFTER_G),
        state.told(section, What.READING_UM).stream()
            .map(e -> BenchTexts.figure(e.value()))
            .collect(Collectors.joining(" ")),
        "",
        notes(section));
  }

  /** Solution used, ml; NaN if not known. Of the whole piece where none was told: all sections'. */
  public double solutionMl(int section) {
    double told = sum(section, What.SOLUTION_ML);
    if (Double.isNaN(told) && section == 0) {
      return overSections(this::solutionMl);
    }
    boolean byDips = Double.isNaN(told) && plan.dipMl().isPresent() && state.dips(section) > 0;
    return byDips ? state.dips(section) * plan.dipMl().getAsDouble() : told;
  }

  /** Minutes of flash and build; NaN if not known. */
  public double minutes(int section) {
    if (section == 0) {
      return overSections(this::minutes);
    }
    SectionState of = state.sections().get(section - 1);
    long ms = 0;
    for (int i = 0; i < plan.steps().size(); i++) {
      Step.Kind kind = plan.steps().get(i).kind();
      ms += kind == Step.Kind.FLASH || kind == Step.Kind.BUILD ? of.spentMs().get(i) : 0;
    }
    return of.gaps() || ms == 0 ? Double.NaN : ms / MS_PER_MINUTE;
  }

  /** Charge, A·h; NaN if not told. */
  public double chargeAh(int section) {
    double told = sum(section, What.CHARGE_AH);
    return Double.isNaN(told) && section == 0 ? overSections(this::chargeAh) : told;
  }

  /** A sum over sections that were worked on; NaN if one of them has none. */
  private double overSections(java.util.function.IntToDoubleFunction of) {
    List<Integer> worked = sections().stream().filter(id -> id > 0).toList();
    return worked.isEmpty()
        ? Double.NaN
        : worked.stream().mapToDouble(id -> of.applyAsDouble(id)).sum();
  }

  private double sum(int section, What what) {
    List<Entry> told = state.told(section, what);
    return told.isEmpty() ? Double.NaN : told.stream().mapToDouble(Entry::value).sum();
  }

  private double last(int section, What what) {
    List<Entry> told = state.told(section, what);
    return told.isEmpty() ? Double.NaN : told.get(told.size() - 1).value();
  }

  private String notes(int section) {
    List<String> notes = new ArrayList<>();
    if (section > 0) {
      SectionState of = state.sections().get(section - 1);
      notes.add(BenchTexts.status(of.status()));
      if (state.dips(section) > 0) {
        notes.add(state.dips(section) + " dips");
      }
      addLast(notes, section, What.VOLTS, "V");
      addLast(notes, section, What.AMPERES, "A");
      state.mishaps().stream()
          .filter(m -> m.section() == section)
          .forEach(m -> notes.add("dried out at " + plan.steps().get(m.step()).name()));
      if (of.gaps()) {
        notes.add("time not known: the program was away during flash or build");
      }
    }
    notes.add(mark());
    return String.join("; ", notes);
  }

  private void addLast(List<String> notes, int section, What what, String unit) {
    double value = last(section, what);
    if (!Double.isNaN(value)) {
      notes.add(BenchTexts.figure(value) + " " + unit);
    }
  }

  /**
   * Thickness reached in a section, or on the whole piece for 0, by every way that the figures
   * allow.
   *
   * @throws ShopException if figures contradict each other
   */
  public LaidDown laidDown(int section) throws ShopException {
    Run told = run(section);
    Run used =
        section > 0
            ? told
            : new Run(
                0,
                told.job(),
                told.section(),
                told.deposit(),
                "",
                told.date(),
                told.solutionMl(),
                told.gPerL(),
                told.usableShare(),
                told.minutes(),
                chargeAh(0),
                told.beforeG(),
                told.afterG(),
                told.readingsUm(),
                "",
                "");
    return LaidDown.of(
        plan.figures(),
        section,
        used,
        new LaidDown.Resolution(
            coarsest(section, What.BEFORE_G, What.AFTER_G),
            coarsest(section, What.SOLUTION_ML),
            coarsest(section, What.CHARGE_AH)));
  }

  /** The coarsest step in which figures were told; that of a sum of n grows with √n. */
  private double coarsest(int section, What... kinds) {
    List<What> wanted = List.of(kinds);
    List<Entry> told =
        state.entries().stream()
            .filter(e -> wanted.contains(e.what()) && (section == 0 || e.section() == section))
            .toList();
    double step = told.stream().mapToDouble(Entry::resolution).max().orElse(0);
    return wanted.get(0).addsUp() ? step * Math.sqrt(told.size()) : step;
  }
}
