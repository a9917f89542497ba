package org.seamwright.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamwright.mesh.Mesh;
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

  @Test
  void tinyTipsAreRefused() {
    Mesh box = turned(Shapes.cube(1000, 1));
    assertThatThrownBy(() -> Maps.of(box, tip(0.01)))
        .isInstanceOf(MarkException.class)
        .hasMessageContaining("tip is so small");
  }
}
