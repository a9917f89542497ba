package org.seamwright.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** Axes and repeats of shapes that are made about a known axis. */
class RevolutionTest {
  private static final Mesh VASE =
      Shapes.lathe(
          new double[] {0, 30, 32, 12, 10, 25, 40, 38, 0},
          new double[] {0, 0, 5, 15, 40, 60, 90, 92, 50},
          72);

  private static void assertAxis(
      Revolution found, Vector3D point, Vector3D direction, double radians, double mm) {
    assertThat(found.kind()).isEqualTo(Revolution.Kind.AXIS);
    assertThat(found.direction().cross(direction.normalize()).norm()).isLessThan(radians);
    assertThat(found.point().subtract(point).cross(direction.normalize()).norm()).isLessThan(mm);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(ints = {1, 2, 3, 4})
  void turnedShapesAnywhereKeepTheirAxis(int seed) {
    Random random = new Random(seed);
    Vector3D turn = Vector3D.of(random.nextGaussian(), random.nextGaussian(), 1);
    double angle = 3 * random.nextDouble();
    Vector3D shift = Vector3D.of(100 * random.nextDouble(), -50, 300);
    Vector3D axis = QuaternionRotation.fromAxisAngle(turn, angle).apply(Vector3D.Unit.PLUS_Z);
    for (Mesh mesh :
        new Mesh[] {VASE, Shapes.torus(30, 8, 80, 40), Shapes.capsule(5, 20, 48, 3, 8)}) {
      Mesh placed =
          Shapes.moved(
              Shapes.rotated(mesh, turn.getX(), turn.getY(), turn.getZ(), angle),
              shift.getX(),
              shift.getY(),
              shift.getZ());
      Revolution found = Revolution.of(placed);
      // The mesh repeats by each of its columns, so nothing draws the fit to any side.
      assertAxis(found, shift, axis, 1e-6, 1e-4);
      assertThat(found.confidence()).isGreaterThan(0.99);
      assertThat(found).isEqualTo(Revolution.of(placed));
    }
  }

  @Test
  void pointIsLevelWithTheLowestPlaceAndTheDirectionGoesUp() {
    Revolution found = Revolution.of(Shapes.moved(VASE, 3, 4, 7));
    assertThat(found.point().distance(Vector3D.of(3, 4, 7))).isLessThan(1e-4);
    assertThat(found.direction().getZ()).isCloseTo(1, within(1e-9));
    // On its side the largest component is x.
    Revolution lying = Revolution.of(Shapes.rotated(VASE, 0, 1, 0, -Math.PI / 2));
    assertThat(lying.direction().getX()).isCloseTo(1, within(1e-9));
  }

  @Test
  void noiseMovesTheAxisLittle() {
    Random random = new Random(5);
    double[] xyz = Shapes.torus(30, 8, 160, 60).xyz().clone();
    for (int i = 0; i < xyz.length; i++) {
      xyz[i] += 0.03 * random.nextGaussian();
    }
    Mesh noisy = Mesh.of(xyz, Shapes.torus(30, 8, 160, 60).corner());
    // Facets about 1 mm wide tilt by 0.04 rad; at a radius of 30 mm their normals miss the axis by
    // 1.2 mm, and the mean of 19200 of them by 1.2 / sqrt(19200) = 0.009 mm; twice that.
    assertAxis(Revolution.of(noisy), Vector3D.ZERO, Vector3D.Unit.PLUS_Z, 6e-4, 0.018);
  }

  @Test
  void handlesAndSpokesAreOutvoted() {
    Mesh handled =
        Shapes.join(
            VASE,
            Shapes.moved(Shapes.rotated(Shapes.torus(12, 3, 40, 16), 1, 0, 0, 1.2), 45, 0, 70));
    Revolution found = Revolution.of(handled);
    // A torus beside the vase with its own axis: a plain mean of both would be degrees off.
    assertAxis(found, Vector3D.ZERO, Vector3D.Unit.PLUS_Z, 2e-3, 0.1);
    assertThat(found.isSure()).isTrue();
  }

  @Test
  void shapesWithoutOneAxisSaySo() {
    assertThat(Revolution.of(Shapes.moved(Shapes.icosphere(10, 4), 5, 6, 7)).kind())
        .isEqualTo(Revolution.Kind.SPHERE);
    assertThat(Revolution.of(Shapes.plane(50, 40, 3, 3)).kind()).isEqualTo(Revolution.Kind.NONE);
    assertThat(Revolution.of(Mesh.of(new double[0], new int[0])).kind())
        .isEqualTo(Revolution.Kind.NONE);
    for (Mesh mesh :
        new Mesh[] {Shapes.cube(10, 8), Shapes.box(10, 20, 30, 4), Shapes.box(100, 80, 1, 5)}) {
      // Of a side of a square prism the middle 10 degrees either way fit, or a little more of a
      // side that runs the other way: far from enough.
      assertThat(Revolution.of(mesh).confidence()).isLessThan(0.4);
      assertThat(Revolution.of(mesh).isSure()).isFalse();
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 5, 10, 24})
  void repeatsAreCounted(int spokes) {
    Mesh[] parts = new Mesh[spokes + 1];
    parts[0] = VASE;
    for (int i = 0; i < spokes; i++) {
      parts[i + 1] =
          Shapes.rotated(
              Shapes.moved(Shapes.box(8, 1, 20, 2), 44, 0, 70), 0, 0, 1, 2 * Math.PI * i / spokes);
    }
    Mesh mesh = Shapes.rotated(Shapes.join(parts), 1, 2, 3, 0.9);
    TurnSymmetry found = TurnSymmetry.about(Revolution.of(mesh), mesh).orElseThrow();
    assertThat(found.count()).isEqualTo(spokes);
    assertThat(found.confidence()).isGreaterThan(0.97);
  }

  @Test
  void plainTurnedPiecesAndOddOnesHaveNoCount() {
    assertThat(TurnSymmetry.about(Revolution.of(VASE), VASE)).isEmpty();
    Mesh odd = Shapes.join(VASE, Shapes.moved(Shapes.box(8, 1, 20, 2), 44, 0, 70));
    assertThat(TurnSymmetry.about(Revolution.of(odd), odd)).isEmpty();
  }
}
