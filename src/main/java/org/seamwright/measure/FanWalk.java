package org.seamwright.measure;

import org.seamwright.mesh.Topology;

/**
 * Walks over the corners around a vertex from edge to edge. Faces turned against each other are
 * walked over like any others and told by {@link #turned()}.
 *
 * <p>A corner is named by the half-edge that starts there. Use: {@code start}, then {@code step}
 * until it is false or the edge at the {@code exit} is one not to be crossed.
 */
final class FanWalk {
  private final int[] corner;
  private final Topology topology;
  private int vertex;
  private int first;
  private int exit;
  private int at;
  private boolean turned;
  private boolean closed;

  FanWalk(int[] corner, Topology topology) {
    this.corner = corner;
    this.topology = topology;
  }

  /**
   * Begins at a corner.
   *
   * @param h the corner
   * @param forward whether to leave its face over the edge of h itself or over the one before it
   */
  void start(int h, boolean forward) {
    vertex = corner[h];
    first = h;
    at = h;
    exit = forward ? h : Topology.prev(h);
    turned = false;
    closed = false;
  }

  /** The edge the next step goes over; it must have two faces for that. */
  int exit() {
    return exit;
  }

  /** Steps over the next edge; false when the walk has come round. */
  boolean step() {
    int twin = topology.twin(exit);
    turned ^= corner[twin] == corner[exit];
    if (corner[twin] == vertex) {
      at = twin;
      exit = Topology.prev(twin);
    } else {
      at = Topology.next(twin);
      exit = at;
    }
    closed = at == first;
    return !closed;
  }

  /** Whether the walk has come round to where it started. */
  boolean isClosed() {
    return closed;
  }

  /** The corner reached. */
  int at() {
    return at;
  }

  /** Whether the face reached is turned against the one where the walk started. */
  boolean turned() {
    return turned;
  }
}
