package org.seamwright.region;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Some faces of an editable surface as a mesh of their own, so that work on a small place costs
 * what the place does. Valid until the surface is split.
 */
final class Patch {
  private final SubMesh part;
  private final Topology topology;
  private final VertexFans fans;

  private Patch(SubMesh part) {
    this.part = part;
    this.topology = Topology.of(part.mesh());
    this.fans = VertexFans.of(part.mesh());
  }

  /**
   * Makes patches of one surface; keeps its working arrays from one to the next.
   *
   * @see #reached
   */
  static final class Maker {
    private final EditableSurface surface;

    /** One entry per face: whether the flood under way has seen it. */
    private boolean[] seen = new boolean[0];

    /** One entry per vertex, all 0. */
    private int[] local = new int[0];

    Maker(EditableSurface surface) {
      this.surface = surface;
    }

    /**
     * The faces that are reached over edges from some seeds without leaving the admitted ones.
     *
     * @param seeds faces, admitted or not
     */
    Patch reached(int[] seeds, IntPredicate admitted) {
      if (seen.length < surface.faceCount()) {
        seen = new boolean[surface.faceCount() + (surface.faceCount() >> 2)];
      }
      int[] queue = new int[Math.max(64, 2 * seeds.length)];
      int end = 0;
      for (int f : seeds) {
        if (!seen[f]) {
          seen[f] = true;
          queue[end++] = f;
        }
      }
      int refusedEnd = 0;
      int[] refused = new int[64];
      for (int begin = 0; begin < end; begin++) {
        for (int h = 3 * queue[begin]; h < 3 * queue[begin] + 3; h++) {
          for (int g = surface.ring(h); g != h; g = surface.ring(g)) {
            int across = g / 3;
            if (seen[across]) {
              continue;
            }
            seen[across] = true;
            if (admitted.test(across)) {
              queue = room(queue, end);
              queue[end++] = across;
            } else {
              refused = room(refused, refusedEnd);
              refused[refusedEnd++] = across;
            }
          }
        }
      }
      for (int i = 0; i < end; i++) {
        seen[queue[i]] = false;
      }
      for (int i = 0; i < refusedEnd; i++) {
        seen[refused[i]] = false;
      }
      int[] faces = Arrays.copyOf(queue, end);
      Arrays.sort(faces);
      return of(faces);
    }

    private static int[] room(int[] list, int size) {
      return size < list.length ? list : Arrays.copyOf(list, 2 * size);
    }

    /** A patch of given faces. */
    Patch of(int[] faces) {
      if (local.length < surface.vertexCount()) {
        local = new int[surface.vertexCount() + (surface.vertexCount() >> 2)];
      }
      SubMesh part = SubMesh.of(surface.coordinates(), surface.corners(), faces, local);
      return new Patch(part);
    }
  }

  /** One entry per face of the patch: its number on the surface, ascending. */
  int[] faces() {
    return part.faces();
  }

  /** One entry per vertex of the patch: its number on the surface. */
  int[] vertices() {
    return part.vertices();
  }

  Mesh mesh() {
    return part.mesh();
  }

  /** Length of the longest edge, mm. */
  double longestEdge() {
    int[] corner = mesh().corner();
    double longest = 0;
    for (int h = 0; h < corner.length; h++) {
      longest = Math.max(longest, Faces.length(mesh(), corner[h], corner[Topology.next(h)]));
    }
    return longest;
  }

  Topology topology() {
    return topology;
  }

  VertexFans fans() {
    return fans;
  }

  /**
   * Finds places of the piece as read among the pieces that their faces have been cut into.
   *
   * @param places on the piece
   * @return on the surface as it is now
   */
  static SurfacePoint[] locate(
      Maker maker, EditableSurface surface, Piece piece, List<SurfacePoint> places) {
    Map<Integer, Patch> pieces = new HashMap<>();
    Map<Integer, FaceTree> trees = new HashMap<>();
    SurfacePoint[] located = new SurfacePoint[places.size()];
    for (int i = 0; i < located.length; i++) {
      SurfacePoint place = places.get(i);
      Patch patch = pieces.computeIfAbsent(place.face(), f -> maker.of(piecesOf(surface, f)));
      FaceTree tree = trees.computeIfAbsent(place.face(), f -> FaceTree.of(patch.mesh()));
      Vector3D at = piece.position(place);
      SurfacePoint found = tree.nearest(at.getX(), at.getY(), at.getZ()).orElseThrow();
      located[i] =
          new SurfacePoint(patch.faces()[found.face()], found.w0(), found.w1(), found.w2());
    }
    return located;
  }

  private static int[] piecesOf(EditableSurface surface, int parent) {
    int count = 0;
    for (int f = parent; f >= 0; f = surface.nextPiece(f)) {
      count++;
    }
    int[] pieces = new int[count];
    for (int f = parent; f >= 0; f = surface.nextPiece(f)) {
      pieces[--count] = f;
    }
    return pieces;
  }

  /** A place of the surface as a place of this patch; its face must be in it. */
  SurfacePoint inPatch(SurfacePoint onSurface) {
    int face = Arrays.binarySearch(part.faces(), onSurface.face());
    return new SurfacePoint(face, onSurface.w0(), onSurface.w1(), onSurface.w2());
  }
}
