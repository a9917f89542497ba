package org.seamwright.cli;

import java.io.PrintWriter;
import java.io.StringWriter;

/**
 * A command run to its end within the test.
 *
 * @param code exit code
 * @param out what it printed as results
 * @param err what it printed as messages
 */
record Run(int code, String out, String err) {
  static Run of(Object... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] words = new String[args.length];
    for (int i = 0; i < args.length; i++) {
      words[i] = args[i].toString();
    }
    int code = Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words);
    return new Run(code, out.toString(), err.toString());
  }
}
