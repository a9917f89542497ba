package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

class JunctionsTest {
  private interface Sections {
    int at(double x, double y, double z);
  }

  private static Junctions junctions(Mesh mesh, double widthMm, Sections sections) {
    int[] section = new int[mesh.faceCount()];
    double[] centre = new double[3];
    for (int f = 0; f < section.length; f++) {
      Faces.centroid(mesh, f, centre);
      section[f] = sections.at(centre[0], centre[1], centre[2]);
    }
    return Junctions.of(SeamDistance.of(mesh, Topology.of(mesh), section, 1), widthMm);
  }

  private static int quarters(double x, double y) {
    return x < 0 ? (y < 0 ? 1 : 2) : y < 7 ? 3 : 4;
  }

  @Test
  void findsPlacesAndTheWayBetweenThem() {
    Mesh plane = Shapes.plane(100, 100, 100, 100);
    Junctions found = junctions(plane, 10, (x, y, z) -> quarters(x, y));
    assertThat(found.places())
        .containsExactlyInAnyOrder(
            new Junction(0, 0, 0, List.of(1, 2, 3)), new Junction(0, 7, 0, List.of(2, 3, 4)));
    assertThat(found.close()).hasSize(1);
    assertThat(found.close().get(0).distanceMm()).isCloseTo(7, within(1e-9));
    assertThat(found.nearestMm()).isCloseTo(7, within(1e-9));
  }

  @Test
  void saysTheLeastDistanceWhereNoneAreClose() {
    Mesh plane = Shapes.plane(100, 100, 100, 100);
    Junctions found = junctions(plane, 5, (x, y, z) -> quarters(x, y));
    assertThat(found.close()).isEmpty();
    assertThat(found.nearestMm()).isCloseTo(7, within(1e-9));
  }

  @Test
  void goesOverTheSurfaceNotThroughThePiece() {
    // Below one section, above two halves: junctions face each other across a tube of radius 5.
    Mesh tube = Shapes.cylinder(5, 20, 120, 40, false);
    double middle = (tube.bounds().minZ() + tube.bounds().maxZ()) / 2;
    Junctions found = junctions(tube, 12, (x, y, z) -> z < middle ? 1 : y < 0 ? 2 : 3);
    assertThat(found.places()).hasSize(2);
    // 10 mm straight through, half the way round over the surface.
    assertThat(found.close()).isEmpty();
    assertThat(found.nearestMm()).isCloseTo(Math.PI * 5, within(0.01));
  }

  @Test
  void aSeamThatEndsAtBareMetalIsNone() {
    Mesh plane = Shapes.plane(100, 100, 20, 20);
    Junctions found = junctions(plane, 10, (x, y, z) -> x < 0 ? 0 : y < 0 ? 1 : 2);
    assertThat(found.places()).isEmpty();
    assertThat(found.nearestMm()).isInfinite();
  }

  @Test
  void partsThatDontHangTogetherAreNotNear() {
    Mesh two =
        Shapes.join(
            Shapes.plane(40, 40, 40, 40), Shapes.moved(Shapes.plane(40, 40, 40, 40), 0, 0, 1));
    Junctions found =
        junctions(two, 5, (x, y, z) -> (z < 0.5 ? 1 : 4) + (x < 0 ? 0 : y < 0 ? 1 : 2));
    assertThat(found.places()).hasSize(2);
    assertThat(found.close()).isEmpty();
    assertThat(found.nearestMm()).isInfinite();
  }
}
