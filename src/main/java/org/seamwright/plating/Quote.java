package org.seamwright.plating;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * A price, line by line. Each line is rounded to hundredths, halves away from zero, and the total
 * is the sum of the rounded lines, so that the paper adds up.
 *
 * @param currency as the shop writes it
 * @param lines in order; the last before tax is the net price
 * @param net price before tax
 * @param tax tax on it
 * @param total what the customer pays
 * @param range what the total may come to with the spread of loss and rate: prices before the job
 *     and after it, compared
 * @param byThickness the same piece at other thicknesses, thinnest first
 */
public record Quote(
    String currency,
    List<Line> lines,
    BigDecimal net,
    BigDecimal tax,
    BigDecimal total,
    Band range,
    List<AtThickness> byThickness) {
  private static final double SECONDS_PER_HOUR = 3600;
  private static final double MM_PER_METRE = 1000;
  private static final double ML_PER_LITRE = 1000;

  /** Copies the lists. */
  public Quote {
    lines = List.copyOf(lines);
    byThickness = List.copyOf(byThickness);
  }

  /**
   * One line.
   *
   * @param what "Labour"
   * @param how how it came about: "3.2 h at 60 per hour"
   * @param amount money
   */
  public record Line(String what, String how, BigDecimal amount) {}

  /**
   * The price at a thickness.
   *
   * @param thicknessUm flash and build together, µm
   * @param metalG metal to have ready, g
   * @param seconds work at the piece, s
   * @param total what the customer pays
   */
  public record AtThickness(double thicknessUm, double metalG, double seconds, BigDecimal total) {}

  /**
   * What is masked.
   *
   * @param tapeMm tape, mm
   * @param lacquerMl lacquer, ml
   */
  public record Masking(double tapeMm, double lacquerMl) {}

  /**
   * Prices a job.
   *
   * @param sections areas by section
   * @param settings deposit and rates of work
   * @param masking tape and lacquer used
   * @param rates prices
   */
  public static Quote of(
      List<SectionArea> sections, PlatingSettings settings, Masking masking, QuoteRates rates) {
    Quote quote = priced(PlatingArithmetic.amounts(sections, settings), masking, rates);
    List<AtThickness> others = new ArrayList<>();
    for (double um : thicknesses(settings)) {
      PlatingArithmetic.Amounts at =
          PlatingArithmetic.amounts(sections, settings.withThicknessUm(um));
      others.add(
          new AtThickness(
              um, at.totals().goldG(), at.totals().seconds(), priced(at, masking, rates).total()));
    }
    return new Quote(
        quote.currency, quote.lines, quote.net, quote.tax, quote.total, quote.range, others);
  }

  /** The job's own; for gold those of the standards' classes, for another metal half and twice. */
  private static List<Double> thicknesses(PlatingSettings settings) {
    double own = settings.thicknessUm();
    if (!settings.deposit().isGold()) {
      return Stream.of(own / 2, own, 2 * own).filter(um -> um > settings.flashUm()).toList();
    }
    return Stream.concat(
            Stream.of(own),
            ThicknessClasses.all().stream().map(ThicknessClasses.ThicknessClass::leastUm))
        .distinct()
        .sorted()
        .toList();
  }

  private static Quote priced(
      PlatingArithmetic.Amounts amounts, Masking masking, QuoteRates rates) {
    double hours = amounts.totals().seconds() / SECONDS_PER_HOUR + rates.extraHours();
    double metalG = amounts.totals().goldG();
    List<Line> lines = new ArrayList<>();
    add(
        lines,
        "Labour",
        Figures.of(hours) + " h at " + Figures.of(rates.labourPerHour()) + " an hour",
        hours * rates.labourPerHour());
    add(
        lines,
        "Metal",
        Figures.of(metalG) + " g at " + Figures.of(rates.goldPerG()) + " a gram",
        metalG * rates.goldPerG());
    double tape = masking.tapeMm() / MM_PER_METRE;
    add(
        lines,
        "Tape",
        Figures.of(tape) + " m at " + Figures.of(rates.tapePerMetre()) + " a metre",
        tape * rates.tapePerMetre());
    double lacquer = masking.lacquerMl() / ML_PER_LITRE;
    add(
        lines,
        "Lacquer",
        Figures.of(lacquer) + " l at " + Figures.of(rates.lacquerPerLitre()) + " a litre",
        lacquer * rates.lacquerPerLitre());
    add(lines, "Other materials", "as agreed", rates.materials());
    BigDecimal sum = sum(lines);
    addShare(lines, "Overhead", rates.overhead(), sum);
    addShare(lines, "Margin", rates.margin(), sum(lines));
    BigDecimal minimum = money(rates.minimum());
    if (sum(lines).compareTo(minimum) < 0) {
      lines.add(
          new Line(
              "Up to the least price",
              "least price " + minimum.toPlainString(),
              minimum.subtract(sum(lines))));
    }
    BigDecimal net = sum(lines);
    BigDecimal tax = share(net, rates.tax());
    return new Quote(
        rates.currency(), lines, net, tax, net.add(tax), range(amounts, masking, rates), List.of());
  }

  /** P10 and P90 of the total, unrounded in between. */
  private static Band range(PlatingArithmetic.Amounts amounts, Masking masking, QuoteRates rates) {
    double shares = (1 + rates.overhead()) * (1 + rates.margin());
    double fixed =
        (amounts.fixedSeconds() / SECONDS_PER_HOUR + rates.extraHours()) * rates.labourPerHour()
            + amounts.laidG() * rates.goldPerG()
            + masking.tapeMm() / MM_PER_METRE * rates.tapePerMetre()
            + masking.lacquerMl() / ML_PER_LITRE * rates.lacquerPerLitre()
            + rates.materials();
    Band net =
        Band.of(
            new SpreadSum(
                shares * fixed,
                shares * amounts.laidG() * rates.goldPerG(),
                amounts.settings().loss(),
                shares * amounts.cm2Um() / SECONDS_PER_HOUR * rates.labourPerHour(),
                amounts.settings().pace()));
    return new Band(total(net.p10(), rates), total(net.p90(), rates));
  }

  private static double total(double net, QuoteRates rates) {
    return money(Math.max(net, rates.minimum()) * (1 + rates.tax())).doubleValue();
  }

  private static void add(List<Line> lines, String what, String how, double amount) {
    if (amount > 0) {
      lines.add(new Line(what, how, money(amount)));
    }
  }

  private static void addShare(List<Line> lines, String what, double share, BigDecimal of) {
    if (share > 0) {
      lines.add(new Line(what, Figures.of(100 * share) + " % of the above", share(of, share)));
    }
  }

  private static BigDecimal share(BigDecimal of, double share) {
    return of.multiply(BigDecimal.valueOf(share)).setScale(2, RoundingMode.HALF_UP);
  }

  private static BigDecimal money(double amount) {
    return BigDecimal.valueOf(amount).setScale(2, RoundingMode.HALF_UP);
  }

  private static BigDecimal sum(List<Line> lines) {
    return lines.stream().map(Line::amount).reduce(BigDecimal.ZERO.setScale(2), BigDecimal::add);
  }
}
