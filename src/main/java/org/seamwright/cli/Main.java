package org.seamwright.cli;

import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.seamwright.basis.InputException;
import picocli.CommandLine;

/** Starts the program: reads the command line, runs the command, turns failures into exit codes. */
public final class Main {
  private static final Map<String, Supplier<Object>> COMMANDS = commands();

  /** Ending of job files that a desktop opens with this program. */
  private static final String JOB_ENDING = ".seamwright";

  private Main() {}

  /**
   * Runs a command and ends the program with its exit code.
   *
   * @param args the command and its options
   */
  public static void main(String[] args) {
    PrintWriter out = PlainWriter.on(System.out, terminalCharset("stdout.encoding"));
    PrintWriter err = PlainWriter.on(System.err, terminalCharset("stderr.encoding"));
    int code = run(out, err, args);
    out.flush();
    if (System.out.checkError() && (code == ExitCode.DONE || code == ExitCode.LIMIT_BROKEN)) {
      err.println("seamwright: The results could not be written to where the output goes.");
      code = ExitCode.REFUSED;
    }
    err.flush();
    System.exit(code);
  }

  /**
   * Runs a command.
   *
   * @param out takes results
   * @param err takes messages
   * @param given the command and its options
   * @return the exit code
   */
  static int run(PrintWriter out, PrintWriter err, String... given) {
    String[] args = opened(given);
    Seamwright top = new Seamwright();
    CommandLine line = line(top, args.length == 0 ? "" : args[0]);
    line.setOut(out);
    line.setErr(err);
    line.setUsageHelpAutoWidth(true);
    line.setParameterExceptionHandler(Main::wrongUsage);
    line.setExecutionExceptionHandler((e, command, parsed) -> failed(e, err, top.stacktrace));
    try {
      return line.execute(args);
    } catch (OutOfMemoryError e) {
      err.println(
          "seamwright: Out of memory. Run it with more, such as java -Xmx8g -jar seamwright.jar,"
              + " or use a coarser mesh.");
      return ExitCode.FAULT;
    } catch (StackOverflowError | LinkageError | AssertionError e) {
      return failed(e, err, top.stacktrace);
    }
  }

  /**
   * The commands.
   *
   * @param top the program without a command
   * @param named the only command that is wanted; any other word for all of them
   */
  static CommandLine line(Seamwright top, String named) {
    return withCommands(new CommandLine(top), named).setCaseInsensitiveEnumValuesAllowed(true);
  }

  /** A job file alone, as a desktop names the file that is opened, goes to the window. */
  static String[] opened(String... args) {
    boolean job = args.length == 1 && args[0].endsWith(JOB_ENDING);
    return job ? new String[] {"window", args[0]} : args;
  }

  /**
   * Adds the command that is named, or all of them where help or an error may have to list them:
   * building every command takes longer than measuring a small piece.
   */
  private static CommandLine withCommands(CommandLine line, String named) {
    Supplier<Object> only = COMMANDS.get(named);
    if (only != null) {
      return line.addSubcommand(named, only.get());
    }
    COMMANDS.forEach((name, command) -> line.addSubcommand(name, command.get()));
    return line;
  }

  private static Map<String, Supplier<Object>> commands() {
    Map<String, Supplier<Object>> commands = new LinkedHashMap<>();
    commands.put("measure", MeasureCommand::new);
    commands.put("new", NewCommand::new);
    commands.put("mark", MarkCommand::line);
    commands.put("section", SectionCommand::line);
    commands.put("plan", PlanCommand::new);
    commands.put("picture", PictureCommand::new);
    commands.put("share", ShareCommand::new);
    commands.put("mask", MaskCommand::new);
    commands.put("template", TemplateCommand::new);
    commands.put("recipe", RecipeCommand::new);
    commands.put("shop", ShopCommand::line);
    commands.put("window", WindowCommand::new);
    return commands;
  }

  private static int wrongUsage(CommandLine.ParameterException e, String[] args) {
    CommandLine command = e.getCommandLine();
    PrintWriter err = command.getErr();
    err.println("seamwright: " + e.getMessage());
    CommandLine.UnmatchedArgumentException.printSuggestions(e, err);
    err.println("Try " + command.getCommandSpec().qualifiedName() + " --help.");
    return ExitCode.USAGE;
  }

  private static int failed(Throwable e, PrintWriter err, boolean stacktrace) {
    boolean refused = e instanceof InputException;
    if (refused) {
      err.println("seamwright: " + e.getMessage());
    } else {
      err.println(
          "seamwright: A fault in the program, not in your input: "
              + e
              + (stacktrace ? "" : ". Run it again with --stacktrace and report what it prints."));
    }
    if (stacktrace) {
      e.printStackTrace(err);
    }
    return refused ? ExitCode.REFUSED : ExitCode.FAULT;
  }

  /** What the terminal understands, as far as this version of Java tells. */
  private static Charset terminalCharset(String property) {
    String name = System.getProperty(property, System.getProperty("sun." + property));
    return name == null ? Charset.defaultCharset() : Charset.forName(name);
  }
}
