package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.plating.Band;
import org.seamwright.plating.Quote;
import org.seamwright.plating.QuoteRates;
import org.seamwright.units.UnitSystem;

/** What the shop charges, in the job file; the price, in plan.json. */
public final class QuoteJson {
  private QuoteJson() {}

  /** The keys that there are, in the order of the job file. */
  public static List<String> keys() {
    return JobKeys.QUOTE;
  }

  /**
   * Reads prices that were typed.
   *
   * @param typed key to value, as typed
   * @throws JobFileException if a key is unknown, the currency is missing or a value does not fit
   */
  public static QuoteRates typed(Map<String, String> typed) throws JobFileException {
    Map<String, JsonValue> values = new LinkedHashMap<>();
    typed.forEach((key, value) -> values.put(key, new JsonValue.Typed(value)));
    return read(new JobNode("", "", new JsonValue.Members(JsonValue.NO_LINE, values)));
  }

  /**
   * Prices that a job has, with some of them typed anew; what is not typed stays.
   *
   * @param before the job's prices
   * @param typed key to value, as typed
   * @throws JobFileException if a key is unknown or a value does not fit
   */
  public static QuoteRates typed(QuoteRates before, Map<String, String> typed)
      throws JobFileException {
    Map<String, String> all = new LinkedHashMap<>();
    tree(before)
        .forEach(
            (key, value) ->
                all.put(key, value instanceof Double d ? PlainNumber.of(d) : value.toString()));
    all.putAll(typed);
    return typed(all);
  }

  static QuoteRates read(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.QUOTE);
    return new QuoteRates(
        keys.get("currency", JobNode::text),
        money(keys, "labourPerHour"),
        keys.get("extraTime", 0.0, n -> n.amount(AmountKind.TIME, Range.ZERO_UP)) / 3600,
        money(keys, "metalPerGram"),
        money(keys, "tapePerMetre"),
        money(keys, "lacquerPerLitre"),
        money(keys, "materials"),
        share(keys, "overhead"),
        share(keys, "margin"),
        money(keys, "minimum"),
        share(keys, "tax"),
        keys.get("validDays", 0, n -> n.whole(Range.DAYS)),
        keys.get("onCustomerSheet", true, JobNode::yes));
  }

  private static double money(JobNode.Keys keys, String key) throws JobFileException {
    return keys.get(key, 0.0, n -> n.number(Range.ZERO_UP));
  }

  private static double share(JobNode.Keys keys, String key) throws JobFileException {
    return keys.get(key, 0.0, n -> n.number(Range.LOSS_SHARE));
  }

  static Map<String, Object> tree(QuoteRates rates) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("currency", rates.currency());
    tree.put("labourPerHour", rates.labourPerHour());
    tree.put("extraTime", AmountKind.TIME.write(rates.extraHours() * 3600, UnitSystem.METRIC));
    tree.put("metalPerGram", rates.goldPerG());
    tree.put("tapePerMetre", rates.tapePerMetre());
    tree.put("lacquerPerLitre", rates.lacquerPerLitre());
    tree.put("materials", rates.materials());
    tree.put("overhead", rates.overhead());
    tree.put("margin", rates.margin());
    tree.put("minimum", rates.minimum());
    tree.put("tax", rates.tax());
    tree.put("validDays", rates.validDays());
    tree.put("onCustomerSheet", rates.onSheet());
    return tree;
  }

  /** P10 and P90 as they stand in plan.json. */
  static Map<String, Object> band(Band band) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("p10", band.p10());
    tree.put("p90", band.p90());
    return tree;
  }

  /** A price as it stands in plan.json. */
  static Map<String, Object> priced(Quote quote) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("currency", quote.currency());
    tree.put(
        "lines",
        quote.lines().stream()
            .map(
                line -> {
                  Map<String, Object> entry = new LinkedHashMap<>();
                  entry.put("what", line.what());
                  entry.put("how", line.how());
                  entry.put("amount", line.amount().doubleValue());
                  return entry;
                })
            .toList());
    tree.put("net", quote.net().doubleValue());
    tree.put("tax", quote.tax().doubleValue());
    tree.put("total", quote.total().doubleValue());
    tree.put("totalBand", band(quote.range()));
    tree.put(
        "byThickness",
        quote.byThickness().stream()
            .map(
                at -> {
                  Map<String, Object> entry = new LinkedHashMap<>();
                  entry.put("thicknessUm", at.thicknessUm());
                  entry.put("goldG", at.metalG());
                  entry.put("seconds", at.seconds());
                  entry.put("total", at.total().doubleValue());
                  return entry;
                })
            .toList());
    return tree;
  }
}
