package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.plating.Recipe;
import org.seamwright.plating.Step;
import org.seamwright.units.UnitSystem;

/** A recipe written out in the job file, step by step, in place of the name of a known one. */
public final class RecipeJson {
  private static final Map<String, Step.Kind> KINDS = new LinkedHashMap<>();

  static {
    KINDS.put("before", Step.Kind.DRY_PREPARATION);
    KINDS.put("wet", Step.Kind.WET);
    KINDS.put("flash", Step.Kind.FLASH);
    KINDS.put("build", Step.Kind.BUILD);
    KINDS.put("after", Step.Kind.FINISH);
  }

  private RecipeJson() {}

  /** A recipe as JSON text, ready to be edited and put into a job. */
  public static String text(Recipe recipe) {
    return JsonText.of(tree(recipe));
  }

  /** Several of them, as a list under {@code recipes}. */
  public static String text(List<Recipe> recipes) {
    return JsonText.of(Map.of("recipes", recipes.stream().map(RecipeJson::tree).toList()));
  }

  static boolean builds(Recipe recipe) {
    return recipe.steps().stream().anyMatch(s -> s.kind() == Step.Kind.BUILD);
  }

  static Recipe read(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.RECIPE);
    String base = keys.get("base", RecipeJson::named);
    List<Step> steps = keys.get("steps", n -> n.list(RecipeJson::step));
    check(node, steps, Step.Kind.FLASH, "flash", false);
    check(node, steps, Step.Kind.BUILD, "build", true);
    inOrder(node, steps);
    return new Recipe(
        keys.get("id", "own", RecipeJson::named),
        base,
        keys.get("copper", false, JobNode::yes),
        steps,
        keys.get("notes", List.of(), n -> n.list(JobNode::text)));
  }

  private static void check(
      JobNode node, List<Step> steps, Step.Kind kind, String word, boolean noneIsFine)
      throws JobFileException {
    long found = steps.stream().filter(s -> s.kind() == kind).count();
    if (found > 1 || (found == 0 && !noneIsFine)) {
      throw node.refuse(
          "The recipe has " + found + " steps of the kind \"" + word + "\"",
          "Give exactly one step that kind" + (noneIsFine ? ", or none." : "."));
    }
  }

  /** Before, wet, flash, build, after: the arithmetic of wetness rests on this order. */
  private static void inOrder(JobNode node, List<Step> steps) throws JobFileException {
    for (int i = 1; i < steps.size(); i++) {
      if (steps.get(i).kind().compareTo(steps.get(i - 1).kind()) < 0) {
        throw node.refuse(
            "The step \""
                + steps.get(i).name()
                + "\" of the kind \""
                + JobKeys.word(KINDS, steps.get(i).kind())
                + "\" follows one of the kind \""
                + JobKeys.word(KINDS, steps.get(i - 1).kind())
                + "\"",
            "Put the kinds in the order " + String.join(", ", KINDS.keySet()) + ".");
      }
    }
  }

  private static Step step(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.STEP);
    return new Step(
        keys.get("name", RecipeJson::named),
        keys.get("purpose", "", JobNode::text),
        keys.get("kind", n -> n.oneOf(KINDS)),
        keys.get("volts", "", JobNode::text),
        keys.get("polarity", "", JobNode::text),
        keys.get("secondsPerCm2", 0.0, n -> n.number(Range.ZERO_UP)),
        keys.get("passes", 1, n -> n.whole(Range.COUNT)),
        keys.get("handling", 0.0, n -> n.amount(AmountKind.TIME, Range.ZERO_UP)),
        keys.get("done", "", JobNode::text),
        keys.get("wrong", "", JobNode::text),
        keys.get("caution", "", JobNode::text),
        keys.get("source", "shop setting", JobNode::text));
  }

  private static String named(JobNode node) throws JobFileException {
    String text = node.text();
    if (text.isBlank()) {
      throw node.refuse("The name is empty", "Write a short name.");
    }
    return text;
  }

  static Map<String, Object> tree(Recipe recipe) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("id", recipe.id());
    tree.put("base", recipe.base());
    tree.put("copper", recipe.copperBearing());
    tree.put("steps", recipe.steps().stream().map(RecipeJson::tree).toList());
    tree.put("notes", recipe.notes());
    return tree;
  }

  private static Map<String, Object> tree(Step step) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("name", step.name());
    tree.put("purpose", step.purpose());
    tree.put("kind", JobKeys.word(KINDS, step.kind()));
    tree.put("volts", step.volts());
    tree.put("polarity", step.polarity());
    tree.put("secondsPerCm2", step.secondsPerCm2());
    tree.put("passes", step.passes());
    tree.put("handling", AmountKind.TIME.write(step.handlingSeconds(), UnitSystem.METRIC));
    tree.put("done", step.done());
    tree.put("wrong", step.wrong());
    tree.put("caution", step.caution());
    tree.put("source", step.source());
    return tree;
  }
}
