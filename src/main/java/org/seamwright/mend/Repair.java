package org.seamwright.mend;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * One step of cleaning a model. Steps are carried out in order, each on what the last one left;
 * leaving one out of the list undoes it. Lengths and coordinates in mm, in the piece's own axes.
 */
public sealed interface Repair {
  /** What the step is called in the job file and in notices. */
  String kind();

  /**
   * Keeps the connected parts nearest to some points, drops the rest.
   *
   * @param points one near each part to keep, at least one
   */
  record KeepParts(List<Vector3D> points) implements Repair {
    /** Copies the list. */
    public KeepParts {
      points = List.copyOf(points);
      require(!points.isEmpty(), "At least one point is needed");
    }

    @Override
    public String kind() {
      return "keepParts";
    }
  }

  /**
   * Keeps the connected parts of largest area.
   *
   * @param count how many, at least 1
   */
  record KeepLargest(int count) implements Repair {
    /** Checks the count. */
    public KeepLargest {
      require(count >= 1, "At least one part must be kept");
    }

    @Override
    public String kind() {
      return "keepLargest";
    }
  }

  /**
   * Keeps the connected parts that have at least a share of the area.
   *
   * @param share above 0 to 1
   */
  record KeepAbove(double share) implements Repair {
    /** Checks the share. */
    public KeepAbove {
      require(share > 0 && share <= 1, "The share must be above 0 and at most 1");
    }

    @Override
    public String kind() {
      return "keepAbove";
    }
  }

  /**
   * Finds the plane of the table that the piece was scanned on, and drops what lies below it.
   *
   * @param point a place on the table, or on a stand with more below it; without one the table is
   *     looked for
   * @param clearanceMm how far above the fitted plane is cut; without one, as far as the table's
   *     roughness reaches
   */
  record CutTable(Optional<Vector3D> point, OptionalDouble clearanceMm) implements Repair {
    /** Checks the clearance. */
    public CutTable {
      require(!(clearanceMm.orElse(0) < 0), "The clearance must not be below 0");
    }

    @Override
    public String kind() {
      return "cutTable";
    }
  }

  /**
   * Drops what lies below a plane.
   *
   * @param point of the plane
   * @param normal points to the side that is kept; its length doesn't count
   */
  record CutBelow(Vector3D point, Vector3D normal) implements Repair {
    /** Checks the normal. */
    public CutBelow {
      require(normal.norm() > 0, "The normal must point somewhere");
    }

    @Override
    public String kind() {
      return "cutBelow";
    }
  }

  /** Drops faces that repeat an earlier one and faces without area. */
  record DropFaulty() implements Repair {
    @Override
    public String kind() {
      return "dropFaulty";
    }
  }

  /** Turns faces so that neighbours agree and the outside is outside. */
  record TurnOutward() implements Repair {
    @Override
    public String kind() {
      return "turnOutward";
    }
  }

  /**
   * Closes holes.
   *
   * @param aroundMm longest way around a hole that is closed, above 0
   */
  record FillHoles(double aroundMm) implements Repair {
    /** Checks the length. */
    public FillHoles {
      require(aroundMm > 0, "The way around a hole must be above 0");
    }

    @Override
    public String kind() {
      return "fillHoles";
    }
  }

  /** Drops parts that lie wholly inside a closed part. */
  record DropInner() implements Repair {
    @Override
    public String kind() {
      return "dropInner";
    }
  }

  /** Drops what lies inside another closed part, cutting faces that pass through its surface. */
  record DropHidden() implements Repair {
    @Override
    public String kind() {
      return "dropHidden";
    }
  }

  /**
   * Joins corners on open edges that are nearly equal.
   *
   * @param toleranceMm how far apart they may be, above 0; without one, {@link
   *     Mender#USUAL_TOLERANCE} of the model's diagonal
   */
  record Weld(OptionalDouble toleranceMm) implements Repair {
    /** Checks the tolerance. */
    public Weld {
      require(toleranceMm.orElse(1) > 0, "The tolerance must be above 0");
    }

    @Override
    public String kind() {
      return "weld";
    }
  }

  /**
   * Splits open edges at corners that lie on them.
   *
   * @param toleranceMm how far off the edge a corner may lie, above 0; without one as for {@link
   *     Weld}
   */
  record SplitEdges(OptionalDouble toleranceMm) implements Repair {
    /** Checks the tolerance. */
    public SplitEdges {
      require(toleranceMm.orElse(1) > 0, "The tolerance must be above 0");
    }

    @Override
    public String kind() {
      return "splitEdges";
    }
  }

  private static void require(boolean holds, String message) {
    if (!holds) {
      throw new IllegalArgumentException(message);
    }
  }
}
