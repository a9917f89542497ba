package org.seamwright.cli;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.shop.BottlesToBuy;
import org.seamwright.shop.Price;
import org.seamwright.shop.ShopBook;
import org.seamwright.shop.ShopException;
import org.seamwright.shop.ShopJson;
import org.seamwright.shop.ShopTable;
import org.seamwright.units.AmountException;
import org.seamwright.units.Amounts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Commands on the price list, and what to buy from it. */
final class ShopPriceCommands {
  private ShopPriceCommands() {}

  /**
   * An amount of metal or of solution.
   *
   * @param value g or ml
   * @param unit "g" or "ml"
   */
  private record Size(double value, String unit) {
    static Size of(String text) throws InputException {
      try {
        return new Size(Amounts.massG(text), "g");
      } catch (AmountException e) {
        return new Size(Amounts.volumeMl(text), "ml");
      }
    }
  }

  @Command(
      name = "add",
      description = "Enters a line of your price list.",
      mixinStandardHelpOptions = true,
      footer = {
        "",
        "Example, with invented figures:",
        "  seamwright shop price add --what \"Demo gold\" --size \"5 g\" --price 400 --currency EUR"
      })
  static final class Add implements Callable<Integer> {
    @Option(names = "--what", required = true, description = "What is sold; a solution's name.")
    private String what;

    @Option(names = "--size", required = true, description = "Metal or solution in it.")
    private String size;

    @Option(names = "--price", required = true, description = "Price of one, up to two decimals.")
    private BigDecimal price;

    @Option(names = "--currency", required = true, description = "As you write it.")
    private String currency;

    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      Size of = Size.of(size);
      long hundredths;
      try {
        hundredths = price.movePointRight(2).longValueExact();
      } catch (ArithmeticException e) {
        throw new ShopException(
            "--price", "", "it is finer than a hundredth", "Round it to two decimals.", e);
      }
      ShopAccess.positive("--price", price.doubleValue());
      ShopAccess.positive("--size", of.value());
      return access.enter(
          spec.commandLine().getOut(),
          "Price",
          book -> book.add(new Price(0, what, of.value(), of.unit(), hundredths, currency)));
    }
  }

  @Command(
      name = "list",
      description = "Lists your prices.",
      mixinStandardHelpOptions = true,
      footer = {"", "Example:", "  seamwright shop price list --json"})
  static final class ListAll implements Callable<Integer> {
    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      return access.list(
          spec.commandLine().getOut(),
          book -> book.prices(""),
          book -> ShopJson.rows(ShopTable.PRICES, book.rows(ShopTable.PRICES)),
          p -> p.id() + "  " + line(p));
    }
  }

  private static String line(Price p) {
    return p.what() + ", " + p.size() + " " + p.unit() + ": " + money(p.hundredths(), p.currency());
  }

  private static String money(long hundredths, String currency) {
    return BigDecimal.valueOf(hundredths, 2) + " " + currency;
  }

  @Command(
      name = "buy",
      description =
          "Says which bottles to buy: the cheapest that cover what is needed after stock.",
      mixinStandardHelpOptions = true,
      footer = {
        "",
        "Example, with invented figures:",
        "  seamwright shop buy --what \"Demo gold\" --need \"12 g\""
      })
  static final class Buy implements Callable<Integer> {
    @Option(names = "--what", required = true, description = "Name in price list and bottles.")
    private String what;

    @Option(names = "--need", required = true, description = "What the job takes, g or ml.")
    private String need;

    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      Size needed = Size.of(need);
      try (ShopBook book = access.open()) {
        List<Price> list = book.prices(what);
        if (list.stream().anyMatch(p -> !p.unit().equals(needed.unit()))) {
          throw new ShopException(
              "--need", "", "the price list has another unit", "Ask in the list's own unit.");
        }
        double stock =
            book.bottles().stream()
                .filter(b -> b.solution().equals(what))
                .mapToDouble(
                    b ->
                        needed.unit().equals("g")
                            ? b.remainingG()
                            : b.remainingG() / b.gPerL() * 1000)
                .sum();
        BottlesToBuy buy = BottlesToBuy.cheapest(needed.value() - stock, list);
        print(list, buy, stock, needed.unit());
      }
      return ExitCode.DONE;
    }

    private void print(List<Price> list, BottlesToBuy buy, double stock, String unit) {
      Map<String, Object> told = new LinkedHashMap<>();
      StringBuilder lines = new StringBuilder("In stock: " + stock + " " + unit + "\n");
      Map<String, Object> counts = new LinkedHashMap<>();
      for (int i = 0; i < list.size(); i++) {
        if (buy.counts().get(i) > 0) {
          lines.append(buy.counts().get(i)).append(" × ").append(line(list.get(i))).append('\n');
          counts.put(String.valueOf(list.get(i).id()), buy.counts().get(i));
        }
      }
      String currency = list.get(0).currency();
      lines.append("Together ").append(money(buy.hundredths(), currency)).append(", ");
      lines.append(buy.left()).append(' ').append(unit).append(" of it left over");
      told.put("unit", unit);
      told.put("inStock", stock);
      told.put("counts", counts);
      told.put("priceHundredths", buy.hundredths());
      told.put("currency", currency);
      told.put("amount", buy.amount());
      told.put("left", buy.left());
      access.told(spec.commandLine().getOut(), lines.toString(), told);
    }
  }
}
