package org.seamwright.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamwright.testsupport.Shapes;

/**
 * The tree gives, to the last bit, what going over every face gives: the least distance and of
 * equal ones the lowest face number. So it leaves out no face that matters and its shape doesn't
 * show.
 */
class FaceTreeExactTest {
  private static Mesh mesh(String kind, long seed) {
    Random random = new Random(seed);
    return switch (kind) {
      case "soup" -> Shapes.soup(3000, 10, 0.5, seed);
      case "large faces" -> Shapes.soup(500, 10, 20, seed);
      case "torus" -> Shapes.torus(10, 3, 60, 40);
      case "grid" -> Shapes.plane(30, 40, 30, 40);
      case "needles" -> needles(random);
      case "twice" -> Shapes.join(Shapes.cube(4, 6), Shapes.cube(4, 6));
      case "far off" -> Shapes.moved(Shapes.torus(10, 3, 60, 40), 1e6, -1e6, 1e6);
      case "far soup" -> Shapes.moved(Shapes.soup(2000, 10, 0.5, seed), 1e6, 1e6, -1e6);
      case "small beside large" ->
          Shapes.join(
              Shapes.plane(2000, 2000, 1, 1),
              Shapes.moved(Shapes.icosphere(0.01, 3), 1, 1, 0.02),
              Shapes.moved(Shapes.cube(1000, 1), 0, 0, 5000));
      default -> throw new IllegalArgumentException(kind);
    };
  }

  /** Faces in a line, in a point, in one plane, thin as 1e-12 of their length, and equal ones. */
  private static Mesh needles(Random random) {
    int faces = 2000;
    double[] xyz = new double[9 * faces];
    int[] corner = new int[3 * faces];
    for (int f = 0; f < faces; f++) {
      double[] a = random.doubles(3, -10, 10).toArray();
      double[] b = random.doubles(3, -1, 1).toArray();
      double share = random.nextDouble();
      double thin = new double[] {0, 1e-12, 1e-9, 1e-6, 1e-3}[f % 5];
      for (int k = 0; k < 3; k++) {
        boolean flat = k == 2 && f % 7 == 0;
        xyz[9 * f + k] = flat ? 0 : a[k];
        xyz[9 * f + 3 + k] = flat ? 0 : f % 11 == 0 ? a[k] : a[k] + b[k];
        xyz[9 * f + 6 + k] = flat ? 0 : a[k] + share * b[k] + thin * (random.nextDouble() - 0.5);
      }
    }
    for (int h = 0; h < corner.length; h++) {
      corner[h] = h % 1000 < 6 ? h % 3 : h;
    }
    return Mesh.of(xyz, corner);
  }

  private static double[] somewhere(Mesh mesh, Random random) {
    Bounds b = mesh.bounds();
    double reach = random.nextInt(8) == 0 ? 20 : 1.2;
    double u = 0.5 + reach * (random.nextDouble() - 0.5);
    double v = 0.5 + reach * (random.nextDouble() - 0.5);
    double w = 0.5 + reach * (random.nextDouble() - 0.5);
    if (random.nextInt(3) == 0) {
      // A corner of the mesh, or a place straight above it: ties between faces.
      int vertex = mesh.corner()[random.nextInt(mesh.corner().length)];
      double above = random.nextBoolean() ? 0 : 0.1 * b.diagonal();
      return new double[] {mesh.x(vertex), mesh.y(vertex), mesh.z(vertex) + above};
    }
    return new double[] {
      b.minX() + u * b.sizeX(), b.minY() + v * b.sizeY(), b.minZ() + w * b.sizeZ()
    };
  }

  @ParameterizedTest
  @CsvSource({
    "soup, 1",
    "large faces, 2",
    "torus, 3",
    "grid, 4",
    "needles, 5",
    "twice, 6",
    "far off, 7",
    "far soup, 8",
    "small beside large, 9"
  })
  void nearestIsThatOfAllFacesToTheLastBit(String kind, long seed) {
    Mesh mesh = mesh(kind, seed);
    FaceTree tree = FaceTree.of(mesh);
    Random random = new Random(seed);
    int[] c = mesh.corner();
    Closest closest = new Closest();
    for (int i = 0; i < 400; i++) {
      double[] q = somewhere(mesh, random);
      double best = Double.POSITIVE_INFINITY;
      int face = -1;
      double weight = 0;
      for (int f = 0; f < mesh.faceCount(); f++) {
        closest.find(mesh.xyz(), c[3 * f], c[3 * f + 1], c[3 * f + 2], q[0], q[1], q[2]);
        if (closest.squared < best) {
          best = closest.squared;
          face = f;
          weight = closest.w1;
        }
      }
      String query = kind + ", seed " + seed + ", query " + i;
      SurfacePoint found = tree.nearest(q[0], q[1], q[2]).orElseThrow();
      assertThat(found.face()).as(query).isEqualTo(face);
      assertThat(found.w1()).as(query).isEqualTo(weight);
      double distance = Math.sqrt(best);
      assertThat(tree.nearest(q[0], q[1], q[2], distance * 1.001 + 1e-9)).as(query).contains(found);
      if (distance > 0) {
        assertThat(tree.nearest(q[0], q[1], q[2], distance * 0.999)).as(query).isEmpty();
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "soup, 1",
    "large faces, 2",
    "torus, 3",
    "grid, 4",
    "needles, 5",
    "twice, 6",
    "far off, 7",
    "far soup, 8",
    "small beside large, 9"
  })
  void firstHitIsThatOfAllFacesToTheLastBit(String kind, long seed) {
    Mesh mesh = mesh(kind, seed);
    FaceTree tree = FaceTree.of(mesh);
    Random random = new Random(seed);
    int[] c = mesh.corner();
    for (int i = 0; i < 400; i++) {
      double[] o = somewhere(mesh, random);
      double[] to = somewhere(mesh, random);
      double length = i % 4 == 0 ? 1e-30 : i % 4 == 1 ? 1e12 : 1;
      double[] d = {length * (to[0] - o[0]), length * (to[1] - o[1]), length * (to[2] - o[2])};
      if (i % 5 == 0) {
        d[random.nextInt(3)] = 0;
      }
      if (i % 10 == 0) {
        o[0] -= 1e4 * d[0] / length;
        o[1] -= 1e4 * d[1] / length;
        o[2] -= 1e4 * d[2] / length;
      }
      if (d[0] == 0 && d[1] == 0 && d[2] == 0) {
        continue;
      }
      Ray ray = new Ray(o[0], o[1], o[2], d[0], d[1], d[2]);
      double best = Double.POSITIVE_INFINITY;
      int face = -1;
      for (int f = 0; f < mesh.faceCount(); f++) {
        if (ray.meets(mesh.xyz(), c[3 * f], c[3 * f + 1], c[3 * f + 2]) && ray.distance < best) {
          best = ray.distance;
          face = f;
        }
      }
      String query = kind + ", seed " + seed + ", ray " + i;
      Optional<FaceTree.Hit> found = tree.firstHit(o[0], o[1], o[2], d[0], d[1], d[2]);
      assertThat(found.map(h -> h.point().face()).orElse(-1)).as(query).isEqualTo(face);
      assertThat(found.map(FaceTree.Hit::distance).orElse(Double.POSITIVE_INFINITY))
          .as(query)
          .isEqualTo(best);
    }
  }

  /** Distance to a sphere is ||q| - r|; a facet lies within h²/6r of it, h its longest side. */
  @ParameterizedTest
  @CsvSource({"0, 41", "1e6, 42"})
  void distancesToASphereAreThoseOfItsFormula(double offset, long seed) {
    double r = 25;
    Mesh sphere = Shapes.moved(Shapes.icosphere(r, 5), offset, 0, 0);
    FaceTree tree = FaceTree.of(sphere);
    double side = 0;
    for (int h = 0; h < sphere.corner().length; h++) {
      int end = sphere.corner()[Topology.next(h)];
      side = Math.max(side, Faces.length(sphere, sphere.corner()[h], end));
    }
    // The middle of an even triangle is side / √3 from its corners; the next term is 1e-6 of it.
    double sag = 1.001 * side * side / (6 * r);
    Random random = new Random(seed);
    for (int i = 0; i < 2000; i++) {
      double[] d = random.doubles(3, -60, 60).toArray();
      double length = Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
      SurfacePoint point = tree.nearest(offset + d[0], d[1], d[2]).orElseThrow();
      double x = point.at(sphere, 0) - offset - d[0];
      double y = point.at(sphere, 1) - d[1];
      double z = point.at(sphere, 2) - d[2];
      assertThat(Math.sqrt(x * x + y * y + z * z))
          .as("seed %d, query %d", seed, i)
          .isCloseTo(Math.abs(length - r), within(sag));
      // From outside, aimed at the middle.
      double away = 3 + 2 * r / length;
      double first =
          tree.firstHit(offset + away * d[0], away * d[1], away * d[2], -d[0], -d[1], -d[2])
              .orElseThrow()
              .distance();
      assertThat(first * length)
          .as("seed %d, ray %d", seed, i)
          .isCloseTo(away * length - r, within(sag));
    }
  }

  @Test
  void chainsOfEverSmallerFacesAreFoundAtAnyDepth() {
    // Each face half as far from the origin as the one before: all but one fall in one bin.
    int faces = 240;
    double[] xyz = new double[9 * faces];
    int[] corner = new int[3 * faces];
    for (int f = 0; f < faces; f++) {
      double at = Math.scalb(1.0, -f);
      double[] face = {at, 0, 0, at * 1.1, 0, 0, at, at / 10, 0};
      System.arraycopy(face, 0, xyz, 9 * f, 9);
    }
    for (int h = 0; h < corner.length; h++) {
      corner[h] = h;
    }
    Mesh mesh = Mesh.of(xyz, corner);
    FaceTree tree = FaceTree.of(mesh);
    for (int f = 0; f < faces; f++) {
      double at = Math.scalb(1.0, -f);
      SurfacePoint found = tree.nearest(at * 1.03, at * 0.03, 0).orElseThrow();
      assertThat(found.face()).isEqualTo(f);
    }
  }

  @Test
  void treeIsTheSameEveryTime() {
    Mesh mesh = Shapes.torus(10, 3, 400, 200);
    List<Integer> first = new ArrayList<>();
    FaceTree.of(mesh).inBox(mesh.bounds(), first::add);
    assertThat(first).hasSize(mesh.faceCount());
    for (int i = 0; i < 5; i++) {
      List<Integer> again = new ArrayList<>();
      FaceTree.of(mesh).inBox(mesh.bounds(), again::add);
      assertThat(again).isEqualTo(first);
    }
    assertThat(FaceTree.of(mesh).bytes()).isLessThan(60L * mesh.faceCount());
  }

  @ParameterizedTest
  @CsvSource({"NaN", "Infinity", "-Infinity"})
  void nothingIsNearestToNowhere(double nowhere) {
    FaceTree tree = FaceTree.of(Shapes.torus(10, 3, 60, 40));

    assertThat(tree.nearest(nowhere, 0, 0)).isEmpty();
    assertThat(tree.nearest(0, nowhere, -nowhere)).isEmpty();
    assertThat(tree.nearest(0, 0, nowhere, 1)).isEmpty();
  }
}
