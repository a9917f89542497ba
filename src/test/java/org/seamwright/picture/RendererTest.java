package org.seamwright.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

class RendererTest {
  private static final Camera.Margins MARGINS = Camera.Margins.all(20);

  private static Image orthographic(Scene scene, View view) {
    return Renderer.render(
        scene, Camera.orthographic(view, scene.mesh(), 640, 480, MARGINS), Background.WHITE);
  }

  private static long covered(Image image) {
    long count = 0;
    for (int id : image.region()) {
      count += id == Image.NOTHING ? 0 : 1;
    }
    return count;
  }

  @Test
  void sphereCoversTheAreaOfItsDisc() {
    Mesh sphere = Shapes.icosphere(30, 6);
    for (View view : View.around()) {
      Camera camera = Camera.orthographic(view, sphere, 640, 480, MARGINS);
      double r = 30 * camera.pixelsPerMm();
      long pixels =
          covered(Renderer.render(Scene.plain(sphere, Finish.GOLD), camera, Background.WHITE));
      // Disc of radius r: πr². The facets' outline falls short by under 1e-3 (level 6: area short
      // by
      // 7.5e-5), pixel counts of a disc err by about r^(2/3).
      assertThat((double) pixels)
          .as(view.name())
          .isCloseTo(Math.PI * r * r, within(1e-3 * r * r + 4 * Math.pow(r, 2.0 / 3)));
    }
  }

  @Test
  void cubeCoversTheAreaOfItsShadow() {
    Mesh cube = Shapes.cube(40, 3);
    for (View view : View.around()) {
      Camera camera = Camera.orthographic(view, cube, 640, 480, MARGINS);
      double side = 40 * camera.pixelsPerMm();
      long pixels =
          covered(Renderer.render(Scene.plain(cube, Finish.BARE), camera, Background.WHITE));
      // Shadow of a cube: each of the three visible faces by its cosine.
      double shadow = side * side * (Math.abs(view.x()) + Math.abs(view.y()) + Math.abs(view.z()));
      // An edge in line with pixels errs by up to half a pixel on each of four sides.
      assertThat((double) pixels).as(view.name()).isCloseTo(shadow, within(2 * side + 4));
    }
  }

  @Test
  void perspectiveShowsTheConeAroundASphere() {
    Mesh sphere = Shapes.icosphere(10, 6);
    Camera camera = Camera.perspective(View.FRONT, sphere, 500, 500, Camera.Margins.all(10), 60);
    long pixels =
        covered(Renderer.render(Scene.plain(sphere, Finish.GOLD), camera, Background.WHITE));
    // Seen from any distance a sphere on the axis is a disc; it is fitted to the picture.
    assertThat((double) pixels).isCloseTo(Math.PI * 240 * 240, within(2.0 * 480));
  }

  @Test
  void nearerThingsAreLargerInPerspective() {
    Mesh pair =
        Shapes.join(
            Shapes.moved(Shapes.cube(10, 1), -20, -40, 0),
            Shapes.moved(Shapes.cube(10, 1), 20, 40, 0));
    int[] region = new int[pair.faceCount()];
    java.util.Arrays.fill(region, region.length / 2, region.length, 1);
    Scene scene =
        Scene.of(pair, new byte[region.length], region, new byte[region.length], new int[] {0, 1});
    Image image =
        Renderer.render(
            scene, Camera.perspective(View.FRONT, pair, 400, 300, MARGINS, 50), Background.WHITE);
    long near = java.util.Arrays.stream(image.region()).filter(id -> id == 0).count();
    long far = java.util.Arrays.stream(image.region()).filter(id -> id == 1).count();
    assertThat(near).isGreaterThan(far);
  }

  @Test
  void viewsPutZUpAndTheFrontAtTheMinusYSide() {
    double[] at = new double[3];
    Mesh cube = Shapes.cube(2, 1);
    Camera front = Camera.orthographic(View.FRONT, cube, 100, 100, MARGINS);
    double[] other = new double[3];
    front.project(0, 0, 0, at);
    front.project(0, 0, 1, other);
    assertThat(other[1]).isLessThan(at[1]);
    front.project(1, 0, 0, other);
    assertThat(other[0]).isGreaterThan(at[0]);
    front.project(0, -1, 0, other);
    assertThat(other[2]).as("nearer").isLessThan(at[2]);
  }

  @Test
  void sameBytesOnOneAndManyThreads() throws Exception {
    Mesh piece =
        Shapes.join(Shapes.torus(30, 8, 60, 30), Shapes.moved(Shapes.cube(20, 4), 5, 0, 10));
    Scene scene = Scene.plain(piece, Finish.GOLD);
    ForkJoinPool one = new ForkJoinPool(1);
    ForkJoinPool many = new ForkJoinPool(7);
    try {
      Image a = one.submit(() -> orthographic(scene, View.THREE_QUARTER)).get();
      Image b = many.submit(() -> orthographic(scene, View.THREE_QUARTER)).get();
      assertThat(a.argb()).isEqualTo(b.argb());
      assertThat(a.region()).isEqualTo(b.region());
    } finally {
      one.shutdown();
      many.shutdown();
    }
  }

  @Test
  void goldIsWarmAndBareMetalCool() {
    // Gold reflects red fully and blue least; the grey was chosen blue of neutral, so the two
    // differ
    // in the sign of red − blue under any white light.
    for (View view : View.sides()) {
      double[] gold =
          meanColour(orthographic(Scene.plain(Shapes.icosphere(10, 4), Finish.GOLD), view));
      double[] bare =
          meanColour(orthographic(Scene.plain(Shapes.icosphere(10, 4), Finish.BARE), view));
      assertThat(gold[0]).isGreaterThan(gold[1] + 10);
      assertThat(gold[1]).isGreaterThan(gold[2] + 20);
      assertThat(bare[2]).isGreaterThan(bare[0]);
      // Lit: neither black nor burnt out.
      assertThat(gold[0]).isBetween(150.0, 250.0);
      assertThat(bare[1]).isBetween(110.0, 235.0);
    }
  }

  @Test
  void copperIsRedAndNickelNearlyGrey() {
    // Reflectances (S. Lagarde 2011, from memory), red, green, blue: gold 1.00, 0.78, 0.34: the
    // larger step is the one to blue; copper 0.95, 0.64, 0.54: the one from red; nickel 0.66, 0.61,
    // 0.53: small steps down.
    double[] gold = meanOf(Finish.GOLD);
    double[] copper = meanOf(Finish.COPPER);
    double[] nickel = meanOf(Finish.NICKEL);
    assertThat(gold[1] - gold[2]).isGreaterThan(gold[0] - gold[1]);
    assertThat(copper[0] - copper[1]).isGreaterThan(1.5 * (copper[1] - copper[2]));
    assertThat(copper[1]).isGreaterThan(copper[2]);
    assertThat(nickel[0] - nickel[2]).isBetween(5.0, 40.0);
    assertThat(nickel[1]).isBetween(nickel[2], nickel[0]);
  }

  private static double[] meanOf(Finish finish) {
    return meanColour(orthographic(Scene.plain(Shapes.icosphere(10, 4), finish), View.FRONT));
  }

  @Test
  void windingDoesNotChangeThePicture() {
    Mesh cube = Shapes.cube(10, 2);
    int[] all = java.util.stream.IntStream.range(0, cube.faceCount()).toArray();
    Image a = orthographic(Scene.plain(cube, Finish.GOLD), View.THREE_QUARTER);
    Image b =
        orthographic(Scene.plain(Shapes.withFlipped(cube, all), Finish.GOLD), View.THREE_QUARTER);
    assertThat(b.argb()).isEqualTo(a.argb());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void facesSharingEdgesLeaveNoGap(long seed) {
    // A grid in random order covers its rectangle: nothing shines through along shared edges.
    Mesh plane =
        Shapes.rotated(Shapes.shuffled(Shapes.plane(100, 100, 37, 41), seed), 0.3, 0.9, 0.2, 0.7);
    FaceBuffer buffer =
        FaceBuffer.of(plane, Camera.orthographic(View.TOP, plane, 300, 300, MARGINS), 2);
    for (int y = 1; y + 1 < buffer.height; y++) {
      for (int x = 1; x + 1 < buffer.width; x++) {
        int i = y * buffer.width + x;
        boolean hole =
            buffer.face[i] < 0
                && buffer.face[i - 1] >= 0
                && buffer.face[i + 1] >= 0
                && buffer.face[i - buffer.width] >= 0
                && buffer.face[i + buffer.width] >= 0;
        assertThat(hole).as("seed %d, sample %d %d", seed, x, y).isFalse();
      }
    }
  }

  @Test
  void samplesOnAnEdgeBelongToOneOfItsFaces() {
    // Three samples to a cell: the diagonals of the cells run through sample centres exactly.
    Mesh plane = Shapes.plane(64, 64, 64, 64);
    Camera camera = Camera.orthographic(View.TOP, plane, 96, 96, Camera.Margins.all(0));
    assertThat(FaceBuffer.of(plane, camera, 2).face).doesNotContain(FaceBuffer.NOTHING);
  }

  @Test
  void creasesAndOutlinesAreDrawn() {
    Image cube = orthographic(Scene.plain(Shapes.cube(10, 4), Finish.GHOST), View.THREE_QUARTER);
    Image sphere = orthographic(Scene.plain(Shapes.icosphere(10, 5), Finish.GHOST), View.FRONT);
    // Three faces in view meet in three inner edges; a sphere has an outline only.
    assertThat(darkInside(cube)).isGreaterThan(100);
    assertThat(darkInside(sphere)).isZero();
  }

  /**
   * Pixels more than 6 pixels from the background and darker than light alone makes a pale surface:
   * its grey of 211 dims to no less than 0.85 of that.
   */
  private static int darkInside(Image image) {
    int dark = 0;
    int w = image.width();
    boolean[] outside = new boolean[image.region().length];
    for (int i = 0; i < outside.length; i++) {
      outside[i] = image.region()[i] == Image.NOTHING;
    }
    float[] d2 = DistanceField.squared(outside, w, image.height());
    for (int i = 0; i < d2.length; i++) {
      dark += d2[i] > 36 && (image.argb()[i] >> 8 & 255) < 175 ? 1 : 0;
    }
    return dark;
  }

  private static double[] meanColour(Image image) {
    double[] sum = new double[3];
    long n = 0;
    for (int i = 0; i < image.argb().length; i++) {
      if (image.region()[i] != Image.NOTHING) {
        sum[0] += image.argb()[i] >> 16 & 255;
        sum[1] += image.argb()[i] >> 8 & 255;
        sum[2] += image.argb()[i] & 255;
        n++;
      }
    }
    return new double[] {sum[0] / n, sum[1] / n, sum[2] / n};
  }
}
