package org.seamwright.picture;

/** What a face looks like. */
public enum Finish {
  /** The colour and pattern of the section it belongs to. */
  SECTION,
  /** Gold. */
  GOLD,
  /** The piece's own metal: cool grey. */
  BARE,
  /** Covered while plating, by tape or lacquer: hatched. */
  COVERED,
  /** Not part of the work: pale and flat. */
  GHOST;

  private static final Finish[] ALL = values();

  /** The number that stands for it in per-face arrays. */
  public byte code() {
    return (byte) ordinal();
  }

  static Finish ofCode(byte code) {
    return ALL[code];
  }
}
