package org.seamwright.mend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

/** What holds of every step on any model: books, topology, doing it twice, the order of faces. */
class MendPropertiesTest {
  /** Steps that find nothing more to do the second time. */
  private static final List<Repair> SETTLING =
      List.of(
          new Repair.Weld(OptionalDouble.empty()),
          new Repair.SplitEdges(OptionalDouble.empty()),
          new Repair.DropFaulty(),
          new Repair.CutBelow(Vector3D.of(0.3, 0.1, -2), Vector3D.of(0.2, 0.1, 1)),
          new Repair.KeepLargest(3),
          new Repair.KeepParts(List.of(Vector3D.of(9, 0, 0), Vector3D.of(0, 30, 0))),
          new Repair.TurnOutward(),
          new Repair.DropInner(),
          new Repair.FillHoles(40));

  /** A few bodies with every fault at once. */
  private static Mesh dirty(long seed) {
    Random random = new Random(seed);
    List<Mesh> bodies = new ArrayList<>();
    bodies.add(Shapes.torus(9, 3, 24, 14));
    bodies.add(Shapes.moved(Shapes.icosphere(4, 2), 0, 0, random.nextDouble()));
    bodies.add(Shapes.moved(Shapes.icosphere(2, 1), 0, 0, 0.3));
    bodies.add(Shapes.moved(Shapes.cube(5, 3), 0, 30, random.nextDouble()));
    bodies.add(Shapes.moved(Shapes.cylinder(2, 6, 9, 2, random.nextBoolean()), 30, 0, 0));
    Mesh mesh = Shapes.join(bodies.toArray(Mesh[]::new));
    int faces = mesh.faceCount();
    mesh = Shapes.withFlipped(mesh, random.ints(20, 0, faces).distinct().toArray());
    mesh = Shapes.withRepeated(mesh, random.ints(9, 0, faces).distinct().toArray());
    mesh = Shapes.without(mesh, random.ints(12, 0, faces).distinct().toArray());
    // Some corners are written twice, a little off.
    double[] xyz = mesh.xyz();
    int[] corner = mesh.corner().clone();
    for (int i = 0; i < 15; i++) {
      int h = random.nextInt(corner.length);
      int v = xyz.length / 3;
      xyz = Arrays.copyOf(xyz, xyz.length + 3);
      for (int axis = 0; axis < 3; axis++) {
        xyz[3 * v + axis] = xyz[3 * corner[h] + axis] + 1e-5 * (random.nextDouble() - 0.5);
      }
      corner[h] = v;
    }
    return Mesh.of(xyz, corner);
  }

  private static Mended mend(Mesh mesh, List<Repair> steps) {
    return MendChecks.mend(mesh, steps.toArray(Repair[]::new));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void theBooksBalanceToTwelveDigits(long seed) {
    List<Repair> steps = new ArrayList<>(SETTLING);
    steps.add(new Repair.DropHidden());
    java.util.Collections.shuffle(steps, new Random(seed));
    Mended mended = mend(dirty(seed), steps);
    for (Mended.Done done : mended.done()) {
      assertThat(done.afterMm2())
          .as("%s in the order of seed %d", done.kind(), seed)
          .isCloseTo(
              done.beforeMm2() - done.lostMm2() + done.gainedMm2(),
              within(1e-12 * done.beforeMm2()));
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14, 15, 16})
  void doneTwiceIsDoneOnce(long seed) {
    for (Repair step : SETTLING) {
      Mesh once = mend(dirty(seed), List.of(step)).mesh();
      Mended twice = mend(once, List.of(step));
      assertThat(twice.mesh().faceCount()).as("%s twice", step.kind()).isEqualTo(once.faceCount());
      assertThat(twice.mesh().corner()).as("%s twice", step.kind()).isEqualTo(once.corner());
      assertThat(twice.done().get(0).lostMm2()).as("%s twice", step.kind()).isZero();
      assertThat(twice.done().get(0).gainedMm2()).as("%s twice", step.kind()).isZero();
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23, 24, 25, 26})
  void whatIsLeftIsAMesh(long seed) {
    for (Repair step : SETTLING) {
      Mesh mesh = mend(dirty(seed), List.of(step)).mesh();
      boolean[] used = new boolean[mesh.vertexCount()];
      for (int f = 0; f < mesh.faceCount(); f++) {
        assertThat(Faults.collapsed(mesh, f)).as("%s, face %d", step.kind(), f).isFalse();
        for (int k = 0; k < 3; k++) {
          used[mesh.corner()[3 * f + k]] = true;
        }
      }
      assertThat(IntStream.range(0, used.length).allMatch(v -> used[v])).isTrue();
      assertThat(Arrays.stream(mesh.xyz()).allMatch(Double::isFinite)).isTrue();
    }
    Mesh turned = mend(dirty(seed), List.of(new Repair.TurnOutward())).mesh();
    assertThat(Topology.of(turned).flippedEdges()).isZero();
  }

  /** Steps whose result doesn't hang on which face comes first. */
  @ParameterizedTest
  @ValueSource(longs = {31, 32, 33, 34})
  void theOrderOfFacesDoesntMatter(long seed) {
    List<Repair> free =
        List.of(
            new Repair.CutBelow(Vector3D.of(0.3, 0.1, -2), Vector3D.of(0.2, 0.1, 1)),
            new Repair.DropFaulty(),
            new Repair.KeepLargest(2),
            new Repair.DropInner());
    Mesh mesh = dirty(seed);
    Mesh other = Shapes.shuffled(mesh, seed);
    for (Repair step : free) {
      double area = MendChecks.area(mend(mesh, List.of(step)).mesh());
      assertThat(MendChecks.area(mend(other, List.of(step)).mesh()))
          .as(step.kind())
          .isCloseTo(area, within(1e-12 * area));
    }
  }

  /**
   * The fill of a round hole lies between the flat disc on its rim and the cap that was there: π a²
   * and 2 π R h with a² = 2 R h - h² (Archimedes).
   */
  @ParameterizedTest
  @CsvSource({"10, 0.5, 96", "10, 2, 96", "10, 5, 64", "25, 1, 120"})
  void aHoleInABallIsFilledBetweenDiscAndCap(double radius, double height, int around) {
    int rings = 2 * around;
    Mesh ball = Shapes.sphere(radius, rings, around);
    double[] c = new double[3];
    // Faces wholly above the ring of corners that is nearest to the height.
    double step = Math.PI / rings;
    int ring = (int) Math.round(Math.acos(1 - height / radius) / step);
    double rim = radius * Math.cos(ring * step);
    int[] gone =
        IntStream.range(0, ball.faceCount())
            .filter(
                f -> {
                  Faces.centroid(ball, f, c);
                  return c[2] > rim;
                })
            .toArray();
    Mended mended = mend(Shapes.without(ball, gone), List.of(new Repair.FillHoles(1000)));
    assertThat(mended.done().get(0).count()).isEqualTo(1);
    assertThat(MendChecks.closed(mended.mesh())).isTrue();
    double h = radius - rim;
    double flat = Math.PI * (2 * radius * h - h * h);
    double cap = 2 * Math.PI * radius * h;
    // The rim is a regular polygon: sin(x) / x of the circle's area, x = 2 π / n.
    double x = 2 * Math.PI / around;
    double polygon = flat * Math.sin(x) / x;
    assertThat(mended.done().get(0).gainedMm2()).isBetween(polygon * (1 - 1e-9), cap);
    assertThat(mended.done().get(0).gainedMm2())
        .as("flat, as the rim lies in a plane")
        .isCloseTo(polygon, within(1e-9 * polygon));
  }

  /** Progress is told from 0 to 1 and never backwards. */
  @ParameterizedTest
  @ValueSource(longs = {41})
  void progressRises(long seed) throws MendException {
    double[] last = {0};
    Progress progress =
        share -> {
          assertThat(share).isBetween(last[0] - 1e-12, 1.0);
          last[0] = share;
        };
    Mender.mend(dirty(seed), SETTLING, progress);
    assertThat(last[0]).isEqualTo(1);
  }
}
