package org.seamwright.desk;

import java.util.Locale;

/** The tools that change sections by hand. */
public enum SectionTool {
  /** No tool: the pointer turns the piece and tells figures. */
  LOOK,
  /** A seam is dragged. */
  SEAM,
  /** A section is parted along a drawn line. */
  LINE,
  /** A section is parted evenly. */
  SPLIT,
  /** Two sections with a seam between them become one. */
  MERGE,
  /** A seam stays when sections are found anew. */
  PIN;

  /** Its word in keys of texts. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Its name. */
  public String title() {
    return Messages.text("section-tool." + key());
  }

  /** What to do with it, one sentence or two. */
  public String help() {
    return Messages.text("section-tool." + key() + ".help");
  }

  /** Whether it acts on a seam. */
  boolean takesSeam() {
    return this == SEAM || this == MERGE || this == PIN;
  }
}
