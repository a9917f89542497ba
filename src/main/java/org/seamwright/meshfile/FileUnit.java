package org.seamwright.meshfile;

import java.util.Objects;

/**
 * The unit that a mesh file itself says its numbers are in. STL, OBJ and PLY say none.
 *
 * @param symbol "um", "mm", "cm", "m", "in" or "ft"
 * @param mmPerUnit how many mm one of it is
 * @param source who says so, a clause such as "the glTF standard demands metres"
 */
public record FileUnit(String symbol, double mmPerUnit, String source) {
  /** Checks that nothing is missing. */
  public FileUnit {
    Objects.requireNonNull(symbol, "symbol");
    Objects.requireNonNull(source, "source");
    if (!(mmPerUnit > 0)) {
      throw new IllegalArgumentException("A unit must be above 0 mm: " + mmPerUnit);
    }
  }
}
