package org.seamwright.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The program itself, before a command is named. {@link Main} adds the commands. */
@Command(
    name = "seamwright",
    description = "Plans hand (brush, selective) gold plating of irregular pieces from a 3D model.",
    mixinStandardHelpOptions = true,
    versionProvider = Seamwright.Version.class,
    synopsisSubcommandLabel = "COMMAND",
    footer = {
      "",
      "A job from beginning to end:",
      "  seamwright measure cup.stl --unit mm",
      "  seamwright new cup.stl --unit mm --out cup.json",
      "  seamwright mark cup.json add halfSpace --point 0,0,1 --normal 0,0,-1",
      "  seamwright window cup.json",
      "  seamwright plan cup.json --out cup-plan",
      "",
      "Exit codes: 0 done, 1 fault of the program, 2 wrong usage, 3 input refused,",
      "4 done but the plan breaks a limit."
    })
final class Seamwright implements Runnable {
  @Option(
      names = "--stacktrace",
      scope = ScopeType.INHERIT,
      description = "If something fails, print where in the program.")
  boolean stacktrace;

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new CommandLine.ParameterException(spec.commandLine(), "Name a command.");
  }

  /** Version of the jar or of the installed module; none when run from the build directory. */
  static final class Version implements CommandLine.IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = Seamwright.class.getPackage().getImplementationVersion();
      if (version == null && Seamwright.class.getModule().isNamed()) {
        version = Seamwright.class.getModule().getDescriptor().rawVersion().orElse(null);
      }
      return new String[] {"seamwright " + (version == null ? "(not packaged)" : version)};
    }
  }
}
