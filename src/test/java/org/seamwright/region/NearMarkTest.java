package org.seamwright.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.seamwright.region.Maps.bare;

import java.util.Arrays;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** Discs and strokes over the surface against closed forms. */
class NearMarkTest {
  private static Mark near(double radius, double... xyz) {
    Vector3D[] path = new Vector3D[xyz.length / 3];
    for (int i = 0; i < path.length; i++) {
      path[i] = Vector3D.of(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
    }
    return new Mark.Near("near", Treatment.BARE, Arrays.asList(path), radius);
  }

  @ParameterizedTest
  @CsvSource({"1,0,0", "1,3,-7", "2,0,0", "10,1,2", "60,3,-7", "200,0.3,0.7"})
  void discOnAPlaneHoweverCoarse(int cells, double x, double y) throws MarkException {
    Mesh plane = Shapes.plane(100, 80, cells, cells);
    assertThat(bare(plane, near(9, x, y, 0)))
        .isCloseTo(Math.PI * 81, Percentage.withPercentage(0.1));
  }

  @Test
  void discOnACylinderIsADiscUnrolled() throws MarkException {
    // The wall unrolls: pi r^2 for any disc that does not meet itself or a rim.
    Mesh wall = Shapes.cylinder(10, 40, 200, 3, false);
    assertThat(bare(wall, near(12, 10, 0.7, 1)))
        .isCloseTo(Math.PI * 144, Percentage.withPercentage(0.1));
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 4, 10, 15.7, 25, 31})
  void discOnASphereIsACap(double distance) throws MarkException {
    // Spherical cap within distance d along the surface: 2 pi R^2 (1 - cos(d/R)).
    double exact = 2 * Math.PI * 100 * (1 - Math.cos(distance / 10));
    assertThat(bare(Shapes.icosphere(10, 6), near(distance, 3, 5, 8)))
        .isCloseTo(exact, Percentage.withPercentage(0.15));
  }

  @Test
  void discAcrossTheEdgeOfACoarseBox() throws MarkException {
    // Two faces that meet in an edge unfold to a plane.
    assertThat(bare(Shapes.box(40, 40, 40, 1), near(6, 1, 2, 20)))
        .isCloseTo(Math.PI * 36, Percentage.withPercentage(0.1));
    assertThat(bare(Shapes.box(40, 40, 40, 1), near(6, 17, 2, 20)))
        .isCloseTo(Math.PI * 36, Percentage.withPercentage(0.1));
  }

  @Test
  void discAboutTheCornerOfABoxIsThreeQuarters() throws MarkException {
    // Three right angles meet in the corner: 3/4 pi r^2.
    assertThat(bare(Shapes.box(40, 40, 40, 1), near(6, 20, 20, 20)))
        .isCloseTo(0.75 * Math.PI * 36, Percentage.withPercentage(0.1));
  }

  @Test
  void discDoesNotReachTheNextSheet() throws MarkException {
    Mesh plane = Shapes.plane(60, 60, 6, 6);
    Mesh sheets = Shapes.join(plane, Shapes.moved(plane, 0, 0, -0.4));
    SurfaceMap map = Maps.of(sheets, near(9, 1, 2, 0.05));
    Maps.requireSound(sheets, map);
    assertThat(map.areaMm2(Treatment.BARE)).isCloseTo(Math.PI * 81, Percentage.withPercentage(0.1));
    for (int f = 0; f < map.mesh().faceCount(); f++) {
      if (map.mesh().z(map.mesh().corner()[3 * f]) < -0.2) {
        assertThat(map.of(f)).isEqualTo(Treatment.PLATE);
        assertThat(f).as("the other sheet is not even cut").isEqualTo(map.parentFace()[f]);
      }
    }
  }

  @Test
  void discDoesNotBleedThroughAThinPlate() throws MarkException {
    Mesh plate = Shapes.box(60, 60, 0.4, 1);
    SurfaceMap map = Maps.of(plate, near(9, 1, 2, 0.2));
    Maps.requireSound(plate, map);
    assertThat(map.areaMm2(Treatment.BARE)).isCloseTo(Math.PI * 81, Percentage.withPercentage(0.1));
    for (int f = 0; f < map.mesh().faceCount(); f++) {
      for (int k = 0; k < 3; k++) {
        if (map.mesh().z(map.mesh().corner()[3 * f + k]) < 0) {
          assertThat(map.of(f)).isEqualTo(Treatment.PLATE);
        }
      }
    }
  }

  @Test
  void aDiscLargerThanThePieceCoversItsPart() throws MarkException {
    Mesh two = Shapes.twoSpheres(5, 10.5, 20, 30);
    SurfaceMap map = Maps.of(two, near(99, 0, 0, 5));
    assertThat(map.areaMm2(Treatment.BARE)).isCloseTo(Maps.area(two) / 2, within(1e-9));
    assertThat(map.mesh().faceCount()).isEqualTo(two.faceCount());
  }

  @Test
  void discAfterCutsIsTheSameDisc() throws MarkException {
    Mesh plane = Shapes.plane(60, 60, 2, 2);
    Mark cut = new Mark.HalfSpace("", Treatment.PLATE, Vector3D.of(1, 0, 0), Vector3D.of(1, 3, 0));
    assertThat(bare(plane, cut, near(9, 1, 2, 0), cut, near(9, 1, 2, 0)))
        .isCloseTo(Math.PI * 81, Percentage.withPercentage(0.1));
  }

  @Test
  void cutsStayNearTheMark() throws MarkException {
    Mesh plane = Shapes.plane(100, 100, 100, 100);
    SurfaceMap map = Maps.of(plane, near(3, 0.2, 0.3, 0));
    for (int f = 0; f < map.mesh().faceCount(); f++) {
      int v = map.mesh().corner()[3 * f];
      if (Math.hypot(map.mesh().x(v), map.mesh().y(v)) > 8) {
        assertThat(f).isEqualTo(map.parentFace()[f]);
      }
    }
  }
}
