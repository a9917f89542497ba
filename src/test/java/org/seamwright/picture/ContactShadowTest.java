package org.seamwright.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

class ContactShadowTest {
  private static final View ABOVE = new View("above", 0.3, -0.6, 0.5);

  private static Camera camera(Mesh mesh, View view, boolean perspective) {
    Camera.Margins margins = Camera.Margins.all(120);
    return perspective
        ? Camera.perspective(view, mesh, 600, 500, margins, 24)
        : Camera.orthographic(view, mesh, 600, 500, margins);
  }

  private static int dark(ContactShadow shadow, Camera camera, double x, double y, double z) {
    double[] at = new double[3];
    camera.project(x, y, z, at);
    return 255 - (shadow.over(0xFFFFFF, at[0], at[1]) & 255);
  }

  @Test
  void raysGoBackToThePlacesTheyCameFrom() {
    Mesh cube = Shapes.cube(40, 2);
    for (boolean perspective : new boolean[] {false, true}) {
      Camera camera = camera(cube, ABOVE, perspective);
      double[] pixel = new double[3];
      double[] back = new double[2];
      camera.project(35, -28, -20, pixel);
      assertThat(camera.onLevel(pixel[0], pixel[1], -20, back)).isTrue();
      assertThat(back[0]).isCloseTo(35, within(1e-9));
      assertThat(back[1]).isCloseTo(-28, within(1e-9));
    }
  }

  @Test
  void theTableIsDarkerTheNearerThePieceAndTheLowerItHangs() {
    Mesh cube = Shapes.cube(40, 2);
    Camera camera = camera(cube, ABOVE, true);
    ContactShadow shadow = ContactShadow.of(cube, camera);
    int beside = dark(shadow, camera, 20.5, -10, -20);
    int away = dark(shadow, camera, 23, -10, -20);
    assertThat(beside).isGreaterThan(away).isGreaterThan(25);
    assertThat(away).isPositive();
    assertThat(dark(shadow, camera, 33.5, -10, -20)).isZero();
    // A ball touches the table in one place and hangs over the rest.
    Mesh ball = Shapes.icosphere(20, 4);
    Camera other = camera(ball, ABOVE, true);
    ContactShadow round = ContactShadow.of(ball, other);
    assertThat(dark(round, other, 0, 0, -20)).isGreaterThan(2 * dark(round, other, 0, -17, -20));
  }

  @Test
  void thereIsNoneSeenFromBelowOrFromTheSide() {
    Mesh cube = Shapes.cube(40, 2);
    assertThat(ContactShadow.of(cube, camera(cube, View.BOTTOM, true))).isNull();
    assertThat(ContactShadow.of(cube, camera(cube, View.FRONT, true))).isNull();
  }

  @Test
  void photographsHaveItAndDrawingsDoNot() {
    Scene scene = Scene.plain(Shapes.cube(40, 2), Finish.GOLD);
    Image photograph = Pictures.photograph(scene, ABOVE, 400, 300, Background.WHITE);
    Image drawing = Pictures.plain(scene, ABOVE, 400, 300, Background.WHITE);
    assertThat(greys(photograph)).isGreaterThan(200);
    assertThat(greys(drawing)).isZero();
  }

  /** Pixels of the background that are neither white nor touched by the outline. */
  private static int greys(Image image) {
    int count = 0;
    for (int i = 2 * image.width(); i < image.argb().length - 2 * image.width(); i++) {
      boolean open = true;
      for (int k : new int[] {0, -2, 2, -2 * image.width(), 2 * image.width()}) {
        open &= image.region()[i + k] == Image.NOTHING;
      }
      count += open && image.argb()[i] != 0xFFFFFFFF ? 1 : 0;
    }
    return count;
  }
}
