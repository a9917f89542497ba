package org.seamwright.cli;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.shop.BottlesToBuy;
import org.seamwright.shop.Price;
import org.seamwright.shop.ShopBook;
import org.seamwright.shop.ShopException;
import org.seamwright.shop.ShopJson;
import org.seamwright.shop.ShopSolution;
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

    @Option(
        names = "--need",
        required = true,
        description = "What the job takes: grams of metal to have ready, or ml of solution.")
    private String need;

    @Option(
        names = "--usable",
        description =
            "Share of the metal that can be laid down, to 1; else that of the solution in the book."
                + " Grams are divided by it, ml hold it already.")
    private Optional<Double> usable;

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
        double usableShare = usableShare(book);
        double wanted = needed.unit().equals("g") ? needed.value() / usableShare : needed.value();
        double stock =
            book.bottles().stream()
                .filter(b -> b.solution().equals(what))
                .mapToDouble(
                    b ->
                        needed.unit().equals("g")
                            ? b.remainingG()
                            : b.remainingG() / b.gPerL() * 1000)
                .sum();
        BottlesToBuy buy = BottlesToBuy.cheapest(wanted - stock, list);
        print(list, buy, wanted, stock, needed.unit());
      }
      return ExitCode.DONE;
    }

    /** Solution is spent before all its metal is laid down, so more must be bought than lands. */
    private double usableShare(ShopBook book) throws ShopException {
      double share =
          usable.isPresent()
              ? usable.get()
              : book.solutions().stream()
                  .filter(s -> s.sheet().name().equals(what))
                  .mapToDouble(ShopSolution::usableShare)
                  .findFirst()
                  .orElse(1);
      if (!(share > 0 && share <= 1)) {
        throw new ShopException("--usable", "", "a share is above 0, to 1", "Write 0.8 for 80 %.");
      }
      return share;
    }

    private void print(
        List<Price> list, BottlesToBuy buy, double wanted, double stock, String unit) {
      Map<String, Object> told = new LinkedHashMap<>();
      StringBuilder lines = new StringBuilder();
      lines.append("Needed in bottles: ").append(Figures.number(wanted)).append(' ').append(unit);
      lines
          .append("; in stock: ")
          .append(Figures.number(stock))
          .append(' ')
          .append(unit)
          .append('\n');
      Map<String, Object> counts = new LinkedHashMap<>();
      for (int i = 0; i < list.size(); i++) {
        if (buy.counts().get(i) > 0) {
          lines.append(buy.counts().get(i)).append(" × ").append(line(list.get(i))).append('\n');
          counts.put(String.valueOf(list.get(i).id()), buy.counts().get(i));
        }
      }
      String currency = list.get(0).currency();
      lines.append("Together ").append(money(buy.hundredths(), currency)).append(", ");
      double left = stock + buy.amount() - wanted;
      lines.append(Figures.number(left)).append(' ').append(unit).append(" left over");
      told.put("unit", unit);
      told.put("needed", wanted);
      told.put("inStock", stock);
      told.put("counts", counts);
      told.put("priceHundredths", buy.hundredths());
      told.put("currency", currency);
      told.put("amount", buy.amount());
      told.put("left", left);
      access.told(spec.commandLine().getOut(), lines.toString(), told);
    }
  }
}
