package org.seamwright.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

class UnrolledTest {
  private static final Vector3D Z = Vector3D.Unit.PLUS_Z;

  private static Unrolled of(Mesh mesh) {
    return Unrolled.of(Scene.plain(mesh, Finish.GOLD), Vector3D.ZERO, Z);
  }

  private static double area(Mesh mesh) {
    double area = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      area += Faces.area(mesh, f);
    }
    return area;
  }

  private static Unrolled.Side only(Unrolled unrolled, Unrolled.Facing facing) {
    List<Unrolled.Side> found =
        unrolled.sides().stream().filter(s -> s.facing() == facing).toList();
    assertThat(found).hasSize(1);
    return found.get(0);
  }

  @Test
  void sphereKeepsItsAreaAndItsWidths() {
    Unrolled unrolled = of(Shapes.icosphere(30, 6));
    assertThat(unrolled.sides()).hasSize(1);
    Unrolled.Side side = only(unrolled, Unrolled.Facing.OUTWARD);
    // 4πr²; equator 2πr wide, poles πr apart. Facets of level 6 are short by 2e-4.
    assertThat(area(side.flat())).isCloseTo(4 * Math.PI * 900, within(4 * Math.PI * 900 * 2e-3));
    assertThat(side.widthMm()).isCloseTo(60 * Math.PI, within(0.3));
    assertThat(side.heightMm()).isCloseTo(30 * Math.PI, within(0.3));
    assertThat(unrolled.share()).isCloseTo(1, within(1e-3));
  }

  @Test
  void pixelsOfASphereRolledOutCountItsArea() {
    Unrolled.Side side = only(of(Shapes.icosphere(30, 6)), Unrolled.Facing.OUTWARD);
    Image image = side.picture(4, 12).image();
    long pixels = java.util.Arrays.stream(image.region()).filter(r -> r >= 0).count();
    // 4πr² at 16 pixels to the mm²; the outline is about 2 × 4 × 30 π pixels long.
    assertThat((double) pixels).isCloseTo(4 * Math.PI * 900 * 16, within(1200.0));
  }

  @Test
  void torusPartsIntoOutsideAndInside() {
    double ring = 30;
    double tube = 8;
    Unrolled unrolled = of(Shapes.torus(ring, tube, 180, 90));
    double outside = 2 * Math.PI * tube * (Math.PI * ring + 2 * tube);
    double inside = 2 * Math.PI * tube * (Math.PI * ring - 2 * tube);
    // Pappus: the centroid of half a circle lies 2r/π from its diameter.
    assertThat(area(only(unrolled, Unrolled.Facing.OUTWARD).flat()))
        .isCloseTo(outside, within(outside * 2e-3));
    assertThat(area(only(unrolled, Unrolled.Facing.INWARD).flat()))
        .isCloseTo(inside, within(inside * 2e-3));
    assertThat(unrolled.sides()).hasSize(2);
  }

  @Test
  void anAxisAnywhereServesAsWell() {
    double[] tilt = {0.6, 0, 0.8, 0, 1, 0, -0.8, 0, 0.6};
    Mesh torus = Shapes.torus(30, 8, 180, 90);
    double[] p = torus.xyz().clone();
    for (int i = 0; i < p.length; i += 3) {
      double[] q = {p[i], p[i + 1], p[i + 2]};
      for (int k = 0; k < 3; k++) {
        p[i + k] = 50 * k + tilt[3 * k] * q[0] + tilt[3 * k + 1] * q[1] + tilt[3 * k + 2] * q[2];
      }
    }
    Unrolled unrolled =
        Unrolled.of(
            Scene.plain(Mesh.of(p, torus.corner()), Finish.GOLD),
            Vector3D.of(0, 50, 100),
            Vector3D.of(0.8, 0, 0.6));
    assertThat(unrolled.sides()).hasSize(2);
    assertThat(unrolled.share()).isCloseTo(1, within(1e-3));
  }

  @Test
  void bothSidesAreShownAsSeenAndNotMirrored() {
    Mesh torus = Shapes.torus(30, 8, 180, 90);
    int[] region = new int[torus.faceCount()];
    double[] middle = new double[3];
    for (int f = 0; f < region.length; f++) {
      Faces.centroid(torus, f, middle);
      boolean up = middle[2] > 0;
      double turn = Math.toDegrees(Math.atan2(middle[1], middle[0]));
      region[f] = (turn > 60 && turn < 120 ? 2 : turn < -60 && turn > -120 ? 3 : 1) + (up ? 3 : 0);
    }
    Scene scene =
        Scene.of(torus, new byte[region.length], region, new byte[region.length], new int[7]);
    Unrolled unrolled = Unrolled.of(scene, Vector3D.ZERO, Z);
    // Who stands before the outside sees the turn, counter-clockwise from above, go to the right;
    // who stands inside sees it go to the left.
    for (Unrolled.Side side : unrolled.sides()) {
      Image image = side.picture(3, 9).image();
      double quarter = meanX(image, 2, 5);
      double threeQuarters = meanX(image, 3, 6);
      if (side.facing() == Unrolled.Facing.OUTWARD) {
        assertThat(quarter).isGreaterThan(threeQuarters);
      } else {
        assertThat(quarter).isLessThan(threeQuarters);
      }
      assertThat(meanY(image, 4)).as("up is up").isLessThan(meanY(image, 1));
    }
  }

  private static double meanX(Image image, int one, int other) {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < image.region().length; i++) {
      if (image.region()[i] == one || image.region()[i] == other) {
        sum += i % image.width();
        n++;
      }
    }
    return sum / n;
  }

  private static double meanY(Image image, int region) {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < image.region().length; i++) {
      if (image.region()[i] == region) {
        sum += Math.floorDiv(i, image.width());
        n++;
      }
    }
    return sum / n;
  }

  @Test
  void aDrawnCylinderOfFewLargeFacesIsWhole() {
    // Caps of long triangles, walls of one strip.
    Mesh cylinder = Shapes.cylinder(20, 60, 96, 1, true);
    Unrolled unrolled = of(cylinder);
    double all = unrolled.sides().stream().mapToDouble(s -> area(s.flat())).sum();
    double exact = 2 * Math.PI * 20 * 60 + 2 * Math.PI * 400;
    assertThat(all).isCloseTo(exact, within(exact * 5e-3));
  }

  @Test
  void spokesComeAsSidesOfTheirOwn() {
    Mesh rim = Shapes.lathe(new double[] {50, 50, 46, 46, 50}, new double[] {0, 30, 30, 0, 0}, 180);
    Mesh hub = Shapes.lathe(new double[] {0, 12, 12, 0}, new double[] {0, 0, 30, 30}, 180);
    Mesh wheel = Shapes.join(rim, hub);
    for (int i = 0; i < 6; i++) {
      Mesh spoke = Shapes.moved(Shapes.box(34, 14, 6, 8), 29, 0, 15);
      wheel = Shapes.join(wheel, Shapes.rotated(spoke, 0, 0, 1, i * Math.PI / 3));
    }
    Unrolled unrolled = of(wheel);
    // Six spokes, 34 by 14 mm each.
    double faces = 6 * 34 * 14;
    double hubEnd = Math.PI * 144;
    // The rim's profile begins and ends at its lower edge, which is a side of its own.
    double rimEnd = Math.PI * (50 * 50 - 46 * 46);
    for (Unrolled.Facing end : List.of(Unrolled.Facing.UP, Unrolled.Facing.DOWN)) {
      double shown =
          unrolled.sides().stream()
              .filter(s -> s.facing() == end)
              .mapToDouble(s -> area(s.flat()))
              .sum();
      double all = faces + hubEnd + (end == Unrolled.Facing.DOWN ? rimEnd : 0);
      assertThat(shown).isBetween(0.95 * all, 1.05 * all);
    }
  }
}
