package org.seamwright.window;

import java.nio.file.Path;
import org.seamwright.basis.InputException;

/** How the opening of a job stands. */
public sealed interface JobState {
  /** No job has been asked for. */
  record None() implements JobState {}

  /**
   * The job is being read and planned.
   *
   * @param file the job
   * @param fraction share of the work done, 0 to 1
   */
  record Planning(Path file, double fraction) implements JobState {}

  /**
   * The job is open.
   *
   * @param piece ready to be shown
   */
  record Open(OpenedPiece piece) implements JobState {}

  /**
   * The user broke off the planning.
   *
   * @param file the job
   */
  record Cancelled(Path file) implements JobState {}

  /**
   * The job or its mesh was refused.
   *
   * @param file the job
   * @param refusal what is wrong, where, and what to do
   */
  record Refused(Path file, InputException refusal) implements JobState {}

  /**
   * The program failed.
   *
   * @param file the job
   * @param fault how
   */
  record Failed(Path file, Throwable fault) implements JobState {}
}
