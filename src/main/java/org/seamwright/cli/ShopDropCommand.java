package org.seamwright.cli;

import java.util.Map;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.shop.ShopBook;
import org.seamwright.shop.ShopTable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Takes a wrong entry out of the shop book. */
@Command(
    name = "drop",
    description = "Takes out an entry: one that is wrong is dropped and entered anew.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "Examples:",
      "  seamwright shop run drop 3",
      "  seamwright shop price drop 1",
      "  seamwright shop bottle drop 2",
      "  seamwright shop solution drop \"Demo gel\""
    })
final class ShopDropCommand implements Callable<Integer> {
  private final ShopTable table;

  @Parameters(paramLabel = "ENTRY", description = "Its number; of a solution, its name.")
  private String key;

  @Mixin private ShopAccess access;
  @Spec private CommandSpec spec;

  ShopDropCommand(ShopTable table) {
    this.table = table;
  }

  @Override
  public Integer call() throws InputException {
    try (ShopBook book = access.open()) {
      book.drop(table, key);
    }
    return access.told(spec.commandLine().getOut(), "Taken out.", Map.of("dropped", key));
  }
}
