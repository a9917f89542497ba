package org.seamwright.flatten;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * A sheet laid out in the plane, lengths in mm, seen from outside the piece.
 *
 * <p>Starts from a conformal map that keeps the rim's lengths, exact for what can be unrolled, then
 * moves every vertex to where lengths change least in the mean; if that leaves some place above the
 * allowed stretch, to where the worst place is better. Holes and pointed corners are slit open
 * first; a slit whose sides meet again in the plane is sewn up. No face is folded, and the rim
 * doesn't cross itself, else there is no layout. Near O(n^1.5).
 *
 * @param mesh the sheet, cut open along slits that stayed; faces in the order given
 * @param parent one entry per vertex: its number in the sheet given
 * @param uv two coordinates per vertex, mm
 * @param stretch how lengths changed
 * @param slit one entry per half-edge: whether it lies on a slit that stayed
 */
public record Layout(Mesh mesh, int[] parent, double[] uv, Stretch stretch, boolean[] slit) {
  /** Steps of the descent: the mean settles within some dozens. */
  private static final int STEPS = 120;

  private static final int STEPS_FROM_ROUND = 200;
  private static final double ENOUGH = 1e-4;

  /** Powers of the energy, one after another, that bring the worst place down. */
  private static final double[] POWERS = {2, 4, 8};

  private static final int STEPS_PER_POWER = 60;

  /**
   * Evening out takes away a third of the largest stretch of a round cap; what is this many times
   * too much will be cut apart anyway.
   */
  private static final double HOPELESS = 2;

  /** Stretch by projection below which a sheet is flat but for its file's rounding. */
  private static final double IN_PLANE = 1e-4;

  /** A slit whose sides part by less than this share of its length is tried without. */
  private static final double SEWN_SHARE = 0.05;

  /**
   * Lays out a sheet.
   *
   * @param sheet connected, each vertex one fan, faces turned alike, genus 0 with a boundary
   * @param allowed stretch above which the worst place is improved at the cost of the mean
   * @return nothing if no layout without folds and crossings was found
   */
  public static Optional<Layout> of(Mesh sheet, double allowed, Progress progress) {
    Topology topology = Topology.of(sheet);
    List<int[]> loops = Sheets.loops(sheet, topology);
    if (loops.isEmpty() || Sheets.euler(sheet, topology) + loops.size() != 2) {
      return Optional.empty();
    }
    Optional<Layout> plane = plane(sheet);
    if (plane.isPresent()) {
      return plane;
    }
    RestShapes rest = RestShapes.of(sheet);
    double[] curvature = Angles.inside(rest, Angles.onBoundary(sheet, topology));
    boolean[] slit = Slits.of(sheet, topology, loops, curvature);
    Sheets.Sheet open = Sheets.open(sheet, topology, slit);
    Optional<double[]> disc = disc(open.mesh(), progress);
    if (disc.isEmpty()) {
      return Optional.empty();
    }
    Optional<Layout> sewn = sewn(sheet, topology, open, disc.get(), slit, allowed, progress);
    if (sewn.isPresent()) {
      return sewn;
    }
    return finished(open, disc.get(), slit, allowed, progress);
  }

  /** A sheet that lies in a plane as it is: nothing to unroll, whatever holes it has. */
  private static Optional<Layout> plane(Mesh sheet) {
    double[] sum = new double[3];
    double[] vector = new double[3];
    for (int f = 0; f < sheet.faceCount(); f++) {
      int[] c = sheet.corner();
      Faces.areaVector(sheet.xyz(), c[3 * f], c[3 * f + 1], c[3 * f + 2], vector);
      for (int axis = 0; axis < 3; axis++) {
        sum[axis] += vector[axis];
      }
    }
    Vector3D normal = Vector3D.of(sum);
    double length = normal.norm();
    if (!(length > 0)) {
      return Optional.empty();
    }
    normal = normal.normalize();
    Vector3D across = normal.orthogonal();
    Vector3D third = normal.cross(across);
    double[] uv = new double[2 * sheet.vertexCount()];
    for (int v = 0; v < sheet.vertexCount(); v++) {
      Vector3D p = Vector3D.of(sheet.x(v), sheet.y(v), sheet.z(v));
      uv[2 * v] = p.dot(across);
      uv[2 * v + 1] = p.dot(third);
    }
    // Needles have no shape to compare, and none is needed: in a plane nothing moves.
    Stretch all = Stretch.of(RestShapes.of(sheet), uv);
    if (!(all.largest() < IN_PLANE) || !isInPlane(sheet, normal)) {
      return Optional.empty();
    }
    Stretch stretch =
        new Stretch(
            all.largest(),
            all.largest(),
            Math.min(all.mean(), all.largest()),
            all.least(),
            all.greatest(),
            1,
            0);
    int[] parent = new int[sheet.vertexCount()];
    Arrays.setAll(parent, v -> v);
    return Optional.of(new Layout(sheet, parent, uv, stretch, new boolean[sheet.corner().length]));
  }

  /** Whether all vertices are as far along a normal, but for the file's rounding. */
  private static boolean isInPlane(Mesh sheet, Vector3D normal) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int v = 0; v < sheet.vertexCount(); v++) {
      double along = Vector3D.of(sheet.x(v), sheet.y(v), sheet.z(v)).dot(normal);
      low = Math.min(low, along);
      high = Math.max(high, along);
    }
    return high - low <= IN_PLANE * sheet.bounds().diagonal();
  }

  /** Lays a disc out so that lengths change least in the mean. */
  private static Optional<double[]> disc(Mesh mesh, Progress progress) {
    Topology topology = Topology.of(mesh);
    List<int[]> loops = Sheets.loops(mesh, topology);
    if (loops.size() != 1 || Sheets.euler(mesh, topology) != 1) {
      return Optional.empty();
    }
    RestShapes rest = RestShapes.of(mesh);
    FirstLayout first = new FirstLayout(mesh, rest, loops.get(0));
    Isometry plain = new Isometry(rest, 1, 1);
    Optional<double[]> uv = first.keepingTheRim().filter(p -> plain.energy(p) < 1e9);
    int steps = STEPS;
    if (uv.isEmpty()) {
      uv = first.round().filter(p -> plain.energy(p) < Double.POSITIVE_INFINITY);
      steps = STEPS_FROM_ROUND;
    }
    if (uv.isPresent()) {
      Descent.run(mesh, rest, uv.get(), 1, steps, ENOUGH, progress.between(0, 0.5));
    }
    return uv;
  }

  /** The layout without slits, if their sides nearly meet and all is well then. */
  private static Optional<Layout> sewn(
      Mesh sheet,
      Topology topology,
      Sheets.Sheet open,
      double[] uv,
      boolean[] slit,
      double allowed,
      Progress progress) {
    if (open.mesh().vertexCount() == sheet.vertexCount() || gap(open, uv) > SEWN_SHARE) {
      return Optional.empty();
    }
    double[] joined = new double[2 * sheet.vertexCount()];
    int[] count = new int[sheet.vertexCount()];
    for (int v = 0; v < open.parent().length; v++) {
      joined[2 * open.parent()[v]] += uv[2 * v];
      joined[2 * open.parent()[v] + 1] += uv[2 * v + 1];
      count[open.parent()[v]]++;
    }
    for (int v = 0; v < count.length; v++) {
      joined[2 * v] /= count[v];
      joined[2 * v + 1] /= count[v];
    }
    RestShapes rest = RestShapes.of(sheet);
    if (!(new Isometry(rest, 1, 1).energy(joined) < Double.POSITIVE_INFINITY)) {
      return Optional.empty();
    }
    Descent.run(sheet, rest, joined, 1, STEPS, ENOUGH, progress.between(0.5, 0.8));
    Sheets.Sheet whole = Sheets.open(sheet, topology, new boolean[slit.length]);
    return finished(whole, joined, new boolean[slit.length], allowed, progress)
        .filter(layout -> layout.stretch().nearlyAll() <= allowed);
  }

  /** Widest parting of the slits as a share of the layout's size. */
  private static double gap(Sheets.Sheet open, double[] uv) {
    int[] first = new int[open.parent().length];
    Arrays.fill(first, -1);
    double widest = 0;
    double size = 0;
    for (int v = 0; v < first.length; v++) {
      size = Math.max(size, Math.hypot(uv[2 * v] - uv[0], uv[2 * v + 1] - uv[1]));
      int other = first[open.parent()[v]];
      if (other < 0) {
        first[open.parent()[v]] = v;
      } else {
        widest =
            Math.max(
                widest, Math.hypot(uv[2 * v] - uv[2 * other], uv[2 * v + 1] - uv[2 * other + 1]));
      }
    }
    return widest / size;
  }

  private static Optional<Layout> finished(
      Sheets.Sheet sheet, double[] uv, boolean[] slit, double allowed, Progress progress) {
    RestShapes rest = RestShapes.of(sheet.mesh());
    Stretch stretch = Stretch.of(rest, uv);
    double[] best = uv;
    for (double power : POWERS) {
      if (stretch.nearlyAll() <= allowed || stretch.nearlyAll() > HOPELESS * allowed) {
        break;
      }
      double[] even = best.clone();
      Descent.run(
          sheet.mesh(), rest, even, power, STEPS_PER_POWER, ENOUGH, progress.between(0.8, 1));
      Stretch evened = Stretch.of(rest, even);
      // As much too long as too short: the same layout at another scale.
      double scale = 1 / Math.sqrt(evened.least() * evened.greatest());
      for (int k = 0; k < even.length; k++) {
        even[k] *= scale;
      }
      evened = Stretch.of(rest, even);
      if (evened.nearlyAll() < stretch.nearlyAll() && !crosses(sheet.mesh(), even)) {
        stretch = evened;
        best = even;
      }
    }
    if (stretch.flipped() > 0 || crosses(sheet.mesh(), best)) {
      return Optional.empty();
    }
    return Optional.of(new Layout(sheet.mesh(), sheet.parent(), best, stretch, slit));
  }

  /** Whether the rim touches or crosses itself, decided by exact predicates. */
  private static boolean crosses(Mesh mesh, double[] uv) {
    GeometryFactory factory = new GeometryFactory();
    List<LinearRing> rings =
        Sheets.loops(mesh, Topology.of(mesh)).stream()
            .map(loop -> factory.createLinearRing(points(mesh, loop, uv)))
            .toList();
    LinearRing[] all = rings.toArray(LinearRing[]::new);
    return !factory.createMultiLineString(all).isSimple();
  }

  private static Coordinate[] points(Mesh mesh, int[] loop, double[] uv) {
    Coordinate[] points = new Coordinate[loop.length + 1];
    for (int i = 0; i <= loop.length; i++) {
      int v = mesh.corner()[loop[i % loop.length]];
      points[i] = new Coordinate(uv[2 * v], uv[2 * v + 1]);
    }
    return points;
  }

  /** Area of the surface that was laid out, mm². */
  public double areaMm2() {
    double sum = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      sum += Faces.area(mesh, f);
    }
    return sum;
  }
}
