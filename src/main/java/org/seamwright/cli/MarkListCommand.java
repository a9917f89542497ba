package org.seamwright.cli;

import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Lists the marks of a job. */
@Command(
    name = "list",
    description = "Lists the marks with the area that each covers and changes.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "A mark changes less than it covers where the treatment was there already.",
      "",
      "Example:",
      "  seamwright mark cup.json list --json | jq .areasMm2.plate"
    })
final class MarkListCommand implements Callable<Integer> {
  @Mixin private MarkOutput output;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    return output.list(JobCommand.above(spec, MarkCommand.class));
  }
}
