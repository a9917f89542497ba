package org.seamwright.measure;

import java.util.Arrays;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Sectors of the vertices that sharp edges, borders, branches or turned faces part, and their
 * normals. Vertices are worked on in blocks; each writes only what is its own.
 */
final class Sectors {
  /** A sector without a common normal. */
  private static final int TIP = Integer.MIN_VALUE;

  private final Mesh mesh;
  private final Topology topology;
  private final Fans.Lists lists;

  /** Normals of first sectors, three numbers per vertex. */
  private final double[] first;

  /** Normals of the second and further sectors of a block's vertices. */
  private final double[][] further;

  /**
   * For each corner: 0 if its vertex is plain; 1 more than the place of its sector, which is 0 for
   * the vertex's first and counts from 1 for the further ones of the block; negative where the face
   * is turned against the sector; or {@link #TIP}.
   */
  private final int[] sector;

  private final int shift;

  /**
   * Makes room.
   *
   * @param lists corners of the vertices meant
   * @param first receives normals of first sectors
   * @param shift vertices per block, as a power of two
   */
  Sectors(Mesh mesh, Topology topology, Fans.Lists lists, double[] first, int blocks, int shift) {
    this.mesh = mesh;
    this.topology = topology;
    this.lists = lists;
    this.first = first;
    this.further = new double[blocks][];
    this.sector = new int[mesh.corner().length];
    this.shift = shift;
  }

  /** The normal at a corner of one of the vertices. */
  void at(int h, double[] into) {
    int s = sector[h];
    if (s == TIP) {
      Crease.normal(mesh, topology, h / 3, into);
      return;
    }
    int v = mesh.corner()[h];
    copy(v, Math.abs(s) - 1, into);
    if (s < 0) {
      for (int axis = 0; axis < 3; axis++) {
        into[axis] = -into[axis];
      }
    }
  }

  private void copy(int v, int place, double[] into) {
    if (place == 0) {
      System.arraycopy(first, 3 * v, into, 0, 3);
    } else {
      System.arraycopy(further[v >> shift], 3 * (place - 1), into, 0, 3);
    }
  }

  private void put(int v, int place, double[] from) {
    if (place == 0) {
      System.arraycopy(from, 0, first, 3 * v, 3);
    } else {
      System.arraycopy(from, 0, further[v >> shift], 3 * (place - 1), 3);
    }
  }

  /** Corners of the vertices meant. */
  Fans.Lists lists() {
    return lists;
  }

  /** Fits the normals of a vertex's sectors to their neighbours and hands on those that turn. */
  void fit(int v, CornerNormals normals, NormalFit fit, Turned turned) {
    double[] own = new double[3];
    for (int i = lists.begin(v); i < lists.end(v); i++) {
      int s = sector[lists.corner(i)];
      if (s != TIP && isFirstOf(i, lists.begin(v))) {
        copy(v, Math.abs(s) - 1, own);
        fit.start(own[0], own[1], own[2]);
        for (int j = i; j < lists.end(v); j++) {
          int h = lists.corner(j);
          if (Math.abs(sector[h]) == Math.abs(s)) {
            normals.addChords(h, sector[h] < 0 ? -1 : 1, fit);
          }
        }
        if (fit.solve(NormalFit.CLEARLY_BETTER, own)) {
          turned.add(v, Math.abs(s) - 1, own);
        }
      }
    }
  }

  private boolean isFirstOf(int i, int begin) {
    int s = Math.abs(sector[lists.corner(i)]);
    for (int j = begin; j < i; j++) {
      if (Math.abs(sector[lists.corner(j)]) == s) {
        return false;
      }
    }
    return true;
  }

  /** Normals that are to be put in place once all have been fitted. */
  static final class Turned {
    private int[] where = new int[16];
    private double[] normal = new double[24];
    private int count;

    void add(int vertex, int place, double[] to) {
      if (2 * count == where.length) {
        where = Arrays.copyOf(where, 4 * count);
        normal = Arrays.copyOf(normal, 6 * count);
      }
      where[2 * count] = vertex;
      where[2 * count + 1] = place;
      System.arraycopy(to, 0, normal, 3 * count, 3);
      count++;
    }

    int count() {
      return count;
    }

    int vertex(int i) {
      return where[2 * i];
    }

    int place(int i) {
      return where[2 * i + 1];
    }

    void normal(int i, double[] into) {
      System.arraycopy(normal, 3 * i, into, 0, 3);
    }
  }

  /** Puts a fitted normal in place, unless one of the sector's faces leans too far from it. */
  boolean turn(int v, int place, double[] to, double tipCosine) {
    double[] face = new double[3];
    for (int i = lists.begin(v); i < lists.end(v); i++) {
      int h = lists.corner(i);
      if (sector[h] != TIP && Math.abs(sector[h]) == place + 1) {
        Crease.normal(mesh, topology, h / 3, face);
        double cosine = face[0] * to[0] + face[1] * to[1] + face[2] * to[2];
        if ((sector[h] < 0 ? -cosine : cosine) < tipCosine) {
          return false;
        }
      }
    }
    put(v, place, to);
    return true;
  }

  /** Finds the sectors of one block's vertices. */
  final class Builder {
    private final SharpEdges edges;
    private final double tipCosine;
    private final FanWalk walk;
    private final double[] face = new double[3];
    private final double[] sum = new double[3];
    private int[] corners = new int[16];
    private int count;
    private double[] extra = new double[0];
    private int extras;

    Builder(SharpEdges edges, double tipCosine) {
      this.edges = edges;
      this.tipCosine = tipCosine;
      this.walk = new FanWalk(mesh.corner(), topology);
    }

    /** Finds those of one vertex. */
    void part(int v) {
      boolean second = false;
      for (int i = lists.begin(v); i < lists.end(v); i++) {
        int h = lists.corner(i);
        if (sector[h] == 0) {
          gather(h);
          keep(v, second);
          second = true;
        }
      }
    }

    private void gather(int h) {
      count = 0;
      Arrays.fill(sum, 0);
      add(h, false);
      walk.start(h, true);
      while (!edges.isSharp(walk.exit()) && walk.step()) {
        add(walk.at(), walk.turned());
      }
      if (!walk.isClosed()) {
        walk.start(h, false);
        while (!edges.isSharp(walk.exit()) && walk.step()) {
          add(walk.at(), walk.turned());
        }
      }
      double length = Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1] + sum[2] * sum[2]);
      for (int axis = 0; axis < 3; axis++) {
        sum[axis] = length > 0 ? sum[axis] / length : 0;
      }
    }

    private void add(int h, boolean turned) {
      if (count == corners.length) {
        corners = Arrays.copyOf(corners, 2 * count);
      }
      corners[count++] = turned ? ~h : h;
      int[] corner = mesh.corner();
      double area = Faces.area(mesh, h / 3);
      double a = Faces.length(mesh, corner[h], corner[Topology.next(h)]);
      double b = Faces.length(mesh, corner[h], corner[Topology.prev(h)]);
      double weight = area > 0 ? (turned ? -area : area) / (a * a * b * b) : 0;
      Crease.normal(mesh, topology, h / 3, face);
      for (int axis = 0; axis < 3; axis++) {
        sum[axis] += weight * face[axis];
      }
    }

    private void keep(int v, boolean isFurther) {
      int place = 0;
      boolean tip = isTip();
      if (!tip && isFurther) {
        if (3 * extras == extra.length) {
          extra = Arrays.copyOf(extra, Math.max(48, 6 * extras));
        }
        System.arraycopy(sum, 0, extra, 3 * extras++, 3);
        place = extras;
      } else if (!tip) {
        System.arraycopy(sum, 0, first, 3 * v, 3);
      }
      for (int i = 0; i < count; i++) {
        int h = corners[i] < 0 ? ~corners[i] : corners[i];
        sector[h] = tip ? TIP : corners[i] < 0 ? -(place + 1) : place + 1;
      }
    }

    private boolean isTip() {
      for (int i = 0; i < count; i++) {
        int h = corners[i] < 0 ? ~corners[i] : corners[i];
        Crease.normal(mesh, topology, h / 3, face);
        double cosine = face[0] * sum[0] + face[1] * sum[1] + face[2] * sum[2];
        if ((corners[i] < 0 ? -cosine : cosine) < tipCosine) {
          return true;
        }
      }
      return false;
    }

    /** Ends the block. */
    void finish(int block) {
      further[block] = Arrays.copyOf(extra, 3 * extras);
    }
  }
}
