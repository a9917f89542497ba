package org.seamwright.region;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.SurfacePoint;

/**
 * Lays a path into the surface: its points become vertices and the shortest ways between them
 * chains of marked edges, which stay marked however the surface is split.
 *
 * <p>Places nearer than a snap distance to a vertex or edge are moved onto it, which spares the
 * surface slivers and moves the path by no more than that.
 */
final class Stroke {
  /** Growth of the region in which a leg is looked for, in lengths of the straight line. */
  private static final double[] REACHES = {1.5, 3, 6, Double.POSITIVE_INFINITY};

  private final Piece piece;
  private final EditableSurface surface;
  private final Patch.Maker patches;
  private final Front front;
  private final double snapMm;
  private final IntPredicate faces;

  /** The path laid, for finding what is near it: one line per leg or single point. */
  private final List<List<Vector3D>> lines = new ArrayList<>();

  private int broken;

  Stroke(Piece piece, EditableSurface surface, Patch.Maker patches, Front front, double snapMm) {
    this(piece, surface, patches, front, snapMm, f -> true);
  }

  /** A stroke whose ways keep to some faces. */
  Stroke(
      Piece piece,
      EditableSurface surface,
      Patch.Maker patches,
      Front front,
      double snapMm,
      IntPredicate faces) {
    this.piece = piece;
    this.surface = surface;
    this.patches = patches;
    this.front = front;
    this.snapMm = snapMm;
    this.faces = faces;
  }

  /** Lays a path of places on the piece as read; gives the vertices its places have become. */
  int[] lay(List<SurfacePoint> places) {
    int[] vertices = new int[places.size()];
    for (int i = 0; i < vertices.length; i++) {
      SurfacePoint place = places.get(i);
      front.makeRoom(patches, locate(place).face(), List.of(piece.position(place)));
      vertices[i] = insert(locate(place));
      lines.add(List.of(position(vertices[i])));
    }
    for (int i = 1; i < vertices.length; i++) {
      if (vertices[i] != vertices[i - 1]) {
        leg(vertices[i - 1], vertices[i], places.get(i - 1));
      }
    }
    return vertices;
  }

  /** Polylines along the path, mm. */
  List<List<Vector3D>> lines() {
    return lines;
  }

  /** How many legs have no surface between their ends. */
  int broken() {
    return broken;
  }

  private Vector3D position(int vertex) {
    return Vector3D.of(surface.at(vertex, 0), surface.at(vertex, 1), surface.at(vertex, 2));
  }

  private int insert(SurfacePoint at) {
    int first = 3 * at.face();
    double[] weight = {at.w0(), at.w1(), at.w2()};
    Vector3D place = Vector3D.ZERO;
    for (int k = 0; k < 3; k++) {
      place = place.add(position(surface.from(first + k)).multiply(weight[k]));
    }
    for (int k = 0; k < 3; k++) {
      if (position(surface.from(first + k)).distance(place) <= snapMm) {
        return surface.from(first + k);
      }
    }
    for (int k = 0; k < 3; k++) {
      double length = surface.length(first + k);
      double height = 2 * surface.area(at.face()) / length;
      if (weight[(k + 2) % 3] * height <= snapMm) {
        Vector3D from = position(surface.from(first + k));
        Vector3D along = position(surface.to(first + k)).subtract(from);
        double share = place.subtract(from).dot(along) / along.normSq();
        if (share * length > snapMm && (1 - share) * length > snapMm) {
          return surface.splitEdge(first + k, share);
        }
      }
    }
    return surface.splitFace(at.face(), weight[0], weight[1], weight[2]);
  }

  private SurfacePoint locate(SurfacePoint place) {
    return Patch.locate(patches, surface, piece, List.of(place))[0];
  }

  private void leg(int start, int end, SurfacePoint startPlace) {
    Optional<Leg> rough = find(start, end, startPlace);
    if (rough.isEmpty()) {
      broken++;
      return;
    }
    List<Vector3D> line = line(rough.get(), start, end);
    int splits = front.makeRoom(patches, locate(startPlace).face(), line);
    embed(splits == 0 ? rough.get() : find(start, end, startPlace).orElseThrow(), start, end);
  }

  /** A way and the patch it is in. */
  private record Leg(Patch patch, SurfaceWay way) {}

  private Optional<Leg> find(int start, int end, SurfacePoint startPlace) {
    int seed = locate(startPlace).face();
    double straight = surface.distance(start, end);
    for (double reach : REACHES) {
      double limit = reach * straight;
      Patch patch =
          patches.reached(new int[] {seed}, f -> faces.test(f) && between(f, start, end, limit));
      Optional<SurfaceWay> way = way(patch, start, end);
      if (way.isPresent() && way.get().lengthMm() <= limit) {
        return Optional.of(new Leg(patch, way.get()));
      }
    }
    return Optional.empty();
  }

  private List<Vector3D> line(Leg leg, int start, int end) {
    List<Vector3D> line = new ArrayList<>();
    line.add(position(start));
    SurfaceWay way = leg.way();
    for (int i = 0; i < way.crossedAt().length; i++) {
      Vector3D from = position(leg.patch().vertices()[way.crossedFrom()[i]]);
      Vector3D to = position(leg.patch().vertices()[way.crossedTo()[i]]);
      line.add(from.lerp(to, way.crossedAt()[i]));
    }
    line.add(position(end));
    return line;
  }

  private static Optional<SurfaceWay> way(Patch patch, int start, int end) {
    int from = -1;
    int to = -1;
    for (int v = 0; v < patch.vertices().length; v++) {
      from = patch.vertices()[v] == start ? v : from;
      to = patch.vertices()[v] == end ? v : to;
    }
    return from < 0 || to < 0 ? Optional.empty() : SurfaceWay.between(patch, from, to);
  }

  /**
   * Whether some of a face may lie on a way between two vertices that is no longer than a limit.
   */
  private boolean between(int face, int start, int end, double limit) {
    double[] corners = new double[9];
    for (int k = 0; k < 3; k++) {
      System.arraycopy(surface.coordinates(), 3 * surface.from(3 * face + k), corners, 3 * k, 3);
    }
    double[] middle = new double[3];
    double spread = Spread.of(corners, middle);
    Vector3D at = Vector3D.of(middle);
    return at.distance(position(start)) + at.distance(position(end)) - 2 * spread <= limit;
  }

  /** Makes the way a chain of edges and marks them. */
  private void embed(Leg leg, int start, int end) {
    Patch patch = leg.patch();
    SurfaceWay way = leg.way();
    int known = surface.faceCount();
    int[] chain = new int[way.crossedAt().length + 2];
    int count = 0;
    chain[count++] = start;
    for (int i = 0; i < way.crossedAt().length; i++) {
      int a = patch.vertices()[way.crossedFrom()[i]];
      int b = patch.vertices()[way.crossedTo()[i]];
      double length = surface.distance(a, b);
      double share = way.crossedAt()[i];
      int vertex;
      if (share * length <= snapMm) {
        vertex = a;
      } else if ((1 - share) * length <= snapMm) {
        vertex = b;
      } else {
        vertex = split(patch, known, a, b, share);
      }
      if (vertex != chain[count - 1]) {
        chain[count++] = vertex;
      }
    }
    if (end != chain[count - 1]) {
      chain[count++] = end;
    }
    markEdges(patch, known, Arrays.copyOf(chain, count));
  }

  private int split(Patch patch, int known, int a, int b, double share) {
    int h = find(patch, known, a, b);
    return surface.splitEdge(h, surface.from(h) == a ? share : 1 - share);
  }

  /** A half-edge between two vertices, among the faces of a patch and those made since. */
  private int find(Patch patch, int known, int a, int b) {
    // The newest faces first: the next edge of a way is beside the last that was split.
    for (int f = surface.faceCount() - 1; f >= known; f--) {
      int h = edgeOf(f, a, b);
      if (h >= 0) {
        return h;
      }
    }
    for (int f : patch.faces()) {
      int h = edgeOf(f, a, b);
      if (h >= 0) {
        return h;
      }
    }
    throw new IllegalStateException("No face has an edge between vertices " + a + " and " + b);
  }

  private int edgeOf(int face, int a, int b) {
    for (int h = 3 * face; h < 3 * face + 3; h++) {
      if ((surface.from(h) == a && surface.to(h) == b)
          || (surface.from(h) == b && surface.to(h) == a)) {
        return h;
      }
    }
    return -1;
  }

  private void markEdges(Patch patch, int known, int[] chain) {
    Set<Long> pairs = new HashSet<>();
    List<Vector3D> line = new ArrayList<>();
    for (int i = 0; i < chain.length; i++) {
      line.add(position(chain[i]));
      if (i > 0) {
        pairs.add(pair(chain[i - 1], chain[i]));
      }
    }
    lines.add(line);
    for (int i = 0; i < patch.faces().length + surface.faceCount() - known; i++) {
      int face = i < patch.faces().length ? patch.faces()[i] : known + i - patch.faces().length;
      for (int h = 3 * face; h < 3 * face + 3; h++) {
        if (!surface.isMarked(h) && pairs.contains(pair(surface.from(h), surface.to(h)))) {
          surface.mark(h);
        }
      }
    }
  }

  private static long pair(int a, int b) {
    return (long) Math.min(a, b) << 32 | Math.max(a, b);
  }
}
