package org.seamwright.plating;

import java.util.ArrayList;
import java.util.List;
import org.seamwright.basis.Sum;

/**
 * Gold, solution, charge and time for a list of sections.
 *
 * <p>The flash is laid over net area and flash lap, the build over net area only, since once all is
 * flashed there are no seams left. A share is added to both for loss. Formulas, inputs and sources
 * stand in the plan's trace. Cost is linear in sections × steps; the digits depend only on the
 * input.
 */
public final class PlatingArithmetic {
  private static final double MM2_PER_CM2 = 100;
  private static final double ML_PER_L = 1000;

  private PlatingArithmetic() {}

  /**
   * Amounts without the account of how they came about.
   *
   * @param settings what they were computed with
   * @param sections by section, in the order given
   * @param totals the sums
   * @param laidG metal laid down, loss not counted, g
   * @param cm2Um area times thickness of flash and build, cm²·µm: times the rate, the time that
   *     depends on the rate
   */
  record Amounts(
      PlatingSettings settings,
      List<PlatingPlan.SectionAmounts> sections,
      PlatingPlan.Totals totals,
      double laidG,
      double cm2Um) {
    /** Time that does not depend on the rate, s. */
    double fixedSeconds() {
      return totals.seconds() - settings.pace().likely() * cm2Um;
    }
  }

  /**
   * Plans the amounts.
   *
   * @param sections areas by section; may be empty
   * @param settings recipe, metal, thicknesses and rates
   * @return amounts by section, in the order given, with totals, bands and trace
   * @throws IllegalArgumentException if an area is negative or not finite, or if there is a build
   *     and the recipe has no step for it
   */
  public static PlatingPlan plan(List<SectionArea> sections, PlatingSettings settings) {
    Amounts amounts = amounts(sections, settings);
    return new PlatingPlan(
        amounts.sections(),
        amounts.totals(),
        bands(amounts),
        PlatingTrace.of(sections, settings, amounts.totals()));
  }

  /** The amounts alone. */
  static Amounts amounts(List<SectionArea> sections, PlatingSettings settings) {
    checkBuildStep(settings);
    List<PlatingPlan.SectionAmounts> amounts = new ArrayList<>(sections.size());
    Sum cm2Um = new Sum();
    for (SectionArea section : sections) {
      check(section);
      amounts.add(amounts(section, settings));
      cm2Um.add(cm2Um(section, settings));
    }
    return new Amounts(
        settings,
        List.copyOf(amounts),
        totals(sections, amounts),
        Sum.over(amounts.size(), i -> amounts.get(i).flashG() + amounts.get(i).buildG()),
        cm2Um.value());
  }

  private static double cm2Um(SectionArea section, PlatingSettings settings) {
    return (areaMm2(Step.Kind.FLASH, section) * settings.flashUm()
            + areaMm2(Step.Kind.BUILD, section) * settings.buildUm())
        / MM2_PER_CM2;
  }

  /** One figure depends on one spread, in proportion: its quantiles are those of the spread. */
  private static PlatingPlan.Bands bands(Amounts amounts) {
    PlatingSettings settings = amounts.settings();
    double mlPerG = ML_PER_L / (settings.solutionGPerL() * settings.usableShare());
    double laidG = amounts.laidG();
    return new PlatingPlan.Bands(
        Band.of(laidG, laidG, settings.loss()),
        Band.of(laidG * mlPerG, laidG * mlPerG, settings.loss()),
        Band.of(amounts.fixedSeconds(), amounts.cm2Um(), settings.pace()));
  }

  private static PlatingPlan.SectionAmounts amounts(SectionArea section, PlatingSettings settings) {
    Deposit deposit = settings.deposit();
    double flashG =
        Faraday.layerG(deposit, section.netMm2() + section.flashLapMm2(), settings.flashUm());
    double buildG = Faraday.layerG(deposit, section.netMm2(), settings.buildUm());
    double lossG = settings.lossShare() * (flashG + buildG);
    double goldG = flashG + buildG + lossG;
    List<Double> steps = new ArrayList<>(settings.recipe().steps().size());
    Sum seconds = new Sum();
    for (Step step : settings.recipe().steps()) {
      double taken = seconds(step, section, settings);
      steps.add(taken);
      seconds.add(taken);
    }
    return new PlatingPlan.SectionAmounts(
        section.id(),
        flashG,
        buildG,
        lossG,
        goldG,
        goldG / (settings.solutionGPerL() * settings.usableShare()) * ML_PER_L,
        Faraday.chargeAh(deposit, flashG + buildG, settings.efficiency()),
        seconds.value(),
        List.copyOf(steps));
  }

  /** Time of one step in one section, handling included; a build of no thickness is left out. */
  private static double seconds(Step step, SectionArea section, PlatingSettings settings) {
    double areaCm2 = areaMm2(step.kind(), section) / MM2_PER_CM2;
    double perCm2 =
        switch (step.kind()) {
          case FLASH -> settings.secondsPerCm2PerUm() * settings.flashUm();
          case BUILD -> settings.secondsPerCm2PerUm() * settings.buildUm();
          case DRY_PREPARATION, WET, FINISH -> step.passes() * step.secondsPerCm2();
        };
    boolean leftOut = step.kind() == Step.Kind.BUILD && settings.buildUm() == 0;
    return leftOut ? 0 : areaCm2 * perCm2 + step.handlingSeconds();
  }

  /** The area that a step covers, mm². */
  static double areaMm2(Step.Kind kind, SectionArea section) {
    return switch (kind) {
      case DRY_PREPARATION -> section.workedMm2();
      case WET -> section.netMm2() + section.activationLapMm2();
      case FLASH -> section.netMm2() + section.flashLapMm2();
      case BUILD, FINISH -> section.netMm2();
    };
  }

  private static PlatingPlan.Totals totals(
      List<SectionArea> sections, List<PlatingPlan.SectionAmounts> amounts) {
    int n = sections.size();
    return new PlatingPlan.Totals(
        Sum.over(n, i -> sections.get(i).netMm2()),
        Sum.over(n, i -> sections.get(i).workedMm2()),
        Sum.over(n, i -> amounts.get(i).goldG()),
        Sum.over(n, i -> amounts.get(i).solutionMl()),
        Sum.over(n, i -> amounts.get(i).chargeAh()),
        Sum.over(n, i -> amounts.get(i).seconds()));
  }

  private static void checkBuildStep(PlatingSettings settings) {
    long builds =
        settings.recipe().steps().stream().filter(s -> s.kind() == Step.Kind.BUILD).count();
    if (settings.buildUm() > 0 && builds != 1) {
      throw new IllegalArgumentException(
          "A build layer needs exactly one build step: " + settings.recipe().id());
    }
  }

  private static void check(SectionArea section) {
    for (double area :
        new double[] {section.netMm2(), section.activationLapMm2(), section.flashLapMm2()}) {
      if (!(area >= 0) || Double.isInfinite(area)) {
        throw new IllegalArgumentException("Area of section out of range: " + section);
      }
    }
  }
}
