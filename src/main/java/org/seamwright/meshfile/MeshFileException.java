package org.seamwright.meshfile;

import java.nio.file.Path;
import org.seamwright.basis.InputException;

/** A mesh file that is refused, with the place in it and the remedy. */
public final class MeshFileException extends InputException {
  private static final long serialVersionUID = 1L;

  /**
   * Makes a refusal.
   *
   * @param file the mesh file
   * @param place "line 12", "facet 7, byte 384"; empty if it concerns the whole file
   * @param problem what is wrong, a clause without a final stop
   * @param remedy what to do next, a sentence
   */
  public MeshFileException(Path file, String place, String problem, String remedy) {
    super(file.toString(), place, problem, remedy);
  }

  /** The same refusal with the exception that led to it kept for the log. */
  public MeshFileException(
      Path file, String place, String problem, String remedy, Throwable cause) {
    super(file.toString(), place, problem, remedy, cause);
  }
}
