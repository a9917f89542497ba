package org.seamwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.MeasureJson;
import org.seamwright.job.Piece;
import org.seamwright.job.UnitUnknownException;
import org.seamwright.measure.Revolution;
import org.seamwright.measure.Survey;
import org.seamwright.measure.TurnSymmetry;
import org.seamwright.meshfile.MeshDocument;
import org.seamwright.meshfile.MeshFiles;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Tells size, area and faults of a mesh. */
@Command(
    name = "measure",
    description = "Tells size, area and faults of a mesh file.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "STL, OBJ and PLY do not say what unit they are in, so --unit or --known-length must.",
      "Without either, the size in each likely unit is shown and nothing is measured.",
      "GLB and glTF are in metres, 3MF names its unit: that is taken where nothing is given.",
      "",
      "Examples:",
      "  seamwright measure cup.stl --unit mm",
      "  seamwright measure rim.obj --known-length \"17 in\" --along x --json",
      "  seamwright measure rim.obj --unit mm --axis"
    })
final class MeasureCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = ScaleOptions.MESH_FILE)
  private Path file;

  @Mixin private ScaleOptions scaleOptions;

  @Option(
      names = "--tip",
      paramLabel = "LENGTH",
      converter = ScaleOptions.LengthConverter.class,
      description =
          "Length of the brush's tip, such as \"3 mm\" (so if left out: a shop setting). Scan noise"
              + " finer than that is taken off the smooth area.")
  private Double tipMm;

  @Option(names = "--json", description = "Print the figures as JSON.")
  private boolean json;

  @Option(
      names = "--axis",
      description = "Look for the axis of a turned piece too, and how often it repeats round it.")
  private boolean axis;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    Job.Scale scale = scaleOptions.scale();
    MeshDocument document = MeshFiles.read(file, Progress.NONE);
    Piece piece;
    try {
      piece = Piece.of(document, file.toString(), scale, tip(), Progress.NONE);
    } catch (UnitUnknownException unknown) {
      return askForUnit(document, unknown);
    }
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.print(Json.forTerminal(MeasureJson.text(file.toString(), scale, piece, axis)));
    } else {
      print(piece, out);
    }
    out.flush();
    return ExitCode.DONE;
  }

  private double tip() {
    return tipMm == null ? Survey.DEFAULT_TIP_MM : tipMm;
  }

  private int askForUnit(MeshDocument document, UnitUnknownException unknown) {
    if (json) {
      PrintWriter out = spec.commandLine().getOut();
      out.print(
          Json.forTerminal(
              MeasureJson.withoutUnit(file.toString(), document.format(), unknown.candidates())));
      out.flush();
    }
    return ScaleOptions.askForUnit(unknown, spec.commandLine().getErr());
  }

  private void print(Piece piece, PrintWriter out) {
    Survey survey = piece.survey();
    row(out, "File", file + ", " + piece.document().format());
    row(out, "Size", Piece.size(survey.bounds()));
    row(out, "Area of facets", Figures.area(survey.areaMm2()));
    row(
        out,
        "Smooth area",
        Figures.area(survey.smooth().areaMm2())
            + ", between "
            + Figures.area(survey.smooth().lowMm2())
            + " and "
            + Figures.area(survey.smooth().highMm2()));
    row(
        out,
        "Mesh",
        Figures.count(survey.triangles(), "triangle")
            + ", "
            + survey.vertices()
            + " vertices, "
            + Figures.count(survey.parts(), "part")
            + (survey.closed() ? ", closed" : ", not closed"));
    if (axis) {
      printAxis(piece, out);
    }
    for (Notice notice : piece.notices()) {
      row(out, "Note", notice.text());
    }
  }

  private static void printAxis(Piece piece, PrintWriter out) {
    Revolution axis = Revolution.of(piece.mesh());
    if (!axis.isSure()) {
      row(out, "Axis", "none that the shape tells surely");
      return;
    }
    row(
        out,
        "Axis",
        String.format(
            Locale.ROOT,
            "from (%s) mm along (%s), %.0f%% of the area round it fits",
            numbers(axis.point(), "%.3f", 5e-4),
            numbers(axis.direction(), "%.5f", 5e-6),
            100 * axis.confidence()));
    TurnSymmetry.about(axis, piece.mesh())
        .ifPresent(
            repeats ->
                row(
                    out,
                    "Repeats",
                    String.format(
                        Locale.ROOT,
                        "%d times round the axis, %.0f%% of what is not plain turned fits",
                        repeats.count(),
                        100 * repeats.confidence())));
  }

  /** Three numbers; those that would print as zeros only print without a sign. */
  private static String numbers(Vector3D v, String form, double half) {
    return Arrays.stream(v.toArray())
        .mapToObj(x -> String.format(Locale.ROOT, form, Math.abs(x) < half ? 0 : x))
        .collect(Collectors.joining(", "));
  }

  static void row(PrintWriter out, String what, String value) {
    out.printf("%-15s %s%n", what, value);
  }
}
