package org.seamwright.geodesic;

import java.util.BitSet;
import java.util.function.IntConsumer;
import java.util.function.IntPredicate;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/** One run of {@link SurfaceDistance}. */
final class March {
  /** Vertices settled between two calls of the progress: well under 50 ms. */
  private static final int PROGRESS_STEP = 1 << 12;

  /** Times a vertex may be settled before edges are flipped: 1 as a rule, a few at needles. */
  private static final int TOO_OFTEN = 16;

  /** The same before rays are given up. */
  private static final int FAR_TOO_OFTEN = Arrivals.MOST_TIMES - 1;

  /** Times after which the result is looked over, and thrown away if it is not sound. */
  private static final int OFTEN = 4;

  /** Share of a distance by which it may be off along an edge. */
  private static final double UNSOUND = 0.01;

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
    BitSet rim = null;
    IntConsumer front = new Wavefront(mesh, topology, fans, faces, arrivals)::spreadFrom;
    if (!spread(front, TOO_OFTEN)) {
      Mesh other = EdgeFlips.of(mesh, topology, faces, seeds.held());
      Topology otherTopology = Topology.of(other);
      VertexFans otherFans = VertexFans.of(other);
      sow();
      front = new Wavefront(other, otherTopology, otherFans, faces, arrivals)::spreadFrom;
      if (!spread(front, FAR_TOO_OFTEN)) {
        sow();
        front = seeds::hopFrom;
        spread(front, Integer.MAX_VALUE);
      }
      rim = rimByFaces();
    }
    if (withRim) {
      settleRim(front, rim == null ? rimByHeap() : rim);
    }
    VertexHeap heap = arrivals.heap;
    for (int i = 0; i < heap.size(); i++) {
      arrivals.distance[heap.vertexAt(i)] = Double.POSITIVE_INFINITY;
    }
    progress.at(1);
    return arrivals.distance;
  }

  /** The front as it stood at the end of the run, over the mesh's own faces. */
  Wavefront front() {
    return new Wavefront(mesh, topology, fans, faces, arrivals);
  }

  /** What is known of the vertices reached. */
  Arrivals arrivals() {
    return arrivals;
  }

  private void sow() {
    arrivals = new Arrivals(mesh.vertexCount());
    seeds = new Seeds(mesh, topology, fans, faces, arrivals);
    seeds.sow(sources);
  }

  /** Marches to the end; false if the same vertices come again and again, or it is not sound. */
  private boolean spread(IntConsumer front, int tooOften) {
    VertexHeap heap = arrivals.heap;
    int settlings = 0;
    int settled = 0;
    boolean often = false;
    while (heap.size() > 0 && heap.leastKey() <= maxMm) {
      if (settlings++ % PROGRESS_STEP == 0) {
        double way = maxMm > 0 ? heap.leastKey() / maxMm : 0;
        double share = Math.max((double) settled / mesh.vertexCount(), way);
        progress.at(Math.min(1, share));
      }
      int v = arrivals.settleNext();
      if (arrivals.settled[v] == 1) {
        settled++;
      } else if (arrivals.settled[v] > tooOften) {
        return false;
      }
      often |= arrivals.settled[v] > OFTEN;
      front.accept(v);
    }
    return !often || tooOften == Integer.MAX_VALUE || isSound();
  }

  /** Whether distance grows nowhere faster than the way along an edge. */
  private boolean isSound() {
    int[] corner = mesh.corner();
    for (int h = 0; h < corner.length; h++) {
      int a = corner[h];
      int b = corner[Topology.next(h)];
      if (arrivals.heap.taken(a) && arrivals.heap.taken(b) && faces.test(h / 3)) {
        double da = arrivals.distance[a];
        double db = arrivals.distance[b];
        if (Math.abs(da - db) > Faces.length(mesh, a, b) + UNSOUND * Math.max(da, db)) {
          return false;
        }
      }
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
  private void settleRim(IntConsumer front, BitSet rim) {
    VertexHeap heap = arrivals.heap;
    BitSet open = (BitSet) rim.clone();
    IntList beyond = new IntList(16);
    while (!open.isEmpty() && heap.size() > 0) {
      int v = arrivals.settleNext();
      open.clear(v);
      if (!rim.get(v)) {
        beyond.add(v);
      }
      front.accept(v);
    }
    for (int i = 0; i < beyond.size(); i++) {
      if (arrivals.distance[beyond.get(i)] > maxMm) {
        arrivals.distance[beyond.get(i)] = Double.POSITIVE_INFINITY;
      }
    }
  }
}
