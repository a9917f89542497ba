package org.seamwright.section;

import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A change of the sections that the user makes after they were found. Sections are named by points
 * on the piece: the section is the one that the point, or the place of the surface nearest to it,
 * lies in when the edit's turn comes. Points outlive a change of the limit or of the mesh, where
 * numbers would not. Lengths in mm.
 */
public sealed interface SectionEdit {
  /**
   * Makes two sections that meet one.
   *
   * @param a a point of the one
   * @param b a point of the other
   */
  record Merge(Vector3D a, Vector3D b) implements SectionEdit {}

  /**
   * Parts a section along a drawn line.
   *
   * @param at a point of the section, off the line
   * @param path the line, from edge to edge of the section; one that ends inside runs on by the
   *     shortest way
   */
  record SplitAlong(Vector3D at, List<Vector3D> path) implements SectionEdit {
    /** Checks the line. */
    public SplitAlong {
      path = requireLine(path);
    }
  }

  /**
   * Parts a section evenly.
   *
   * @param at a point of the section
   * @param count into how many parts of equal area, from 2
   */
  record SplitEvenly(Vector3D at, int count) implements SectionEdit {
    /** Checks the count. */
    public SplitEvenly {
      if (count < 2) {
        throw new IllegalArgumentException("A section is split into at least two");
      }
    }
  }

  /**
   * Moves the seam between two sections, or a stretch of it.
   *
   * @param a a point of the one that stays with it
   * @param b a point of the other that stays with that
   * @param path where the seam, or the stretch, is to run. An end that lies inside a section runs
   *     on to its nearest edge by the shortest way, so a line begun and ended at the old seam moves
   *     the stretch between
   */
  record MoveSeam(Vector3D a, Vector3D b, List<Vector3D> path) implements SectionEdit {
    /** Checks the line. */
    public MoveSeam {
      path = requireLine(path);
    }
  }

  /**
   * Keeps a seam where it is when sections are found anew: no section lies on both sides of the
   * line.
   *
   * @param path the seam's course
   */
  record Pin(List<Vector3D> path) implements SectionEdit {
    /** Checks the line. */
    public Pin {
      path = requireLine(path);
    }
  }

  /**
   * Names a section.
   *
   * @param at a point of it
   * @param name what it is called; empty takes the name away
   */
  record Rename(Vector3D at, String name) implements SectionEdit {}

  /**
   * Moves a section to another place in the working order; those between move up or down.
   *
   * @param at a point of it
   * @param number its place, from 1
   */
  record Renumber(Vector3D at, int number) implements SectionEdit {
    /** Checks the number. */
    public Renumber {
      if (number < 1) {
        throw new IllegalArgumentException("Sections are numbered from 1");
      }
    }
  }

  private static List<Vector3D> requireLine(List<Vector3D> path) {
    if (path.size() < 2) {
      throw new IllegalArgumentException("A line needs at least two points");
    }
    return List.copyOf(path);
  }
}
