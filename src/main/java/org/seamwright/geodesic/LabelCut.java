package org.seamwright.geodesic;

import java.util.Arrays;
import java.util.function.IntPredicate;
import java.util.function.IntUnaryOperator;
import org.seamwright.mesh.Mesh;

/**
 * Cuts a mesh into pieces of one label each, where labels are known per vertex and compete by a
 * score that is linear inside faces: the lines of a Voronoi partition over the surface.
 *
 * <p>An edge between labels a and b is cut where the scores of a and b are equal, in the middle if
 * a score there is not finite. A face with three labels gets a point inside where all three scores
 * are equal, if that lies well inside, else at the centroid of its three cuts. Crossings keep
 * {@link #END_SHARE} of the edge from its ends, so no piece is without area; the line moves by at
 * most that. Neighbours stay welded as with {@link FieldCut}, on any soup. O(n).
 */
public final class LabelCut {
  /** Least share of an edge between a crossing and an end: pieces keep 1e-6 of their parent. */
  public static final double END_SHARE = 1e-3;

  /** Label of the pieces of faces that were not to be cut. */
  public static final int NONE = -1;

  /**
   * Label of a vertex that lies on a line between labels: no edge from it is cut, and faces that
   * have it as a corner go with their other corners.
   */
  public static final int TIE = -2;

  /** The score by which labels compete at the vertices. */
  @FunctionalInterface
  public interface ValueOf {
    /** Score of a label at a vertex; the higher wins; finite or negative infinity. */
    double at(int vertex, int label);
  }

  /**
   * A mesh cut between labels.
   *
   * @param cut the cut
   * @param faceLabel one entry per face of the cut mesh: its label, {@link #NONE} for pieces of
   *     faces that were not to be cut
   */
  public record Result(CutMesh cut, int[] faceLabel) {}

  private final Mesh mesh;
  private final int[] vertexLabel;
  private final ValueOf value;
  private final IntPredicate faces;
  private final IntUnaryOperator tied;
  private final NewVertices vertices;
  private int[] label;
  private int labels;

  private LabelCut(
      Mesh mesh, int[] vertexLabel, ValueOf value, IntPredicate faces, IntUnaryOperator tied) {
    this.mesh = mesh;
    this.vertexLabel = vertexLabel;
    this.value = value;
    this.faces = faces;
    this.tied = tied;
    vertices = new NewVertices(mesh);
    label = new int[mesh.faceCount() + 16];
  }

  /**
   * Cuts between labels.
   *
   * @param mesh any soup
   * @param vertexLabel one entry per vertex: the label with the highest score there; read only at
   *     corners of faces to be cut
   * @param value scores
   * @param faces which faces to cut
   * @throws IllegalArgumentException if there is not one label per vertex
   */
  public static Result cut(Mesh mesh, int[] vertexLabel, ValueOf value, IntPredicate faces) {
    return cut(mesh, vertexLabel, value, faces, f -> NONE);
  }

  /**
   * Cuts between labels some of which meet along edges of the mesh.
   *
   * @param mesh any soup
   * @param vertexLabel one entry per vertex: the label with the highest score there, or {@link
   *     #TIE}; read only at corners of faces to be cut
   * @param value scores; not asked for at ties
   * @param faces which faces to cut
   * @param tied label of a face all of whose corners are ties
   * @throws IllegalArgumentException if there is not one label per vertex
   */
  public static Result cut(
      Mesh mesh, int[] vertexLabel, ValueOf value, IntPredicate faces, IntUnaryOperator tied) {
    if (vertexLabel.length != mesh.vertexCount()) {
      throw new IllegalArgumentException(
          "Expected " + mesh.vertexCount() + " labels, found " + vertexLabel.length);
    }
    return new LabelCut(mesh, vertexLabel, value, faces, tied).cut();
  }

  private Result cut() {
    int[] c = mesh.corner();
    int triple = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (isFace(f) && faces.test(f)) {
        for (int k = 0; k < 3; k++) {
          crossEdge(c[3 * f + k], c[3 * f + (k + 1) % 3]);
        }
        triple += hasThreeLabels(f) ? 1 : 0;
      }
    }
    // Points inside faces are numbered after those on edges, in the order of faces.
    int[] inside = new int[triple];
    triple = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (isFace(f) && hasThreeLabels(f) && faces.test(f)) {
        inside[triple++] = mesh.vertexCount() + meetingPoint(f);
      }
    }
    Pieces pieces = new Pieces(mesh, vertices);
    triple = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (!faces.test(f)) {
        pieces.split(f);
        labelPieces(pieces, NONE);
      } else if (isFace(f) && hasThreeLabels(f)) {
        splitRound(pieces, f, inside[triple++]);
      } else {
        pieces.split(f);
        labelByCorner(pieces, f);
      }
    }
    return new Result(
        vertices.cut(pieces.xyz(), pieces.corners(), pieces.parents()),
        Arrays.copyOf(label, labels));
  }

  private boolean isFace(int f) {
    int[] c = mesh.corner();
    return c[3 * f] != c[3 * f + 1] && c[3 * f + 1] != c[3 * f + 2] && c[3 * f + 2] != c[3 * f];
  }

  private boolean hasThreeLabels(int f) {
    int[] c = mesh.corner();
    int a = vertexLabel[c[3 * f]];
    int b = vertexLabel[c[3 * f + 1]];
    int d = vertexLabel[c[3 * f + 2]];
    return a != b && b != d && d != a && a != TIE && b != TIE && d != TIE;
  }

  private void crossEdge(int u, int w) {
    int low = Math.min(u, w);
    int high = Math.max(u, w);
    int a = vertexLabel[low];
    int b = vertexLabel[high];
    if (a == b || a == TIE || b == TIE) {
      return;
    }
    double here = value.at(low, a) - value.at(low, b);
    double there = value.at(high, b) - value.at(high, a);
    double share = here / (here + there);
    if (Double.isInfinite(here) || Double.isInfinite(there) || Double.isNaN(share)) {
      share = 0.5;
    }
    vertices.addOnEdge(low, high, Math.max(END_SHARE, Math.min(1 - END_SHARE, share)));
  }

  /** Index of a new vertex where the three labels of a face meet. */
  private int meetingPoint(int f) {
    int[] c = mesh.corner();
    int a = c[3 * f];
    int b = c[3 * f + 1];
    int d = c[3 * f + 2];
    double[] weight = new double[3];
    if (!equalScores(a, b, d, weight)) {
      centroidOfCrossings(a, b, d, weight);
    }
    return vertices.addInside(a, b, d, weight[0], weight[1], weight[2]);
  }

  /** Weights of the place where the three scores agree; false unless it lies well inside. */
  private boolean equalScores(int a, int b, int d, double[] weight) {
    int la = vertexLabel[a];
    int lb = vertexLabel[b];
    int ld = vertexLabel[d];
    // Lead of a's label over b's, and over d's, at the corners; both vanish at the place.
    double[] p = {
      value.at(a, la) - value.at(a, lb),
      value.at(b, la) - value.at(b, lb),
      value.at(d, la) - value.at(d, lb)
    };
    double[] q = {
      value.at(a, la) - value.at(a, ld),
      value.at(b, la) - value.at(b, ld),
      value.at(d, la) - value.at(d, ld)
    };
    double sum = 0;
    for (int k = 0; k < 3; k++) {
      int i = (k + 1) % 3;
      int j = (k + 2) % 3;
      weight[k] = p[i] * q[j] - p[j] * q[i];
      sum += weight[k];
    }
    boolean inside = true;
    for (int k = 0; k < 3; k++) {
      weight[k] /= sum;
      inside &= weight[k] >= END_SHARE && weight[k] <= 1;
    }
    return inside;
  }

  private void centroidOfCrossings(int a, int b, int d, double[] weight) {
    double ab = vertices.share(vertices.onEdge(a, b), b);
    double bd = vertices.share(vertices.onEdge(b, d), d);
    double da = vertices.share(vertices.onEdge(d, a), a);
    weight[0] = (1 - ab + da) / 3;
    weight[1] = (ab + 1 - bd) / 3;
    weight[2] = (bd + 1 - da) / 3;
  }

  /** Splits a face of three labels into six round the point where they meet. */
  private void splitRound(Pieces pieces, int f, int middle) {
    int[] c = mesh.corner();
    for (int k = 0; k < 3; k++) {
      int u = c[3 * f + k];
      int w = c[3 * f + (k + 1) % 3];
      int cross = pieces.onEdge(u, w);
      pieces.add(f, u, cross, middle);
      labelPieces(pieces, vertexLabel[u]);
      pieces.add(f, cross, w, middle);
      labelPieces(pieces, vertexLabel[w]);
    }
  }

  /** Gives the pieces without a label the label of the old corner they hold. */
  private void labelByCorner(Pieces pieces, int f) {
    while (labels < pieces.count()) {
      int piece = labels;
      int of = TIE;
      for (int k = 0; k < 3; k++) {
        int v = pieces.corner(3 * piece + k);
        if (v < mesh.vertexCount() && vertexLabel[v] != TIE) {
          of = vertexLabel[v];
        }
      }
      setLabel(of == TIE ? tied.applyAsInt(f) : of);
    }
  }

  private void labelPieces(Pieces pieces, int of) {
    while (labels < pieces.count()) {
      setLabel(of);
    }
  }

  private void setLabel(int of) {
    if (labels == label.length) {
      label = Arrays.copyOf(label, 2 * labels);
    }
    label[labels++] = of;
  }
}
