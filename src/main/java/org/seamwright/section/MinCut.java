package org.seamwright.section;

import java.util.Arrays;

/**
 * Cheapest cut of a small graph with two terminals: E. A. Dinic's algorithm (1970) on flat arrays
 * that are used again and again. Edges have the same capacity both ways.
 *
 * <p>Cost: a fraction of a millisecond for some hundred nodes. Capacities are rounded amounts, so
 * flows below a billionth of the largest count as nothing.
 */
final class MinCut {
  /** Share of the largest capacity below which a residual is rounding. */
  private static final double ROUNDING = 1e-9;

  private int nodes;
  private int arcs;

  /** Positive: capacity from the source; negative: to the sink. */
  private double[] terminal = new double[64];

  private int[] first = new int[64];
  private int[] level = new int[64];
  private int[] current = new int[64];
  private int[] queue = new int[64];
  private int[] path = new int[64];
  private int[] next = new int[256];
  private int[] head = new int[256];
  private double[] residual = new double[256];
  private double least;

  /** Starts a graph without edges. */
  void reset(int nodeCount) {
    if (nodeCount > first.length) {
      int room = 2 * nodeCount;
      terminal = new double[room];
      first = new int[room];
      level = new int[room];
      current = new int[room];
      queue = new int[room];
      path = new int[room];
    }
    nodes = nodeCount;
    arcs = 0;
    Arrays.fill(first, 0, nodes, -1);
    Arrays.fill(terminal, 0, nodes, 0);
  }

  /** Capacity from the source if positive, to the sink if negative; replaces what was set. */
  void terminal(int node, double capacity) {
    terminal[node] = capacity;
  }

  /** Joins two nodes; capacity both ways. */
  void edge(int a, int b, double capacity) {
    if (arcs + 2 > next.length) {
      next = Arrays.copyOf(next, 2 * next.length);
      head = Arrays.copyOf(head, next.length);
      residual = Arrays.copyOf(residual, next.length);
    }
    arc(a, b, capacity);
    arc(b, a, capacity);
  }

  private void arc(int a, int b, double capacity) {
    next[arcs] = first[a];
    head[arcs] = b;
    residual[arcs] = capacity;
    first[a] = arcs++;
  }

  /**
   * Cuts.
   *
   * @param sourceSide set to whether each node stays with the source; where both sides cost the
   *     same, a node goes with the sink
   */
  void cut(boolean[] sourceSide) {
    double most = 0;
    for (int i = 0; i < arcs; i++) {
      most = Math.max(most, residual[i]);
    }
    least = ROUNDING * most;
    while (levels()) {
      System.arraycopy(first, 0, current, 0, nodes);
      for (int v = 0; v < nodes; v++) {
        while (terminal[v] > least && push(v)) {
          // Until nothing more gets through from here.
        }
      }
    }
    for (int v = 0; v < nodes; v++) {
      sourceSide[v] = level[v] >= 0;
    }
  }

  /** Steps from the source to each node over what is left; says whether the sink is reached. */
  private boolean levels() {
    Arrays.fill(level, 0, nodes, -1);
    int end = 0;
    for (int v = 0; v < nodes; v++) {
      if (terminal[v] > least) {
        level[v] = 0;
        queue[end++] = v;
      }
    }
    boolean reached = false;
    for (int i = 0; i < end; i++) {
      int v = queue[i];
      reached |= terminal[v] < -least;
      for (int arc = first[v]; arc >= 0; arc = next[arc]) {
        if (residual[arc] > least && level[head[arc]] < 0) {
          level[head[arc]] = level[v] + 1;
          queue[end++] = head[arc];
        }
      }
    }
    return reached;
  }

  /** Sends flow along one path from a node to the sink, by depth-first search without recursion. */
  private boolean push(int from) {
    int depth = 0;
    int v = from;
    while (terminal[v] >= -least) {
      int arc = current[v];
      while (arc >= 0 && !(residual[arc] > least && level[head[arc]] == level[v] + 1)) {
        arc = next[arc];
      }
      current[v] = arc;
      if (arc >= 0) {
        path[depth++] = arc;
        v = head[arc];
      } else if (depth == 0) {
        return false;
      } else {
        v = head[path[--depth] ^ 1];
        current[v] = next[current[v]];
      }
    }
    double flow = Math.min(terminal[from], -terminal[v]);
    for (int i = 0; i < depth; i++) {
      flow = Math.min(flow, residual[path[i]]);
    }
    for (int i = 0; i < depth; i++) {
      residual[path[i]] -= flow;
      residual[path[i] ^ 1] += flow;
    }
    terminal[from] -= flow;
    terminal[v] += flow;
    return true;
  }
}
