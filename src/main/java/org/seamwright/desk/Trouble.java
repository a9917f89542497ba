package org.seamwright.desk;

import java.util.Locale;
import java.util.Optional;
import org.seamwright.basis.InputException;

/**
 * Why a result can't be had.
 *
 * @param at where in the window it is mended
 * @param problem what is wrong, a sentence
 * @param remedy what to do, a sentence
 * @param meshChanged whether the mesh is not the one that the marks were made on
 * @param fault the program's own fault, if it is one
 */
public record Trouble(
    Place at, String problem, String remedy, boolean meshChanged, Optional<Throwable> fault) {
  /** A refusal, with the place of the window that its place in the job belongs to. */
  static Trouble of(Place fallback, InputException e) {
    String place = e.place();
    Place at = fallback;
    if (place.startsWith("marks") || place.equals("ground")) {
      at = Place.MARKS;
    } else if (place.startsWith("sections")) {
      at = Place.SECTIONS;
    } else if (place.startsWith("plating") || place.startsWith("masking")) {
      at = Place.PLATING;
    } else if (place.startsWith("mesh") || place.startsWith("cleaning")) {
      at = Place.PIECE;
    }
    boolean changed = place.equals("mesh.sha256") || place.equals("mesh.surface");
    return new Trouble(at, sentence(e.problem()), e.remedy(), changed, Optional.empty());
  }

  /** A fault of the program. */
  static Trouble of(Place at, Throwable fault) {
    return new Trouble(
        at, Messages.text("failed.text"), fault.toString(), false, Optional.of(fault));
  }

  static String sentence(String clause) {
    if (clause.isEmpty()) {
      return clause;
    }
    String start = clause.substring(0, 1).toUpperCase(Locale.ROOT) + clause.substring(1);
    return start.endsWith(".") ? start : start + ".";
  }
}
