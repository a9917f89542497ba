package org.seamwright.geodesic;

import java.util.BitSet;
import java.util.function.IntPredicate;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/** One run of {@link SurfaceDistance}. */
final class March {
  /** Vertices settled between two calls of the progress: well under 50 ms. */
  private static final int PROGRESS_STEP = 1 << 12;

  /**
   * Times that vertices may be settled on average before edges are flipped: 1.0 to 1.5 as a rule.
   */
  private static final int TOO_OFTEN = 3;

  /** The same before rays are given up. */
  private static final int FAR_TOO_OFTEN = 20;

  /** Settlings beyond that which a small band may need at its start. */
  private static final int SOME = 1000;

  private final Mesh mesh;
  private final Topology topology;
  private final VertexFans fans;
  private final Sources sources;
  private final double maxMm;
  private final IntPredicate faces;
  private final boolean withRim;
  private final Progress progress;
  private Arrivals arrivals;
  private Seeds seeds;

  March(
      Mesh mesh,
      Topology topology,
      VertexFans fans,
      Sources sources,
      double maxMm,
      IntPredicate faces,
      boolean withRim,
      Progress progress) {
    this.mesh = mesh;
    this.topology = topology;
    this.fans = fans;
    this.sources = sources;
    this.maxMm = maxMm;
    this.faces = faces;
    this.withRim = withRim;
    this.progress = progress;
  }

  double[] run() {
    sow();
    boolean flipped = false;
    Wavefront front = new Wavefront(mesh, topology, fans, faces, arrivals, false);
    if (!spread(front, TOO_OFTEN)) {
      flipped = true;
      Mesh other = EdgeFlips.of(mesh, topology, faces, seeds.held());
      Topology otherTopology = Topology.of(other);
      VertexFans otherFans = VertexFans.of(other);
      sow();
      front = new Wavefront(other, otherTopology, otherFans, faces, arrivals, false);
      if (!spread(front, FAR_TOO_OFTEN)) {
        sow();
        front = new Wavefront(other, otherTopology, otherFans, faces, arrivals, true);
        spread(front, Integer.MAX_VALUE);
      }
    }
    if (withRim) {
      settleRim(front, flipped ? rimByFaces() : rimByHeap());
    }
    VertexHeap heap = arrivals.heap;
    for (int i = 0; i < heap.size(); i++) {
      arrivals.distance[heap.vertexAt(i)] = Double.POSITIVE_INFINITY;
    }
    progress.at(1);
    return arrivals.distance;
  }

  private void sow() {
    arrivals = new Arrivals(mesh.vertexCount());
    seeds = new Seeds(mesh, topology, fans, faces, arrivals);
    seeds.sow(sources);
  }

  /** Marches to the end; false if it gave up because the same vertices come again and again. */
  private boolean spread(Wavefront front, int tooOften) {
    VertexHeap heap = arrivals.heap;
    int settlings = 0;
    int settled = 0;
    while (heap.size() > 0 && heap.leastKey() <= maxMm) {
      if (settlings++ % PROGRESS_STEP == 0) {
        double way = maxMm > 0 ? heap.leastKey() / maxMm : 0;
        double share = Math.max((double) settled / mesh.vertexCount(), way);
        progress.at(Math.min(1, share));
      }
      int v = arrivals.settleNext();
      if (arrivals.settled[v] == 1) {
        settled++;
      } else if (settlings > (long) tooOften * settled + SOME) {
        return false;
      }
      front.spreadFrom(v);
    }
    return true;
  }

  /** The vertices reached but not settled: those of faces with a settled vertex. */
  private BitSet rimByHeap() {
    BitSet rim = new BitSet();
    for (int i = 0; i < arrivals.heap.size(); i++) {
      rim.set(arrivals.heap.vertexAt(i));
    }
    return rim;
  }

  /** The same where the march went over other faces than the mesh's. */
  private BitSet rimByFaces() {
    BitSet rim = new BitSet();
    int[] corner = mesh.corner();
    for (int f = 0; f < mesh.faceCount(); f++) {
      boolean near = false;
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        near |= arrivals.heap.taken(corner[h]);
      }
      for (int h = 3 * f; near && faces.test(f) && h < 3 * f + 3; h++) {
        if (!arrivals.heap.taken(corner[h])) {
          rim.set(corner[h]);
        }
      }
    }
    return rim;
  }

  /** Marches on until every vertex of the rim is settled, and forgets those beyond. */
  private void settleRim(Wavefront front, BitSet rim) {
    VertexHeap heap = arrivals.heap;
    BitSet open = (BitSet) rim.clone();
    IntList beyond = new IntList(16);
    while (!open.isEmpty() && heap.size() > 0) {
      int v = arrivals.settleNext();
      open.clear(v);
      if (!rim.get(v)) {
        beyond.add(v);
      }
      front.spreadFrom(v);
    }
    for (int i = 0; i < beyond.size(); i++) {
      if (arrivals.distance[beyond.get(i)] > maxMm) {
        arrivals.distance[beyond.get(i)] = Double.POSITIVE_INFINITY;
      }
    }
  }
}
