package org.seamwright.bench;

/**
 * One thing that happened at the bench. What it came to follows from the events before it, so that
 * a file of events is the whole run.
 *
 * @param atMs when, ms since 1970 (UTC)
 * @param what its kind
 * @param section number of the section as the plan has it; 0 for the whole piece or where it means
 *     nothing
 * @param step number of the step, from 0; {@value #READY} before the first; for other lists the
 *     number in the list, from 0
 * @param value a figure; 0 where it means nothing
 * @param resolution step in which the figure was told: 0.01 for "2,75"; 0 where it means nothing
 */
public record BenchEvent(
    long atMs, What what, int section, int step, double value, double resolution) {
  /** A section whose first step has not begun. */
  public static final int READY = -1;

  /** Kinds of events. */
  public enum What {
    /** A general caution was read and ticked; {@code step} is its number. */
    CAUTION_SEEN,
    /** A mask is on; {@code step} is its number. */
    MASK_TICKED,
    /** A mask is not on after all. */
    MASK_CLEARED,
    /** The key at a section and step: the step is done, the next begins. */
    NEXT,
    /** Back from a section and step to the step before. */
    BACK,
    /** The section dried before it was covered. */
    DRIED_OUT,
    /** Every place of the section has just been wetted, or was found to be wet. */
    STILL_WET,
    /** Another section is worked on. */
    CHOSEN,
    /** A dip into the solution. */
    DIP,
    /** Solution used, ml. */
    SOLUTION_ML,
    /** Volts at the supply. */
    VOLTS,
    /** Amperes. */
    AMPERES,
    /** Charge that passed, A·h. */
    CHARGE_AH,
    /** Weight before, g. */
    BEFORE_G,
    /** Weight after, g. */
    AFTER_G,
    /** A thickness reading, µm. */
    READING_UM,
    /** The last dip or figure was wrong. */
    UNDONE,
    /** The program was started again in the midst of the run. */
    REOPENED,
    /** The run is over. */
    ENDED,
    /** A section was entered in the shop book; {@code value} is the number of the entry. */
    BOOKED;

    /** Whether it is a dip or a figure, which can be undone. */
    public boolean isEntry() {
      return switch (this) {
        case DIP, SOLUTION_ML, VOLTS, AMPERES, CHARGE_AH, BEFORE_G, AFTER_G, READING_UM -> true;
        default -> false;
      };
    }

    /** Whether several of one section add up; of the others the last counts. */
    public boolean addsUp() {
      return this == SOLUTION_ML || this == CHARGE_AH;
    }
  }

  /** An event without a figure. */
  static BenchEvent of(long atMs, What what, int section, int step) {
    return new BenchEvent(atMs, what, section, step, 0, 0);
  }
}
