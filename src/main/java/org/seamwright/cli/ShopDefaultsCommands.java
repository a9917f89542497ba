package org.seamwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.plating.Deposits;
import org.seamwright.shop.Estimate;
import org.seamwright.shop.ShopBook;
import org.seamwright.shop.ShopDefaults;
import org.seamwright.shop.ShopException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What the runs suggest for a job. */
final class ShopDefaultsCommands {
  private ShopDefaultsCommands() {}

  private static Map<String, Object> members(ShopDefaults defaults) {
    Map<String, Object> told = new LinkedHashMap<>();
    put(told, "lossShare", defaults.lossShare());
    put(told, "secondsPerCm2PerUm", defaults.secondsPerCm2PerUm());
    return told;
  }

  private static void put(Map<String, Object> told, String name, Optional<Estimate> estimate) {
    Map<String, Object> figure = new LinkedHashMap<>();
    figure.put("runs", estimate.map(Estimate::runs).orElse(0));
    estimate.ifPresent(
        e -> {
          figure.put("median", e.median());
          figure.put("p10", e.low());
          figure.put("p90", e.high());
        });
    told.put(name, figure);
  }

  private static String lines(ShopDefaults defaults) {
    return line("Loss share", defaults.lossShare())
        + System.lineSeparator()
        + line("Seconds per cm² and µm", defaults.secondsPerCm2PerUm());
  }

  private static String line(String what, Optional<Estimate> estimate) {
    return what
        + ": "
        + estimate
            .map(
                e ->
                    String.format(
                        Locale.ROOT,
                        "median %.4g, P10 %.4g, P90 %.4g of %d run(s)",
                        e.median(),
                        e.low(),
                        e.high(),
                        e.runs()))
            .orElse("no run tells it");
  }

  @Command(
      name = "defaults",
      description = "Prints the loss and plating rate that the runs tell, and how many they are.",
      mixinStandardHelpOptions = true,
      footer = {"", "Example:", "  seamwright shop defaults --deposit gold-hard --operator A"})
  static final class Show implements Callable<Integer> {
    @Option(
        names = "--deposit",
        defaultValue = "gold-hard",
        description = "Metal, as in job files (default: ${DEFAULT-VALUE}).")
    private String deposit;

    @Option(names = "--operator", defaultValue = "", description = "Only of this operator.")
    private String operator;

    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      try (ShopBook book = access.open()) {
        ShopDefaults defaults = ShopDefaults.of(book, Deposits.byId(deposit), operator);
        return access.told(spec.commandLine().getOut(), lines(defaults), members(defaults));
      }
    }
  }

  @Command(
      name = "apply",
      description =
          "Writes what the runs tell, the shop's prices or one of its solutions into a job file.",
      mixinStandardHelpOptions = true,
      footer = {
        "",
        "Without --spread the medians become the job's loss and rate; with it they keep their P10 and",
        "P90 as the low and high values. The job before is kept beside it with .bak added to its",
        "name.",
        "",
        "Examples:",
        "  seamwright shop apply cup.json --operator A",
        "  seamwright shop apply cup.json --spread",
        "  seamwright shop apply cup.json --prices",
        "  seamwright shop apply cup.json --solution \"Demo gel\""
      })
  static final class Apply implements Callable<Integer> {
    @Parameters(paramLabel = "JOB", description = "Job file.")
    private Path file;

    @Option(names = "--operator", defaultValue = "", description = "Only of this operator.")
    private String operator;

    @Option(names = "--spread", description = "Write low, likely and high.")
    private boolean spread;

    @Option(names = "--prices", description = "Write the shop's prices instead.")
    private boolean prices;

    @Option(
        names = "--solution",
        paramLabel = "NAME",
        description = "Write this solution's metal, strength and sheet instead.")
    private Optional<String> solution;

    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      Job job = JobFile.read(file);
      try (ShopBook book = access.open()) {
        if (prices) {
          write(job.withQuote(Optional.of(ShopSettingCommands.rates(book, job.quote()))));
          return access.told(
              spec.commandLine().getOut(), "Prices written.", Map.of("written", "quote"));
        }
        if (solution.isPresent()) {
          write(ShopSolutionCommands.applied(book, solution.get(), job));
          return access.told(
              spec.commandLine().getOut(), "Solution written.", Map.of("written", "plating"));
        }
        ShopDefaults defaults =
            ShopDefaults.of(book, Deposits.byId(job.plating().deposit()), operator);
        if (defaults.lossShare().isEmpty() && defaults.secondsPerCm2PerUm().isEmpty()) {
          throw new ShopException(
              file.toString(),
              "",
              "no run of " + job.plating().deposit() + " tells a loss or a rate",
              "Enter runs with both weights with \"shop run add\".");
        }
        write(defaults.applyTo(job, spread));
        return access.told(spec.commandLine().getOut(), lines(defaults), members(defaults));
      }
    }

    private void write(Job changed) throws InputException {
      // What a job file would refuse must not be written to one.
      JobFile.parse(JobFile.text(changed).getBytes(StandardCharsets.UTF_8), file.toString());
      JobFile.write(changed, file);
    }
  }
}
