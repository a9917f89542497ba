package org.seamwright.mask;

import java.util.Objects;

/**
 * A tape that the shop has.
 *
 * @param name what the shop calls it
 * @param widthMm width, mm
 * @param bendMm the tightest sideways bend it takes without lifting or pleating, as the radius of
 *     the line that its edge follows, mm; 0 for one that follows any
 * @param rollMm length of a roll, mm
 * @param pricePerRoll price of a roll, in any currency; 0 if it does not matter
 * @param stretch share of its own length that it gives when laid: less of it is cut
 * @param resists what it stands, in the shop's words; shown on the papers
 */
public record TapeKind(
    String name,
    double widthMm,
    double bendMm,
    double rollMm,
    double pricePerRoll,
    double stretch,
    String resists) {
  /** Checks the ranges. */
  public TapeKind {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(resists, "resists");
    if (!(widthMm > 0) || !(bendMm >= 0) || !(rollMm > 0)) {
      throw new IllegalArgumentException("Sizes of a tape out of range: " + name);
    }
    if (!(pricePerRoll >= 0) || !(stretch >= 0 && stretch < 1)) {
      throw new IllegalArgumentException("Price or stretch of a tape out of range: " + name);
    }
  }

  /** Price of a millimetre. */
  double pricePerMm() {
    return pricePerRoll / rollMm;
  }
}
