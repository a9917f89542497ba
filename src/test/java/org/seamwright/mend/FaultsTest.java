package org.seamwright.mend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;
import org.seamwright.meshfile.MeshFileException;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.testsupport.Shapes;

/** Repeated and flat faces, nearly equal corners, corners on edges, faces turned over. */
class FaultsTest {
  private static final Repair FAULTY = new Repair.DropFaulty();
  private static final Repair WELD = new Repair.Weld(OptionalDouble.empty());
  private static final Repair SPLIT = new Repair.SplitEdges(OptionalDouble.empty());

  @TempDir Path directory;

  @Test
  void repeatedFacesGoOnceEitherWayTurned() {
    Mesh cube = Shapes.cube(2, 2);
    Mesh repeated = Shapes.withFlipped(Shapes.withRepeated(cube, 0, 5, 7), cube.faceCount() + 1);
    Mended mended = MendChecks.mend(repeated, FAULTY);
    assertThat(mended.mesh().corner()).isEqualTo(cube.corner());
    assertThat(mended.done().get(0).count()).isEqualTo(3);
    assertThat(mended.done().get(0).lostMm2()).isCloseTo(1.5, within(1e-12));
  }

  /** A square of side 2 in two faces, one side split in the middle by a face without area. */
  private static Mesh withSliver() {
    double[] xyz = {0, 0, 0, 2, 0, 0, 2, 2, 0, 0, 2, 0, 1, 1, 0};
    // 0-1-2 below the diagonal; above it two faces that meet at its middle 4; 0-4-2 is flat.
    int[] corner = {0, 1, 2, 0, 2, 4, 0, 4, 3, 4, 2, 3};
    return Mesh.of(xyz, corner);
  }

  @Test
  void aFlatFaceGoesWithoutTearingItsNeighboursApart() {
    assertThat(MendChecks.openEdges(withSliver())).isEqualTo(4);
    Mended mended = MendChecks.mend(withSliver(), FAULTY);
    assertThat(mended.mesh().faceCount()).isEqualTo(4);
    assertThat(MendChecks.openEdges(mended.mesh())).isEqualTo(4);
    assertThat(MendChecks.area(mended.mesh())).isCloseTo(4, within(1e-14));
    assertThat(mended.done().get(0).count()).isEqualTo(1);
  }

  @Test
  void aNeedleBetweenCoincidentCornersGoesAndTheyAreJoined() {
    // The square's corner 2 is there twice; 2-5-0 is the needle between.
    double[] xyz = {0, 0, 0, 2, 0, 0, 2, 2, 0, 0, 2, 0, 1, 1, 0, 2, 2, 0};
    Mesh mesh = Mesh.of(xyz, new int[] {0, 1, 2, 0, 2, 5, 0, 5, 3});
    Mended mended = MendChecks.mend(mesh, FAULTY);
    assertThat(mended.mesh().faceCount()).isEqualTo(2);
    assertThat(MendChecks.openEdges(mended.mesh())).isEqualTo(4);
  }

  @Test
  void cornersWrittenWithOtherLastDigitsAreJoined() {
    Mesh sphere = Shapes.icosphere(10, 2);
    Mesh soup = exploded(sphere, 7, 1e-5);
    assertThat(MendChecks.openEdges(soup)).isEqualTo(3 * sphere.faceCount());
    Mended mended = MendChecks.mend(soup, WELD);
    assertThat(MendChecks.closed(mended.mesh())).isTrue();
    assertThat(mended.mesh().vertexCount()).isEqualTo(sphere.vertexCount());
  }

  /** Every face with corners of its own, each moved a little. */
  private static Mesh exploded(Mesh mesh, long seed, double by) {
    Random random = new Random(seed);
    double[] xyz = new double[3 * mesh.corner().length];
    int[] corner = new int[mesh.corner().length];
    for (int h = 0; h < corner.length; h++) {
      corner[h] = h;
      for (int axis = 0; axis < 3; axis++) {
        xyz[3 * h + axis] =
            mesh.xyz()[3 * mesh.corner()[h] + axis] + by * (random.nextDouble() - 0.5);
      }
    }
    return Mesh.of(xyz, corner);
  }

  @Test
  void weldingLeavesClosedSurfacesAloneWhateverTheTolerance() {
    Mesh thin = Shapes.box(10, 10, 0.01, 4);
    Mended mended = MendChecks.mend(thin, new Repair.Weld(OptionalDouble.of(1)));
    assertThat(mended.mesh().corner()).isEqualTo(thin.corner());
  }

  @Test
  void aLongEdgeBesideShortOnesIsSplit() {
    // A square in two faces beside a strip of five quads along its side.
    Mesh strip = Shapes.moved(Shapes.plane(1, 5, 1, 5), 0.5, 0, 0);
    Mesh square = Shapes.moved(Shapes.plane(5, 5, 1, 1), -2.5, 0, 0);
    Mended mended = MendChecks.mend(Shapes.join(strip, square), WELD, SPLIT);
    assertThat(mended.done().get(1).count()).isEqualTo(4);
    assertThat(MendChecks.openEdges(mended.mesh())).isEqualTo(5 + 2 + 3);
    assertThat(Parts.of(mended.mesh(), Topology.of(mended.mesh())).count()).isEqualTo(1);
    assertThat(MendChecks.area(mended.mesh())).isCloseTo(30, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(strings = {"cube-minus-sphere.stl", "cube-minus-sphere.obj"})
  void aBooleansOutputBecomesOneClosedPart(String name) throws IOException, MeshFileException {
    Path file = directory.resolve(name);
    try (InputStream stream = FaultsTest.class.getResourceAsStream("/models/" + name)) {
      Files.write(file, stream.readAllBytes());
    }
    Mesh mesh = MeshFiles.read(file, Progress.NONE).mesh();
    Mended mended = MendChecks.mend(mesh, WELD, SPLIT, FAULTY);
    assertThat(Parts.of(mended.mesh(), Topology.of(mended.mesh())).count()).isEqualTo(1);
    assertThat(MendChecks.openEdges(mended.mesh())).isZero();
    assertThat(MendChecks.area(mended.mesh()))
        .isCloseTo(MendChecks.area(mesh), within(1e-5 * MendChecks.area(mesh)));
  }

  @Test
  void turnedFacesAreTurnedBack() {
    Mesh torus = Shapes.torus(10, 3, 30, 20);
    Mended mended =
        MendChecks.mend(Shapes.withFlipped(torus, 0, 17, 18, 400, 401), new Repair.TurnOutward());
    assertThat(MendChecks.volume(mended.mesh())).isCloseTo(MendChecks.volume(torus), within(1e-9));
    assertThat(Topology.of(mended.mesh()).flippedEdges()).isZero();
    assertThat(mended.done().get(0).count()).isEqualTo(5);
    assertThat(mended.done().get(0).lostMm2()).isZero();
  }

  @Test
  void insideOutIsTurnedOutAndAHollowsWallIn() {
    Mesh outer = Shapes.cube(10, 2);
    Mesh inner = Shapes.cube(4, 1);
    int[] all = java.util.stream.IntStream.range(0, outer.faceCount()).toArray();
    Mended mended =
        MendChecks.mend(
            Shapes.join(Shapes.withFlipped(outer, all), inner), new Repair.TurnOutward());
    assertThat(MendChecks.volume(mended.mesh())).isCloseTo(1000 - 64, within(1e-9));
  }

  @Test
  void anOpenBowlShowsItsOutside() {
    Mesh dome = MendChecks.mend(Shapes.icosphere(10, 3), upperHalf()).mesh();
    int[] all = java.util.stream.IntStream.range(0, dome.faceCount()).toArray();
    Mended mended = MendChecks.mend(Shapes.withFlipped(dome, all), new Repair.TurnOutward());
    assertThat(mended.done().get(0).count()).isEqualTo(dome.faceCount());
    assertThat(mended.mesh().corner()).isEqualTo(dome.corner());
  }

  private static Repair upperHalf() {
    return new Repair.CutBelow(
        org.apache.commons.geometry.euclidean.threed.Vector3D.of(0, 0, 0.1),
        org.apache.commons.geometry.euclidean.threed.Vector3D.of(0, 0, 1));
  }

  @Test
  void aMoebiusBandIsToldAndLeft() {
    Mesh band = Shapes.mobius(10, 3, 40, 2);
    Mended mended = MendChecks.mend(band, new Repair.TurnOutward());
    assertThat(mended.mesh().corner()).isEqualTo(band.corner());
    assertThat(mended.done().get(0).text()).contains("1 sheet left").contains("Möbius");
  }

  @Test
  void aShellInsideIsFoundAndSetAside() {
    Mesh mesh =
        Shapes.join(
            Shapes.icosphere(10, 3),
            Shapes.moved(Shapes.icosphere(3, 2), 2, 1, 0),
            Shapes.moved(Shapes.cube(2, 1), 15, 0, 0));
    Mended mended = MendChecks.mend(mesh, new Repair.DropInner());
    assertThat(mended.done().get(0).count()).isEqualTo(1);
    assertThat(mended.done().get(0).lostMm2())
        .isCloseTo(MendChecks.area(Shapes.icosphere(3, 2)), within(1e-9));
  }
}
