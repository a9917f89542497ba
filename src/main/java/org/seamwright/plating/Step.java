package org.seamwright.plating;

import java.util.Locale;

/**
 * One step of a recipe at the bench.
 *
 * @param name short, as it stands on the bench sheet: "Rinse"
 * @param purpose why it is done
 * @param kind what it does to the wet chain and which area it covers
 * @param volts voltage range to show, for example "8–12 V"; empty where none is applied
 * @param polarity which way the current flows, as {@link #DIRECT} or {@link #REVERSE}; empty where
 *     none is applied or the solution's sheet decides
 * @param secondsPerCm2 time for one pass over a unit of area, s/cm²; for a flash or build only what
 *     the default rate and thickness make it, since a plan takes its own
 * @param passes number of passes; for a flash or build those that together lay its thickness
 * @param handlingSeconds time before the step begins (changing the tool, reaching for the bottle),
 *     s
 * @param done how to see that it is done
 * @param wrong what goes wrong, by what it shows and what to do then; may be empty
 * @param caution what can hurt or spoil; empty if nothing beyond the usual
 * @param source a published source, or "common practice, no source"
 */
public record Step(
    String name,
    String purpose,
    Kind kind,
    String volts,
    String polarity,
    double secondsPerCm2,
    int passes,
    double handlingSeconds,
    String done,
    String wrong,
    String caution,
    String source) {

  /** What a step is in the chain of a section. */
  public enum Kind {
    /** Before the wet chain begins: may dry afterwards. Covers the worked area. */
    DRY_PREPARATION,
    /**
     * In the wet chain: the surface must not dry until the next. Covers net area and activation
     * lap.
     */
    WET,
    /** The gold flash that ends the wet chain. Covers net area and flash lap; time by thickness. */
    FLASH,
    /** The build layer over the flash. Covers net area only; time by thickness. */
    BUILD,
    /** After plating. Covers net area; may dry. */
    FINISH
  }

  /** Direct (forward) current: metal is laid on the piece. */
  public static final String DIRECT = "direct current, the piece negative";

  /** Reverse current: the surface is dissolved. */
  public static final String REVERSE = "reverse current, the piece positive";

  /** Checks the ranges. */
  public Step {
    if (!(secondsPerCm2 >= 0) || passes < 1 || !(handlingSeconds >= 0)) {
      throw new IllegalArgumentException("Step out of range: " + name);
    }
  }

  /** A step without current of which nothing is known to go wrong. */
  public Step(
      String name,
      String purpose,
      Kind kind,
      double secondsPerCm2,
      int passes,
      double handlingSeconds,
      String source) {
    this(name, purpose, kind, "", "", secondsPerCm2, passes, handlingSeconds, "", "", "", source);
  }

  /** Whether this is a rinse, as its name says: no tool is changed for it. */
  boolean isRinse() {
    return name.toLowerCase(Locale.ROOT).contains("rinse");
  }

  /** The same step at another pace. */
  Step paced(double otherSecondsPerCm2, int otherPasses, double otherHandlingSeconds) {
    return new Step(
        name,
        purpose,
        kind,
        volts,
        polarity,
        otherSecondsPerCm2,
        otherPasses,
        otherHandlingSeconds,
        done,
        wrong,
        caution,
        source);
  }

  /** Time that one place is worked on in all passes, s per cm²: the dwell. */
  public double dwellSecondsPerCm2() {
    return passes * secondsPerCm2;
  }
}
