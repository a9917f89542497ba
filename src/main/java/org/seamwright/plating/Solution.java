package org.seamwright.plating;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What the sheet of a solution says of working with it; what it does not say is empty. The metal in
 * it stands with the settings.
 *
 * @param name what the shop calls it; empty if nothing is known of it
 * @param form how it stays where it is put
 * @param fromVolts least voltage at work, V
 * @param toVolts largest voltage at work, V; present together with the least, and not below it
 * @param anode of what the anode is to be
 * @param keep how it keeps
 */
public record Solution(
    String name,
    Form form,
    OptionalDouble fromVolts,
    OptionalDouble toVolts,
    String anode,
    String keep) {
  /** How it stays where it is put. */
  public enum Form {
    /** Runs off walls and overhangs. */
    LIQUID,
    /** Stays on them. */
    GEL
  }

  /** Nothing known. */
  public static final Solution UNKNOWN =
      new Solution("", Form.LIQUID, OptionalDouble.empty(), OptionalDouble.empty(), "", "");

  /** Checks the voltages. */
  public Solution {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(form, "form");
    Objects.requireNonNull(anode, "anode");
    Objects.requireNonNull(keep, "keep");
    if (fromVolts.isPresent() != toVolts.isPresent()
        || (fromVolts.isPresent()
            && !(fromVolts.getAsDouble() > 0
                && toVolts.getAsDouble() >= fromVolts.getAsDouble()))) {
      throw new IllegalArgumentException("Voltages out of range");
    }
  }

  /** The voltage for people, such as "2.5–3 V at work"; empty if it is not known. */
  public String volts() {
    if (fromVolts.isEmpty()) {
      return "";
    }
    String from = Figures.of(fromVolts.getAsDouble());
    String to = Figures.of(toVolts.getAsDouble());
    return (from.equals(to) ? from : from + "–" + to) + " V at work";
  }
}
