package org.seamwright.units;

/** The units that figures are shown in. Both kinds can be typed in anywhere. */
public enum UnitSystem {
  /** mm, cm², µm, g, ml. */
  METRIC,
  /** in, in², µin; metal in g and solution in ml as the trade does. */
  INCH
}
