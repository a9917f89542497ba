package org.seamwright.shop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.seamwright.job.PlanFile;
import org.seamwright.plating.MeasuredThickness;
import org.seamwright.plating.MeasuredThickness.Figure;

/**
 * How thick a section is by what a run noted, one way after another, against what was planned.
 *
 * <p>The share of metal that is on the piece is 1 / (1 + loss), with the spread of the plan's loss
 * as its uncertainty; areas carry the bar of the surveyed surface. Solution, charge and the metal
 * in the solution are taken as noted, to the resolution that is given.
 *
 * @param section number of the section; 0 for the whole piece
 * @param areaMm2 its plated area, mm²
 * @param targetUm what was planned, µm
 * @param ways the ways that the figures allow
 * @param spots readings, if any
 */
public record LaidDown(
    int section,
    double areaMm2,
    double targetUm,
    List<Way> ways,
    Optional<MeasuredThickness.Spots> spots) {
  /** Copies the list. */
  public LaidDown {
    ways = List.copyOf(ways);
  }

  /**
   * Thickness by one way.
   *
   * @param by "weight", "solution" or "charge"
   * @param thickness mean thickness with its standard uncertainty
   * @param missing what is missing to the target
   */
  public record Way(String by, MeasuredThickness thickness, MeasuredThickness.Missing missing) {}

  /**
   * Steps of the instruments, in whose half the truth may lie on either side.
   *
   * @param scaleG of the scale, g
   * @param solutionMl of the measure, ml
   * @param chargeAh of the meter, A·h
   */
  public record Resolution(double scaleG, double solutionMl, double chargeAh) {}

  /**
   * Of one run.
   *
   * @param plan what was planned
   * @param section number of the section; 0 for the whole piece
   * @param run what was noted
   * @param resolution steps of the instruments
   * @throws ShopException if the plan has no such section, or figures contradict each other
   */
  public static LaidDown of(PlanFile plan, int section, Run run, Resolution resolution)
      throws ShopException {
    Double net = section == 0 ? Double.valueOf(plan.netMm2All()) : plan.netMm2().get(section);
    if (net == null) {
      throw new ShopException(
          "Section " + section,
          "",
          "the plan has no such section",
          "It has " + plan.netMm2().keySet() + ".");
    }
    Figure area = new Figure(net, net * plan.areaBar());
    List<Way> ways = new ArrayList<>();
    if (!Double.isNaN(run.gainG())) {
      if (!(run.gainG() > 0)) {
        throw new ShopException(
            "Weights", "", "the piece has not gained weight", "Check the two weights.");
      }
      ways.add(
          way(
              "weight",
              plan,
              net,
              MeasuredThickness.fromMassGain(
                  plan.deposit(), run.beforeG(), run.afterG(), resolution.scaleG(), area)));
    }
    if (run.solutionMl() > 0 && run.gPerL() > 0) {
      ways.add(way("solution", plan, net, bySolution(plan, run, resolution, area)));
    }
    if (run.ampHours() > 0) {
      ways.add(
          way(
              "charge",
              plan,
              net,
              MeasuredThickness.fromCharge(
                  plan.deposit(),
                  Figure.read(run.ampHours(), resolution.chargeAh()),
                  new Figure(plan.efficiency(), 0),
                  area)));
    }
    return new LaidDown(section, net, plan.thicknessUm(), ways, spots(run));
  }

  private static MeasuredThickness bySolution(
      PlanFile plan, Run run, Resolution resolution, Figure area) {
    double kept = 1 + plan.loss().likely();
    // d(1/(1+x)) = −dx/(1+x)²: the spread of the loss to first order.
    Figure laid = new Figure(1 / kept, plan.loss().standardDeviation() / (kept * kept));
    double usable = Double.isNaN(run.usableShare()) ? 1 : run.usableShare();
    return MeasuredThickness.fromSolution(
        plan.deposit(),
        new Figure(run.gPerL() * usable, 0),
        Figure.read(run.solutionMl(), resolution.solutionMl()),
        laid,
        area);
  }

  private static Way way(String by, PlanFile plan, double net, MeasuredThickness thickness) {
    return new Way(
        by,
        thickness,
        thickness.missing(
            plan.deposit(), plan.thicknessUm(), net, plan.efficiency(), plan.secondsPerCm2PerUm()));
  }

  private static Optional<MeasuredThickness.Spots> spots(Run run) {
    double[] um =
        Arrays.stream(run.readingsUm().strip().split("\\s+"))
            .filter(r -> !r.isEmpty())
            .mapToDouble(Double::parseDouble)
            .toArray();
    return um.length == 0 ? Optional.empty() : Optional.of(MeasuredThickness.Spots.of(um));
  }
}
