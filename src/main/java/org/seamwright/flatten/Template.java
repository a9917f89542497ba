package org.seamwright.flatten;

import java.util.Arrays;
import java.util.List;

/**
 * A piece of film to cut, 1:1 in mm, seen from outside the piece; its corner is at (0, 0), y runs
 * up.
 *
 * @param patch which patch of the surface it covers, from 1
 * @param piece which piece of that patch, from 1
 * @param pieces how many pieces the patch has
 * @param areaMm2 area of the surface under it, mm²
 * @param layout the faces, laid out
 * @param net edges of the surface itself: loops of points x, y; the outer one first
 * @param cut what to cut: the same with the allowance where the film laps over another piece
 * @param marks where to meet the neighbours
 * @param widthMm extent of what is cut along x
 * @param heightMm extent of what is cut along y
 */
public record Template(
    int patch,
    int piece,
    int pieces,
    double areaMm2,
    Layout layout,
    List<double[]> net,
    List<double[]> cut,
    List<MatchMark> marks,
    double widthMm,
    double heightMm) {

  /** Copies the lists. */
  public Template {
    net = List.copyOf(net);
    cut = List.copyOf(cut);
    marks = List.copyOf(marks);
  }

  /** How it is called: "2" or, where its patch has several pieces, "2.1". */
  public String id() {
    return pieces == 1 ? Integer.toString(patch) : patch + "." + piece;
  }

  /** A point inside the film for its number to stand at: x, y. */
  public double[] labelAt() {
    return Outline.inside(net);
  }

  /** Whether the outline to cut differs from the edge of the surface under the film. */
  public boolean hasAllowance() {
    return cut != net && !same(cut, net);
  }

  private static boolean same(List<double[]> a, List<double[]> b) {
    if (a.size() != b.size()) {
      return false;
    }
    for (int i = 0; i < a.size(); i++) {
      if (!Arrays.equals(a.get(i), b.get(i))) {
        return false;
      }
    }
    return true;
  }

  /**
   * A tick across a seam; the neighbour has one of the same number at the same place of the piece.
   *
   * @param number from 1 in each patch
   * @param x where it meets the net edge, mm
   * @param y the same
   * @param dx unit direction across the edge, outwards
   * @param dy the same
   */
  public record MatchMark(int number, double x, double y, double dx, double dy) {}
}
