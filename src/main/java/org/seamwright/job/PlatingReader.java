package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.plating.BenchPace;
import org.seamwright.plating.Deposits;
import org.seamwright.plating.Recipe;
import org.seamwright.plating.Recipes;
import org.seamwright.plating.Solution;
import org.seamwright.plating.Spread;
import org.seamwright.plating.Tool;
import org.seamwright.units.UnitSystem;

/** Reads {@code plating}. */
final class PlatingReader {
  /** Words for the forms of a solution. */
  static final Map<String, Solution.Form> FORMS = new LinkedHashMap<>();

  static {
    FORMS.put("liquid", Solution.Form.LIQUID);
    FORMS.put("gel", Solution.Form.GEL);
  }

  private PlatingReader() {}

  static Job.PlatingRules read(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.PLATING);
    Optional<Recipe> own =
        keys.get(
            "recipe",
            n ->
                n.value() instanceof JsonValue.Members
                    ? Optional.of(RecipeJson.read(n))
                    : Optional.empty());
    String recipe = own.isPresent() ? own.get().id() : keys.get("recipe", n -> n.oneOf(recipes()));
    Job.PlatingRules usual = JobDefaults.plating(recipe);
    double flashUm = keys.get("flash", usual.flashUm(), PlatingReader::thickness);
    // A written flash thicker than the usual thickness raises it: the flash counts towards it.
    double thicknessUm =
        keys.get(
            "thickness",
            Math.max(usual.thicknessUm(), flashUm),
            n -> {
              double um = thickness(n);
              if (um < flashUm) {
                throw n.refuse(
                    "The thickness is below that of the flash alone",
                    "The flash counts towards it: write at least "
                        + AmountKind.THICKNESS.write(flashUm, UnitSystem.METRIC)
                        + ", or a thinner flash.");
              }
              if (um > flashUm && own.isPresent() && !RecipeJson.builds(own.get())) {
                throw n.refuse(
                    "The recipe written here has no step of the kind \"build\"",
                    "Add one, or write a thickness equal to the flash.");
              }
              return um;
            });
    return new Job.PlatingRules(
        recipe,
        own,
        keys.get("deposit", usual.deposit(), n -> n.oneOf(deposits())),
        flashUm,
        thicknessUm,
        keys.get("loss", usual.loss(), n -> spread(n, Range.LOSS_SHARE)),
        keys.get(
            "solution",
            usual.solutionGPerL(),
            n -> n.amount(AmountKind.CONCENTRATION, Range.ABOVE_ZERO)),
        keys.get("usable", usual.usableShare(), n -> n.number(Range.SHARE)),
        keys.get("secondsPerCm2PerUm", usual.pace(), n -> spread(n, Range.ABOVE_ZERO)),
        keys.get("efficiency", usual.efficiency(), n -> n.number(Range.SHARE)),
        keys.get("tool", Tool.UNKNOWN, PlatingReader::tool),
        keys.get("hold", Optional.empty(), n -> Optional.of(hold(n))),
        keys.get(
            "bench",
            BenchPace.AS_IN_RECIPE,
            n -> BenchReader.read(n, own.orElseGet(() -> known(recipe)))),
        keys.get("sheet", Solution.UNKNOWN, PlatingReader::sheet));
  }

  private static Solution sheet(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.SHEET);
    OptionalDouble from = keys.get("fromVolts", OptionalDouble.empty(), PlatingReader::number);
    OptionalDouble to = keys.get("toVolts", from, PlatingReader::number);
    if (from.isPresent() != to.isPresent()
        || (from.isPresent() && to.getAsDouble() < from.getAsDouble())) {
      throw node.refuse(
          "\"fromVolts\" and \"toVolts\" are no range of voltages",
          "Write both, the lower one as \"fromVolts\".");
    }
    return new Solution(
        keys.get("name", "", JobNode::text),
        keys.get("form", Solution.Form.LIQUID, n -> n.oneOf(FORMS)),
        from,
        to,
        keys.get("anode", "", JobNode::text),
        keys.get("keep", "", JobNode::text));
  }

  /** A number, or the least, likely and largest. */
  private static Spread spread(JobNode node, Range range) throws JobFileException {
    if (!(node.value() instanceof JsonValue.Members)) {
      return Spread.point(node.number(range));
    }
    JobNode.Keys keys = node.keys(JobKeys.SPREAD);
    double low = keys.get("low", n -> n.number(range));
    double likely = keys.get("likely", n -> n.number(range));
    double high = keys.get("high", n -> n.number(range));
    if (!(low <= likely && likely <= high)) {
      throw node.refuse(
          "\"low\", \"likely\" and \"high\" do not rise", "Write them in rising order.");
    }
    return new Spread(low, likely, high);
  }

  private static Tool tool(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.TOOL);
    return new Tool(
        keys.get("dip", OptionalDouble.empty(), n -> amount(n, AmountKind.VOLUME)),
        keys.get("contact", OptionalDouble.empty(), n -> amount(n, AmountKind.AREA)),
        keys.get("amperesPerCm2", OptionalDouble.empty(), PlatingReader::number),
        keys.get("ampHoursPerLitre", OptionalDouble.empty(), PlatingReader::number));
  }

  private static Job.Hold hold(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.HOLD);
    return new Job.Hold(
        keys.get("up", Vector3D.of(0, 0, 1), JobNode::direction),
        keys.get("steeper", n -> n.number(Range.CREASE)));
  }

  private static OptionalDouble amount(JobNode node, AmountKind kind) throws JobFileException {
    return OptionalDouble.of(node.amount(kind, Range.ABOVE_ZERO));
  }

  private static OptionalDouble number(JobNode node) throws JobFileException {
    return OptionalDouble.of(node.number(Range.ABOVE_ZERO));
  }

  private static double thickness(JobNode node) throws JobFileException {
    return node.amount(AmountKind.THICKNESS, Range.ABOVE_ZERO);
  }

  private static Recipe known(String id) {
    return Recipes.all().stream().filter(r -> r.id().equals(id)).findFirst().orElseThrow();
  }

  private static Map<String, String> recipes() {
    Map<String, String> ids = new LinkedHashMap<>();
    Recipes.all().forEach(r -> ids.put(r.id(), r.id()));
    return ids;
  }

  private static Map<String, String> deposits() {
    Map<String, String> ids = new LinkedHashMap<>();
    Deposits.all().forEach(d -> ids.put(d.id(), d.id()));
    return ids;
  }
}
