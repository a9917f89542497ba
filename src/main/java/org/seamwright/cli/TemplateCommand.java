package org.seamwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.flatten.Template;
import org.seamwright.flatten.Templates;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.job.MarkedJob;
import org.seamwright.job.Piece;
import org.seamwright.job.Planner;
import org.seamwright.job.TemplatesJson;
import org.seamwright.mesh.Mesh;
import org.seamwright.paper.PaperSize;
import org.seamwright.paper.TemplateDxf;
import org.seamwright.paper.TemplateSheets;
import org.seamwright.paper.TemplateSvg;
import org.seamwright.paper.TemplateWords;
import org.seamwright.region.Mark;
import org.seamwright.region.SubMesh;
import org.seamwright.region.Treatment;
import org.seamwright.units.Amounts;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lays patches of the piece flat and writes templates to cut film by. */
@Command(
    name = "template",
    description = "Lays what stays bare flat and writes 1:1 templates to cut masking film by.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "Writes templates.pdf for paper, and template-N.svg and template-N.dxf of each",
      "piece for a cutter. Check the 50 mm bar with a ruler before cutting. Curved",
      "places are cut into pieces until film need not stretch by more than allowed.",
      "",
      "Examples:",
      "  seamwright template cup.json --out cup-templates",
      "  seamwright template cup.json --of plate --out cup-film --stretch 4%%"
    })
final class TemplateCommand implements Callable<Integer> {
  /** What is covered. */
  enum Covered {
    BARE(Treatment.BARE),
    PLATE(Treatment.PLATE);

    private final Treatment treatment;

    Covered(Treatment treatment) {
      this.treatment = treatment;
    }

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  @Parameters(paramLabel = "JOB", description = "Job file.")
  private Path jobFile;

  @Option(
      names = "--of",
      paramLabel = "WHAT",
      defaultValue = "bare",
      description = "What film is to cover: bare or plate (if left out: ${DEFAULT-VALUE}).")
  private Covered covered;

  @Option(
      names = "--mark",
      paramLabel = "NAME",
      description = "Only the place of the mark with this name, whatever later marks say.")
  private String markName;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      required = true,
      description = "Folder to write to; made if it does not exist.")
  private Path folder;

  @Option(
      names = "--stretch",
      paramLabel = "PERCENT",
      defaultValue = "2%",
      description =
          "How much film may be longer or shorter than the surface; a shop setting (if left out:"
              + " ${DEFAULT-VALUE}).")
  private String stretch;

  @Option(
      names = "--allowance",
      paramLabel = "LENGTH",
      defaultValue = "3 mm",
      description =
          "How far film laps over a piece laid before it; a shop setting (if left out:"
              + " ${DEFAULT-VALUE}).")
  private String allowance;

  @Option(
      names = "--least",
      paramLabel = "LENGTH",
      defaultValue = "5 mm",
      description =
          "Film narrower than this everywhere is not cut: such places are listed, to be taped or"
              + " painted; a shop setting (if left out: ${DEFAULT-VALUE}).")
  private String least;

  @Option(
      names = "--paper",
      paramLabel = "SIZE",
      description = "a4 or letter (if left out: as the job's units are at home).")
  private PaperSize paper;

  @Option(names = "--json", description = "Print the figures as JSON.")
  private boolean json;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    Templates.Settings settings = settings();
    try (OutputFolder output = OutputFolder.open(folder)) {
      Job job = JobFile.read(jobFile);
      Piece piece = Planner.piece(job, jobFile, Progress.NONE);
      Treatment wanted = markName == null ? covered.treatment : treatment(marked(job));
      MarkedJob map =
          Planner.mark(markName == null ? job : only(job, wanted), jobFile, piece, Progress.NONE);
      Templates templates =
          Templates.of(map.map().mesh(), f -> map.map().of(f) == wanted, settings, Progress.NONE);
      if (templates.templates().isEmpty()) {
        throw new InputException(
            jobFile.toString(),
            "marks",
            templates.byHand().isEmpty()
                ? "There is nothing to cut film for"
                : "Nothing there is worth cutting film for: it is too narrow or too rough",
            "Look at the marks (command \"mark\"), name what film is to cover with --of, or allow"
                + " narrower pieces with --least.");
      }
      TemplateWords words =
          new TemplateWords(job.piece(), markName == null ? covered.word() : markName);
      write(templates, rest(map, wanted), words, settings, job, output.path());
      List<String> files = output.commit();
      print(templates, settings, words, map, files);
      return overStretch(templates) ? ExitCode.LIMIT_BROKEN : ExitCode.DONE;
    }
  }

  private Templates.Settings settings() throws InputException {
    String number = stretch.strip();
    boolean percent = number.endsWith("%");
    double share;
    try {
      share =
          Double.parseDouble(percent ? number.substring(0, number.length() - 1).strip() : number)
              / (percent ? 100 : 1);
    } catch (NumberFormatException e) {
      share = Double.NaN;
    }
    if (!(share >= 0.001 && share <= 0.5)) {
      throw new CommandLine.ParameterException(
          spec.commandLine(), "--stretch must be from 0.1% to 50%: " + stretch);
    }
    double lap = Amounts.lengthMm(allowance);
    if (!(lap >= 0 && lap <= 100)) {
      throw new CommandLine.ParameterException(
          spec.commandLine(), "--allowance must be from 0 to 100 mm: " + allowance);
    }
    double width = Amounts.lengthMm(least);
    if (!(width >= 0 && width <= 1000)) {
      throw new CommandLine.ParameterException(
          spec.commandLine(), "--least must be from 0 to 1000 mm: " + least);
    }
    return new Templates.Settings(share, lap, width);
  }

  private Mark.Place marked(Job job) throws InputException {
    for (Mark mark : job.marks()) {
      if (mark.name().equals(markName) && mark instanceof Mark.Place place) {
        return place;
      }
    }
    throw new InputException(
        jobFile.toString(),
        "marks",
        "No mark of a place is called \"" + markName + "\"",
        "List the marks and their names with the command \"mark\".");
  }

  private static Treatment treatment(Mark.Place place) {
    return place.treatment();
  }

  /** The job with that mark alone, on ground of another treatment. */
  private Job only(Job job, Treatment wanted) throws InputException {
    Treatment ground = wanted == Treatment.PLATE ? Treatment.BARE : Treatment.PLATE;
    return job.withGround(ground).withMarks(List.of(marked(job)));
  }

  /** The faces that no film is for. */
  private static Mesh rest(MarkedJob map, Treatment wanted) {
    int faces = map.map().mesh().faceCount();
    int[] others = IntStream.range(0, faces).filter(f -> map.map().of(f) != wanted).toArray();
    return SubMesh.of(map.map().mesh(), others).mesh();
  }

  private void write(
      Templates templates,
      Mesh rest,
      TemplateWords words,
      Templates.Settings settings,
      Job job,
      Path into)
      throws InputException {
    try {
      for (Template t : templates.templates()) {
        Files.write(
            into.resolve("template-" + t.id() + ".svg"),
            TemplateSvg.text(t, words).getBytes(StandardCharsets.UTF_8));
        Files.write(
            into.resolve("template-" + t.id() + ".dxf"),
            TemplateDxf.text(t, words).getBytes(StandardCharsets.US_ASCII));
      }
      PaperSize size = paper == null ? PaperSize.forUnits(job.display()) : paper;
      TemplateSheets.write(
          templates, rest, words, into.resolve("templates.pdf"), size, settings.stretchShare());
    } catch (IOException e) {
      throw OutputFolder.unwritable(folder, e);
    }
  }

  private static boolean overStretch(Templates templates) {
    return templates.notices().stream().anyMatch(n -> n.code().equals(Templates.OVER_STRETCH));
  }

  private void print(
      Templates templates,
      Templates.Settings settings,
      TemplateWords words,
      MarkedJob map,
      List<String> files) {
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.print(
          Json.forTerminal(TemplatesJson.text(words.what(), settings, templates, map.notices())));
    } else {
      for (Template t : templates.templates()) {
        out.printf(
            Locale.ROOT,
            "%-8s %s, %.0f x %.0f mm, stretch %.2f%% (mean %.2f%%)%n",
            t.id(),
            Figures.in(map.job().display()).area(t.areaMm2()),
            t.widthMm(),
            t.heightMm(),
            100 * t.layout().stretch().nearlyAll(),
            100 * t.layout().stretch().mean());
      }
      MeasureCommand.row(out, "Pieces", Integer.toString(templates.templates().size()));
      MeasureCommand.row(out, "Area", Figures.in(map.job().display()).area(templates.areaMm2()));
      double byHand = templates.byHand().stream().mapToDouble(Templates.ByHand::areaMm2).sum();
      if (byHand > 0) {
        MeasureCommand.row(
            out, "By hand", Figures.in(map.job().display()).area(byHand) + " without template");
      }
      for (Notice notice : map.notices()) {
        MeasureCommand.row(out, "Note", notice.text());
      }
      MeasureCommand.row(
          out,
          "Written",
          files.size() + " files to " + folder + "; measure the bar before cutting");
    }
    out.flush();
    for (Notice notice : templates.notices()) {
      spec.commandLine().getErr().println("seamwright: " + notice.text());
    }
  }
}
