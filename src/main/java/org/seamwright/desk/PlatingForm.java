package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.plating.Deposits;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.plating.Recipe;
import org.seamwright.plating.Recipes;
import org.seamwright.plating.Spread;
import org.seamwright.plating.Tool;
import org.seamwright.units.Amounts;
import org.seamwright.units.UnitFormat;
import org.seamwright.units.UnitSystem;

/**
 * The plating and section settings as they are typed, and what they come to. Whatever is typed is
 * either taken into the job or refused with a sentence; the job is never left half changed.
 */
public final class PlatingForm {
  private PlatingForm() {}

  /** The settings that are typed. */
  public enum Field implements Typed {
    /** Flash thickness. */
    FLASH,
    /** Flash and build together. */
    THICKNESS,
    /** Share added for loss, percent. */
    LOSS,
    /** Metal in the solution. */
    SOLUTION,
    /** Share of it that can be laid down, percent. */
    USABLE,
    /** Time to lay 1 µm over 1 cm², s. */
    SPEED,
    /** Current efficiency, percent. */
    EFFICIENCY,
    /** How long a place stays wet, or the largest area of a section. */
    LIMIT,
    /** Width of the activation lap. */
    ACTIVATION_LAP,
    /** Width of the flash lap. */
    FLASH_LAP;

    @Override
    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    @Override
    public String text(Job job) {
      return PlatingForm.text(job, this);
    }

    @Override
    public Job typed(Job job, String text) throws InputException {
      return PlatingForm.typed(job, this, text);
    }
  }

  /**
   * A choice of a list.
   *
   * @param id as in the job file
   * @param name for people
   */
  public record Choice(String id, String name) {
    @Override
    public String toString() {
      return name;
    }
  }

  /** The recipes, by base metal. */
  public static List<Choice> recipes() {
    return Recipes.all().stream().map(r -> new Choice(r.id(), r.base())).toList();
  }

  /** The deposits. */
  public static List<Choice> deposits() {
    return Deposits.all().stream().map(d -> new Choice(d.id(), d.name())).toList();
  }

  /** The job with another of the known recipes; one of its own is dropped. */
  public static Job withRecipe(Job job, String id) {
    Job.PlatingRules p = job.plating();
    if (p.own().isEmpty() && id.equals(p.recipe())) {
      return job;
    }
    return job.withPlating(
        rules(
            p,
            id,
            Optional.empty(),
            p.deposit(),
            p.flashUm(),
            p.thicknessUm(),
            p.loss(),
            p.solutionGPerL(),
            p.usableShare(),
            p.pace(),
            p.efficiency()));
  }

  /** The job with another deposit. */
  public static Job withDeposit(Job job, String id) {
    Job.PlatingRules p = job.plating();
    return job.withPlating(
        rules(
            p,
            p.recipe(),
            p.own(),
            id,
            p.flashUm(),
            p.thicknessUm(),
            p.loss(),
            p.solutionGPerL(),
            p.usableShare(),
            p.pace(),
            p.efficiency()));
  }

  private static Job.PlatingRules rules(
      Job.PlatingRules p,
      String recipe,
      Optional<Recipe> own,
      String deposit,
      double flashUm,
      double thicknessUm,
      Spread loss,
      double solutionGPerL,
      double usableShare,
      Spread pace,
      double efficiency) {
    return new Job.PlatingRules(
        recipe,
        own,
        deposit,
        flashUm,
        thicknessUm,
        loss,
        solutionGPerL,
        usableShare,
        pace,
        efficiency,
        p.tool(),
        p.hold(),
        p.bench(),
        p.sheet());
  }

  /** The rules with another tool and another way to hold the piece. */
  static Job.PlatingRules with(Job.PlatingRules p, Tool tool, Optional<Job.Hold> hold) {
    return new Job.PlatingRules(
        p.recipe(),
        p.own(),
        p.deposit(),
        p.flashUm(),
        p.thicknessUm(),
        p.loss(),
        p.solutionGPerL(),
        p.usableShare(),
        p.pace(),
        p.efficiency(),
        tool,
        hold,
        p.bench(),
        p.sheet());
  }

  /** The rules with another thickness in all, µm; at least the flash. */
  static Job.PlatingRules withThickness(Job.PlatingRules p, double thicknessUm) {
    return rules(
        p,
        p.recipe(),
        p.own(),
        p.deposit(),
        p.flashUm(),
        thicknessUm,
        p.loss(),
        p.solutionGPerL(),
        p.usableShare(),
        p.pace(),
        p.efficiency());
  }

  /** The job shown in other units. */
  public static Job withDisplay(Job job, UnitSystem display) {
    return new Job(
        job.piece(),
        job.note(),
        job.mesh(),
        job.cleaning(),
        job.ground(),
        job.marks(),
        job.sections(),
        job.plating(),
        job.masking(),
        job.quote(),
        display);
  }

  /** The job of a piece with another name. */
  public static Job withPieceName(Job job, String name) {
    return new Job(
        name.isBlank() ? job.piece() : name.strip(),
        job.note(),
        job.mesh(),
        job.cleaning(),
        job.ground(),
        job.marks(),
        job.sections(),
        job.plating(),
        job.masking(),
        job.quote(),
        job.display());
  }

  /** What a field holds, as it could be typed. */
  public static String text(Job job, Field field) {
    UnitFormat in = new UnitFormat(job.display(), Locale.ENGLISH).withPlainSpaces();
    Job.PlatingRules p = job.plating();
    Job.SectionRules s = job.sections();
    return switch (field) {
      case FLASH -> in.thickness(p.flashUm());
      case THICKNESS -> in.thickness(p.thicknessUm());
      case LOSS -> percent(p.lossShare());
      case SOLUTION -> number(p.solutionGPerL()) + " g/l";
      case USABLE -> percent(p.usableShare());
      case SPEED -> number(p.secondsPerCm2PerUm()) + " s";
      case EFFICIENCY -> percent(p.efficiency());
      case LIMIT ->
          s.limit() instanceof Job.Limit.Area area
              ? in.area(area.mm2())
              : number(((Job.Limit.Wet) s.limit()).windowSeconds()) + " s";
      case ACTIVATION_LAP -> in.length(s.activationLapMm());
      case FLASH_LAP -> in.length(s.flashLapMm());
    };
  }

  /**
   * The job with what was typed into a field.
   *
   * @throws InputException if that can't be: the problem and the remedy are for people
   */
  public static Job typed(Job job, Field field, String text) throws InputException {
    if (text.strip().equals(text(job, field).strip())) {
      // What is shown is rounded; leaving it as it is must not round the job.
      return job;
    }
    return switch (field) {
      case FLASH, THICKNESS, LOSS, SOLUTION, USABLE, SPEED, EFFICIENCY ->
          job.withPlating(plating(job.plating(), field, text));
      case LIMIT, ACTIVATION_LAP, FLASH_LAP ->
          job.withSections(sections(job.sections(), field, text));
    };
  }

  private static Job.PlatingRules plating(Job.PlatingRules p, Field field, String text)
      throws InputException {
    double flash = p.flashUm();
    double thickness = p.thicknessUm();
    Spread loss = p.loss();
    double solution = p.solutionGPerL();
    double usable = p.usableShare();
    Spread speed = p.pace();
    double efficiency = p.efficiency();
    switch (field) {
      case FLASH -> flash = above0(text, Amounts.thicknessUm(text));
      case THICKNESS -> thickness = above0(text, Amounts.thicknessUm(text));
      case LOSS -> loss = Spread.point(share(text, 10));
      case SOLUTION -> solution = above0(text, Amounts.gramsPerLitre(text));
      case USABLE -> usable = above0(text, share(text, 1));
      case SPEED -> speed = Spread.point(above0(text, Amounts.seconds(text)));
      default -> efficiency = above0(text, share(text, 1));
    }
    if (thickness < flash) {
      throw refused(text, "thin");
    }
    return rules(
        p,
        p.recipe(),
        p.own(),
        p.deposit(),
        flash,
        thickness,
        loss,
        solution,
        usable,
        speed,
        efficiency);
  }

  private static Job.SectionRules sections(Job.SectionRules s, Field field, String text)
      throws InputException {
    return switch (field) {
      case ACTIVATION_LAP -> rules(s, s.limit(), Amounts.lengthMm(text), s.flashLapMm());
      case FLASH_LAP -> rules(s, s.limit(), s.activationLapMm(), Amounts.lengthMm(text));
      default -> rules(s, limit(s, text), s.activationLapMm(), s.flashLapMm());
    };
  }

  private static Job.Limit limit(Job.SectionRules s, String text) throws InputException {
    return s.limit() instanceof Job.Limit.Area
        ? new Job.Limit.Area(above0(text, Amounts.areaMm2(text)), s.limit().windowSeconds())
        : new Job.Limit.Wet(above0(text, Amounts.seconds(text)));
  }

  /**
   * The job with its sections limited by area, or by how long a place stays wet.
   *
   * @param areaMm2 the limit to start with, mm²
   */
  public static Job limitedByArea(Job job, boolean byArea, double areaMm2) {
    Job.SectionRules s = job.sections();
    if (byArea == s.limit() instanceof Job.Limit.Area) {
      return job;
    }
    Job.Limit limit =
        byArea
            ? new Job.Limit.Area(Tidy.toThreeDigits(areaMm2), s.limit().windowSeconds())
            : new Job.Limit.Wet(s.limit().windowSeconds());
    return job.withSections(rules(s, limit, s.activationLapMm(), s.flashLapMm()));
  }

  private static double above0(String text, double value) throws InputException {
    if (!(value > 0)) {
      throw refused(text, "zero");
    }
    return value;
  }

  /** Percent, with or without its sign. */
  private static double share(String text, double most) throws InputException {
    String plain = text.strip().replace("%", "").strip().replace(',', '.');
    double percent;
    try {
      percent = Double.parseDouble(plain);
    } catch (NumberFormatException e) {
      throw refused(text, "percent");
    }
    if (!(percent >= 0 && percent <= 100 * most)) {
      throw refused(text, most > 1 ? "loss" : "share");
    }
    return percent / 100;
  }

  private static InputException refused(String text, String key) {
    return new InputException(
        "\"" + text.strip() + "\"",
        "",
        Messages.text("form." + key),
        Messages.text("form." + key + ".remedy"));
  }

  private static String percent(double share) {
    return number(100 * share) + " %";
  }

  /** In few digits, without trailing zeros: percentages of a double are not to show its tail. */
  private static String number(double value) {
    return new java.math.BigDecimal(value)
        .round(new java.math.MathContext(6))
        .stripTrailingZeros()
        .toPlainString();
  }

  private static Job.SectionRules rules(
      Job.SectionRules s, Job.Limit limit, double activationLapMm, double flashLapMm) {
    return new Job.SectionRules(
        limit, activationLapMm, flashLapMm, s.order(), s.seams(), s.choices());
  }

  /**
   * A line of amounts.
   *
   * @param name what it is
   * @param value with its unit
   */
  public record Amount(String name, String value) {}

  /** What the plating takes, of the latest plan. */
  public static List<Amount> amounts(DeskState state) {
    List<Amount> amounts = new ArrayList<>();
    state
        .plan()
        .ifPresent(
            plan -> {
              UnitFormat in = new UnitFormat(plan.job().display(), Locale.ENGLISH);
              PlatingPlan.Totals t = plan.plating().totals();
              amounts.add(amount("net", in.area(t.netMm2())));
              amounts.add(amount("worked", in.area(t.workedMm2())));
              double lossG = plan.plating().sections().stream().mapToDouble(s -> s.lossG()).sum();
              amounts.add(amount("laid", in.mass(t.goldG() - lossG)));
              amounts.add(amount("lost", in.mass(lossG)));
              amounts.add(amount("gold", in.mass(t.goldG())));
              amounts.add(amount("solution", in.volume(t.solutionMl())));
              amounts.add(amount("charge", in.charge(t.chargeAh())));
              amounts.add(amount("time", in.time(t.seconds())));
            });
    return amounts;
  }

  private static Amount amount(String key, String value) {
    return new Amount(Messages.text("amount." + key), value);
  }
}
