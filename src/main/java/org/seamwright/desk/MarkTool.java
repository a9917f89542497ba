package org.seamwright.desk;

import java.util.Locale;

/** The tools of marking: one for each kind of mark that is made by hand. */
public enum MarkTool {
  /** No tool: the pointer turns the piece. */
  NONE(Use.NOTHING),
  /** A stroke, painted. */
  STROKE(Use.DRAG),
  /** A fill up to creases. */
  FILL(Use.CLICK),
  /** One side of a plane. */
  PLANE(Use.CLICK),
  /** A ring between two heights along the axis. */
  RING(Use.TWO_CLICKS),
  /** A slice about the axis. */
  SECTOR(Use.TWO_CLICKS),
  /** A box between two corners. */
  BOX(Use.TWO_CLICKS),
  /** A closed outline. */
  OUTLINE(Use.CORNERS),
  /** All that faces as the place clicked. */
  FACING(Use.CLICK),
  /** A whole connected part. */
  PART(Use.CLICK),
  /** Faces that have a name in the file. */
  NAMED(Use.FORM),
  /** Marked places grow. */
  GROW(Use.FORM),
  /** Edges of marked places made smooth. */
  SMOOTH(Use.FORM),
  /** Marks so far repeated in a mirror. */
  MIRROR(Use.FORM),
  /** Marks so far repeated round the axis. */
  TURN(Use.FORM),
  /** Plated and bare change roles. */
  INVERT(Use.FORM);

  private final Use use;

  MarkTool(Use use) {
    this.use = use;
  }

  /** How a tool is used on the piece. */
  public enum Use {
    /** Not at all. */
    NOTHING,
    /** Pressed, drawn, let go. */
    DRAG,
    /** One click adds the mark that the pointer shows. */
    CLICK,
    /** Two clicks, one for each limit. */
    TWO_CLICKS,
    /** Clicks for corners, Enter to close, a click inside. */
    CORNERS,
    /** No place: a button adds it. */
    FORM
  }

  /** How it is used. */
  public Use use() {
    return use;
  }

  /** Whether it marks places that are pointed at, and so can mark them elsewhere too. */
  public boolean takesPlace() {
    return switch (this) {
      case STROKE, FILL, PLANE, OUTLINE, FACING, PART -> true;
      default -> false;
    };
  }

  /** Its word in keys of texts. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Its name. */
  public String title() {
    return Messages.text("tool." + key());
  }

  /** What to do with it, one sentence. */
  public String help() {
    return Messages.text("tool." + key() + ".help");
  }
}
