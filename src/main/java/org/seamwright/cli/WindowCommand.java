package org.seamwright.cli;

import java.lang.reflect.InvocationTargetException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/**
 * Opens the window. It is started by name, so that no other command loads JavaFX and none needs a
 * display.
 */
@Command(
    name = "window",
    description = "Opens the window, with a job or a mesh if one is named.",
    mixinStandardHelpOptions = true,
    footer = {"", "Examples:", "  seamwright window cup.json", "  seamwright window cup.stl"})
final class WindowCommand implements Callable<Integer> {
  static final String LAUNCHER = "org.seamwright.window.Launch";

  @Parameters(
      paramLabel = "FILE",
      arity = "0..1",
      description = "Job file, or mesh file to make a job for.")
  private String file;

  @Override
  public Integer call() throws Exception {
    List<String> args = new ArrayList<>();
    if (file != null) {
      args.add(file);
    }
    try {
      Class.forName(LAUNCHER)
          .getMethod("main", String[].class)
          .invoke(null, (Object) args.toArray(new String[0]));
      return ExitCode.DONE;
    } catch (InvocationTargetException e) {
      if (e.getCause() instanceof Exception cause) {
        throw cause;
      }
      throw e;
    }
  }
}
