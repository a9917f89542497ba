package org.seamwright.region;

/**
 * One thing the user says of the piece: a place, in the piece's own coordinates (mm), and what is
 * to become of it. Marks apply in order; a later one overrides an earlier one where they overlap.
 *
 * <p>A mark is geometry, never a list of face numbers, so it survives a finer or coarser model of
 * the same piece. The kinds themselves stand in the interfaces that this one extends.
 */
public sealed interface Mark extends SolidPlaces, SurfacePlaces, Edits
    permits Mark.Place, Mark.Off, Edits.Mirror, Edits.Turn, Edits.Invert {
  /** What the user calls it; may be empty. */
  String name();

  /** Calls the case of this mark's kind. */
  <T, E extends Exception> T match(Cases<T, E> cases) throws E;

  /**
   * Says that a mark goes about the axis that the piece shows by its shape, and which of the mark's
   * own vectors count beside it. A point counts by its foot on that axis; without one heights count
   * from the level of the lowest place. Without a direction angles count from x, or from y where
   * the axis lies within 25 degrees of x.
   *
   * @param ownPoint whether the mark's point counts
   * @param ownZero whether the mark's direction of angle 0 counts
   */
  record FoundAxis(boolean ownPoint, boolean ownZero) {}

  /** A mark that says of a place what becomes of it. */
  sealed interface Place extends Mark
      permits SolidPlaces.HalfSpace,
          SolidPlaces.Sector,
          SolidPlaces.InBox,
          SolidPlaces.Ring,
          SolidPlaces.Inside,
          SurfacePlaces.Near,
          SurfacePlaces.Outline,
          SurfacePlaces.CreaseFill,
          SurfacePlaces.WholePart,
          SurfacePlaces.Facing,
          SurfacePlaces.Named,
          SurfacePlaces.OutOfReach,
          SurfacePlaces.InnerShells,
          Edits.Grow,
          Edits.Smooth {
    /** What becomes of the marked place. */
    Treatment treatment();
  }

  /**
   * One case per kind of mark.
   *
   * @param <T> what a case gives
   * @param <E> what it may throw
   */
  interface Cases<T, E extends Exception> {
    /** A half space. */
    T halfSpace(HalfSpace mark) throws E;

    /** A disc or stroke. */
    T near(Near mark) throws E;

    /** A fill up to creases. */
    T creaseFill(CreaseFill mark) throws E;

    /** A whole part. */
    T wholePart(WholePart mark) throws E;

    /** A sector about an axis. */
    T sector(Sector mark) throws E;

    /** A box. */
    T inBox(InBox mark) throws E;

    /** A ring about an axis. */
    T ring(Ring mark) throws E;

    /** A closed outline. */
    T outline(Outline mark) throws E;

    /** Faces that face a direction. */
    T facing(Facing mark) throws E;

    /** Faces with a name from the file. */
    T named(Named mark) throws E;

    /** Everything inside a body from another file. */
    T inside(Inside mark) throws E;

    /** What a round tip cannot touch. */
    T outOfReach(OutOfReach mark) throws E;

    /** Parts inside a closed part. */
    T innerShells(InnerShells mark) throws E;

    /** A region growing. */
    T grow(Grow mark) throws E;

    /** A region's edge made smooth. */
    T smooth(Smooth mark) throws E;

    /** A mirror image of the marks so far. */
    T mirror(Mirror mark) throws E;

    /** Turned copies of the marks so far. */
    T turn(Turn mark) throws E;

    /** Plated and bare places changing roles. */
    T invert(Invert mark) throws E;
  }

  /**
   * A mark that is switched off: it keeps its place in the list and does nothing, nor is it
   * repeated.
   *
   * @param mark what it is when it is switched on
   */
  record Off(Mark mark) implements Mark {
    /** Checks that a mark is switched off once. */
    public Off {
      if (mark instanceof Off) {
        throw new IllegalArgumentException("A mark is switched off once");
      }
    }

    @Override
    public String name() {
      return mark.name();
    }

    /** Calls the case of the mark that is switched off. */
    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return mark.match(cases);
    }
  }
}
