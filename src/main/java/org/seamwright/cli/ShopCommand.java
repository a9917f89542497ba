package org.seamwright.cli;

import org.seamwright.shop.ShopTable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The shop book: solutions, bottles, prices, runs, and what the runs tell. */
@Command(
    name = "shop",
    description = "Keeps the shop book: solutions, bottles, prices, runs, and what the runs tell.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "Examples, with invented figures:",
      "  seamwright shop solution add --name \"Demo gold\" --strength \"20 g/l\" --usable 0.8",
      "  seamwright shop bottle add --solution \"Demo gold\" --full \"10 g\" --strength \"20 g/l\"",
      "  seamwright shop run add --job cup --section 1 --before \"50 g\" --after \"50.8 g\"",
      "  seamwright shop thickness out/plan.json --before \"50 g\" --after \"50.8 g\"",
      "  seamwright shop defaults --deposit gold-hard",
      "  seamwright shop apply cup.json"
    })
final class ShopCommand implements Runnable {
  @Spec private CommandSpec spec;

  /** The command with its subcommands. */
  static CommandLine line() {
    return new CommandLine(new ShopCommand())
        .addSubcommand(
            "solution",
            new CommandLine(new Group("solution"))
                .addSubcommand("add", new ShopSolutionCommands.Add())
                .addSubcommand("list", new ShopSolutionCommands.ListAll())
                .addSubcommand("drop", new ShopDropCommand(ShopTable.SOLUTIONS)))
        .addSubcommand(
            "bottle",
            new CommandLine(new Group("bottle"))
                .addSubcommand("add", new ShopBottleCommands.Add())
                .addSubcommand("list", new ShopBottleCommands.ListAll())
                .addSubcommand("drop", new ShopDropCommand(ShopTable.BOTTLES))
                .addSubcommand("use", new ShopBottleCommands.Use()))
        .addSubcommand(
            "price",
            new CommandLine(new Group("price"))
                .addSubcommand("add", new ShopPriceCommands.Add())
                .addSubcommand("list", new ShopPriceCommands.ListAll())
                .addSubcommand("drop", new ShopDropCommand(ShopTable.PRICES)))
        .addSubcommand("buy", new ShopPriceCommands.Buy())
        .addSubcommand(
            "run",
            new CommandLine(new Group("run"))
                .addSubcommand("add", new ShopRunCommands.Add())
                .addSubcommand("list", new ShopRunCommands.ListAll())
                .addSubcommand("drop", new ShopDropCommand(ShopTable.RUNS)))
        .addSubcommand("thickness", new ShopThicknessCommand())
        .addSubcommand("set", new ShopSettingCommands.Set())
        .addSubcommand("settings", new ShopSettingCommands.ListAll())
        .addSubcommand("defaults", new ShopDefaultsCommands.Show())
        .addSubcommand("apply", new ShopDefaultsCommands.Apply())
        .addSubcommand("export", new ShopFileCommands.Export())
        .addSubcommand("import", new ShopFileCommands.Import())
        .addSubcommand("check", new ShopFileCommands.Check());
  }

  @Override
  public void run() {
    throw new CommandLine.ParameterException(spec.commandLine(), "Missing the subcommand");
  }

  /** A word that needs another one. */
  @Command(mixinStandardHelpOptions = true, description = "Entries of the shop book.")
  static final class Group implements Runnable {
    private final String what;

    @Spec private CommandSpec spec;

    Group(String what) {
      this.what = what;
    }

    @Override
    public void run() {
      throw new CommandLine.ParameterException(
          spec.commandLine(), "Say what to do with the " + what + ": add, list or drop");
    }
  }
}
