package org.seamwright.cli;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.seamwright.job.RecipeJson;
import org.seamwright.plating.PlatingException;
import org.seamwright.plating.Recipe;
import org.seamwright.plating.Recipes;
import org.seamwright.plating.Step;
import org.seamwright.plating.Underlayers;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The recipes that are known, and each of them in the form that a job file takes. */
@Command(
    name = "recipe",
    description = "Lists the recipes by base metal, or prints one, to read or to change.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "What --json prints may be changed and put into a job file in place of the recipe's name.",
      "Safety data sheets, local codes and licensed practice go before any recipe.",
      "",
      "Examples:",
      "  seamwright recipe",
      "  seamwright recipe brass",
      "  seamwright recipe brass --json",
      "  seamwright recipe silver --nickel-barrier",
      "  seamwright recipe brass --level copper --json"
    })
final class RecipeCommand implements Callable<Integer> {
  @Parameters(arity = "0..1", paramLabel = "ID", description = "Recipe; else all are listed.")
  private Optional<String> id;

  @Option(
      names = "--level",
      paramLabel = "METAL",
      description = "Fill scratches first and polish: copper or nickel.")
  private Optional<Underlayers.Levelling> level;

  @Option(
      names = "--nickel-barrier",
      description = "Lay nickel right before the flash, where the recipe has none.")
  private boolean barrier;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws PlatingException {
    PrintWriter out = spec.commandLine().getOut();
    if (id.isPresent()) {
      Recipe recipe = changed(Recipes.byId(id.get()));
      if (json) {
        out.print(Json.forTerminal(RecipeJson.text(recipe)));
      } else {
        print(recipe, out);
      }
    } else if (level.isPresent() || barrier) {
      throw new CommandLine.ParameterException(
          spec.commandLine(), "--level and --nickel-barrier need the ID of a recipe");
    } else if (json) {
      out.print(Json.forTerminal(RecipeJson.text(Recipes.all())));
    } else {
      Recipes.all().forEach(r -> MeasureCommand.row(out, r.id(), r.base()));
    }
    out.flush();
    return ExitCode.DONE;
  }

  private Recipe changed(Recipe recipe) {
    Recipe barred = barrier ? Underlayers.withNickelBarrier(recipe) : recipe;
    return level.map(with -> Underlayers.levelled(barred, with)).orElse(barred);
  }

  private static void print(Recipe recipe, PrintWriter out) {
    out.println(recipe.base());
    int number = 1;
    for (Step step : recipe.steps()) {
      out.println();
      out.println(number++ + ". " + step.name());
      line(out, step.purpose());
      line(out, step.volts() + (step.polarity().isEmpty() ? "" : ", " + step.polarity()));
      line(out, pace(step));
      line(out, "Done: ", step.done());
      line(out, "If not: ", step.wrong());
      line(out, "Caution: ", step.caution());
      line(out, "Source: ", step.source());
    }
    out.println();
    recipe.notes().forEach(note -> out.println("- " + note));
  }

  private static String pace(Step step) {
    String handling = Figures.number(step.handlingSeconds()) + " s of handling";
    return switch (step.kind()) {
      case FLASH, BUILD -> "Time by thickness; " + handling;
      case DRY_PREPARATION, WET, FINISH ->
          step.passes()
              + (step.passes() == 1 ? " pass of " : " passes of ")
              + Figures.number(step.secondsPerCm2())
              + " s/cm²; "
              + handling;
    };
  }

  private static void line(PrintWriter out, String label, String text) {
    if (!text.isEmpty()) {
      line(out, label + text);
    }
  }

  private static void line(PrintWriter out, String text) {
    if (!text.isEmpty()) {
      out.println("   " + text);
    }
  }
}
