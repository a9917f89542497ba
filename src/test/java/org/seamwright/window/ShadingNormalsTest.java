package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

class ShadingNormalsTest {
  @Test
  void keepsTheEdgesOfACubeSharp() {
    Mesh cube = Shapes.cube(10, 3);
    ShadingNormals normals = ShadingNormals.of(cube);
    double[] flat = new double[3];
    float[] at = new float[3];
    for (int f = 0; f < cube.faceCount(); f++) {
      Faces.normal(cube, f, flat);
      for (int k = 0; k < 3; k++) {
        int v = cube.corner()[3 * f + k];
        normals.at(f, cube.x(v), cube.y(v), cube.z(v), at, 0);
        for (int axis = 0; axis < 3; axis++) {
          assertThat((double) at[axis]).isCloseTo(flat[axis], within(1e-6));
        }
      }
    }
  }

  @Test
  void pointsAwayFromTheMiddleOfASphereAllOverItsFaces() {
    Mesh sphere = Shapes.icosphere(25, 4);
    ShadingNormals normals = ShadingNormals.of(sphere);
    float[] at = new float[3];
    double[] c = new double[3];
    for (int f = 0; f < sphere.faceCount(); f++) {
      Faces.centroid(sphere, f, c);
      normals.at(f, c[0], c[1], c[2], at, 0);
      double length = Math.sqrt(Pinhole.dot(c, c));
      double cos = (at[0] * c[0] + at[1] * c[1] + at[2] * c[2]) / length;
      // A radius is the sphere's normal; faces of this level are under 5 degrees across.
      assertThat(Math.toDegrees(Math.acos(Math.min(1, cos)))).isLessThan(0.5);
    }
  }

  @Test
  void gradesFromCornerToCornerWithinAFace() {
    // Two faces that lean 30 degrees: along their edge both take the mean, far corners their own.
    double s = Math.sin(Math.toRadians(30));
    double c = Math.cos(Math.toRadians(30));
    Mesh roof =
        Mesh.of(new double[] {0, 0, 0, 0, 1, 0, 1, 0, 0, -c, 0, -s}, new int[] {0, 2, 1, 0, 1, 3});
    ShadingNormals normals = ShadingNormals.of(roof);
    float[] at = new float[3];
    normals.at(0, 1, 0, 0, at, 0);
    assertThat(at[2]).isCloseTo(1, within(1e-6f));
    normals.at(0, 0, 0, 0, at, 0);
    double atEdge = Math.toDegrees(Math.atan2(at[0], at[2]));
    assertThat(atEdge).isCloseTo(-15, within(1e-4));
    normals.at(0, 0.5, 0, 0, at, 0);
    assertThat(Math.toDegrees(Math.atan2(at[0], at[2]))).isCloseTo(-7.5, within(1e-3));
  }

  @Test
  void givesFiniteNormalsForFacesWithoutArea() {
    Mesh sliver = Mesh.of(new double[] {0, 0, 0, 1, 0, 0, 2, 0, 0}, new int[] {0, 1, 2});
    float[] at = new float[3];
    ShadingNormals.of(sliver).at(0, 1, 0, 0, at, 0);
    assertThat(at).containsExactly(0, 0, 0);
  }
}
