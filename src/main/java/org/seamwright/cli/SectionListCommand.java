package org.seamwright.cli;

import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Lists the sections of a job. */
@Command(
    name = "list",
    description = "Lists the sections in working order, and the edits made.",
    mixinStandardHelpOptions = true,
    footer = {"", "Example:", "  seamwright section rim.json list --json | jq .sections"})
final class SectionListCommand implements Callable<Integer> {
  @Mixin private SectionOutput output;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    return output.list(JobCommand.above(spec, SectionCommand.class));
  }
}
