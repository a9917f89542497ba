package org.seamwright.region;

import java.util.Arrays;
import java.util.Optional;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * A shortest way over the surface between two vertices.
 *
 * <p>A first sequence of faces comes from {@link FaceSearch}. The way through it is pulled tight
 * ({@link FaceStrip}), and where it turns at a vertex the sequence is led round the other side of
 * that vertex if this makes it shorter, until nothing does (S.-Q. Xin and G.-J. Wang, "Efficiently
 * determining a locally exact shortest path on polyhedral surfaces", 2007). The result is exact
 * among the ways that can be bent into one another: round a hole or handle it is the side that the
 * search took.
 */
final class SurfaceWay {
  /** Gain, as a share of the length, below which another side counts as no shorter. */
  private static final double GAIN = 1e-12;

  private final int[] vertices;
  private final int[] otherEnds;
  private final double[] shares;
  private final double lengthMm;

  private SurfaceWay(int[] vertices, int[] otherEnds, double[] shares, double lengthMm) {
    this.vertices = vertices;
    this.otherEnds = otherEnds;
    this.shares = shares;
    this.lengthMm = lengthMm;
  }

  /** One entry per edge that the way crosses, in order: an end of the edge. */
  int[] crossedFrom() {
    return vertices;
  }

  /** The other ends of the edges crossed. */
  int[] crossedTo() {
    return otherEnds;
  }

  /** How far along each edge, from its first end, the way crosses it; 0 to 1. */
  double[] crossedAt() {
    return shares;
  }

  /** Length of the way, mm. */
  double lengthMm() {
    return lengthMm;
  }

  /** Finds a way inside a patch; empty if no surface leads from one vertex to the other. */
  static Optional<SurfaceWay> between(Patch patch, int start, int end) {
    Mesh mesh = patch.mesh();
    int[] ring = EdgeRings.of(mesh, patch.topology()).toArray();
    Optional<int[]> found = new FaceSearch(patch, ring, start, end).entries();
    if (found.isEmpty()) {
      return Optional.empty();
    }
    int[] entry = found.get();
    if (entry.length == 0) {
      double length = Faces.length(mesh, start, end);
      return Optional.of(new SurfaceWay(new int[0], new int[0], new double[0], length));
    }
    Sides sides = new Sides(mesh, ring, start, end);
    FaceStrip strip = sides.strip(entry);
    boolean shorter = true;
    while (shorter) {
      shorter = false;
      for (int vertex : strip.turns()) {
        int[] other = sides.roundTheOtherSide(entry, vertex);
        if (other.length == 0) {
          continue;
        }
        FaceStrip trial = sides.strip(other);
        if (trial.lengthMm() < strip.lengthMm() * (1 - GAIN)) {
          strip = trial;
          entry = other;
          shorter = true;
        }
      }
    }
    return Optional.of(
        new SurfaceWay(
            strip.leftVertices(), strip.rightVertices(), strip.shares(), strip.lengthMm()));
  }

  /** Leads sequences of faces round one side of a vertex or the other. */
  private static final class Sides {
    private final Mesh mesh;
    private final int[] ring;
    private final int start;
    private final int end;

    Sides(Mesh mesh, int[] ring, int start, int end) {
      this.mesh = mesh;
      this.ring = ring;
      this.start = start;
      this.end = end;
    }

    FaceStrip strip(int[] entry) {
      int[] exit = new int[entry.length];
      for (int i = 0; i < exit.length; i++) {
        exit[i] = i == 0 ? exitAtStart(entry[0]) : exitTowards(entry[i - 1] / 3, entry[i]);
      }
      return new FaceStrip(mesh, start, entry, exit);
    }

    /** The half-edge on the same edge as one, in the face at the start. */
    private int exitAtStart(int entry) {
      for (int h = ring[entry]; h != entry; h = ring[h]) {
        if (mesh.corner()[Topology.prev(h)] == start) {
          return h;
        }
      }
      throw new IllegalStateException("The first edge crossed is not opposite the start");
    }

    private int exitTowards(int face, int entry) {
      for (int h = ring[entry]; h != entry; h = ring[h]) {
        if (h / 3 == face) {
          return h;
        }
      }
      throw new IllegalStateException("Faces of a way don't follow one another");
    }

    private boolean touches(int h, int vertex) {
      return mesh.corner()[h] == vertex || mesh.corner()[Topology.next(h)] == vertex;
    }

    /**
     * The sequence led round the other side of a vertex; empty if a rim or branch is in between.
     */
    int[] roundTheOtherSide(int[] entry, int vertex) {
      int from = 0;
      while (from < entry.length && !touches(entry[from], vertex)) {
        from++;
      }
      if (from == entry.length) {
        return new int[0];
      }
      // A sequence that leaves the vertex and comes back to it has gone round something for
      // nothing.
      int to = entry.length - 1;
      while (!touches(entry[to], vertex)) {
        to--;
      }
      int firstExit =
          from == 0 ? exitAtStart(entry[0]) : exitTowards(entry[from - 1] / 3, entry[from]);
      int lastFace = entry[to] / 3;
      int[] round = new int[16];
      int count = 0;
      int h = otherSide(firstExit, vertex);
      while (true) {
        int g = ring[h];
        if (g == h || ring[g] != h || count > mesh.corner().length) {
          return new int[0];
        }
        if (count == round.length) {
          round = Arrays.copyOf(round, 2 * count);
        }
        round[count++] = g;
        if (g / 3 == lastFace) {
          break;
        }
        h = otherSide(g, vertex);
      }
      int[] led = new int[from + count + entry.length - to - 1];
      System.arraycopy(entry, 0, led, 0, from);
      System.arraycopy(round, 0, led, from, count);
      System.arraycopy(entry, to + 1, led, from + count, entry.length - to - 1);
      return trimmed(led);
    }

    /** The other half-edge of the same face that touches the vertex. */
    private int otherSide(int h, int vertex) {
      int next = Topology.next(h);
      return touches(next, vertex) ? next : Topology.prev(h);
    }

    /** Drops edges at the start and end vertices, which the way need not cross. */
    private int[] trimmed(int[] entry) {
      int from = entry.length;
      while (from > 0 && !touches(entry[from - 1], start)) {
        from--;
      }
      int to = from;
      while (to < entry.length && !touches(entry[to], end)) {
        to++;
      }
      return Arrays.copyOfRange(entry, from, to);
    }
  }
}
