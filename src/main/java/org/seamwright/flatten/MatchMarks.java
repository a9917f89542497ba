package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Places on the seams of a patch where both sides get a mark of the same number: near the middle of
 * each seam, and along long ones every {@link #APART_MM}, always at a vertex both sides share.
 */
final class MatchMarks {
  /** Far enough apart to stay readable, near enough to hold film in place. */
  private static final double APART_MM = 60;

  /** Shorter seams meet by their ends. */
  private static final double LEAST_SEAM_MM = 8;

  /** A place: the two pieces beside it, the lower number first, and the vertex. */
  private record Place(int low, int high, int vertex) implements Comparable<Place> {
    @Override
    public int compareTo(Place o) {
      int byLow = Integer.compare(low, o.low);
      int byHigh = byLow != 0 ? byLow : Integer.compare(high, o.high);
      return byHigh != 0 ? byHigh : Integer.compare(vertex, o.vertex);
    }
  }

  private final Mesh mesh;
  private final Map<Place, Integer> number = new TreeMap<>();

  MatchMarks(Mesh mesh) {
    this.mesh = mesh;
  }

  /** Chooses the places on the seams that a piece has with later ones, and on its own slits. */
  void choose(int piece, List<Rim> rims) {
    for (Rim rim : rims) {
      for (int[] run : Outline.runs(rim)) {
        int beyond = rim.beyond()[run[0]];
        if (beyond > piece || beyond == Rim.SLIT) {
          choose(piece, beyond == Rim.SLIT ? piece : beyond, rim, run);
        }
      }
    }
  }

  private void choose(int low, int high, Rim rim, int[] run) {
    double[] along = new double[run[1] + 1];
    for (int i = 0; i < run[1]; i++) {
      int a = rim.vertex()[(run[0] + i) % rim.size()];
      int b = rim.vertex()[(run[0] + i + 1) % rim.size()];
      along[i + 1] = along[i] + Faces.length(mesh, a, b);
    }
    double length = along[run[1]];
    if (length < LEAST_SEAM_MM) {
      return;
    }
    int marks = Math.max(1, (int) Math.floor(length / APART_MM));
    int last = 0;
    for (int k = 0; k < marks; k++) {
      double wanted = length * (k + 0.5) / marks;
      int i = last + 1;
      while (i + 1 < run[1] && Math.abs(along[i + 1] - wanted) < Math.abs(along[i] - wanted)) {
        i++;
      }
      if (i >= run[1]) {
        return;
      }
      last = i;
      number.putIfAbsent(
          new Place(low, high, rim.vertex()[(run[0] + i) % rim.size()]), number.size() + 1);
    }
  }

  /** The marks of a piece, as its layout lies. */
  List<Template.MatchMark> of(int piece, List<Rim> rims) {
    List<Template.MatchMark> marks = new ArrayList<>();
    for (Rim rim : rims) {
      for (int i = 0; i < rim.size(); i++) {
        int beyond = rim.beyond()[i];
        if (beyond == Rim.NOTHING) {
          continue;
        }
        int other = beyond < 0 ? piece : beyond;
        Integer n =
            number.get(new Place(Math.min(piece, other), Math.max(piece, other), rim.vertex()[i]));
        if (n != null) {
          marks.add(mark(n, rim, i));
        }
      }
    }
    return marks;
  }

  private static Template.MatchMark mark(int number, Rim rim, int i) {
    int n = rim.size();
    int before = (i + n - 1) % n;
    int after = (i + 1) % n;
    double x = rim.point()[2 * i];
    double y = rim.point()[2 * i + 1];
    double ax = x - rim.point()[2 * before];
    double ay = y - rim.point()[2 * before + 1];
    double bx = rim.point()[2 * after] - x;
    double by = rim.point()[2 * after + 1] - y;
    double la = Math.max(Math.hypot(ax, ay), Double.MIN_NORMAL);
    double lb = Math.max(Math.hypot(bx, by), Double.MIN_NORMAL);
    double tx = ax / la + bx / lb;
    double ty = ay / la + by / lb;
    double length = Math.max(Math.hypot(tx, ty), Double.MIN_NORMAL);
    return new Template.MatchMark(number, x, y, ty / length, -tx / length);
  }
}
