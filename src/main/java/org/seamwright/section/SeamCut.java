package org.seamwright.section;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.LabelCut;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * A mesh cut along the borders of cells, so that each face belongs to one section, each section is
 * one piece and seams run straight through triangles.
 *
 * @param cut the mesh after the cut
 * @param rings its edges
 * @param label one entry per face of the cut mesh: section from 0, or negative for none
 * @param origin one entry per section: the label it had before, or a number beyond all labels for a
 *     piece that was split off
 */
record SeamCut(CutMesh cut, EdgeRings rings, int[] label, int[] origin) {

  /**
   * Cuts along the borders of cells.
   *
   * @param mesh the whole piece
   * @param domain the faces that cells lie on
   * @param keys the cells
   * @param whole one entry per face: label of faces that are not in the partition's domain, from
   *     the number of cells upward, or negative for none
   * @param labels number of labels, cells included
   */
  static SeamCut of(Mesh mesh, Domain domain, CellKeys keys, int[] whole, int labels) {
    CutMesh cut = CutMesh.none(mesh);
    int[] label = whole.clone();
    int[] group = domain.groups();
    int groups = Arrays.stream(group).max().orElse(-1) + 1;
    for (int g = 0; g < groups; g++) {
      Vertices vertices = new Vertices(domain, keys, group, g, cut);
      int[] inGroup = faces(domain, group, g, mesh.faceCount());
      int[] parent = cut.parentFace();
      LabelCut.Result next =
          LabelCut.cut(
              cut.mesh(),
              vertices.label,
              vertices::score,
              f -> inGroup[parent[f]] >= 0,
              f -> keys.tiedFace(inGroup[parent[f]]));
      label = next.cut().carryFaces(label);
      for (int f = 0; f < label.length; f++) {
        if (inGroup[parent[next.cut().parentFace()[f]]] >= 0) {
          label[f] = next.faceLabel()[f];
        }
      }
      cut = cut.then(next.cut());
    }
    EdgeRings rings = EdgeRings.of(cut.mesh(), Topology.of(cut.mesh()));
    int after = Islands.merge(cut.mesh(), rings, label, labels);
    return new SeamCut(cut, rings, label, compress(cut.mesh(), label, after));
  }

  /** Number of sections. */
  int sections() {
    return origin.length;
  }

  /** Renumbers labels that have area without gaps; the others, without area, are no sections. */
  private static int[] compress(Mesh mesh, int[] label, int labels) {
    boolean[] hasArea = new boolean[labels];
    for (int f = 0; f < label.length; f++) {
      if (label[f] >= 0 && !hasArea[label[f]]) {
        hasArea[label[f]] = Faces.area(mesh, f) > 0;
      }
    }
    int[] origin = IntStream.range(0, labels).filter(l -> hasArea[l]).toArray();
    int[] number = new int[labels];
    Arrays.fill(number, CellKeys.NONE);
    for (int i = 0; i < origin.length; i++) {
      number[origin[i]] = i;
    }
    for (int f = 0; f < label.length; f++) {
      label[f] = label[f] >= 0 ? number[label[f]] : CellKeys.NONE;
    }
    return origin;
  }

  /** Faces of the domain by faces of the mesh, for the components of one group; -1 for others. */
  private static int[] faces(Domain domain, int[] group, int g, int faces) {
    int[] in = new int[faces];
    Arrays.fill(in, -1);
    for (int c = 0; c < group.length; c++) {
      if (group[c] == g) {
        for (int f = domain.faceBegin()[c]; f < domain.faceBegin()[c + 1]; f++) {
          in[domain.meshFace()[f]] = f;
        }
      }
    }
    return in;
  }

  /** Cells and keys by vertex of the mesh, for the components of one group. */
  private static final class Vertices {
    final int[] label;
    private final int[] domainVertex;
    private final CellKeys keys;
    private final CutMesh before;

    Vertices(Domain domain, CellKeys keys, int[] group, int g, CutMesh before) {
      this.keys = keys;
      this.before = before;
      domainVertex = new int[before.oldVertexCount()];
      label = new int[before.mesh().vertexCount()];
      Arrays.fill(label, CellKeys.NONE);
      for (int c = 0; c < group.length; c++) {
        if (group[c] == g) {
          for (int v = domain.vertexBegin()[c]; v < domain.vertexBegin()[c + 1]; v++) {
            domainVertex[domain.meshVertex()[v]] = v;
            label[domain.meshVertex()[v]] = keys.cell(v);
          }
        }
      }
      for (int i = 0; i < before.edgeFrom().length; i++) {
        labelOnEdge(before.oldVertexCount() + i, before.edgeFrom()[i], before.edgeTo()[i]);
      }
    }

    /** A vertex that the cut of another group put on an edge shared with this one. */
    private void labelOnEdge(int vertex, int from, int to) {
      if (label[from] >= 0 && label[to] >= 0) {
        label[vertex] = label[from];
        if (score(vertex, label[to]) > score(vertex, label[from])) {
          label[vertex] = label[to];
        }
      }
    }

    /** The nearer cell wins. */
    double score(int vertex, int cell) {
      int i = vertex - before.oldVertexCount();
      if (i >= 0) {
        double from = score(before.edgeFrom()[i], cell);
        return from + before.edgeAt()[i] * (score(before.edgeTo()[i], cell) - from);
      }
      return -keys.key(domainVertex[vertex], cell);
    }
  }
}
