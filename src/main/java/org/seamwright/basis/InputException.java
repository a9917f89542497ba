package org.seamwright.basis;

import java.util.Objects;

/**
 * Input that is refused: the user can mend it. Says what is wrong, where, and what to do next.
 *
 * <p>Programming errors are never reported this way; they stay unchecked. Packages subclass it for
 * their kind of input, so that a caller may tell a bad mesh from a bad job.
 */
public class InputException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String source;
  private final String place;
  private final String problem;
  private final String remedy;

  /**
   * Makes a refusal.
   *
   * @param source the file (or other origin, such as an option) that holds the trouble
   * @param place where in it: "line 12", "byte 84", "facet 7", "marks[2].radius"; empty if it
   *     concerns the whole
   * @param problem what is wrong, as a clause without a final stop
   * @param remedy what the user can do next, as a sentence
   */
  public InputException(String source, String place, String problem, String remedy) {
    super(compose(source, place, problem, remedy));
    this.source = Objects.requireNonNull(source, "source");
    this.place = Objects.requireNonNull(place, "place");
    this.problem = Objects.requireNonNull(problem, "problem");
    this.remedy = Objects.requireNonNull(remedy, "remedy");
  }

  /** The same refusal with the exception that led to it kept for the log. */
  public InputException(
      String source, String place, String problem, String remedy, Throwable cause) {
    this(source, place, problem, remedy);
    initCause(cause);
  }

  private static String compose(String source, String place, String problem, String remedy) {
    String where = place.isEmpty() ? source : source + ", " + place;
    return where + ": " + problem + ". " + remedy;
  }

  /** The file or option that holds the trouble. */
  public String source() {
    return source;
  }

  /** Where in the source; empty if the whole is meant. */
  public String place() {
    return place;
  }

  /** What is wrong. */
  public String problem() {
    return problem;
  }

  /** What to do next. */
  public String remedy() {
    return remedy;
  }
}
