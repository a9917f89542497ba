package org.seamwright.cli;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.plating.Deposits;
import org.seamwright.plating.Solution;
import org.seamwright.shop.ShopBook;
import org.seamwright.shop.ShopException;
import org.seamwright.shop.ShopJson;
import org.seamwright.shop.ShopSolution;
import org.seamwright.shop.ShopTable;
import org.seamwright.units.Amounts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Commands on solutions, as their sheets have them. */
final class ShopSolutionCommands {
  private ShopSolutionCommands() {}

  /**
   * The job with a solution of the book in place of its own.
   *
   * @throws ShopException if the book has none of that name
   */
  static Job applied(ShopBook book, String name, Job job) throws ShopException {
    for (ShopSolution s : book.solutions()) {
      if (s.sheet().name().equals(name)) {
        return job.withPlating(
            job.plating().with(s.deposit(), s.gPerL(), s.usableShare(), s.mostAhPerL(), s.sheet()));
      }
    }
    throw new ShopException(
        "Shop book",
        "",
        "it has no solution \"" + name + "\"",
        "Known: "
            + book.solutions().stream()
                .map(s -> s.sheet().name())
                .collect(Collectors.joining(", ", "", "."))
            + " Enter one with \"shop solution add\".");
  }

  @Command(
      name = "add",
      description = "Enters a solution as its sheet has it, in place of one of the same name.",
      mixinStandardHelpOptions = true,
      footer = {
        "",
        "It goes into a job only on request, with \"shop apply JOB --solution NAME\".",
        "",
        "Example, with invented figures:",
        "  seamwright shop solution add --name \"Demo gel\" --strength \"20 g/l\" --usable 0.7 \\",
        "    --form gel --volts-from 2.5 --volts-to 3 --anode graphite --keep \"above 5 °C\""
      })
  static final class Add implements Callable<Integer> {
    @Option(names = "--name", required = true, description = "What you call it.")
    private String name;

    @Option(
        names = "--deposit",
        defaultValue = "gold-hard",
        description = "Metal, as in job files (default: ${DEFAULT-VALUE}).")
    private String deposit;

    @Option(names = "--strength", required = true, description = "Metal per volume: \"20 g/l\".")
    private String strength;

    @Option(
        names = "--usable",
        required = true,
        description = "Share of it that can be laid down before the solution is spent, to 1.")
    private double usable;

    @Option(
        names = "--form",
        defaultValue = "liquid",
        description = "liquid or gel (default: ${DEFAULT-VALUE}).")
    private Solution.Form form;

    @Option(names = "--volts-from", description = "Least voltage at work, V.")
    private Optional<Double> voltsFrom;

    @Option(names = "--volts-to", description = "Largest voltage at work, V.")
    private Optional<Double> voltsTo;

    @Option(names = "--charge-per-litre", description = "A·h that a litre takes until spent.")
    private Optional<Double> perLitre;

    @Option(names = "--anode", defaultValue = "", description = "Of what the anode is to be.")
    private String anode;

    @Option(names = "--keep", defaultValue = "", description = "How it keeps.")
    private String keep;

    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      Deposits.byId(deposit);
      checkVolts();
      ShopSolution solution =
          new ShopSolution(
              deposit,
              ShopAccess.positive("--strength", Amounts.gramsPerLitre(strength)),
              usable,
              above(perLitre, "--charge-per-litre"),
              new Solution(
                  name,
                  form,
                  above(voltsFrom, "--volts-from"),
                  above(voltsTo, "--volts-to"),
                  anode,
                  keep));
      try (ShopBook book = access.open()) {
        book.put(solution);
      }
      return access.told(spec.commandLine().getOut(), solution.line() + ".", Map.of("name", name));
    }

    private void checkVolts() throws ShopException {
      if (voltsFrom.isPresent() != voltsTo.isPresent()
          || (voltsFrom.isPresent() && !(voltsTo.get() >= voltsFrom.get()))) {
        throw new ShopException(
            "--volts-from and --volts-to",
            "",
            "they are no range of voltages",
            "Give both or neither, the lower one first.");
      }
    }

    private static OptionalDouble above(Optional<Double> value, String option)
        throws ShopException {
      return value.isEmpty()
          ? OptionalDouble.empty()
          : OptionalDouble.of(ShopAccess.positive(option, value.get()));
    }
  }

  @Command(
      name = "list",
      description = "Lists the solutions.",
      mixinStandardHelpOptions = true,
      footer = {"", "Example:", "  seamwright shop solution list --json"})
  static final class ListAll implements Callable<Integer> {
    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      return access.list(
          spec.commandLine().getOut(),
          ShopBook::solutions,
          book -> ShopJson.rows(ShopTable.SOLUTIONS, book.rows(ShopTable.SOLUTIONS)),
          ShopSolution::line);
    }
  }
}
