package org.seamwright.mask;

/**
 * How long masking takes: the shop's to time.
 *
 * @param tapeSecondsPerMetre laying tape to a line, s/m
 * @param secondsPerPiece cutting and placing one piece of tape, s
 * @param lacquerSecondsPerCm2 brushing one coat, s/cm²
 * @param dryMinutesPerCoat until a coat may be followed or wetted, min
 */
public record MaskPace(
    double tapeSecondsPerMetre,
    double secondsPerPiece,
    double lacquerSecondsPerCm2,
    double dryMinutesPerCoat) {
  /** What a job starts with; shop settings, to be replaced by the shop's own times. */
  public static final MaskPace USUAL = new MaskPace(180, 15, 1, 20);

  /** Checks the ranges. */
  public MaskPace {
    double[] all = {tapeSecondsPerMetre, secondsPerPiece, lacquerSecondsPerCm2, dryMinutesPerCoat};
    for (double figure : all) {
      if (!(figure >= 0) || Double.isInfinite(figure)) {
        throw new IllegalArgumentException("Times are not negative: " + figure);
      }
    }
  }

  /** Work at one mask, drying not counted, s. */
  public double workSeconds(MaskPlan.Mask mask, int coats) {
    double work = mask.lacquerMm2() / 100 * coats * lacquerSecondsPerCm2;
    for (MaskPlan.TapeStrip strip : mask.tape()) {
      work += strip.totalMm() / 1000 * tapeSecondsPerMetre + strip.pieces() * secondsPerPiece;
    }
    return work;
  }
}
