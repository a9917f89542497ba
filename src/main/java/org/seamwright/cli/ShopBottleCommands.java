package org.seamwright.cli;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.plating.Deposits;
import org.seamwright.shop.Bottle;
import org.seamwright.shop.ShopBook;
import org.seamwright.shop.ShopException;
import org.seamwright.shop.ShopJson;
import org.seamwright.shop.ShopTable;
import org.seamwright.units.Amounts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Commands on bottles. */
final class ShopBottleCommands {
  private ShopBottleCommands() {}

  @Command(
      name = "add",
      description = "Enters a bottle.",
      mixinStandardHelpOptions = true,
      footer = {
        "",
        "Example, with invented figures:",
        "  seamwright shop bottle add --solution \"Demo gold\" --full \"10 g\" --strength \"20 g/l\""
      })
  static final class Add implements Callable<Integer> {
    @Option(names = "--solution", required = true, description = "What it is called.")
    private String solution;

    @Option(
        names = "--deposit",
        defaultValue = "gold-hard",
        description = "Metal, as in job files (default: ${DEFAULT-VALUE}).")
    private String deposit;

    @Option(names = "--full", required = true, description = "Metal in it when full: \"10 g\".")
    private String full;

    @Option(names = "--strength", required = true, description = "Metal per volume: \"20 g/l\".")
    private String strength;

    @Option(
        names = "--opened",
        converter = DateConverter.class,
        description = "Date it was opened, 2026-01-31.")
    private Optional<LocalDate> opened;

    @Option(names = "--left", description = "Metal left, if it isn't full: \"4 g\".")
    private String left;

    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      Deposits.byId(deposit);
      double fullG = ShopAccess.positive("--full", Amounts.massG(full));
      double leftG = left == null ? fullG : Amounts.massG(left);
      if (leftG > fullG) {
        throw new ShopException("--left", "", "it is more than the full bottle", "Check both.");
      }
      double gPerL = ShopAccess.positive("--strength", Amounts.gramsPerLitre(strength));
      String openedOn = opened.map(LocalDate::toString).orElse("");
      return access.enter(
          spec.commandLine().getOut(),
          "Bottle",
          book -> book.add(new Bottle(0, solution, deposit, fullG, gPerL, openedOn, leftG)));
    }
  }

  @Command(
      name = "list",
      description = "Lists the bottles.",
      mixinStandardHelpOptions = true,
      footer = {"", "Example:", "  seamwright shop bottle list --json"})
  static final class ListAll implements Callable<Integer> {
    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      return access.list(
          spec.commandLine().getOut(),
          ShopBook::bottles,
          book -> ShopJson.rows(ShopTable.BOTTLES, book.rows(ShopTable.BOTTLES)),
          b ->
              b.id()
                  + "  "
                  + b.solution()
                  + " ("
                  + b.deposit()
                  + "), "
                  + ShopAccess.mass(b.remainingG())
                  + " of "
                  + ShopAccess.mass(b.fullG())
                  + " left");
    }
  }

  @Command(
      name = "use",
      description = "Takes solution from a bottle.",
      mixinStandardHelpOptions = true,
      footer = {
        "",
        "Example, with invented figures:",
        "  seamwright shop bottle use 1 --volume \"50 ml\""
      })
  static final class Use implements Callable<Integer> {
    @Parameters(paramLabel = "BOTTLE", description = "Number of the bottle.")
    private long bottle;

    @Option(names = "--volume", required = true, description = "Solution taken: \"50 ml\".")
    private String volume;

    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      double ml = ShopAccess.positive("--volume", Amounts.volumeMl(volume));
      try (ShopBook book = access.open()) {
        double gPerL =
            book.bottles().stream()
                .filter(b -> b.id() == bottle)
                .mapToDouble(Bottle::gPerL)
                .findFirst()
                .orElse(1);
        book.use(bottle, ml * gPerL / 1000);
        double left =
            book.bottles().stream()
                .filter(b -> b.id() == bottle)
                .mapToDouble(Bottle::remainingG)
                .sum();
        return access.told(
            spec.commandLine().getOut(),
            ShopAccess.mass(left) + " left.",
            Map.of("remainingG", left));
      }
    }
  }
}
