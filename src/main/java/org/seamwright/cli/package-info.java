/**
 * The command line: one class per command, exit codes, text and JSON on standard output.
 *
 * <p>Lives here: the only package that prints and the only home of picocli. May not: arithmetic.
 * Imports all but {@code window}, which it starts by name.
 */
package org.seamwright.cli;
