package org.seamwright.section;

import java.util.List;
import java.util.Objects;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A way of making sections that the user asks for in place of the automatic one. Whatever it makes
 * is cut exactly through the triangles, made one piece each, and divided further by the automatic
 * way where it is over the limit.
 */
public sealed interface SectionWay {
  /** What rings are told apart by. */
  enum By {
    /** Height along the axis: planes square to it. */
    HEIGHT,
    /** Distance from the axis: cylinders about it. */
    RADIUS
  }

  /**
   * Rings about an axis.
   *
   * @param axis the axis
   * @param by what they are told apart by
   * @param count how many, all of the same area; 0 for as many as the limit needs, or where heights
   *     are given
   * @param atMm where they are parted, ascending: heights from the axis' point, or radii; empty for
   *     equal areas
   */
  record Rings(SectionAxis axis, By by, int count, List<Double> atMm) implements SectionWay {
    /** Checks the places. */
    public Rings {
      Objects.requireNonNull(axis, "axis");
      atMm = List.copyOf(atMm);
      requireAscending(atMm);
    }
  }

  /**
   * Sectors of equal angle about an axis.
   *
   * @param axis the axis; the first sector begins at its angle 0
   * @param count how many, from 2
   */
  record Sectors(SectionAxis axis, int count) implements SectionWay {
    /** Checks the count. */
    public Sectors {
      Objects.requireNonNull(axis, "axis");
      requireSeveral(count);
    }
  }

  /**
   * Rings, each parted in sectors.
   *
   * @param rings the rings
   * @param sectors how many sectors each has, from 2
   */
  record RingsAndSectors(Rings rings, int sectors) implements SectionWay {
    /** Checks the count. */
    public RingsAndSectors {
      Objects.requireNonNull(rings, "rings");
      requireSeveral(sectors);
    }
  }

  /**
   * Strips that lie side by side along a direction, parted by planes square to it.
   *
   * @param direction from strip to strip
   * @param count how many, all of the same area; 0 for as many as the limit needs
   */
  record Strips(Vector3D direction, int count) implements SectionWay {
    /** Checks the direction. */
    public Strips {
      if (!(direction.norm() > 0)) {
        throw new IllegalArgumentException("A direction cannot be all zero");
      }
    }
  }

  /**
   * Natural faces: what creases bound.
   *
   * @param angleDegrees neighbouring faces whose normals differ by at least this much part them
   */
  record NaturalFaces(double angleDegrees) implements SectionWay {
    /** Checks the angle. */
    public NaturalFaces {
      if (!(angleDegrees > 0 && angleDegrees <= 180)) {
        throw new IllegalArgumentException("The angle must be above 0 and at most 180 degrees");
      }
    }
  }

  private static void requireSeveral(int count) {
    if (count < 2) {
      throw new IllegalArgumentException("There must be at least two sectors");
    }
  }

  private static void requireAscending(List<Double> at) {
    for (int i = 1; i < at.size(); i++) {
      if (!(at.get(i) > at.get(i - 1))) {
        throw new IllegalArgumentException("The places where rings are parted must ascend");
      }
    }
  }
}
