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

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 7, 40})
  void strokeOnAPlaneIsAStadium(int cells) throws MarkException {
    // Stadium: 2 r L + pi r².
    Mesh plane = Shapes.plane(100, 80, cells, cells);
    double length = Math.hypot(43, 26);
    double exact = 2 * 5 * length + Math.PI * 25;
    assertThat(bare(plane, near(5, -23, -11, 0, 20, 15, 0)))
        .isCloseTo(exact, Percentage.withPercentage(0.1));
  }

  @ParameterizedTest
  @CsvSource({"1,60", "1,135", "9,90", "30,170"})
  void strokeWithACorner(int cells, double turn) throws MarkException {
    // Two stadia share the disc about the corner and, on the inner side, the kite with its right
    // angles at distance r from the corner: outside 2 r (L1 + L2) + pi r² the overlap is
    // r² tan(turn / 2) - r² turn / 2.
    double a = Math.toRadians(20);
    double b = a + Math.toRadians(turn);
    Mesh plane = Shapes.plane(200, 200, cells, cells);
    double x = 3;
    double y = 2;
    double length = 60;
    double r = 4;
    double half = Math.toRadians(turn) / 2;
    double exact = 2 * r * 2 * length + Math.PI * r * r - r * r * (Math.tan(half) - half);
    double stroke =
        bare(
            plane,
            near(
                r,
                x - length * Math.cos(a),
                y - length * Math.sin(a),
                0,
                x,
                y,
                0,
                x + length * Math.cos(b),
                y + length * Math.sin(b),
                0));
    assertThat(stroke).isCloseTo(exact, Percentage.withPercentage(0.1));
  }

  @Test
  void strokeRoundACoarseBoxIsStraightWhenUnfolded() throws MarkException {
    // From one side over the edge to the next: the leg is 30 long unfolded, r 3.
    Mesh box = Shapes.box(60, 60, 60, 1);
    double dx = 24;
    double dy = 18;
    Mark stroke = near(3, 20, -5, 30, 30, -5 + dy, 30 - (dx - 10));
    assertThat(bare(box, stroke))
        .isCloseTo(2 * 3 * 30 + Math.PI * 9, Percentage.withPercentage(0.1));
  }

  @Test
  void strokeRoundACylinderFollowsTheHelix() throws MarkException {
    // A quarter turn and 2 r up unrolls to a straight leg of r sqrt(pi²/4 + 4) = 2.5431085506 r.
    Mesh wall = Shapes.cylinder(10, 60, 400, 3, false);
    double length = 25.431085506;
    assertThat(bare(wall, near(2, 10, 0, -10, 0, 10, 10)))
        .isCloseTo(2 * 2 * length + Math.PI * 4, Percentage.withPercentage(0.1));
  }

  @Test
  void strokeFromInsideACupGoesOverItsRim() throws MarkException {
    // Two sheets 1 mm apart joined at the rim x = 30: unfolded the leg is 20 + 1 + 20 long.
    Mesh cup = Shapes.without(Shapes.box(60, 60, 1, 1), sideAtMinusX());
    double stadium = 2 * 2 * 41 + Math.PI * 4;
    assertThat(bare(cup, near(2, 10, 0, 0.5, 10, 0, -0.5)))
        .isCloseTo(stadium, Percentage.withPercentage(0.1));
  }

  private static int[] sideAtMinusX() {
    return new int[] {0, 1};
  }

  @Test
  void aStrokeBetweenPartsIsTwoDiscsAndTold() throws MarkException {
    Mesh plane = Shapes.plane(60, 60, 3, 3);
    Mesh sheets = Shapes.join(plane, Shapes.moved(plane, 0, 0, 5));
    SurfaceMap map = Maps.of(sheets, near(6, 0, 0, 0, 1, 1, 5));
    assertThat(map.areaMm2(Treatment.BARE))
        .isCloseTo(2 * Math.PI * 36, Percentage.withPercentage(0.1));
    assertThat(map.notices().get(0).code()).isEqualTo(Marks.PATH_BROKEN);
  }

  @Test
  void aStrokeOfManyPointsAlongALineIsTheSameStroke() throws MarkException {
    Mesh plane = Shapes.plane(100, 80, 1, 1);
    double[] path = new double[3 * 41];
    for (int i = 0; i <= 40; i++) {
      path[3 * i] = -23 + 43 * i / 40.0;
      path[3 * i + 1] = -11 + 26 * i / 40.0;
    }
    double exact = 2 * 5 * Math.hypot(43, 26) + Math.PI * 25;
    assertThat(bare(plane, near(5, path))).isCloseTo(exact, Percentage.withPercentage(0.1));
  }

  @Test
  void aStrokeThatCrossesItself() throws MarkException {
    // A cross of two bars, 2 r wide, square to one another; the way back runs on the first.
    Mesh plane = Shapes.plane(100, 80, 1, 1);
    Mark cross = near(3, -20, 0, 0, 20, 0, 0, 0, 0, 0, 0, 20, 0, 0, -20, 0);
    double stadium = 2 * 3 * 40 + Math.PI * 9;
    assertThat(bare(plane, cross)).isCloseTo(2 * stadium - 36, Percentage.withPercentage(0.1));
  }
}
