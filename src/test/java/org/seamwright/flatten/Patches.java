package org.seamwright.flatten;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** Patches of surface for tests. */
final class Patches {
  private Patches() {}

  /** A spherical cap of an angular radius, radians. */
  static Mesh cap(double radius, double angle, int rings, int sectors) {
    double[] r = new double[rings + 1];
    double[] z = new double[rings + 1];
    for (int i = 0; i <= rings; i++) {
      double polar = angle * (1 - (double) i / rings);
      r[i] = radius * Math.sin(polar);
      z[i] = radius * Math.cos(polar);
    }
    return Shapes.lathe(r, z, sectors);
  }

  /** A rectangle rolled up along x to the height z = height(x): it unrolls to a rectangle. */
  static Mesh rolled(double sizeX, double sizeY, int nx, int ny, DoubleUnaryOperator height) {
    Mesh flat = Shapes.plane(sizeX, sizeY, nx, ny);
    double[] xyz = flat.xyz().clone();
    for (int v = 0; v < flat.vertexCount(); v++) {
      xyz[3 * v + 2] = height.applyAsDouble(xyz[3 * v]);
    }
    return Mesh.of(xyz, flat.corner());
  }

  /** A hilly field made from a seed: three waves of random direction, length and height. */
  static Mesh hills(long seed, double steepness) {
    Random random = new Random(seed);
    Mesh flat = Shapes.plane(60, 40, 36, 24);
    double[] xyz = flat.xyz().clone();
    for (int wave = 0; wave < 3; wave++) {
      double angle = 2 * Math.PI * random.nextDouble();
      double length = 25 + 40 * random.nextDouble();
      double phase = 2 * Math.PI * random.nextDouble();
      double height = steepness * length / (2 * Math.PI) * random.nextDouble();
      for (int v = 0; v < flat.vertexCount(); v++) {
        double along = xyz[3 * v] * Math.cos(angle) + xyz[3 * v + 1] * Math.sin(angle);
        xyz[3 * v + 2] += height * Math.sin(2 * Math.PI * along / length + phase);
      }
    }
    return Mesh.of(xyz, flat.corner());
  }

  static Layout laid(Mesh mesh, double allowed) {
    int[] all = new int[mesh.faceCount()];
    for (int f = 0; f < all.length; f++) {
      all[f] = f;
    }
    return Layout.of(Sheets.extract(mesh, all).mesh(), allowed, Progress.NONE).orElseThrow();
  }

  static Templates templates(Mesh mesh, double stretch, double allowanceMm) {
    return templates(mesh, stretch, allowanceMm, 0);
  }

  static Templates templates(Mesh mesh, double stretch, double allowanceMm, double leastMm) {
    return Templates.of(
        mesh, f -> true, new Templates.Settings(stretch, allowanceMm, leastMm), Progress.NONE);
  }

  /** A tube whose facets are moved about on it at random, so that edges lead nowhere straight. */
  static Mesh roughlyMeshedTube(long seed, double radius, double height, int columns, int rows) {
    Random random = new Random(seed);
    Mesh tube = Shapes.cylinder(radius, height, columns, rows, false);
    double[] xyz = tube.xyz().clone();
    for (int v = 0; v < tube.vertexCount(); v++) {
      double angle = Math.atan2(xyz[3 * v + 1], xyz[3 * v]);
      angle += 0.5 * Math.PI / columns * (2 * random.nextDouble() - 1);
      double z = xyz[3 * v + 2];
      boolean inside =
          z - tube.bounds().minZ() > 1e-9 * height && tube.bounds().maxZ() - z > 1e-9 * height;
      double up = 0.5 * height / rows * (random.nextDouble() - 0.5);
      xyz[3 * v] = radius * Math.cos(angle);
      xyz[3 * v + 1] = radius * Math.sin(angle);
      xyz[3 * v + 2] += inside ? up : 0;
    }
    return Mesh.of(xyz, tube.corner());
  }

  static double area(double[] loop) {
    double doubled = 0;
    int n = loop.length / 2;
    for (int i = 0; i < n; i++) {
      int k = (i + 1) % n;
      doubled += loop[2 * i] * loop[2 * k + 1] - loop[2 * k] * loop[2 * i + 1];
    }
    return doubled / 2;
  }

  static double area(Mesh mesh) {
    double sum = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      sum += Faces.area(mesh, f);
    }
    return sum;
  }
}
