package org.seamwright.plating;

import java.util.Locale;
import java.util.Objects;

/**
 * A metal as it is laid down.
 *
 * @param id stable name used in job files, for example {@code gold-hard}
 * @param name for people
 * @param densityGCm3 density of the deposit, g/cm³
 * @param atomicWeight g/mol
 * @param valence electrons per atom in the solution used
 * @param source where density and atomic weight come from
 */
public record Deposit(
    String id, String name, double densityGCm3, double atomicWeight, int valence, String source) {
  /** Checks the ranges. */
  public Deposit {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(source, "source");
    if (!(densityGCm3 > 0) || !(atomicWeight > 0) || valence < 1) {
      throw new IllegalArgumentException("Deposit out of range: " + id);
    }
  }

  /** The metal in one lower-case word: {@code gold}, {@code copper}. */
  public String metal() {
    return name.split("[ ,]", 2)[0].toLowerCase(Locale.ROOT);
  }

  /** Whether it is a gold: {@code gold-hard}, {@code gold-soft}. */
  public boolean isGold() {
    return id.startsWith("gold");
  }
}
