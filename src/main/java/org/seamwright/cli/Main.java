package org.seamwright.cli;

/** Starts the program. */
public final class Main {
  private Main() {}

  /**
   * Runs a command.
   *
   * @param args the command and its options
   */
  public static void main(String[] args) {
    System.exit(2);
  }
}
