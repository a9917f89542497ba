package org.seamwright.mend;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.seamwright.basis.Notice;
import org.seamwright.mesh.Mesh;

/**
 * A model after cleaning.
 *
 * @param mesh the cleaned mesh, in mm
 * @param parent one entry per face: the face of the raw mesh that it is or is a piece of; {@link
 *     #FILLED} for one that no model had
 * @param done what each step did, in order
 */
public record Mended(Mesh mesh, int[] parent, List<Done> done) {
  /** Parent of a face made to close a hole: its place is invented. */
  public static final int FILLED = -1;

  /** Checks that the array fits; copies the list. */
  public Mended {
    Objects.requireNonNull(mesh, "mesh");
    done = List.copyOf(done);
    if (parent.length != mesh.faceCount()) {
      throw new IllegalArgumentException("Parents of a mended mesh don't fit its faces");
    }
  }

  /** A mesh to which nothing was done. */
  public static Mended untouched(Mesh mesh) {
    int[] parent = new int[mesh.faceCount()];
    Arrays.setAll(parent, f -> f);
    return new Mended(mesh, parent, List.of());
  }

  /** Whether a face was made to close a hole. */
  public boolean filled(int face) {
    return parent[face] == FILLED;
  }

  /**
   * What a step did. The area after is the area before − lost + gained, to rounding.
   *
   * @param kind of the step, as in the job file
   * @param count how many things it repaired; what is counted is said in the text
   * @param beforeMm2 area before the step
   * @param lostMm2 area that went
   * @param gainedMm2 area that came
   * @param afterMm2 area after the step
   * @param text what was done, a clause
   */
  public record Done(
      String kind,
      long count,
      double beforeMm2,
      double lostMm2,
      double gainedMm2,
      double afterMm2,
      String text) {
    /** The step as a notice. */
    public Notice notice() {
      String hyphened = kind.replaceAll("([A-Z])", "-$1").toLowerCase(Locale.ROOT);
      return new Notice(
          "cleaning-" + hyphened,
          count,
          String.format(
              Locale.ROOT,
              "Cleaning, %s: %s. Area lost %,.2f mm², gained %,.2f mm²; now %,.2f mm².",
              kind,
              text,
              lostMm2,
              gainedMm2,
              afterMm2));
    }
  }
}
