package org.seamwright.region;

/** What is to become of a place on the piece. */
public enum Treatment {
  /** Gold goes here. */
  PLATE(0),
  /** Stays as it is and must be masked where it borders on plating. */
  BARE(1),
  /** Not part of the work: out of reach, another piece, a stand. Neither counted nor masked. */
  OUT_OF_SCOPE(2);

  private final byte code;

  Treatment(int code) {
    this.code = (byte) code;
  }

  /** The number that stands for it in per-face arrays. */
  public byte code() {
    return code;
  }

  /** The treatment with a code. */
  public static Treatment ofCode(byte code) {
    return switch (code) {
      case 0 -> PLATE;
      case 1 -> BARE;
      case 2 -> OUT_OF_SCOPE;
      default -> throw new IllegalArgumentException("No treatment has code " + code);
    };
  }
}
