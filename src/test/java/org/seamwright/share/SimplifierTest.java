package org.seamwright.share;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

class SimplifierTest {
  private static double area(Mesh mesh, int[] region, int wanted) {
    double sum = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      sum += region[f] == wanted ? Faces.area(mesh, f) : 0;
    }
    return sum;
  }

  private static int[] halves(Mesh mesh, int axis) {
    int[] region = new int[mesh.faceCount()];
    for (int f = 0; f < region.length; f++) {
      double middle = 0;
      for (int k = 0; k < 3; k++) {
        middle += mesh.xyz()[3 * mesh.corner()[3 * f + k] + axis];
      }
      region[f] = middle > 0 ? 1 : 0;
    }
    return region;
  }

  private static boolean isClosed(Mesh mesh) {
    Topology topology = Topology.of(mesh);
    for (int h = 0; h < mesh.corner().length; h++) {
      if (topology.twin(h) < 0) {
        return false;
      }
    }
    return true;
  }

  /** A sphere of 82,000 faces to 4,000: closed, near the sphere, its halves still halves. */
  @Test
  void sphereKeepsShapeAndHalves() {
    Mesh sphere = Shapes.icosphere(50, 6);
    int[] region = halves(sphere, 2);
    Simplifier.Light light = Simplifier.of(sphere, region, 4000, 0.5);
    assertThat(light.mesh().faceCount()).isLessThanOrEqualTo(4000).isGreaterThan(3900);
    assertThat(isClosed(light.mesh())).isTrue();
    double[] p = light.mesh().xyz();
    for (int v = 0; v < light.mesh().vertexCount(); v++) {
      double r =
          Math.sqrt(
              p[3 * v] * p[3 * v] + p[3 * v + 1] * p[3 * v + 1] + p[3 * v + 2] * p[3 * v + 2]);
      assertThat(r).isCloseTo(50, within(0.5));
    }
    double half = 2 * Math.PI * 50 * 50;
    assertThat(area(light.mesh(), light.region(), 0)).isCloseTo(half, Percentage.withPercentage(1));
    assertThat(area(light.mesh(), light.region(), 1)).isCloseTo(half, Percentage.withPercentage(1));
  }

  /** A cube has only flat places to give up: 12 faces hold it exactly, far from the origin too. */
  @Test
  void cubeComesDownToItsCorners() {
    Mesh cube = Shapes.cube(100, 12);
    Simplifier.Light light = Simplifier.of(cube, new int[cube.faceCount()], 12, 1e-6);
    assertThat(light.mesh().faceCount()).isEqualTo(12);
    assertThat(area(light.mesh(), light.region(), 0)).isCloseTo(60_000, within(1e-6));
  }

  /** The line between regions on flat ground stays straight and where it was. */
  @Test
  void lineBetweenRegionsStays() {
    Mesh cube = Shapes.cube(100, 16);
    int[] region = halves(cube, 0);
    Simplifier.Light light = Simplifier.of(cube, region, 60, 1e-6);
    assertThat(light.mesh().faceCount()).isLessThan(200);
    assertThat(area(light.mesh(), light.region(), 0)).isCloseTo(30_000, within(1e-6));
    assertThat(area(light.mesh(), light.region(), 1)).isCloseTo(30_000, within(1e-6));
  }

  /** The allowed error, a root mean square, holds back; the furthest place stays near. */
  @Test
  void errorAllowedIsKept() {
    Mesh torus = Shapes.torus(40, 12, 240, 120);
    Simplifier.Light light = Simplifier.of(torus, new int[torus.faceCount()], 10, 0.05);
    assertThat(light.mesh().faceCount()).isBetween(500, torus.faceCount() / 4);
    FaceTree tree = FaceTree.of(light.mesh());
    double[] p = torus.xyz();
    for (int v = 0; v < torus.vertexCount(); v++) {
      SurfacePoint near = tree.nearest(p[3 * v], p[3 * v + 1], p[3 * v + 2]).orElseThrow();
      double d = 0;
      for (int axis = 0; axis < 3; axis++) {
        d += Math.pow(p[3 * v + axis] - near.at(light.mesh(), axis), 2);
      }
      assertThat(Math.sqrt(d)).isLessThan(0.25);
    }
  }

  /** An open sheet keeps its rim. */
  @Test
  void rimOfAnOpenMeshStays() {
    Mesh tube = Shapes.cylinder(30, 80, 120, 40, false);
    Simplifier.Light light = Simplifier.of(tube, new int[tube.faceCount()], 400, 0.2);
    var bounds = light.mesh().bounds();
    assertThat(bounds.sizeZ()).isCloseTo(80, within(1e-6));
    assertThat(area(light.mesh(), light.region(), 0))
        .isCloseTo(2 * Math.PI * 30 * 80, Percentage.withPercentage(1));
  }
}
