package org.seamwright.cli;

import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** A command that changes the marks of a job: each works out its own change. */
abstract class MarkEdit implements Callable<Integer> {
  @Mixin private MarkEditing editing;

  @Spec private CommandSpec spec;

  /** Works the change out. */
  abstract MarkEditing.Change change(Job job, MarkList marks) throws InputException;

  /** The command line's own description of this command. */
  final CommandSpec spec() {
    return spec;
  }

  @Override
  public final Integer call() throws InputException {
    return editing.run(spec, this::change);
  }
}
