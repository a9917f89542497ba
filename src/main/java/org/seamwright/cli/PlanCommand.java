package org.seamwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.job.MarkBodies;
import org.seamwright.job.Piece;
import org.seamwright.job.PlanJson;
import org.seamwright.job.PlannedJob;
import org.seamwright.job.Planner;
import org.seamwright.paper.Papers;
import org.seamwright.picture.Letterhead;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Plans a job and writes everything that comes of it. */
@Command(
    name = "plan",
    description = "Plans a job and writes the plan and its papers to a folder.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "Files of the same names in the folder are replaced; others stay. If anything",
      "fails nothing is written.",
      "",
      "Examples:",
      "  seamwright plan cup.json --out cup-plan",
      "  seamwright plan cup.json --out cup-plan --no-papers --json | jq .totals.goldG"
    })
final class PlanCommand implements Callable<Integer> {
  @Parameters(paramLabel = "JOB", description = "Job file.")
  private Path jobFile;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      required = true,
      description = "Folder to write to; made if it does not exist.")
  private Path folder;

  @Option(names = "--json", description = "Print the plan as JSON in place of the summary.")
  private boolean json;

  @Option(
      names = "--accept-mesh",
      description = "The marks fit the mesh as it is now: record that in the job.")
  private boolean acceptMesh;

  @Option(
      names = "--date",
      paramLabel = "YYYY-MM-DD",
      converter = DateConverter.class,
      description = "Date to show on the papers; today if left out.")
  private LocalDate date;

  @Option(
      names = "--no-papers",
      description = "Write plan.json alone, without sheets, pictures and tables: faster.")
  private boolean noPapers;

  @Option(
      names = "--large-type",
      description = "Set the bench sheet 1.3 times as large, on more pages.")
  private boolean largeType;

  @Mixin private ShopHeadAccess shop;
  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    Letterhead head = noPapers ? Letterhead.NONE : shop.read();
    try (OutputFolder output = OutputFolder.open(folder)) {
      PlannedJob planned = plan();
      write(planned, head, output.path());
      if (acceptMesh) {
        JobFile.write(planned.job(), jobFile);
      }
      List<String> files = output.commit();
      PrintWriter out = spec.commandLine().getOut();
      if (json) {
        out.print(Json.forTerminal(PlanJson.text(planned)));
      } else {
        PlanSummary.print(planned, folder, files, out);
      }
      out.flush();
      tellStale(spec.commandLine().getErr());
      return Limits.code(planned, spec.commandLine().getErr());
    }
  }

  /** Papers that an earlier plan left beside a plan without papers would be taken for its own. */
  private void tellStale(PrintWriter err) {
    List<String> stale =
        noPapers
            ? Papers.names().stream().filter(n -> Files.exists(folder.resolve(n))).toList()
            : List.of();
    if (!stale.isEmpty()) {
      err.println(
          "seamwright: "
              + folder
              + " still holds papers of an earlier plan: "
              + String.join(", ", stale)
              + ". Plan again without --no-papers, or delete them.");
    }
  }

  private PlannedJob plan() throws InputException {
    Job job = JobFile.read(jobFile);
    Piece piece = Planner.piece(job, jobFile, Progress.NONE);
    if (acceptMesh) {
      job = MarkBodies.recordedIn(piece.recordedIn(job), jobFile, true);
    }
    return Planner.plan(job, jobFile, piece, Progress.NONE);
  }

  private void write(PlannedJob planned, Letterhead head, Path into) throws InputException {
    try {
      Files.write(
          into.resolve(OutputFolder.PLAN), PlanJson.text(planned).getBytes(StandardCharsets.UTF_8));
      if (!noPapers) {
        LocalDate shown = date == null ? LocalDate.now(ZoneId.systemDefault()) : date;
        Papers.writeAll(planned, head, largeType, into, shown, Progress.NONE);
      }
    } catch (IOException e) {
      throw OutputFolder.unwritable(folder, e);
    }
  }
}
