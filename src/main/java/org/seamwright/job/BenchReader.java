package org.seamwright.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.seamwright.plating.BenchPace;
import org.seamwright.plating.Recipe;
import org.seamwright.plating.Step;
import org.seamwright.units.UnitSystem;

/** The pace at the bench, in a job file: reads and spells it. */
final class BenchReader {
  private BenchReader() {}

  static BenchPace read(JobNode node, Recipe recipe) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.BENCH);
    return new BenchPace(
        keys.get("handling", OptionalDouble.empty(), BenchReader::seconds),
        keys.get("secondsPerCm2", OptionalDouble.empty(), BenchReader::pace),
        keys.get("rinseHandling", OptionalDouble.empty(), BenchReader::seconds),
        keys.get("rinseSecondsPerCm2", OptionalDouble.empty(), BenchReader::pace),
        keys.get("flashPasses", OptionalInt.empty(), BenchReader::passes),
        keys.get("steps", List.of(), n -> steps(n, recipe)));
  }

  private static OptionalDouble seconds(JobNode node) throws JobFileException {
    return OptionalDouble.of(node.amount(AmountKind.TIME, Range.ZERO_UP));
  }

  private static OptionalDouble pace(JobNode node) throws JobFileException {
    return OptionalDouble.of(node.number(Range.ZERO_UP));
  }

  private static OptionalInt passes(JobNode node) throws JobFileException {
    return OptionalInt.of(node.whole(Range.PASSES));
  }

  private static List<BenchPace.OfStep> steps(JobNode node, Recipe recipe) throws JobFileException {
    List<BenchPace.OfStep> steps = node.list(n -> step(n, recipe));
    List<String> named = new ArrayList<>();
    for (BenchPace.OfStep step : steps) {
      if (named.contains(step.step())) {
        throw node.refuse(
            "The step \"" + step.step() + "\" stands twice", "Put its figures together.");
      }
      named.add(step.step());
    }
    return steps;
  }

  private static BenchPace.OfStep step(JobNode node, Recipe recipe) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.BENCH_STEP);
    Map<String, String> known = new LinkedHashMap<>();
    BenchPace.wetSteps(recipe).forEach(name -> known.put(name, name));
    String name = keys.get("step", n -> n.oneOf(known));
    OptionalDouble pace =
        keys.get(
            "secondsPerCm2",
            OptionalDouble.empty(),
            n -> {
              if (isFlash(recipe, name)) {
                throw n.refuse(
                    "The time of the flash follows from its thickness",
                    "Set plating.secondsPerCm2PerUm instead, or the number of passes.");
              }
              return pace(n);
            });
    return new BenchPace.OfStep(
        name,
        keys.get("handling", OptionalDouble.empty(), BenchReader::seconds),
        pace,
        keys.get("passes", OptionalInt.empty(), BenchReader::passes));
  }

  private static boolean isFlash(Recipe recipe, String name) {
    return recipe.steps().stream()
        .anyMatch(s -> s.kind() == Step.Kind.FLASH && s.name().equals(name));
  }

  /** What differs from the recipe; empty if nothing does. */
  static Map<String, Object> tree(BenchPace bench, UnitSystem display) {
    Map<String, Object> tree = new LinkedHashMap<>();
    time(tree, "handling", bench.handlingSeconds(), display);
    bench.secondsPerCm2().ifPresent(s -> tree.put("secondsPerCm2", s));
    time(tree, "rinseHandling", bench.rinseHandlingSeconds(), display);
    bench.rinseSecondsPerCm2().ifPresent(s -> tree.put("rinseSecondsPerCm2", s));
    bench.flashPasses().ifPresent(p -> tree.put("flashPasses", p));
    if (!bench.steps().isEmpty()) {
      tree.put("steps", bench.steps().stream().map(s -> step(s, display)).toList());
    }
    return tree;
  }

  private static void time(
      Map<String, Object> tree, String key, OptionalDouble seconds, UnitSystem display) {
    seconds.ifPresent(s -> tree.put(key, AmountKind.TIME.write(s, display)));
  }

  private static Map<String, Object> step(BenchPace.OfStep step, UnitSystem display) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("step", step.step());
    time(tree, "handling", step.handlingSeconds(), display);
    step.secondsPerCm2().ifPresent(s -> tree.put("secondsPerCm2", s));
    step.passes().ifPresent(p -> tree.put("passes", p));
    return tree;
  }
}
