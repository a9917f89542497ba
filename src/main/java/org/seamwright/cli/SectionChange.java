package org.seamwright.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.job.JobFileException;
import org.seamwright.job.PlannedJob;
import org.seamwright.job.SectionWords;
import org.seamwright.section.SectionChoices;
import org.seamwright.section.SectionPlan;
import org.seamwright.section.SectionPoints;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** A command that changes what is asked of sections: each works out its own change. */
abstract class SectionChange implements Callable<Integer> {
  @Option(names = "--dry-run", description = "Tell what would change and write nothing.")
  private boolean dryRun;

  @Mixin private SectionOutput output;

  @Spec private CommandSpec spec;

  /** The plan before the change, once it was needed. */
  private Optional<PlannedJob> before = Optional.empty();

  /** Works the change out. */
  abstract SectionChoices change(Job job) throws InputException;

  /** What is done, such as "merge sections 3 and 4". */
  abstract String told();

  final CommandSpec spec() {
    return spec;
  }

  @Override
  public final Integer call() throws InputException {
    SectionCommand command = JobCommand.above(spec, SectionCommand.class);
    Job job = command.job();
    Job after = job.withSections(job.sections().withChoices(change(job)));
    Optional<PlannedJob> planned = output.tryOut(after, command);
    boolean differs = !after.equals(job);
    boolean written = differs && !dryRun;
    if (written) {
      JobFile.write(after, command.jobFile());
    }
    PrintWriter out = spec.commandLine().getOut();
    output.print(after, planned, written, out);
    if (!output.isJson()) {
      MeasureCommand.row(out, dryRun ? "Would" : "Done", told());
      MeasureCommand.row(
          out,
          "Written",
          written
              ? command.jobFile()
                  + "; as it was before: "
                  + command.jobFile().getFileName()
                  + ".bak"
              : differs ? "nothing" : "nothing: it is so already");
    }
    out.flush();
    return SectionOutput.code(planned, command);
  }

  /** The plan before the change: numbers count in it. */
  final SectionPlan before(Job job) throws InputException {
    if (before.isEmpty()) {
      before = Optional.of(SectionOutput.plan(job, JobCommand.above(spec, SectionCommand.class)));
    }
    return before.get().sections();
  }

  /** A number as listed; 0 if the word is a point. */
  final int number(Job job, String word) throws InputException {
    if (!word.matches("\\d+")) {
      return 0;
    }
    int count = before(job).sections().size();
    int number = word.length() > 9 ? 0 : Integer.parseInt(word);
    if (number < 1 || number > count) {
      throw wrong("There is no section " + word + ": they are numbered from 1 to " + count + ".");
    }
    return number;
  }

  /** A section as typed, by a point; in brackets it may begin with a minus sign. */
  final String point(Job job, String word) throws InputException {
    if (word.startsWith("[") && word.endsWith("]")) {
      return word.substring(1, word.length() - 1);
    }
    int number = number(job, word);
    return number == 0 ? word : SectionWords.point(SectionPoints.inside(before(job), number));
  }

  /** The course of the seam between two sections. */
  final String seam(Job job, String a, String b) throws InputException {
    int first = number(job, a);
    int second = number(job, b);
    if (first == 0 || second == 0) {
      throw wrong("Name the two sections by their numbers, or give the line with --path.");
    }
    Optional<List<Vector3D>> course = SectionPoints.seam(before(job), first, second);
    return SectionWords.path(
        course.orElseThrow(() -> wrong("Sections " + a + " and " + b + " do not meet.")));
  }

  final CommandLine.ParameterException wrong(String message) {
    return new CommandLine.ParameterException(spec.commandLine(), message);
  }

  /** Reads something typed. */
  @FunctionalInterface
  interface Reading<T> {
    T read() throws JobFileException;
  }

  /** What was typed, or a refusal of the command line. */
  final <T> T read(Reading<T> reading) {
    try {
      return reading.read();
    } catch (JobFileException e) {
      String place = e.place().isEmpty() ? "" : e.place() + ": ";
      throw wrong(place + e.problem() + ". " + e.remedy());
    }
  }
}
