package org.seamwright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seamwright.basis.InputException;
import org.seamwright.bench.BenchEvent.What;
import org.seamwright.bench.BenchState.Entry;
import org.seamwright.desk.Messages;
import org.seamwright.plating.Cautions;
import org.seamwright.plating.Step;
import org.seamwright.shop.LaidDown;
import org.seamwright.units.UnitFormat;

/** What the bench says of a run, in words. */
public final class BenchWords {
  private static final long MS_PER_SECOND = 1000;

  private final BenchPlan plan;
  private final BenchState state;
  private final UnitFormat in;

  /** Words for a run as it stands. */
  public BenchWords(BenchPlan plan, BenchState state) {
    this.plan = plan;
    this.state = state;
    this.in = new UnitFormat(plan.display(), Locale.ENGLISH);
  }

  /**
   * A page of the cautions.
   *
   * @param title a few words
   * @param text what to do
   * @param limits public limits and where they were read; may be empty
   * @param number "Caution 2 of 9"
   */
  public record Caution(String title, String text, String limits, String number) {}

  /** The caution to read now, if one is left. */
  public Optional<Caution> caution() {
    if (BenchState.unticked(state.cautions()).isEmpty()) {
      return Optional.empty();
    }
    int index = BenchState.unticked(state.cautions()).getAsInt();
    String number =
        Messages.text("bench.caution.number", number(index + 1), number(state.cautions().size()));
    if (index == Cautions.all().size()) {
      return Optional.of(
          new Caution(Messages.text("bench.caution.rule"), Cautions.rule(), "", number));
    }
    Cautions.Caution c = Cautions.all().get(index);
    String limits = c.limits().isEmpty() ? c.source() : c.limits() + " (" + c.source() + ")";
    return Optional.of(new Caution(c.title(), c.text(), limits, number));
  }

  /**
   * The step that is being done, or is next where a section has not begun.
   *
   * @param number "Step 3 of 11"
   * @param name its name
   * @param purpose why it is done
   * @param supply voltage and polarity; empty where there is no current
   * @param done how to see that it is done
   * @param wrong what goes wrong; may be empty
   * @param caution what can hurt or spoil; may be empty
   */
  public record StepWords(
      String number,
      String name,
      String purpose,
      List<String> supply,
      String done,
      String wrong,
      String caution) {}

  /** The step to show; empty before the first section and after the last. */
  public Optional<StepWords> step() {
    if (state.phase() != BenchState.Phase.WORK || isThrough()) {
      return Optional.empty();
    }
    int index = stepIndex();
    Step step = plan.steps().get(index);
    List<String> supply = new ArrayList<>();
    for (String text : List.of(step.volts(), step.polarity())) {
      if (!text.isEmpty()) {
        supply.add(text);
      }
    }
    return Optional.of(
        new StepWords(
            Messages.text("bench.step.number", number(index + 1), number(plan.steps().size())),
            step.name(),
            step.purpose(),
            supply,
            step.done(),
            step.wrong(),
            step.caution()));
  }

  /** Whether the section in hand is through all steps, though others are not. */
  private boolean isThrough() {
    return state.at().section() >= 0
        && state.sections().get(state.at().section()).status() == BenchState.Status.DONE
        && !state.at().isWorking();
  }

  private int stepIndex() {
    return state.at().isWorking()
        ? state.at().step()
        : state.sections().get(state.at().section()).resume();
  }

  /** "Section 3 of 12"; empty before the first. */
  public String section() {
    return state.at().section() < 0
        ? ""
        : Messages.text("section.title", number(state.sectionId()), number(plan.sections().size()));
  }

  /** How a section stands, by its number. */
  public String status(int section) {
    boolean here = state.sectionId() == section;
    return here && state.at().isWorking()
        ? Messages.text("bench.status.working")
        : BenchTexts.status(state.sections().get(section - 1).status());
  }

  /** What the one key does now. */
  public String key() {
    return switch (state.phase()) {
      case CAUTIONS -> Messages.text("bench.key.caution");
      case MASKS -> Messages.text("bench.key.mask");
      case THROUGH -> Messages.text("bench.key.through");
      case ENDED -> Messages.text("bench.key.ended");
      case WORK -> workKey();
    };
  }

  private String workKey() {
    if (state.wet().asked()) {
      return Messages.text("bench.key.asked");
    }
    if (isThrough()) {
      return Messages.text("bench.key.following");
    }
    int step = stepIndex();
    if (!state.at().isWorking()) {
      return Messages.text("bench.key.begin", plan.steps().get(step).name());
    }
    if (step == plan.flash()) {
      return Messages.text("bench.key.flashed");
    }
    return step == plan.steps().size() - 1
        ? Messages.text("bench.key.done")
        : Messages.text("bench.key.next", plan.steps().get(step + 1).name());
  }

  /** Time in the step: "0:23"; dashes where none is being done. */
  public String inStep(long nowMs) {
    return state.at().isWorking() ? BenchTexts.clock(nowMs - state.at().sinceMs()) : "–";
  }

  /** The plan's time for the step that is shown. */
  public String planned() {
    return step().isEmpty() ? "" : BenchTexts.clock(Math.round(plannedSeconds() * MS_PER_SECOND));
  }

  /** Whether the step takes longer than planned. */
  public boolean isLate(long nowMs) {
    return state.at().isWorking()
        && nowMs - state.at().sinceMs() > plannedSeconds() * MS_PER_SECOND;
  }

  private double plannedSeconds() {
    return plan.sections().get(state.at().section()).seconds().get(stepIndex());
  }

  /** What must be said of times at which the program was away; may be empty. */
  public String away() {
    return state.at().isWorking() && state.at().awayMs() > 0
        ? Messages.text("bench.away", BenchTexts.clock(state.at().awayMs()))
        : "";
  }

  /** The question whether the section has dried, where it must be answered first. */
  public Optional<String> question(long nowMs) {
    if (!state.wet().asked()) {
      return Optional.empty();
    }
    return Optional.of(
        Messages.text(
            "bench.question",
            number(state.sectionId()),
            BenchTexts.clock(nowMs - state.wet().sinceMs()),
            BenchTexts.clock(Math.round(plan.windowSeconds() * MS_PER_SECOND))));
  }

  /** The countdown in words: what must be done while it runs. */
  public String wet(Countdown countdown) {
    return switch (countdown.level()) {
      case OVER -> Messages.text("bench.wet.over", BenchTexts.clock(-countdown.leftMs()));
      case PASSES ->
          Messages.text(
              "bench.wet.passes",
              BenchTexts.clock(countdown.windowMs()),
              BenchTexts.clock(countdown.passMs()));
      case CALM, SOON ->
          countdown.isTooLarge()
              ? Messages.text(
                  "bench.wet.large",
                  BenchTexts.clock(countdown.leftMs() - countdown.beginMs()),
                  BenchTexts.clock(countdown.windowMs()))
              : countdown.beginMs() > 0
                  ? Messages.text("bench.wet.begin", BenchTexts.left(countdown.beginMs()))
                  : Messages.text("bench.wet.under");
    };
  }

  /** The time left: "0:31". */
  public static String left(Countdown countdown) {
    return BenchTexts.left(countdown.leftMs());
  }

  /** What undo takes back; empty if nothing. */
  public String undo() {
    if (state.entries().isEmpty()) {
      return "";
    }
    return entry(state.entries().get(state.entries().size() - 1));
  }

  private String entry(Entry e) {
    String where =
        e.section() == 0
            ? Messages.text("bench.whole")
            : Messages.text("bench.of", number(e.section()));
    return e.what() == What.DIP
        ? Messages.text("bench.quantity.dip") + where
        : amount(e.what(), e.value()) + where;
  }

  /** A figure with its unit. */
  static String amount(What what, double value) {
    return BenchTexts.figure(value) + "\u00a0" + unit(what);
  }

  /** Name of what can be typed. */
  public static String quantity(What what) {
    return Messages.text(
        "bench.quantity." + what.name().toLowerCase(Locale.ROOT).replaceAll("_.*", ""));
  }

  /** Its unit. */
  public static String unit(What what) {
    return switch (what) {
      case SOLUTION_ML -> "ml";
      case VOLTS -> "V";
      case AMPERES -> "A";
      case CHARGE_AH -> "A·h";
      case BEFORE_G, AFTER_G -> "g";
      case READING_UM -> "µm";
      default -> "";
    };
  }

  /** What was told so far of a quantity, for the number pad. */
  public String soFar(int section, What what) {
    List<Entry> told = state.told(section, what);
    if (told.isEmpty()) {
      return Messages.text("bench.pad.none");
    }
    double sum = told.stream().mapToDouble(Entry::value).sum();
    if (what.addsUp()) {
      return Messages.text("bench.pad.sum", amount(what, sum));
    }
    double last = told.get(told.size() - 1).value();
    return Messages.text(
        what == What.READING_UM ? "bench.pad.more" : "bench.pad.last", amount(what, last));
  }

  /** One line on dips and figures of the section in hand. */
  public String figures() {
    if (state.at().section() < 0) {
      return "";
    }
    int id = state.sectionId();
    List<String> parts = new ArrayList<>();
    for (What what : List.of(What.SOLUTION_ML, What.VOLTS, What.AMPERES, What.CHARGE_AH)) {
      List<Entry> told = state.told(id, what);
      if (!told.isEmpty()) {
        double value =
            what.addsUp()
                ? told.stream().mapToDouble(Entry::value).sum()
                : told.get(told.size() - 1).value();
        parts.add(amount(what, value));
      }
    }
    return String.join(" · ", parts);
  }

  /**
   * A line of the summary.
   *
   * @param name section or whole piece
   * @param status how far it is
   * @param used dips, solution, charge, time
   * @param thickness estimates with their uncertainty, one a line; or why there is none
   */
  public record Summary(String name, String status, String used, String thickness) {}

  /** What the run came to, section by section. */
  public List<Summary> summary(BenchRuns runs) {
    List<Summary> lines = new ArrayList<>();
    for (int id : runs.sections()) {
      lines.add(
          new Summary(
              id == 0 ? Messages.text("bench.piece") : Messages.text("bench.row", number(id)),
              id == 0 ? "" : status(id),
              used(runs, id),
              thickness(runs, id)));
    }
    return lines;
  }

  private String used(BenchRuns runs, int id) {
    List<String> parts = new ArrayList<>();
    if (state.dips(id) > 0) {
      parts.add(Messages.text("bench.sum.dips", Long.toString(state.dips(id))));
    }
    if (!Double.isNaN(runs.solutionMl(id))) {
      parts.add(in.volume(runs.solutionMl(id)));
    }
    if (!Double.isNaN(runs.chargeAh(id))) {
      parts.add(in.charge(runs.chargeAh(id)));
    }
    if (!Double.isNaN(runs.minutes(id))) {
      parts.add(Messages.text("bench.sum.time", in.time(60 * runs.minutes(id))));
    }
    long dried = state.mishaps().stream().filter(m -> id == 0 || m.section() == id).count();
    if (dried > 0) {
      parts.add(Messages.text("bench.sum.dried", Long.toString(dried)));
    }
    return String.join(" · ", parts);
  }

  private String thickness(BenchRuns runs, int id) {
    LaidDown laid;
    try {
      laid = runs.laidDown(id);
    } catch (InputException e) {
      return e.problem() + ". " + e.remedy();
    }
    List<String> parts = new ArrayList<>();
    for (LaidDown.Way way : laid.ways()) {
      parts.add(
          Messages.text(
              "bench.sum.way",
              in.thickness(way.thickness().um()),
              in.thickness(way.thickness().standardUm()),
              Messages.text("bench.by." + way.by())));
    }
    laid.spots()
        .ifPresent(
            s ->
                parts.add(
                    Messages.text(
                        "bench.sum.spots",
                        in.thickness(s.meanUm()),
                        in.thickness(s.leastUm()),
                        Integer.toString(s.count()))));
    return parts.isEmpty()
        ? Messages.text("bench.sum.unmeasured", in.thickness(laid.targetUm()))
        : String.join("\n", parts)
            + "\n"
            + Messages.text("bench.sum.target", in.thickness(laid.targetUm()));
  }

  private static String number(int n) {
    return Integer.toString(n);
  }
}
