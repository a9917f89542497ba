package org.seamwright.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

class ExposureTest {
  /** One region per side of a cube, numbered in the order of {@link View#sides}. */
  private static int[] sidesOf(Mesh cube) {
    int[] region = new int[cube.faceCount()];
    double[] n = new double[3];
    for (int f = 0; f < region.length; f++) {
      Faces.normal(cube, f, n);
      for (int v = 0; v < 6; v++) {
        View view = View.sides().get(v);
        if (n[0] * view.x() + n[1] * view.y() + n[2] * view.z() > 0.9) {
          region[f] = v + 1;
        }
      }
    }
    return region;
  }

  @Test
  void aSideOfACubeShowsBestFromThatSide() {
    Mesh cube = Shapes.cube(20, 2);
    Exposure exposure = Exposure.of(cube, sidesOf(cube), View.around());
    for (int side = 0; side < 6; side++) {
      assertThat(exposure.best(side + 1)).isEqualTo(side);
      // A face of 20 mm seen straight on: 400 mm², up to a pixel along its border.
      assertThat(exposure.seenMm2(side, side + 1)).isCloseTo(400, within(8.0));
      assertThat(exposure.seenMm2(side ^ 1, side + 1)).isZero();
    }
  }

  @Test
  void coverShowsEverySideInFewPictures() {
    Mesh cube = Shapes.cube(20, 2);
    int[] region = sidesOf(cube);
    Exposure exposure = Exposure.of(cube, region, View.around());
    List<Integer> all = List.of(1, 2, 3, 4, 5, 6);
    // From a corner three sides show by 1/√3 each, so two opposite corners show all six.
    assertThat(exposure.cover(all, 0.5, 9)).hasSize(2);
    // By 1 over √3 = 0.577 only: asked for more, edges or sides have to serve.
    List<Integer> better = exposure.cover(all, 0.9, 9);
    assertThat(better).hasSize(6);
  }

  @Test
  void whatIsHiddenIsNotCounted() {
    Mesh inner = Shapes.icosphere(5, 3);
    Mesh outer = Shapes.icosphere(10, 3);
    int[] region = new int[inner.faceCount() + outer.faceCount()];
    java.util.Arrays.fill(region, 0, inner.faceCount(), 1);
    Exposure exposure = Exposure.of(Shapes.join(inner, outer), region, View.around());
    for (int v = 0; v < 26; v++) {
      assertThat(exposure.seenMm2(v, 1)).isZero();
    }
    assertThat(exposure.cover(List.of(1), 0.5, 5)).isEmpty();
  }

  @Test
  void namesOfViewsAreDistinct() {
    assertThat(View.around()).hasSize(26).extracting(View::name).doesNotHaveDuplicates();
  }
}
