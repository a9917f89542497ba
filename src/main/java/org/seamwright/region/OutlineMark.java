package org.seamwright.region;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.SurfacePoint;

/**
 * Closed outlines: their sides are laid into the surface as marked edges, then all that is reached
 * from a point without crossing one is covered.
 */
final class OutlineMark {
  /** Places this near to a vertex or edge, as a share of the mean side, are moved onto it. */
  private static final double SNAP_SHARE = 1e-3;

  private final Piece piece;
  private final EditableSurface surface;
  private int broken;
  private boolean leaking;
  private boolean crossing;

  OutlineMark(Piece piece, EditableSurface surface) {
    this.piece = piece;
    this.surface = surface;
  }

  /**
   * Lays the outline and fills it.
   *
   * @param places its corners, on the piece as read
   * @param inside a place on the marked side
   */
  boolean[] cover(List<SurfacePoint> places, SurfacePoint inside, Progress progress) {
    double side = meanSide(places);
    Patch.Maker patches = new Patch.Maker(surface);
    Stroke stroke =
        new Stroke(piece, surface, patches, new Front(surface, side), SNAP_SHARE * side);
    List<SurfacePoint> closed = new ArrayList<>(places);
    closed.add(places.get(0));
    stroke.lay(closed);
    broken = stroke.broken();
    crossing = crosses();
    progress.at(0.7);
    int seed = Patch.locate(patches, surface, piece, List.of(inside))[0].face();
    boolean[] covered = reached(seed);
    for (int h = 0; h < 3 * surface.faceCount() && !leaking; h++) {
      leaking = surface.isMarked(h) && covered[h / 3] && coversAllRound(h, covered);
    }
    surface.clearMarks();
    progress.at(1);
    return covered;
  }

  /** How many sides have no surface between their ends. */
  int broken() {
    return broken;
  }

  /** Whether both sides of the outline are joined some other way round. */
  boolean isLeaking() {
    return leaking;
  }

  /** Whether sides cross, touch or run along each other, so that inside is not clear. */
  boolean isCrossing() {
    return crossing;
  }

  /** A closed line that keeps off itself has two edges at each of its vertices. */
  private boolean crosses() {
    byte[] edges = new byte[surface.vertexCount()];
    for (int h = 0; h < 3 * surface.faceCount(); h++) {
      if (surface.isMarked(h) && isFirstOfRing(h)) {
        edges[surface.from(h)] = (byte) Math.min(3, edges[surface.from(h)] + 1);
        edges[surface.to(h)] = (byte) Math.min(3, edges[surface.to(h)] + 1);
      }
    }
    for (byte count : edges) {
      if (count != 0 && count != 2) {
        return true;
      }
    }
    return false;
  }

  private boolean isFirstOfRing(int h) {
    for (int g = surface.ring(h); g != h; g = surface.ring(g)) {
      if (g < h) {
        return false;
      }
    }
    return true;
  }

  private double meanSide(List<SurfacePoint> places) {
    double length = 0;
    for (int i = 0; i < places.size(); i++) {
      Vector3D next = piece.position(places.get((i + 1) % places.size()));
      length += piece.position(places.get(i)).distance(next);
    }
    return Math.max(length / places.size(), 1e-6 * piece.diagonalMm());
  }

  private boolean[] reached(int seed) {
    boolean[] covered = new boolean[surface.faceCount()];
    int[] queue = new int[covered.length];
    int end = 0;
    queue[end++] = seed;
    covered[seed] = true;
    for (int begin = 0; begin < end; begin++) {
      for (int h = 3 * queue[begin]; h < 3 * queue[begin] + 3; h++) {
        if (surface.isMarked(h)) {
          continue;
        }
        for (int g = surface.ring(h); g != h; g = surface.ring(g)) {
          if (!covered[g / 3]) {
            covered[g / 3] = true;
            queue[end++] = g / 3;
          }
        }
      }
    }
    return covered;
  }

  private boolean coversAllRound(int h, boolean[] covered) {
    if (surface.ring(h) == h) {
      return false;
    }
    for (int g = surface.ring(h); g != h; g = surface.ring(g)) {
      if (!covered[g / 3]) {
        return false;
      }
    }
    return true;
  }
}
