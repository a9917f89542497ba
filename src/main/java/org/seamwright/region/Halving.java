package org.seamwright.region;

import org.seamwright.mesh.Topology;

/**
 * Splits chosen edges of a surface at their middle and then rounds the pieces: all edges of a face
 * that are nearly as long as its longest, so that the long facets of a turned piece are cut across
 * and not into ever thinner needles.
 */
final class Halving {
  /** Edges of a face that are split along with its longest, as a share of that one's length. */
  private static final double LONG = 0.6;

  private final EditableSurface surface;

  Halving(EditableSurface surface) {
    this.surface = surface;
  }

  /** The longest half-edge of a face. */
  int longestEdge(int face) {
    int h = 3 * face;
    int next = Topology.next(h);
    int prev = Topology.prev(h);
    int longest = surface.length(next) > surface.length(h) ? next : h;
    return surface.length(prev) > surface.length(longest) ? prev : longest;
  }

  /** Chooses the long edges of a face. */
  void choose(int face) {
    double least = LONG * surface.length(longestEdge(face));
    for (int h = 3 * face; h < 3 * face + 3; h++) {
      if (surface.length(h) >= least) {
        surface.setDue(h);
      }
    }
  }

  /** Splits the chosen edges of some faces and of their pieces, then rounds the pieces. */
  void split(int[] faces) {
    int known = surface.faceCount();
    for (int i = 0; i < faces.length + surface.faceCount() - known; i++) {
      int face = i < faces.length ? faces[i] : known + i - faces.length;
      for (int h = 3 * face; h < 3 * face + 3; h++) {
        if (surface.isDue(h)) {
          surface.splitEdge(h, 0.5);
        }
      }
    }
    if (surface.faceCount() > known) {
      new Flips(surface).improve(faces, known);
    }
  }
}
