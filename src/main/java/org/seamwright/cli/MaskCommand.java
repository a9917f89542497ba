package org.seamwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.job.MarkedJob;
import org.seamwright.job.MaskJson;
import org.seamwright.job.MaskTotals;
import org.seamwright.job.MaskingJson;
import org.seamwright.job.Planner;
import org.seamwright.mask.Dip;
import org.seamwright.mask.Dipped;
import org.seamwright.mask.MaskPlan;
import org.seamwright.mask.MaskSettings;
import org.seamwright.mask.Masking;
import org.seamwright.units.UnitFormat;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Tells what masking takes, with lacquer brushed or dipped, and chooses between the two. */
@Command(
    name = "mask",
    description = "Tells what masking takes, and lays lacquer by brush or by dipping.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "With --vessel lacquer is dipped: all that goes under is coated, plated places are",
      "peeled free along the tape. Losses and times stand in the job file (docs/masking.md).",
      "Without --save nothing is written.",
      "",
      "Examples:",
      "  seamwright mask cup.json",
      "  seamwright mask cup.json --vessel \"3 l\" --depth \"40 mm\"",
      "  seamwright mask cup.json --vessel \"3 l\" --save",
      "  seamwright mask cup.json --brush --save"
    })
final class MaskCommand implements Callable<Integer> {
  @Parameters(paramLabel = "JOB", description = "Job file.")
  private Path jobFile;

  @Option(
      names = "--vessel",
      paramLabel = "VOLUME",
      description = "Dip: what the vessel holds up to the bath's surface.")
  private String vessel;

  @Option(
      names = "--depth",
      paramLabel = "LENGTH",
      description =
          "How deep the piece's lowest point hangs in the bath (if left out: the whole piece).")
  private String depth;

  @Option(
      names = "--up",
      paramLabel = "X,Y,Z",
      description = "Which way is up as it hangs (if left out: 0,0,1).")
  private String up;

  @Option(names = "--brush", description = "Brush the lacquer on instead.")
  private boolean brush;

  @Option(names = "--save", description = "Write the choice to the job file.")
  private boolean save;

  @Option(names = "--json", description = "Print the figures as JSON.")
  private boolean json;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    boolean dips = vessel != null;
    if (dips && brush) {
      throw wrong("Choose one of --vessel and --brush");
    }
    if (!dips && (depth != null || up != null)) {
      throw wrong("--depth and --up go with --vessel");
    }
    if (save && !dips && !brush) {
      throw wrong("--save goes with --vessel or --brush");
    }
    Job job = JobFile.read(jobFile);
    MaskSettings settings = job.masking();
    if (brush) {
      settings = settings.withDip(Optional.empty());
    } else if (dips) {
      Dip dip = MaskingJson.dip(jobFile.toString(), settings.dip(), up, depth, vessel);
      settings = settings.withDip(Optional.of(dip));
    }
    Job after = job.withMasking(settings);
    MarkedJob marked =
        Planner.mark(after, jobFile, Planner.piece(after, jobFile, Progress.NONE), Progress.NONE);
    MaskPlan plan = Masking.plan(marked.map(), settings, Progress.NONE);
    if (save && !after.equals(job)) {
      JobFile.write(after, jobFile);
    }
    print(after, plan);
    return ExitCode.DONE;
  }

  private CommandLine.ParameterException wrong(String text) {
    return new CommandLine.ParameterException(spec.commandLine(), text);
  }

  private void print(Job job, MaskPlan plan) {
    PrintWriter out = spec.commandLine().getOut();
    MaskSettings settings = job.masking();
    if (json) {
      out.print(Json.forTerminal(MaskJson.text(plan, settings)));
      out.flush();
      return;
    }
    UnitFormat in = Figures.in(job.display());
    MaskTotals totals = MaskTotals.of(plan);
    MeasureCommand.row(
        out,
        "Edges",
        plan.masks().isEmpty()
            ? "none: nothing bare borders on plating"
            : in.length(totals.edgeMm()) + " of " + Figures.count(plan.masks().size(), "mask"));
    MeasureCommand.row(out, "Tape", in.length(totals.tapeMm()));
    double brushed = plan.masks().stream().mapToDouble(MaskPlan.Mask::lacquerMl).sum();
    MeasureCommand.row(out, "Brushed", in.volume(brushed) + " lacquer");
    plan.dipped().ifPresent(dipped -> print(out, in, dipped));
    MeasureCommand.row(
        out,
        "Time",
        in.time(plan.workSeconds(settings))
            + (totals.lacquerMl() > 0
                ? " of work, and "
                    + in.time(60 * settings.pace().dryMinutesPerCoat() * settings.lacquerCoats())
                    + " of drying"
                : " of work"));
    for (Notice notice : plan.notices()) {
      MeasureCommand.row(out, "Note", notice.text());
    }
    MeasureCommand.row(out, "Written", save ? jobFile.toString() : "nothing");
    out.flush();
  }

  private static void print(PrintWriter out, UnitFormat in, Dipped dipped) {
    MeasureCommand.row(
        out,
        "Dipped",
        in.volume(dipped.usedMl())
            + " lacquer: "
            + in.volume(dipped.filmMl())
            + " film on "
            + in.area(dipped.wettedMm2())
            + ", "
            + in.volume(dipped.drainedMl())
            + " drained, "
            + in.volume(dipped.lostMl())
            + " lost of the "
            + in.volume(dipped.leftMl())
            + " left");
    MeasureCommand.row(out, "Bath", in.volume(dipped.bathMl()) + " to have ready");
    MeasureCommand.row(out, "To peel", in.area(dipped.plateMm2()) + " of plated surface");
  }
}
