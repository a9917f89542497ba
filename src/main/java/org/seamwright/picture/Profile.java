package org.seamwright.picture;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The outline of a piece cut by a half-plane that ends in its axis: chains of straight segments in
 * radius and height, mm, with the metal on the right hand going along. Cost O(faces).
 */
final class Profile {
  /** Numbers per segment in {@link Chain#at}: radius and height of its start. */
  private static final int PER_POINT = 2;

  /**
   * One line of the outline.
   *
   * @param at radius and height of each point, mm
   * @param along distance from the first point along the chain at each point, mm
   * @param closed whether the last point is the first again
   */
  record Chain(double[] at, double[] along, boolean closed) {
    int points() {
      return along.length;
    }

    double radius(int i) {
      return at[PER_POINT * i];
    }

    double height(int i) {
      return at[PER_POINT * i + 1];
    }

    double lengthMm() {
      return along[along.length - 1];
    }

    /** Area that a segment sweeps in a full turn, mm². */
    double sweptMm2(int segment) {
      return Math.PI
          * (radius(segment) + radius(segment + 1))
          * (along[segment + 1] - along[segment]);
    }
  }

  private record Segment(long from, long to, double r0, double z0, double r1, double z1) {}

  /** Ends on the axis or at nothing have no edge that another face shares. */
  private static final long NO_EDGE = -1;

  private final Turned turned;
  private final double cos;
  private final double sin;
  private final List<Segment> segments = new ArrayList<>();

  private Profile(Turned turned, double angle) {
    this.turned = turned;
    cos = Math.cos(angle);
    sin = Math.sin(angle);
  }

  /**
   * Cuts a piece.
   *
   * @param angle of the half-plane about the axis, radians
   */
  static List<Chain> at(Turned turned, double angle) {
    Profile profile = new Profile(turned, angle);
    for (int f = 0; f < turned.mesh.faceCount(); f++) {
      profile.cut(f);
    }
    return profile.chains();
  }

  private double out(int v) {
    return turned.across[v] * cos + turned.aside[v] * sin;
  }

  private double aside(int v) {
    return turned.aside[v] * cos - turned.across[v] * sin;
  }

  private void cut(int f) {
    int[] corner = turned.mesh.corner();
    long from = NO_EDGE;
    long to = NO_EDGE;
    double[] start = null;
    double[] end = null;
    for (int k = 0; k < 3; k++) {
      int a = corner[3 * f + k];
      int b = corner[3 * f + (k + 1) % 3];
      double sa = aside(a);
      double sb = aside(b);
      if (sa >= 0 == sb >= 0) {
        continue;
      }
      double[] at = crossing(Math.min(a, b), Math.max(a, b));
      long edge = ((long) Math.min(a, b) << 32) | Math.max(a, b);
      // Seen against the turn, a face is entered where it goes behind the plane.
      if (sa >= 0) {
        from = edge;
        start = at;
      } else {
        to = edge;
        end = at;
      }
    }
    if (start == null || end == null || (start[0] <= 0 && end[0] <= 0)) {
      return;
    }
    // What lies beyond the axis belongs to the other half-plane.
    if (start[0] < 0) {
      start = onAxis(start, end);
      from = NO_EDGE;
    }
    if (end[0] < 0) {
      end = onAxis(start, end);
      to = NO_EDGE;
    }
    segments.add(new Segment(from, to, start[0], start[1], end[0], end[1]));
  }

  private static double[] onAxis(double[] a, double[] b) {
    double t = a[0] / (a[0] - b[0]);
    return new double[] {0, a[1] + t * (b[1] - a[1])};
  }

  private double[] crossing(int a, int b) {
    double sa = aside(a);
    double t = sa / (sa - aside(b));
    double za = turned.height[a];
    double ra = out(a);
    return new double[] {ra + t * (out(b) - ra), za + t * (turned.height[b] - za)};
  }

  private List<Chain> chains() {
    Map<Long, Integer> startingAt = new HashMap<>();
    Map<Long, Integer> endingAt = new HashMap<>();
    for (int i = 0; i < segments.size(); i++) {
      startingAt.putIfAbsent(segments.get(i).from, i);
      endingAt.putIfAbsent(segments.get(i).to, i);
    }
    startingAt.remove(NO_EDGE);
    endingAt.remove(NO_EDGE);
    boolean[] used = new boolean[segments.size()];
    List<Chain> chains = new ArrayList<>();
    for (int i = 0; i < used.length; i++) {
      if (!used[i]) {
        chains.add(chain(i, used, startingAt, endingAt));
      }
    }
    return chains;
  }

  private Chain chain(
      int first, boolean[] used, Map<Long, Integer> startingAt, Map<Long, Integer> endingAt) {
    Deque<Segment> line = new ArrayDeque<>();
    used[first] = true;
    line.add(segments.get(first));
    Integer next = startingAt.get(line.getLast().to);
    while (next != null && !used[next]) {
      used[next] = true;
      line.addLast(segments.get(next));
      next = startingAt.get(line.getLast().to);
    }
    boolean closed = next != null && next == first;
    Integer before = closed ? null : endingAt.get(line.getFirst().from);
    while (before != null && !used[before]) {
      used[before] = true;
      line.addFirst(segments.get(before));
      before = endingAt.get(line.getFirst().from);
    }
    double[] at = new double[PER_POINT * (line.size() + 1)];
    double[] along = new double[line.size() + 1];
    int i = 0;
    for (Segment s : line) {
      at[PER_POINT * i] = s.r0;
      at[PER_POINT * i + 1] = s.z0;
      at[PER_POINT * i + 2] = s.r1;
      at[PER_POINT * i + 3] = s.z1;
      along[i + 1] = along[i] + Math.hypot(s.r1 - s.r0, s.z1 - s.z0);
      i++;
    }
    return new Chain(at, along, closed);
  }
}
