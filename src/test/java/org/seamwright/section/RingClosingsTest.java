package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

class RingClosingsTest {
  private interface Sections {
    int at(double x, double y, double z);
  }

  private static List<RingClosing> rings(Mesh mesh, int sections, Sections at) {
    int[] section = new int[mesh.faceCount()];
    double[] net = new double[sections + 1];
    double[] centre = new double[3];
    for (int f = 0; f < section.length; f++) {
      Faces.centroid(mesh, f, centre);
      section[f] = at.at(centre[0], centre[1], centre[2]);
      net[section[f]] += Faces.area(mesh, f);
    }
    SeamLines seams = SeamLines.of(mesh, EdgeRings.of(mesh, Topology.of(mesh)), section, 1);
    return RingClosings.of(mesh, seams, net);
  }

  private static int sector(double x, double y, int sectors) {
    double turn = Math.atan2(y, x) / (2 * Math.PI);
    return (int) ((turn < 0 ? turn + 1 : turn) * sectors);
  }

  private static Mesh tube() {
    return Shapes.cylinder(20, 30, 120, 20, false);
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4, 5, 8, 12})
  void theLastSectorOfATubeClosesIt(int sectors) {
    assertThat(rings(tube(), sectors, (x, y, z) -> 1 + sector(x, y, sectors)))
        .containsExactly(new RingClosing(sectors, List.of(1, sectors - 1)));
  }

  @Test
  void theSecondHalfOfATubeLapsOntoTheFirstAtBothEnds() {
    assertThat(rings(tube(), 2, (x, y, z) -> 1 + sector(x, y, 2)))
        .containsExactly(new RingClosing(2, List.of(1)));
  }

  @Test
  void aSectionThatJoinsTwoChainsClosesNothing() {
    int[] id = {1, 3, 2, 4};
    assertThat(rings(tube(), 4, (x, y, z) -> id[sector(x, y, 4)]))
        .containsExactly(new RingClosing(4, List.of(1, 2)));
  }

  @Test
  void ringsAboveOneAnotherCloseNothing() {
    double low = tube().bounds().minZ();
    assertThat(rings(tube(), 3, (x, y, z) -> 1 + (int) ((z - low) / 10))).isEmpty();
    // The middle one last: it joins two that had nothing to do with each other.
    int[] id = {1, 3, 2};
    assertThat(rings(tube(), 3, (x, y, z) -> id[(int) ((z - low) / 10)])).isEmpty();
  }

  @Test
  void ringsAlongATorusDo() {
    Mesh torus = Shapes.torus(40, 12, 72, 24);
    assertThat(rings(torus, 4, (x, y, z) -> 1 + sector(x, y, 4)))
        .containsExactly(new RingClosing(4, List.of(1, 3)));
  }

  @Test
  void quartersOfAPlaneMeetAtAPoint() {
    Mesh plane = Shapes.plane(60, 60, 20, 20);
    assertThat(rings(plane, 4, (x, y, z) -> 1 + sector(x, y, 4))).isEmpty();
  }

  @Test
  void aBareSpotInASeamMakesNoRing() {
    Mesh plane = Shapes.plane(60, 60, 60, 60);
    assertThat(rings(plane, 2, (x, y, z) -> Math.hypot(x, y) < 4 ? 0 : x < 0 ? 1 : 2)).isEmpty();
  }

  @Test
  void aroundABareMiddleItIsOne() {
    // A frame 20 wide round a bare square of 40: four corners, each with an arm.
    Mesh plane = Shapes.plane(80, 80, 80, 80);
    assertThat(
            rings(
                plane,
                4,
                (x, y, z) -> Math.max(Math.abs(x), Math.abs(y)) < 20 ? 0 : 1 + sector(x, y, 4)))
        .containsExactly(new RingClosing(4, List.of(1, 3)));
  }
}
