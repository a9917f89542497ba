package org.seamwright.job;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Mesh;
import org.seamwright.units.LengthUnit;

/**
 * The units that the numbers of a mesh file can be in, the likely one first: the one that brings
 * the longest extent nearest, by ratio, to the middle of what lies on a bench, 20 mm to 1.5 m
 * (common practice, no source). A help for the reader, never taken for granted.
 */
public final class LikelyUnits {
  /** How {@link #of} orders, for people. */
  public static final String RULE =
      "The likeliest comes first: it makes the piece fit a bench best, where pieces are 20 mm to"
          + " 1.5 m long (common practice, no source).";

  private static final double SMALLEST_MM = 20;
  private static final double LARGEST_MM = 1500;

  private LikelyUnits() {}

  /**
   * A unit and what the piece would be in it.
   *
   * @param unit the unit
   * @param sizeMm the piece's place and size, mm
   * @param fitsBench whether its longest extent is 20 mm to 1.5 m
   */
  public record Candidate(LengthUnit unit, Bounds sizeMm, boolean fitsBench) {}

  /** All candidates for a mesh in its file's own numbers. */
  public static List<Candidate> of(Mesh mesh) {
    Bounds bounds = mesh.bounds();
    double longest = longest(bounds);
    double middle = Math.sqrt(SMALLEST_MM * LARGEST_MM);
    return Stream.of(LengthUnit.MM, LengthUnit.CM, LengthUnit.M, LengthUnit.IN, LengthUnit.FT)
        .sorted(
            Comparator.comparingDouble(unit -> Math.abs(Math.log(longest * unit.mmPer() / middle))))
        .map(unit -> candidate(unit, bounds))
        .toList();
  }

  private static Candidate candidate(LengthUnit unit, Bounds bounds) {
    double mm = unit.mmPer();
    Bounds size =
        new Bounds(
            mm * bounds.minX(),
            mm * bounds.minY(),
            mm * bounds.minZ(),
            mm * bounds.maxX(),
            mm * bounds.maxY(),
            mm * bounds.maxZ());
    return new Candidate(unit, size, fitBench(size));
  }

  /** Whether the longest extent, in mm, is that of a piece on a bench. */
  static boolean fitBench(Bounds sizeMm) {
    double longest = longest(sizeMm);
    return longest >= SMALLEST_MM && longest <= LARGEST_MM;
  }

  private static double longest(Bounds bounds) {
    return Math.max(bounds.sizeX(), Math.max(bounds.sizeY(), bounds.sizeZ()));
  }
}
