package org.seamwright.cli;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.StringJoiner;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.plating.Deposits;
import org.seamwright.shop.Run;
import org.seamwright.shop.ShopException;
import org.seamwright.shop.ShopJson;
import org.seamwright.units.Amounts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Commands on runs. */
final class ShopRunCommands {
  private ShopRunCommands() {}

  @Command(
      name = "add",
      description = "Enters a run: one section plated once. What was not measured is left out.",
      mixinStandardHelpOptions = true,
      footer = {
        "",
        "Example, with invented figures:",
        "  seamwright shop run add --job cup --section 1 --solution-used \"100 ml\" \\",
        "    --strength \"20 g/l\" --usable 0.5 --time \"10 min\" --before \"50 g\" --after \"50.8 g\""
      })
  static final class Add implements Callable<Integer> {
    @Option(names = "--job", required = true, description = "Name of the job.")
    private String job;

    @Option(names = "--section", required = true, description = "Name of the section.")
    private String section;

    @Option(
        names = "--deposit",
        defaultValue = "gold-hard",
        description = "Metal, as in job files (default: ${DEFAULT-VALUE}).")
    private String deposit;

    @Option(names = "--operator", defaultValue = "", description = "Who plated.")
    private String operator;

    @Option(
        names = "--date",
        converter = DateConverter.class,
        description = "Day, 2026-01-31; else today.")
    private Optional<LocalDate> date;

    @Option(names = "--solution-used", description = "Solution used: \"100 ml\".")
    private Optional<String> solution;

    @Option(names = "--strength", description = "Metal in it: \"20 g/l\".")
    private Optional<String> strength;

    @Option(names = "--usable", description = "Share of it that can be laid down, to 1.")
    private Optional<Double> usable;

    @Option(names = "--time", description = "Time of plating: \"10 min\".")
    private Optional<String> time;

    @Option(names = "--charge", description = "Charge: \"1.5 Ah\".")
    private Optional<String> charge;

    @Option(names = "--before", description = "Weight before: \"50 g\".")
    private Optional<String> before;

    @Option(names = "--after", description = "Weight after.")
    private Optional<String> after;

    @Option(names = "--reading", description = "A thickness reading: \"1.2 µm\"; may be repeated.")
    private List<String> readings = List.of();

    @Option(names = "--photo", description = "Path of a photo; may be repeated.")
    private List<String> photos = List.of();

    @Option(names = "--note", defaultValue = "", description = "Free text.")
    private String note;

    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      Deposits.byId(deposit);
      StringJoiner um = new StringJoiner(" ");
      for (String reading : readings) {
        um.add(String.valueOf(Amounts.thicknessUm(reading)));
      }
      double share = usable.orElse(Double.NaN);
      if (share <= 0 || share > 1) {
        throw new ShopException("--usable", "", "a share is above 0, to 1", "Write 0.5 for half.");
      }
      Run run =
          new Run(
              0,
              job,
              section,
              deposit,
              operator,
              date.orElseGet(() -> LocalDate.now(ZoneId.systemDefault())).toString(),
              ShopAccess.noted(solution, Amounts::volumeMl),
              ShopAccess.noted(strength, Amounts::gramsPerLitre),
              share,
              ShopAccess.noted(time, Amounts::seconds) / 60,
              ShopAccess.noted(charge, ShopAccess::ampHours),
              ShopAccess.noted(before, Amounts::massG),
              ShopAccess.noted(after, Amounts::massG),
              um.toString(),
              String.join("\n", photos),
              note);
      return access.enter(spec.commandLine().getOut(), "Run", book -> book.add(run));
    }
  }

  @Command(
      name = "list",
      description = "Lists runs, the latest first.",
      mixinStandardHelpOptions = true,
      footer = {"", "Example:", "  seamwright shop run list --job cup --json"})
  static final class ListAll implements Callable<Integer> {
    @Option(names = "--job", defaultValue = "", description = "Only of this job.")
    private String job;

    @Option(names = "--deposit", defaultValue = "", description = "Only of this metal.")
    private String deposit;

    @Option(names = "--operator", defaultValue = "", description = "Only of this operator.")
    private String operator;

    @Option(
        names = "--most",
        defaultValue = "100",
        description = "How many at most (default: ${DEFAULT-VALUE}).")
    private int most;

    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      return access.list(
          spec.commandLine().getOut(),
          book -> book.runs(job, deposit, operator, most),
          book -> ShopJson.runs(book.runs(job, deposit, operator, most)),
          ListAll::line);
    }

    private static String line(Run run) {
      String gain =
          Double.isNaN(run.gainG()) ? "not weighed" : "gained " + ShopAccess.mass(run.gainG());
      return String.join(
          ", ",
          run.id() + "  " + run.date() + "  " + run.job(),
          "section " + run.section(),
          run.deposit(),
          gain);
    }
  }
}
