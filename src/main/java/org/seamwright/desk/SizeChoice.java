package org.seamwright.desk;

import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.job.Job;
import org.seamwright.job.LikelyUnits;
import org.seamwright.job.Piece;
import org.seamwright.mesh.Bounds;
import org.seamwright.meshfile.MeshDocument;

/** How large the piece is: the units it may be in, or a length known between two of its points. */
public final class SizeChoice {
  private SizeChoice() {}

  /**
   * One unit that may be meant.
   *
   * @param symbol the unit, as in the job file
   * @param size what the piece would measure
   * @param likely whether a piece of that size fits a bench
   */
  public record Unit(String symbol, String size, boolean likely) {
    /** The scale that it says. */
    public Job.Scale scale() {
      return new Job.Scale.Unit(symbol);
    }
  }

  /** The units that a model may be in, the likeliest first. */
  public static List<Unit> units(MeshDocument document) {
    return LikelyUnits.of(document.mesh()).stream()
        .map(c -> new Unit(c.unit().symbol(), Piece.size(c.sizeMm()), c.fitsBench()))
        .toList();
  }

  /**
   * The scale that makes the way between two points of the model, as the crow flies, a true length.
   * The job file remembers it as the length of the model's longest extent, which it follows from.
   *
   * @param first in the file's own unit
   * @param second in the file's own unit
   * @param lengthMm true length between them, mm
   * @throws IllegalArgumentException if the points are the same or the length is not above 0
   */
  public static Job.Scale known(
      MeshDocument document, Vector3D first, Vector3D second, double lengthMm) {
    double apart = first.distance(second);
    if (!(apart > 0) || !(lengthMm > 0)) {
      throw new IllegalArgumentException("Two places and a length above 0 are needed");
    }
    Bounds bounds = document.mesh().bounds();
    double longest = Math.max(bounds.sizeX(), Math.max(bounds.sizeY(), bounds.sizeZ()));
    return new Job.Scale.KnownLength(longest * (lengthMm / apart), Job.Along.LONGEST);
  }
}
