package org.seamwright.plating;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.seamwright.basis.Notice;

/** What a plater would be asked, or told, about the choices of a job. */
public final class PlatingNotices {
  /** Copper lies right under gold. */
  public static final String NO_BARRIER = "no-barrier";

  /** The supply cannot pass the charge in the time that the rate gives. */
  public static final String SLOW_SUPPLY = "slow-supply";

  /** The charge spends more solution than its metal would need. */
  public static final String SPENT_SOLUTION = "spent-solution";

  /** Another metal with the efficiency that a new job has for gold. */
  public static final String GOLD_EFFICIENCY = "gold-efficiency";

  /** A thickness that hand plating hardly ever lays. */
  public static final String UNUSUAL_THICKNESS = "unusual-thickness";

  /** ASTM B488's thickest class is 5.0 µm; ten times that is more likely a slip in the unit. */
  private static final double UNUSUAL_UM = 50;

  /** Beyond a quarter more, two ways of telling the time contradict each other. */
  private static final double CONTRADICTION = 1.25;

  private PlatingNotices() {}

  /**
   * Looks the choices over.
   *
   * @param settings what was chosen
   * @param plan what it comes to
   */
  public static List<Notice> of(PlatingSettings settings, PlatingPlan plan) {
    List<Notice> notices = new ArrayList<>();
    if (settings.deposit().isGold() && settings.recipe().lacksBarrier()) {
      notices.add(
          new Notice(
              NO_BARRIER,
              1,
              "The recipe lays gold right on copper, which wanders into gold and dulls it: is a"
                  + " barrier of nickel or palladium wanted? ASTM B488 asks for nickel on copper"
                  + " alloys (secondary copy)."));
    }
    if (!settings.deposit().isGold() && settings.efficiency() == PlatingDefaults.EFFICIENCY) {
      notices.add(
          new Notice(
              GOLD_EFFICIENCY,
              1,
              "The efficiency of "
                  + Figures.of(settings.efficiency())
                  + " is that of a gold solution: write that of the "
                  + settings.deposit().metal()
                  + " solution, or its charge is wrong."));
    }
    if (settings.thicknessUm() > UNUSUAL_UM) {
      notices.add(
          new Notice(
              UNUSUAL_THICKNESS,
              1,
              Figures.of(settings.thicknessUm())
                  + " µm is ten times the thickest class of gold in ASTM B488 and more: check the"
                  + " unit."));
    }
    double chargeAh = plan.totals().chargeAh();
    OptionalDouble byCurrent = settings.tool().seconds(chargeAh);
    double byRate = platingSeconds(settings, plan);
    if (byCurrent.isPresent() && byCurrent.getAsDouble() > CONTRADICTION * byRate) {
      notices.add(
          new Notice(
              SLOW_SUPPLY,
              1,
              "At "
                  + Figures.of(settings.tool().amperes().orElseThrow())
                  + " A (contact area times current density) the charge takes "
                  + Figures.of(byCurrent.getAsDouble() / 60)
                  + " min, at the plating rate "
                  + Figures.of(byRate / 60)
                  + " min: one of contact, amperesPerCm2, efficiency and secondsPerCm2PerUm is off."));
    }
    OptionalDouble spent = settings.tool().solutionMl(chargeAh);
    if (spent.isPresent() && spent.getAsDouble() > plan.totals().solutionMl()) {
      notices.add(
          new Notice(
              SPENT_SOLUTION,
              1,
              "By ampHoursPerLitre the charge spends "
                  + Figures.of(spent.getAsDouble())
                  + " ml of solution, more than the "
                  + Figures.of(plan.totals().solutionMl())
                  + " ml that hold the metal: have the larger amount ready."));
    }
    return notices;
  }

  /** Time under the tool for flash and build, handling left out. */
  private static double platingSeconds(PlatingSettings settings, PlatingPlan plan) {
    double laidG = plan.sections().stream().mapToDouble(s -> s.flashG() + s.buildG()).sum();
    double cm2Um = laidG / settings.deposit().densityGCm3() * 1e4;
    return cm2Um * settings.secondsPerCm2PerUm();
  }
}
