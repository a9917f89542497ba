package org.seamwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.StringJoiner;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.job.PlanFile;
import org.seamwright.plating.MeasuredThickness;
import org.seamwright.shop.LaidDown;
import org.seamwright.shop.Run;
import org.seamwright.shop.ShopBook;
import org.seamwright.shop.ShopException;
import org.seamwright.shop.ShopJson;
import org.seamwright.units.Amounts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The thickness reached, from what was weighed, used or read, against the plan. */
@Command(
    name = "thickness",
    description =
        "Tells the thickness reached, from weights, solution, charge or readings, and what is"
            + " missing to the plan.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "With --job, the runs of the shop book are told section by section; else what is given here.",
      "Uncertainties are standard ones (one sigma). By weight is the surest way; by solution and",
      "charge the loss and the efficiency are those of the plan. Methods: weighing ASTM B767, X-ray",
      "ASTM B568 and ISO 3497 (numbers from memory).",
      "",
      "Examples, with invented figures:",
      "  seamwright shop thickness out/plan.json --before \"812.41 g\" --after \"813.02 g\" \\",
      "    --scale \"0.01 g\"",
      "  seamwright shop thickness out/plan.json --section 3 --charge \"0.21 Ah\" --reading \"0.6 µm\"",
      "  seamwright shop thickness out/plan.json --job cup"
    })
final class ShopThicknessCommand implements Callable<Integer> {
  /** What three digits do not show counts as nothing. */
  private static final double SHOWN = 5e-4;

  @Parameters(paramLabel = "PLAN", description = "The plan.json of the job.")
  private Path plan;

  @Option(names = "--section", defaultValue = "0", description = "Section; else the whole piece.")
  private int section;

  @Option(names = "--job", description = "Tell the runs of this job in the shop book.")
  private Optional<String> job;

  @Option(names = "--before", description = "Weight before: \"812.41 g\".")
  private Optional<String> before;

  @Option(names = "--after", description = "Weight after.")
  private Optional<String> after;

  @Option(names = "--scale", description = "Smallest step of the scale: \"0.01 g\".")
  private Optional<String> scale;

  @Option(names = "--solution-used", description = "Solution used: \"100 ml\".")
  private Optional<String> solution;

  @Option(names = "--solution-step", description = "Smallest step of its measure: \"1 ml\".")
  private Optional<String> solutionStep;

  @Option(names = "--strength", description = "Metal in the solution: \"20 g/l\".")
  private Optional<String> strength;

  @Option(names = "--usable", description = "Share of it that is spent, to 1; else all of it.")
  private Optional<Double> usable;

  @Option(names = "--charge", description = "Charge: \"1.5 Ah\".")
  private Optional<String> charge;

  @Option(names = "--charge-step", description = "Smallest step of the meter: \"0.01 Ah\".")
  private Optional<String> chargeStep;

  @Option(names = "--reading", description = "A thickness reading: \"1.2 µm\"; may be repeated.")
  private List<String> readings = List.of();

  @Mixin private ShopAccess access;
  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    PlanFile planned = PlanFile.read(plan);
    LaidDown.Resolution steps =
        new LaidDown.Resolution(
            step(scale, Amounts::massG),
            step(solutionStep, Amounts::volumeMl),
            step(chargeStep, ShopAccess::ampHours));
    List<LaidDown> laid = new ArrayList<>();
    if (job.isPresent()) {
      try (ShopBook book = access.open()) {
        for (Run run : book.runs(job.get(), planned.deposit().id(), "", Integer.MAX_VALUE)) {
          add(laid, planned, run, steps);
        }
      }
    } else {
      laid.add(LaidDown.of(planned, section, given(planned), steps));
    }
    if (laid.stream().allMatch(l -> l.ways().isEmpty() && l.spots().isEmpty())) {
      throw new ShopException(
          plan.toString(),
          "",
          job.isPresent()
              ? "no run of the job " + job.get() + " notes weights, solution, charge or readings"
              : "nothing measured was given",
          "Give --before and --after, --solution-used and --strength, --charge or --reading.");
    }
    print(laid);
    return ExitCode.DONE;
  }

  /** One run that contradicts itself must not hide all the others. */
  private void add(List<LaidDown> laid, PlanFile planned, Run run, LaidDown.Resolution steps) {
    try {
      laid.add(LaidDown.of(planned, number(run.section()), run, steps));
    } catch (ShopException e) {
      PrintWriter err = spec.commandLine().getErr();
      err.println("Run " + run.id() + " left out: " + e.getMessage());
      err.flush();
    }
  }

  private static double step(Optional<String> text, ShopAccess.Reader reader)
      throws InputException {
    return text.isPresent() ? reader.read(text.get()) : 0;
  }

  private static int number(String section) throws ShopException {
    try {
      return Integer.parseInt(section.strip());
    } catch (NumberFormatException e) {
      throw new ShopException(
          "Section \"" + section + "\"",
          "",
          "the plan numbers its sections",
          "Enter runs with the number of the section.",
          e);
    }
  }

  private Run given(PlanFile planned) throws InputException {
    if (before.isPresent() != after.isPresent()) {
      throw new ShopException("Weights", "", "one of the two is missing", "Give both.");
    }
    if (solution.isPresent() != strength.isPresent()) {
      throw new ShopException(
          "Solution", "", "its amount or its strength is missing", "Give both.");
    }
    StringJoiner um = new StringJoiner(" ");
    for (String reading : readings) {
      um.add(String.valueOf(Amounts.thicknessUm(reading)));
    }
    return new Run(
        0,
        "",
        String.valueOf(section),
        planned.deposit().id(),
        "",
        "",
        ShopAccess.noted(solution, Amounts::volumeMl),
        ShopAccess.noted(strength, Amounts::gramsPerLitre),
        usable.orElse(Double.NaN),
        Double.NaN,
        ShopAccess.noted(charge, ShopAccess::ampHours),
        ShopAccess.noted(before, Amounts::massG),
        ShopAccess.noted(after, Amounts::massG),
        um.toString(),
        "",
        "");
  }

  private void print(List<LaidDown> laid) {
    PrintWriter out = spec.commandLine().getOut();
    if (access.isJson()) {
      Map<String, Object> all = new LinkedHashMap<>();
      all.put("measured", laid.stream().map(ShopThicknessCommand::members).toList());
      out.println(Json.forTerminal(ShopJson.object(all)));
    } else {
      laid.forEach(l -> lines(l, out));
    }
    out.flush();
  }

  private static void lines(LaidDown laid, PrintWriter out) {
    String where = laid.section() == 0 ? "Whole piece" : "Section " + laid.section();
    for (LaidDown.Way way : laid.ways()) {
      MeasuredThickness.Missing missing = way.missing();
      out.println(
          where
              + ", by "
              + way.by()
              + ": "
              + figure(way.thickness().um())
              + uncertainty(way.thickness())
              + " µm of "
              + figure(laid.targetUm())
              + " planned; "
              + (missing.um() > SHOWN * laid.targetUm()
                  ? figure(missing.um())
                      + " µm missing: "
                      + figure(missing.massG())
                      + " g, "
                      + figure(missing.chargeAh())
                      + " A·h, "
                      + figure(missing.minutes())
                      + " min"
                  : "nothing missing on the mean"));
    }
    laid.spots()
        .ifPresent(
            s ->
                out.println(
                    where
                        + ", by "
                        + Figures.count(s.count(), "reading")
                        + ": mean "
                        + figure(s.meanUm())
                        + " µm, spread "
                        + figure(s.spreadUm())
                        + ", least "
                        + figure(s.leastUm())
                        + (s.leastUm() < laid.targetUm() ? ", below the plan" : "")));
  }

  /** Nothing where no step and no bar was given: no figure is as sure as that. */
  private static String uncertainty(MeasuredThickness thickness) {
    return thickness.standardUm() > SHOWN * thickness.um()
        ? " ± " + figure(thickness.standardUm())
        : "";
  }

  private static Map<String, Object> members(LaidDown laid) {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("section", laid.section());
    told.put("areaMm2", laid.areaMm2());
    told.put("targetUm", laid.targetUm());
    for (LaidDown.Way way : laid.ways()) {
      Map<String, Object> by = new LinkedHashMap<>();
      by.put("um", way.thickness().um());
      by.put("standardUm", way.thickness().standardUm());
      by.put("missingUm", way.missing().um());
      by.put("missingG", way.missing().massG());
      by.put("missingAh", way.missing().chargeAh());
      by.put("missingMinutes", way.missing().minutes());
      told.put(
          "by" + way.by().substring(0, 1).toUpperCase(Locale.ROOT) + way.by().substring(1), by);
    }
    laid.spots()
        .ifPresent(
            s -> {
              Map<String, Object> spots = new LinkedHashMap<>();
              spots.put("count", s.count());
              spots.put("meanUm", s.meanUm());
              spots.put("spreadUm", s.spreadUm());
              spots.put("leastUm", s.leastUm());
              told.put("readings", spots);
            });
    return told;
  }

  private static String figure(double value) {
    return String.format(Locale.ROOT, "%.3g", value);
  }
}
