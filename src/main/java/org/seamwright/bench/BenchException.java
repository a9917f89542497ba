package org.seamwright.bench;

import org.seamwright.basis.InputException;

/** A run that cannot be kept or read: the message names the file, the place in it and a remedy. */
public final class BenchException extends InputException {
  private static final long serialVersionUID = 1L;

  /** A refusal without a cause. */
  public BenchException(String source, String place, String problem, String remedy) {
    super(source, place, problem, remedy);
  }

  /** A refusal with a cause. */
  public BenchException(
      String source, String place, String problem, String remedy, Throwable cause) {
    super(source, place, problem, remedy, cause);
  }
}
