package org.seamwright.cli;

/** What the program's exit codes mean. Scripts rely on them; they don't change. */
final class ExitCode {
  /** Done. */
  static final int DONE = 0;

  /** A fault of the program. */
  static final int FAULT = 1;

  /** The command line itself is wrong. */
  static final int USAGE = 2;

  /** A file, or a value in it, is refused; or a target cannot be written. */
  static final int REFUSED = 3;

  /** Done, but the plan breaks a limit that it was given. */
  static final int LIMIT_BROKEN = 4;

  private ExitCode() {}
}
