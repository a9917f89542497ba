package org.seamwright.section;

import java.util.Arrays;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.Sources;
import org.seamwright.geodesic.SurfaceDistance;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;
import org.seamwright.region.SubMesh;

/**
 * The sections of one sector as seen by the vertices of another, turned back: each section scores
 * by the distance over the surface from its edge, above 0 inside and below outside, so that seams
 * are where two scores are equal.
 */
final class TurnedLabels {
  private static final int NONE = -1;

  /** How far scores are told apart, in longest edges: beyond that no seam passes a face. */
  private static final double REACH_EDGES = 3;

  private final Mesh mesh;
  private final int[] sector;
  private final Mesh source;
  private final FaceTree tree;

  /** By section: score per vertex of the source. */
  private final double[][] far;

  /** One entry per vertex of the mesh before cuts: its place in the scores, or {@link #NONE}. */
  private final int[] local;

  private double[] scores = new double[0];
  private int[] vertexLabel = new int[0];
  private CutMesh cut;

  private TurnedLabels(Mesh mesh, int[] sector, Mesh source, double[][] far) {
    this.mesh = mesh;
    this.sector = sector;
    this.source = source;
    this.far = far;
    tree = FaceTree.of(source);
    local = new int[mesh.vertexCount()];
  }

  /**
   * Prepares.
   *
   * @param divided the sector that was divided
   * @param mesh the piece before that
   * @param sector one entry per face of the piece: its sector
   */
  static TurnedLabels of(SeamCut divided, Mesh mesh, int[] sector) {
    int[] faces = new int[divided.label().length];
    int count = 0;
    for (int f = 0; f < faces.length; f++) {
      if (divided.label()[f] >= 0) {
        faces[count++] = f;
      }
    }
    SubMesh sub = SubMesh.of(divided.cut().mesh(), Arrays.copyOf(faces, count));
    int[] label = Arrays.stream(sub.faces()).map(f -> divided.label()[f]).toArray();
    double reach = REACH_EDGES * longestEdge(mesh, sector);
    Topology topology = Topology.of(sub.mesh());
    VertexFans fans = VertexFans.of(sub.mesh());
    double[][] far = new double[divided.sections()][];
    for (int s = 0; s < far.length; s++) {
      far[s] = signed(sub.mesh(), topology, fans, label, s, reach);
    }
    return new TurnedLabels(mesh, sector, sub.mesh(), far);
  }

  private static double longestEdge(Mesh mesh, int[] sector) {
    double longest = 0;
    int[] corner = mesh.corner();
    for (int h = 0; h < corner.length; h++) {
      if (sector[h / 3] >= 0) {
        longest = Math.max(longest, Faces.length(mesh, corner[h], corner[Topology.next(h)]));
      }
    }
    return longest;
  }

  private static double[] signed(
      Mesh mesh, Topology topology, VertexFans fans, int[] label, int section, double reach) {
    int[] edges = new int[label.length];
    int count = 0;
    for (int h = 0; h < 3 * label.length; h++) {
      int across = topology.faceAcross(h);
      if (label[h / 3] == section && across >= 0 && label[across] != section) {
        edges = count == edges.length ? Arrays.copyOf(edges, 2 * count) : edges;
        edges[count++] = h;
      }
    }
    double[] far = new double[mesh.vertexCount()];
    Arrays.fill(far, reach);
    if (count > 0) {
      Sources seam = Sources.edges(Arrays.copyOf(edges, count));
      far = SurfaceDistance.from(mesh, topology, fans, seam, reach, Progress.NONE);
    }
    double[] score = new double[far.length];
    Arrays.fill(score, Double.NaN);
    for (int h = 0; h < 3 * label.length; h++) {
      int v = mesh.corner()[h];
      score[v] = (label[h / 3] == section ? 1 : -1) * Math.min(reach, far[v]);
    }
    return score;
  }

  /** Number of sections of a sector. */
  int labels() {
    return far.length;
  }

  /**
   * Looks at a sector.
   *
   * @param turns by how much it is turned from the one that was divided
   * @param which its number
   * @param before cuts of the sectors so far
   */
  void enter(Axis axis, double turns, int which, CutMesh before) {
    cut = before;
    Arrays.fill(local, NONE);
    int count = 0;
    for (int h = 0; h < 3 * sector.length; h++) {
      int v = mesh.corner()[h];
      if (sector[h / 3] == which && local[v] < 0) {
        local[v] = count++;
      }
    }
    scores = new double[count * far.length];
    vertexLabel = new int[before.mesh().vertexCount()];
    Arrays.fill(vertexLabel, NONE);
    for (int v = 0; v < local.length; v++) {
      if (local[v] >= 0) {
        Vector3D back = axis.turn(Vector3D.of(mesh.x(v), mesh.y(v), mesh.z(v)), -turns);
        SurfacePoint at = tree.nearest(back.getX(), back.getY(), back.getZ()).orElseThrow();
        for (int s = 0; s < far.length; s++) {
          scores[local[v] * far.length + s] = at(far[s], at);
        }
        vertexLabel[v] = best(v);
      }
    }
    for (int i = 0; i < before.edgeFrom().length; i++) {
      int from = before.edgeFrom()[i];
      int to = before.edgeTo()[i];
      if (vertexLabel[from] >= 0 && vertexLabel[to] >= 0 && before.third()[i] < 0) {
        vertexLabel[before.oldVertexCount() + i] = best(before.oldVertexCount() + i);
      }
    }
  }

  private double at(double[] value, SurfacePoint at) {
    int[] c = source.corner();
    return at.w0() * value[c[3 * at.face()]]
        + at.w1() * value[c[3 * at.face() + 1]]
        + at.w2() * value[c[3 * at.face() + 2]];
  }

  private int best(int vertex) {
    int best = 0;
    for (int s = 1; s < far.length; s++) {
      best = score(vertex, s) > score(vertex, best) ? s : best;
    }
    return best;
  }

  /** One entry per vertex of the piece as cut so far: its section, from 0. */
  int[] vertexLabel() {
    return vertexLabel;
  }

  /** Score of a section at a vertex of the piece as cut so far, mm. */
  double score(int vertex, int section) {
    int i = vertex - cut.oldVertexCount();
    if (i >= 0) {
      double from = score(cut.edgeFrom()[i], section);
      return from + cut.edgeAt()[i] * (score(cut.edgeTo()[i], section) - from);
    }
    return scores[local[vertex] * far.length + section];
  }
}
