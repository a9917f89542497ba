package org.seamwright.picture;

/** What a face looks like. */
public enum Finish {
  /** The colour and pattern of the section it belongs to. */
  SECTION(0),
  /** Gold. */
  GOLD(1),
  /** The piece's own metal: cool grey. */
  BARE(2),
  /** Covered while plating, by tape or lacquer: hatched. */
  COVERED(3),
  /** Not part of the work: pale and flat. */
  GHOST(4),
  /** Under tape: plain and light, darker where strips lap. */
  TAPE(5),
  /** Copper. */
  COPPER(6),
  /** Nickel. */
  NICKEL(7),
  /** White metals: silver, rhodium, palladium. */
  SILVER(8);

  private final byte code;

  Finish(int code) {
    this.code = (byte) code;
  }

  /** The number that stands for it in per-face arrays. */
  public byte code() {
    return code;
  }

  static Finish ofCode(byte code) {
    return switch (code) {
      case 0 -> SECTION;
      case 1 -> GOLD;
      case 2 -> BARE;
      case 3 -> COVERED;
      case 4 -> GHOST;
      case 5 -> TAPE;
      case 6 -> COPPER;
      case 7 -> NICKEL;
      case 8 -> SILVER;
      default -> throw new IllegalArgumentException("No finish has code " + code);
    };
  }
}
