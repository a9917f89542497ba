package org.seamwright.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A command whose job stands before its subcommands: {@code mark JOB list}. */
abstract class JobCommand implements Callable<Integer> {
  /** Not required by the parser, so that a subcommand's help can be asked for without it. */
  @Parameters(paramLabel = "JOB", arity = "0..1", description = "Job file, always needed.")
  private Path jobFile;

  @Spec private CommandSpec spec;

  final Path jobFile() {
    if (jobFile == null) {
      throw new CommandLine.ParameterException(
          spec.commandLine(), "Missing required parameter: 'JOB'");
    }
    return jobFile;
  }

  final Job job() throws InputException {
    return JobFile.read(jobFile());
  }

  final CommandSpec spec() {
    return spec;
  }

  /** The command of a kind that a subcommand belongs to. */
  static <T extends JobCommand> T above(CommandSpec subcommand, Class<T> kind) {
    CommandSpec above = subcommand.parent();
    while (!kind.isInstance(above.userObject())) {
      above = above.parent();
    }
    return kind.cast(above.userObject());
  }
}
