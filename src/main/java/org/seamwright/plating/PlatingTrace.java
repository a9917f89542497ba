package org.seamwright.plating;

import java.util.ArrayList;
import java.util.List;
import org.seamwright.basis.Sum;

/** How each kind of figure of a plan came about, with the values put in and where they are from. */
final class PlatingTrace {
  private static final String SHOP = "shop setting";

  private final List<SectionArea> sections;
  private final PlatingSettings settings;
  private final PlatingPlan.Totals totals;
  private final List<PlatingPlan.Trace> rows = new ArrayList<>();

  private PlatingTrace(
      List<SectionArea> sections, PlatingSettings settings, PlatingPlan.Totals totals) {
    this.sections = sections;
    this.settings = settings;
    this.totals = totals;
  }

  static List<PlatingPlan.Trace> of(
      List<SectionArea> sections, PlatingSettings settings, PlatingPlan.Totals totals) {
    PlatingTrace trace = new PlatingTrace(sections, settings, totals);
    trace.areas();
    trace.metal();
    trace.charge();
    trace.times();
    return List.copyOf(trace.rows);
  }

  private void areas() {
    add(
        "Area worked",
        "A_worked = A_net + the wider lap, summed over sections",
        "A_net = " + cm2(totals.netMm2()) + "; A_worked = " + cm2(totals.workedMm2()),
        "measured on the model; lap widths: " + SHOP);
  }

  private void metal() {
    Deposit deposit = settings.deposit();
    double flashMm2 = covered(Step.Kind.FLASH);
    double flashG = Faraday.layerG(deposit, flashMm2, settings.flashUm());
    double buildG = Faraday.layerG(deposit, totals.netMm2(), settings.buildUm());
    String density = "ρ = " + Figures.of(deposit.densityGCm3()) + " g/cm³, ";
    add(
        "Metal in the flash",
        "m = ρ · t · (A_net + A_flash lap)",
        density + "t = " + um(settings.flashUm()) + ", A = " + cm2(flashMm2) + " → " + g(flashG),
        deposit.source() + " Thickness: " + SHOP + ".");
    add(
        "Metal in the build",
        "m = ρ · t · A_net",
        density
            + "t = "
            + um(settings.buildUm())
            + ", A = "
            + cm2(totals.netMm2())
            + " → "
            + g(buildG),
        deposit.source() + " Thickness: " + SHOP + ".");
    add(
        "Metal lost",
        "m_loss = share · (m_flash + m_build)",
        "share = " + Figures.of(settings.lossShare()),
        SHOP + ", until the shop's own runs give it");
    add(
        "Metal to have ready",
        "m = m_flash + m_build + m_loss",
        g(flashG) + ", " + g(buildG) + ", loss → " + g(totals.goldG()),
        "sum of the above");
    add(
        "Solution",
        "V = m / (c · usable share)",
        "c = "
            + Figures.of(settings.solutionGPerL())
            + " g/l, usable share = "
            + Figures.of(settings.usableShare())
            + " → "
            + Figures.of(totals.solutionMl())
            + " ml",
        SHOP + "; the content is on the bottle");
  }

  private void charge() {
    Deposit deposit = settings.deposit();
    add(
        "Charge",
        "Q = (m_flash + m_build) · z · F / (M · η)",
        "z = "
            + deposit.valence()
            + ", F = 96485.33212 C/mol, M = "
            + deposit.atomicWeight()
            + " g/mol, η = "
            + Figures.of(settings.efficiency())
            + " → "
            + Figures.of(totals.chargeAh())
            + " A·h",
        "Faraday's law, F from CODATA 2018. " + deposit.source() + " η: " + SHOP + ".");
    BrushFactor.handbook(deposit).ifPresent(this::check);
  }

  private void check(BrushFactor factor) {
    double charge =
        factor.chargeAh(covered(Step.Kind.FLASH), settings.flashUm())
            + factor.chargeAh(totals.netMm2(), settings.buildUm());
    add(
        "Charge, checked another way",
        "Q = factor · A · t, efficiency already in the factor",
        "factor = "
            + Figures.of(factor.perIn2TenthMil())
            + " A·h per in² per 0.0001 in, which is η = "
            + Figures.of(factor.efficiency(settings.deposit()))
            + " → "
            + Figures.of(charge)
            + " A·h",
        "ASM Handbook vol. 5, \"Selective (Brush) Plating\", table 1; the factor on the"
            + " solution's own sheet goes before it");
  }

  private void times() {
    for (Step step : settings.recipe().steps()) {
      String handling = "handling " + Figures.of(step.handlingSeconds()) + " s a section";
      String area = "A = " + cm2(covered(step.kind())) + ", ";
      boolean byThickness = step.kind() == Step.Kind.FLASH || step.kind() == Step.Kind.BUILD;
      double um = step.kind() == Step.Kind.FLASH ? settings.flashUm() : settings.buildUm();
      if (byThickness) {
        add(
            "Time: " + step.name(),
            "T = rate · t · A + handling",
            um == 0
                ? "t = 0: left out"
                : "rate = "
                    + Figures.of(settings.secondsPerCm2PerUm())
                    + " s per cm² per µm, t = "
                    + um(um)
                    + ", "
                    + area
                    + handling,
            "rate: " + SHOP + "; " + step.source());
      } else {
        add(
            "Time: " + step.name(),
            "T = passes · p · A + handling",
            "passes = "
                + step.passes()
                + ", p = "
                + Figures.of(step.secondsPerCm2())
                + " s per cm², "
                + area
                + handling,
            step.source());
      }
    }
    add(
        "Time, all steps",
        "sum over steps and sections",
        sections.size() + " sections → " + Figures.of(totals.seconds()) + " s",
        "sum of the above; fetching, masking and drying of masks not in it");
  }

  private double covered(Step.Kind kind) {
    return Sum.over(sections.size(), i -> PlatingArithmetic.areaMm2(kind, sections.get(i)));
  }

  private void add(String figure, String formula, String inputs, String source) {
    rows.add(new PlatingPlan.Trace(figure, formula, inputs, source));
  }

  private static String cm2(double mm2) {
    return Figures.of(mm2 / 100) + " cm²";
  }

  private static String um(double um) {
    return Figures.of(um) + " µm";
  }

  private static String g(double g) {
    return Figures.of(g) + " g";
  }
}
