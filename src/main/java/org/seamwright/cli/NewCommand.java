package org.seamwright.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.JobDefaults;
import org.seamwright.job.JobFile;
import org.seamwright.job.JobFileException;
import org.seamwright.job.MeasureJson;
import org.seamwright.job.Piece;
import org.seamwright.job.UnitUnknownException;
import org.seamwright.plating.Recipe;
import org.seamwright.plating.Recipes;
import org.seamwright.region.Treatment;
import org.seamwright.units.UnitSystem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes a job for a mesh. */
@Command(
    name = "new",
    description = "Writes a job for a mesh, with everything plated and the usual settings.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "The job is a text file; docs/job-file.md says what can stand in it.",
      "",
      "Examples:",
      "  seamwright new cup.stl --unit mm --out cup.json --piece \"Trophy cup\"",
      "  seamwright new rim.obj --known-length \"17 in\" --recipe low-carbon-steel --out rim.json"
    })
final class NewCommand implements Callable<Integer> {
  @Parameters(paramLabel = "MESH", description = ScaleOptions.MESH_FILE)
  private Path mesh;

  @Mixin private ScaleOptions scaleOptions;

  @Option(
      names = "--out",
      paramLabel = "JOB",
      required = true,
      description = "Job file to write. It must not exist yet.")
  private Path out;

  @Option(
      names = "--piece",
      paramLabel = "NAME",
      description = "What the piece is called; the name of the mesh file if left out.")
  private String piece;

  @Option(
      names = "--recipe",
      paramLabel = "ID",
      defaultValue = JobDefaults.RECIPE,
      description = "Steps for the base metal (if left out: ${DEFAULT-VALUE}).")
  private String recipe;

  @Option(
      names = "--display",
      paramLabel = "UNITS",
      defaultValue = "metric",
      description = "Units to show figures in: metric or inch (if left out: ${DEFAULT-VALUE}).")
  private UnitSystem display;

  @Option(names = "--json", description = "Print the figures of the mesh as JSON.")
  private boolean json;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    Job.Scale scale = scaleOptions.scale();
    Recipe steps = recipe();
    if (Files.exists(out)) {
      throw new JobFileException(
          out.toString(),
          "",
          "There is such a file already",
          "Choose another name, or delete it first.");
    }
    Piece read;
    try {
      read = Piece.read(mesh, scale, Progress.NONE);
    } catch (UnitUnknownException unknown) {
      return ScaleOptions.askForUnit(unknown, spec.commandLine().getErr());
    }
    Job job = read.recordedIn(job(scale));
    JobFile.write(job, out);
    PrintWriter results = spec.commandLine().getOut();
    if (json) {
      results.print(Json.forTerminal(MeasureJson.text(mesh.toString(), scale, read)));
    } else {
      MeasureCommand.row(results, "Job", out.toString());
      MeasureCommand.row(results, "Piece", job.piece() + ", " + Piece.size(read.survey().bounds()));
      MeasureCommand.row(results, "Base metal", steps.base() + " (recipe " + steps.id() + ")");
      read.notices().forEach(n -> MeasureCommand.row(results, "Note", n.text()));
    }
    results.flush();
    return ExitCode.DONE;
  }

  private Recipe recipe() {
    List<Recipe> all = Recipes.all();
    return all.stream()
        .filter(r -> r.id().equals(recipe))
        .findFirst()
        .orElseThrow(
            () ->
                scaleOptions.wrong(
                    "There is no recipe \""
                        + recipe
                        + "\". Known: "
                        + String.join(", ", all.stream().map(Recipe::id).toList())
                        + "."));
  }

  private Job job(Job.Scale scale) {
    String file = fromFolderOf(out, mesh);
    return new Job(
        piece == null ? JobDefaults.piece(file) : piece,
        "",
        new Job.MeshSource(file, "", scale),
        Treatment.PLATE,
        List.of(),
        JobDefaults.sections(),
        JobDefaults.plating(recipe),
        JobDefaults.masking(),
        display);
  }

  /** Path of the mesh as a job in that place names it; whole if they share no root. */
  private static String fromFolderOf(Path job, Path mesh) {
    Path folder = job.toAbsolutePath().normalize().getParent();
    Path whole = mesh.toAbsolutePath().normalize();
    boolean related = folder != null && folder.getRoot().equals(whole.getRoot());
    return (related ? folder.relativize(whole) : whole).toString().replace('\\', '/');
  }
}
