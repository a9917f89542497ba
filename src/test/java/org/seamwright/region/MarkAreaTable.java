package org.seamwright.region;

import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/**
 * Prints how far marked areas are off their closed formulas as meshes get finer, for
 * docs/distances.md.
 */
final class MarkAreaTable {
  /** Makes a mesh of about so many faces. */
  private interface Maker {
    Mesh make(int faces);
  }

  private static final int[] FACES = {5_000, 20_000, 80_000, 320_000};

  private MarkAreaTable() {}

  public static void main(String[] args) throws MarkException {
    PrintStream out = System.out;
    out.println("| mark | formula | 5,000 faces | 20,000 | 80,000 | 320,000 | order |");
    out.println("|---|---|---|---|---|---|---|");
    double pi = Math.PI;
    Maker sphere = n -> Shapes.sphere(50, (int) Math.sqrt(n / 4.0) + 1, (int) Math.sqrt(1.0 * n));
    Maker plane = n -> Shapes.plane(200, 200, (int) Math.sqrt(n / 2.0), (int) Math.sqrt(n / 2.0));
    Maker tube =
        n -> Shapes.cylinder(30, 200, (int) Math.sqrt(n / 2.0), (int) Math.sqrt(n / 2.0), false);
    Maker torus = n -> Shapes.torus(60, 20, (int) Math.sqrt(1.0 * n), (int) Math.sqrt(n / 4.0));
    Maker cone =
        n ->
            Shapes.coneFrustum(
                40, 10, 40, (int) Math.sqrt(n / 2.0), (int) Math.sqrt(n / 2.0), false);
    row("cap of a sphere", "2πRh", sphere, Maps.above(20), 2 * pi * 50 * 30);
    row(
        "zone of a sphere",
        "2πRh",
        sphere,
        new Mark.Ring("", Treatment.BARE, Vector3D.ZERO, Maps.Z, -10, 25, 0, 1e9),
        2 * pi * 50 * 35);
    row(
        "sector of a torus",
        "φ/2π · 4π²Rr",
        torus,
        Maps.sector(11, 83),
        0.2 * 4 * pi * pi * 60 * 20);
    row(
        "band of a cone",
        "π(r₁ + r₂)s",
        cone,
        new Mark.Ring("", Treatment.BARE, Vector3D.ZERO, Maps.Z, -7, 9, 0, 1e9),
        pi * ((25 + 7 * 0.75) + (25 - 9 * 0.75)) * 16 * 1.25);
    row("disc on a plane", "πr²", plane, disc(0.3, 0.4, 0, 40), pi * 1600);
    row("disc on a cylinder", "πr²", tube, disc(30, 0.4, 3, 40), pi * 1600);
    row(
        "disc on a sphere",
        "2πR²(1 − cos r/R)",
        sphere,
        disc(30, 40 * Math.cos(1), 40 * Math.sin(1), 40),
        2 * pi * 2500 * (1 - Math.cos(0.8)));
    double stroke = 2 * 10 * 60 + pi * 100;
    Mark along =
        new Mark.Near(
            "", Treatment.BARE, List.of(Vector3D.of(-20, 3, 0), Vector3D.of(28, 39, 0)), 10);
    row("stroke on a plane", "2rl + πr²", plane, along, stroke);
    row("disc grown", "π(r + d)²", plane, pi * 1600, disc(0.3, 0.4, 0, 10), grow(30));
    Mark square = Maps.box(-40, -40, -1, 40, 40, 1);
    row("square smoothed", "a² − (4 − π)r²", plane, 6400 - (4 - pi) * 225, square, smooth(15));
  }

  private static Mark disc(double x, double y, double z, double radius) {
    return new Mark.Near("", Treatment.BARE, List.of(Vector3D.of(x, y, z)), radius);
  }

  private static Mark grow(double by) {
    return new Mark.Grow("", Treatment.BARE, by, Optional.empty());
  }

  private static Mark smooth(double radius) {
    return new Mark.Smooth("", Treatment.BARE, radius);
  }

  private static void row(String mark, String formula, Maker maker, Mark what, double exact)
      throws MarkException {
    row(mark, formula, maker, exact, what);
  }

  private static void row(String mark, String formula, Maker maker, double exact, Mark... what)
      throws MarkException {
    StringBuilder line = new StringBuilder("| " + mark + " | " + formula);
    double first = 0;
    double last = 0;
    for (int faces : FACES) {
      double area = Maps.of(maker.make(faces), what).areaMm2(Treatment.BARE);
      last = Math.abs(area / exact - 1);
      first = faces == FACES[0] ? last : first;
      line.append(String.format(Locale.ROOT, " | %+.4f%%", 100 * (area / exact - 1)));
    }
    // Each step quarters the faces, so edges get shorter by 8 in all.
    double order = Math.log(first / last) / Math.log(8);
    System.out.println(line + String.format(Locale.ROOT, " | %.1f |", order));
  }
}
