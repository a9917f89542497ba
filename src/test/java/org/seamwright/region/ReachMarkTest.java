package org.seamwright.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.testsupport.Shapes;

/** What a ball cannot touch, against closed formulas. */
class ReachMarkTest {
  private static Mark tip(double radius) {
    return new Mark.OutOfReach("tip", Treatment.OUT_OF_SCOPE, radius);
  }

  private static double untouched(Mesh mesh, double radius) throws MarkException {
    SurfaceMap map = Maps.of(mesh, tip(radius));
    Maps.requireSound(mesh, map);
    return map.areaMm2(Treatment.OUT_OF_SCOPE);
  }

  private static Mesh turned(Mesh mesh) {
    int[] all = new int[mesh.faceCount()];
    for (int f = 0; f < all.length; f++) {
      all[f] = f;
    }
    return Shapes.withFlipped(mesh, all);
  }

  /** A profile of points (x, z), drawn along y: each wall two faces, its left side outside. */
  private static Mesh drawn(double length, double... xz) {
    Shapes.Builder mesh = new Shapes.Builder();
    int a = mesh.vertex(xz[0], 0, xz[1]);
    int d = mesh.vertex(xz[0], length, xz[1]);
    for (int i = 2; i < xz.length; i += 2) {
      int b = mesh.vertex(xz[i], 0, xz[i + 1]);
      int c = mesh.vertex(xz[i], length, xz[i + 1]);
      mesh.quad(a, b, c, d);
      a = b;
      d = c;
    }
    return mesh.build();
  }

  @ParameterizedTest(name = "half opening {0}, radius {1}")
  @CsvSource({"45, 3", "30, 2", "60, 5", "20, 1.5", "72, 6"})
  void strip(double half, double radius) throws MarkException {
    // A ball between two planes that open by 2a touches each at r / tan a from the crease; nearer
    // to it no ball fits (the tangent length from a point to a circle).
    double x = 30 * Math.sin(Math.toRadians(half));
    double z = 30 * Math.cos(Math.toRadians(half));
    Mesh groove = drawn(40, -x, z, 0, 0, x, z);
    double exact = 2 * 40 * radius / Math.tan(Math.toRadians(half));
    assertThat(untouched(groove, radius)).isCloseTo(exact, within(1e-3 * exact));
  }

  /** A post that pierces a floor: the line is bent round its edges, at one radius from them. */
  @ParameterizedTest(name = "{0} cells")
  @CsvSource({"1", "7", "40"})
  void bentLine(int cells) throws MarkException {
    double a = 3;
    double r = 2;
    Mesh floor = Shapes.rotated(Shapes.plane(30, 30, cells, cells), 0, 0, 1, 0.2);
    Mesh piece = Shapes.join(floor, Shapes.box(a, a, 20, 2));
    SurfaceMap map = Maps.of(piece, tip(r));
    Maps.requireSound(piece, map);
    // On the floor what lies within r of the post or in it (Steiner's formula); on the four walls,
    // which a ball touches from above or below the floor, what lies within r of the floor.
    double exact = a * a + 4 * a * r + Math.PI * r * r + 4 * a * 2 * r;
    assertThat(map.areaMm2(Treatment.OUT_OF_SCOPE)).isCloseTo(exact, within(2e-3 * exact));
    assertThat(furthestOff(map, a, r)).isLessThan(0.002 * r);
  }

  /** How far corners of faces on the line in the floor lie from where it should run, mm. */
  private static double furthestOff(SurfaceMap map, double a, double r) {
    Mesh mesh = map.mesh();
    int[] seen = new int[mesh.vertexCount()];
    for (int h = 0; h < 3 * mesh.faceCount(); h++) {
      seen[mesh.corner()[h]] |= map.of(h / 3) == Treatment.OUT_OF_SCOPE ? 1 : 2;
    }
    double most = 0;
    for (int v = 0; v < seen.length; v++) {
      double dx = Math.max(0, Math.abs(mesh.x(v)) - a / 2);
      double dy = Math.max(0, Math.abs(mesh.y(v)) - a / 2);
      if (seen[v] == 3 && mesh.z(v) == 0 && dx + dy > 0) {
        most = Math.max(most, Math.abs(Math.hypot(dx, dy) - r));
      }
    }
    return most;
  }

  @ParameterizedTest(name = "width {0}, depth {1}, radius {2}")
  @CsvSource({"4, 9, 2.5", "8, 1, 5", "20, 2, 6"})
  void slot(double w, double d, double r) throws MarkException {
    Mesh slot = drawn(50, -30, d, 0, d, 0, 0, w, 0, w, d, w + 30, d);
    // A ball on the floor at x from a wall clears it if x >= r, or its upper edge if it is lower
    // than r: x >= sqrt(2 r d - d^2) (Pythagoras). One on a wall at height h needs the width and
    // the room over the floor: h >= r.
    double k = d < r ? Math.sqrt(2 * r * d - d * d) : r;
    double floor = Math.min(w, 2 * k);
    double wall = w < 2 * r ? d : Math.min(d, r);
    double exact = 50 * (floor + 2 * wall);
    assertThat(untouched(slot, r)).isCloseTo(exact, within(2e-3 * exact));
  }

  @ParameterizedTest(name = "radius {0}, {1} facets to a wave")
  @CsvSource({"0.5, 24", "2, 24", "3, 24", "3, 60", "8, 60", "20, 60"})
  void waves(double r, int facets) throws MarkException {
    // A sheet z = h cos(k x) drawn along y. Its hollows have a radius of 1 / (h k^2) at the bottom.
    // A larger ball comes to rest on both sides, at s from the bottom, its middle over it: s = r
    // sin
    // (atan z'(s)). What lies between is not touched.
    double h = 0.4;
    double k = 1;
    double[] profile = new double[2 * (4 * facets + 1)];
    for (int i = 0; i <= 4 * facets; i++) {
      double x = 2 * Math.PI / k * i / facets;
      profile[2 * i] = x;
      profile[2 * i + 1] = h * Math.cos(k * x);
    }
    double depth = h * k * k;
    double s = 0;
    if (r * depth > 1) {
      double low = 1e-6;
      double high = Math.PI / k;
      while (high - low > 1e-9) {
        double x = (low + high) / 2;
        double slope = h * k * Math.sin(k * x);
        boolean held = x < r * slope / Math.sqrt(1 + slope * slope);
        low = held ? x : low;
        high = held ? high : x;
      }
      s = low;
    }
    double arc = 0;
    for (int i = 0; i < 1000; i++) {
      arc += s / 1000 * Math.sqrt(1 + Math.pow(h * k * Math.sin(k * s * (i + 0.5) / 1000), 2));
    }
    // Facets let a ball pass that the curve would just stop: the line may be off by a facet or so.
    double off = r * depth > 1 ? 1.25 * 2 * Math.PI / k / facets : 0;
    double length = 4 * 2 * 15;
    assertThat(untouched(drawn(15, profile), r)).isCloseTo(arc * length, within(off * length));
  }

  @ParameterizedTest(name = "{0} facets")
  @CsvSource({"12", "24", "60"})
  void bore(int facets) throws MarkException {
    Mesh bore = turned(Shapes.cylinder(5, 40, facets, 8, false));
    assertThat(untouched(bore, 2)).isZero();
    assertThat(untouched(bore, 4.9)).isZero();
    assertThat(untouched(bore, 5)).isZero();
    double whole = Maps.area(bore);
    double more = 5 * (1 + 15.0 / facets / facets) + 0.02;
    assertThat(untouched(bore, more)).isCloseTo(whole, within(1e-9 * whole));
  }

  @Test
  void closedTubeFromInside() throws MarkException {
    // Its wall stands for a curve, its ends are flat: a ball comes to the wall's facets to within r
    // along the ends, and to the ends to within r along the wall. Prism of N sides, apothem a.
    int facets = 24;
    double r = 1.5;
    double a = 5 * Math.cos(Math.PI / facets);
    double area = facets * Math.tan(Math.PI / facets);
    Mesh tube = turned(Shapes.cylinder(5, 20, facets, 4, true));
    double exact = 2 * area * (a * a - (a - r) * (a - r)) + 2 * r * 2 * area * a;
    assertThat(untouched(tube, r)).isCloseTo(exact, within(2e-3 * exact));
  }

  @Test
  void roundAndConvexPiecesAreTouchedAllOver() throws MarkException {
    assertThat(untouched(Shapes.cube(10, 3), 4)).isZero();
    assertThat(untouched(Shapes.icosphere(10, 1), 40)).isZero();
    assertThat(untouched(Shapes.icosphere(10, 3), 4)).isZero();
    assertThat(untouched(Shapes.sphere(10, 7, 9), 3)).isZero();
    assertThat(untouched(Shapes.cylinder(6, 15, 24, 2, true), 30)).isZero();
    assertThat(untouched(Shapes.ellipsoid(3, 20, 9, 20, 30), 50)).isZero();
  }

  @ParameterizedTest(name = "level {0}")
  @CsvSource({"2", "3"})
  void hollowSphere(int level) throws MarkException {
    Mesh hollow = turned(Shapes.icosphere(10, level));
    assertThat(untouched(hollow, 3)).isZero();
    assertThat(untouched(hollow, 9.9)).isZero();
    double whole = Maps.area(hollow);
    assertThat(untouched(hollow, 11)).isCloseTo(whole, within(1e-9 * whole));
  }

  @Test
  void boxFromInside() throws MarkException {
    // Each wall is touched but for a rim as wide as the ball's radius.
    Mesh box = turned(Shapes.box(30, 24, 20, 1));
    double r = 2.5;
    double touched = 2 * (25 * 19 + 25 * 15 + 19 * 15);
    double exact = 2 * (30 * 24 + 30 * 20 + 24 * 20) - touched;
    assertThat(untouched(box, r)).isCloseTo(exact, within(5e-3 * exact));
  }

  @ParameterizedTest(name = "radius {0}")
  @CsvSource({"7", "16", "30"})
  void torus(double r) throws MarkException {
    // A ball that touches the tube (radius a) at the angle u from the outer equator has its middle
    // at R + (a + r) cos u from the axis. Beyond the axis the far side is nearer; so it is free if
    // that is not below 0. Area beyond: Pappus.
    double big = 12;
    double a = 4;
    Mesh ring = Shapes.torus(big, a, 120, 60);
    double cosine = big / (a + r);
    double exact = 0;
    if (cosine < 1) {
      double g = Math.acos(cosine);
      exact = 2 * Math.PI * a * (2 * big * g - 2 * a * Math.sin(g));
    }
    assertThat(untouched(ring, r)).isCloseTo(exact, within(0.01 * Maps.area(ring)));
  }

  @Test
  void innerShells() throws MarkException {
    Mesh shell = Shapes.join(Shapes.icosphere(20, 3), turned(Shapes.icosphere(15, 3)));
    double inner = Maps.area(Shapes.icosphere(15, 3));
    SurfaceMap map = Maps.of(shell, new Mark.InnerShells("", Treatment.OUT_OF_SCOPE));
    assertThat(map.areaMm2(Treatment.OUT_OF_SCOPE)).isCloseTo(inner, within(1e-9 * inner));
    assertThat(untouched(shell, 3)).isCloseTo(inner, within(1e-9 * inner));
    Mesh beside = Shapes.join(Shapes.cube(4, 1), Shapes.moved(Shapes.cube(4, 1), 9, 0, 0));
    assertThat(Maps.of(beside, new Mark.InnerShells("", Treatment.BARE)).areaMm2(Treatment.BARE))
        .isZero();
  }

  /** Flat faces that pierce each other, where no formula is at hand: against the ball itself. */
  @ParameterizedTest(name = "seed {0}, radius {1}")
  @CsvSource({"1, 1", "2, 2.5", "3, 4"})
  void agreesWithTheBallAtRandomPlaces(int seed, double r) throws MarkException {
    Random random = new Random(seed);
    Mesh piece = Shapes.rotated(Shapes.plane(40, 40, 3, 2), 1, 2, 3, random.nextDouble());
    for (int i = 0; i < 6; i++) {
      Mesh box = Shapes.box(3 + 9 * random.nextDouble(), 4, 2 + 9 * random.nextDouble(), 1);
      box =
          Shapes.rotated(box, random.nextDouble(), 1, random.nextDouble(), 6 * random.nextDouble());
      double x = 24 * random.nextDouble() - 12;
      piece = Shapes.join(piece, Shapes.moved(box, x, 24 * random.nextDouble() - 12, 2));
    }
    requireBall(piece, Maps.of(piece, tip(r)), r, 3000, random);
  }

  /** Compares what a map says of places with the room that a ball has there. */
  static void requireBall(Mesh piece, SurfaceMap map, double r, int places, Random random) {
    FaceTree tree = FaceTree.of(piece);
    Mesh cut = map.mesh();
    double[] sum = new double[cut.faceCount() + 1];
    for (int f = 0; f < cut.faceCount(); f++) {
      sum[f + 1] = sum[f] + Faces.area(cut, f);
    }
    int free = 0;
    for (int i = 0; i < places; i++) {
      int f = Arrays.binarySearch(sum, random.nextDouble() * sum[cut.faceCount()]);
      f = f < 0 ? -f - 2 : f;
      double a = random.nextDouble();
      double b = random.nextDouble();
      Vector3D p = at(cut, f, a + b > 1 ? 1 - a : a, a + b > 1 ? 1 - b : b);
      double[] n = new double[3];
      Faces.normal(cut, f, n);
      Vector3D normal = Vector3D.of(n);
      double room = room(tree, piece, p, normal, r);
      boolean barred = map.of(f) == Treatment.OUT_OF_SCOPE;
      free += barred ? 0 : 1;
      if (!barred) {
        assertThat(room).as("free at %s", p).isGreaterThan(0.99 * r);
      } else if (room > 0.99999 * r) {
        // The line may run a little beside where it should: somewhere near the ball is stopped.
        Vector3D u = normal.orthogonal();
        Vector3D v = normal.cross(u);
        double least = r;
        for (int k = 0; k < 16; k++) {
          double w = k * Math.PI / 8;
          Vector3D q = p.add(0.01 * r * Math.cos(w), u).add(0.01 * r * Math.sin(w), v);
          least = Math.min(least, room(tree, piece, q, normal, r));
        }
        assertThat(least).as("barred at %s", p).isLessThan(0.99999 * r);
      }
    }
    assertThat(free).as("places that the tip touches").isBetween(places / 50, places - 1);
  }

  /** Distance of the middle of a ball that touches a place from the surface. */
  private static double room(FaceTree tree, Mesh piece, Vector3D p, Vector3D n, double r) {
    Vector3D c = p.add(r, n);
    SurfacePoint q = tree.nearest(c.getX(), c.getY(), c.getZ()).orElseThrow();
    return c.distance(Vector3D.of(q.at(piece, 0), q.at(piece, 1), q.at(piece, 2)));
  }

  private static Vector3D at(Mesh mesh, int f, double a, double b) {
    Vector3D[] c = new Vector3D[3];
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner()[3 * f + k];
      c[k] = Vector3D.of(mesh.x(v), mesh.y(v), mesh.z(v));
    }
    return c[0].add(a, c[0].vectorTo(c[1])).add(b, c[0].vectorTo(c[2]));
  }

  @Test
  void tinyTipsAreRefused() {
    Mesh box = turned(Shapes.cube(1000, 1));
    assertThatThrownBy(() -> Maps.of(box, tip(0.01)))
        .isInstanceOf(MarkException.class)
        .hasMessageContaining("tip is so small");
  }
}
