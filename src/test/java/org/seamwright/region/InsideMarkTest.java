package org.seamwright.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.geometry.euclidean.threed.ConvexVolume;
import org.apache.commons.geometry.euclidean.threed.Plane;
import org.apache.commons.geometry.euclidean.threed.PlaneConvexSubset;
import org.apache.commons.geometry.euclidean.threed.Planes;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.numbers.core.Precision;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** What lies inside another body: closed formulas, planes cut otherwise, a library's volumes. */
class InsideMarkTest {
  static final Mark.Body FILE = new Mark.Body("body.stl", "mm", "", Maps.Z, 0, Maps.ORIGIN);

  static Mark inside(Mesh body) {
    return inside(Treatment.BARE, body);
  }

  static Mark inside(Treatment treatment, Mesh body) {
    return new Mark.Inside("inside", treatment, FILE, Optional.of(body));
  }

  @Test
  void capOfASphereCutByABox() throws MarkException {
    // Archimedes: a cap of height h has the area 2 pi R h. About 80,000 faces.
    Mesh sphere = Shapes.sphere(50, 200, 200);
    Mesh box = Shapes.moved(Shapes.box(140, 130, 60, 2), 1.3, -0.7, 61.7);
    double cap = 2 * Math.PI * 50 * (50 - 31.7);
    assertThat(Maps.bare(sphere, inside(box))).isCloseTo(cap, within(1e-3 * cap));
    // The box's side is a plane, so this is what the plane alone cuts off.
    double plane = Maps.bare(sphere, Maps.above(31.7));
    assertThat(Maps.bare(sphere, inside(box))).isCloseTo(plane, within(1e-9 * plane));
  }

  @Test
  void capsOfASphereCutByACylinder() throws MarkException {
    // A cylinder of radius a about a diameter takes two caps of height R - sqrt(R^2 - a^2).
    Mesh sphere = Shapes.sphere(50, 200, 200);
    Mesh rod = Shapes.cylinder(20, 150, 400, 30, true);
    double caps = 4 * Math.PI * 50 * (50 - Math.sqrt(50 * 50 - 20 * 20));
    assertThat(Maps.bare(sphere, inside(rod))).isCloseTo(caps, within(1e-3 * caps));
    Mesh tilted = Shapes.rotated(rod, 0.3, 0.5, 0.1, 1.1);
    assertThat(Maps.bare(sphere, inside(tilted))).isCloseTo(caps, within(1e-3 * caps));
  }

  @Test
  void capOfASphereCutByASphere() throws MarkException {
    // Spheres of radii R and r at distance d meet in the plane (d^2 + R^2 - r^2) / 2d from the
    // first's middle (equal powers).
    Mesh sphere = Shapes.sphere(50, 200, 200);
    Mesh other = Shapes.moved(Shapes.sphere(30, 200, 200), 21, 17, 38);
    double d = Math.sqrt(21 * 21 + 17 * 17 + 38 * 38);
    double cap = 2 * Math.PI * 50 * (50 - (d * d + 50 * 50 - 30 * 30) / (2 * d));
    assertThat(Maps.bare(sphere, inside(other))).isCloseTo(cap, within(1e-3 * cap));
  }

  @ParameterizedTest(name = "{0} sectors")
  @ValueSource(ints = {3, 6, 17, 64, 500})
  void fineBodyOnACoarseSheet(int sectors) throws MarkException {
    // Two faces, and a prism over a regular polygon through them: its area exactly.
    Mesh sheet = Shapes.plane(100, 80, 1, 1);
    Mesh prism = Shapes.moved(Shapes.cylinder(20, 30, sectors, 3, true), 3, 4, -11);
    double polygon = sectors / 2.0 * 20 * 20 * Math.sin(2 * Math.PI / sectors);
    assertThat(Maps.bare(sheet, inside(prism))).isCloseTo(polygon, within(1e-9 * polygon));
  }

  @Test
  void bodiesThatTouchFlush() throws MarkException {
    // A cube of 10 with a body on the same planes: half of four sides, and one whole.
    Mesh cube = Shapes.cube(10, 4);
    Mesh half = Shapes.moved(Shapes.box(10, 10, 5, 3), 0, 0, 2.5);
    assertThat(Maps.bare(cube, inside(half))).isCloseTo(300, within(1e-9));
    // Lying on it from outside: the side that they share.
    Mesh on = Shapes.moved(Shapes.box(6, 4, 5, 2), 1, 1, 7.5);
    assertThat(Maps.bare(cube, inside(on))).isCloseTo(24, within(1e-9));
    // The same body as the piece.
    assertThat(Maps.bare(cube, inside(cube))).isCloseTo(600, within(1e-9));
    // Wholly inside the piece.
    assertThat(Maps.bare(cube, inside(Shapes.cube(4, 1)))).isZero();
  }

  @Test
  void hollowsAndOverlappingParts() throws MarkException {
    Mesh sheet = Shapes.plane(100, 100, 7, 5);
    Mesh shell = Shapes.join(Shapes.cube(40, 2), Shapes.cube(20, 3));
    assertThat(Maps.bare(sheet, inside(shell))).isCloseTo(1600 - 400, within(1e-6));
    Mesh cross = Shapes.join(Shapes.box(40, 10, 10, 1), Shapes.box(10, 40, 10, 2));
    assertThat(Maps.bare(sheet, inside(cross))).isCloseTo(400 + 400 - 100, within(1e-6));
    Mesh insideOut = Shapes.withFlipped(Shapes.cube(40, 1), 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11);
    assertThat(Maps.bare(sheet, inside(insideOut))).isCloseTo(1600, within(1e-6));
  }

  @Test
  void repeatsMoveTheBody() throws MarkException {
    Mesh sheet = Shapes.plane(100, 100, 9, 9);
    Mesh peg = Shapes.moved(Shapes.cylinder(5, 20, 24, 2, true), 25, 10, -10);
    double one = Maps.bare(sheet, inside(peg));
    Mark turn = new Mark.Turn("", Maps.ORIGIN, Maps.Z, 5);
    Mark mirror = new Mark.Mirror("", Vector3D.of(0, -2, 0), Maps.Y);
    assertThat(Maps.bare(sheet, inside(peg), turn)).isCloseTo(5 * one, within(1e-9 * one));
    assertThat(Maps.bare(sheet, inside(peg), mirror)).isCloseTo(2 * one, within(1e-9 * one));
  }

  @Test
  void refusesABodyThatIsOpen() {
    Mesh open = Shapes.without(Shapes.cube(10, 2), 3);
    assertThatThrownBy(() -> Maps.of(Shapes.cube(8, 1), inside(open)))
        .isInstanceOf(MarkException.class)
        .hasMessageContaining("body.stl is not closed: 3 of its edges");
  }

  /** Convex bodies on a sphere, against the library's convex volumes: its own trimming of faces. */
  @ParameterizedTest(name = "seed {0}")
  @CsvSource({"1", "2", "3", "4", "5", "6"})
  void asTheLibraryTrimsFaces(int seed) throws MarkException {
    Random random = new Random(seed);
    Mesh piece = Shapes.rotated(Shapes.torus(20, 7, 40, 24), 1, 2, 3, random.nextDouble());
    Mesh body =
        Shapes.moved(
            Shapes.rotated(
                Shapes.box(20 + 10 * random.nextDouble(), 17, 13, 1 + seed % 3),
                random.nextGaussian(),
                random.nextGaussian(),
                random.nextGaussian(),
                3 * random.nextDouble()),
            15 * random.nextGaussian(),
            10 * random.nextGaussian(),
            3 * random.nextGaussian());
    double expected = trimmed(piece, body);
    assertThat(Maps.bare(piece, inside(body))).isCloseTo(expected, within(1e-7 * (1 + expected)));
  }

  /** Area of a piece inside the half spaces of a convex body, worked out by the library. */
  private static double trimmed(Mesh piece, Mesh body) {
    Precision.DoubleEquivalence precision = Precision.doubleEquivalenceOfEpsilon(1e-10);
    List<Plane> planes = new ArrayList<>();
    for (int f = 0; f < body.faceCount(); f++) {
      planes.add(
          Planes.fromPoints(corner(body, f, 0), corner(body, f, 1), corner(body, f, 2), precision));
    }
    ConvexVolume volume = ConvexVolume.fromBounds(planes);
    double area = 0;
    for (int f = 0; f < piece.faceCount(); f++) {
      PlaneConvexSubset trimmed =
          volume.trim(
              Planes.triangleFromVertices(
                  corner(piece, f, 0), corner(piece, f, 1), corner(piece, f, 2), precision));
      area += trimmed == null ? 0 : trimmed.getSize();
    }
    return area;
  }

  private static Vector3D corner(Mesh mesh, int f, int k) {
    int v = mesh.corner()[3 * f + k];
    return Vector3D.of(mesh.x(v), mesh.y(v), mesh.z(v));
  }
}
