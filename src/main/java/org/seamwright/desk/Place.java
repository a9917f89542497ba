package org.seamwright.desk;

import java.util.List;
import java.util.Locale;

/** The places of the window, in the order of the work. */
public enum Place {
  /** The model: its file, its size, its faults. */
  PIECE,
  /** What stays bare. */
  MARKS,
  /** The sections it is worked in. */
  SECTIONS,
  /** Recipe, thickness, amounts. */
  PLATING,
  /** What is printed. */
  PAPERS;

  /** Its number, from 1: also its key on the keyboard. */
  public int number() {
    return List.of(values()).indexOf(this) + 1;
  }

  /** Its name. */
  public String title() {
    return Messages.text("path." + key());
  }

  /** Its word in keys of texts and in names of controls. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }
}
