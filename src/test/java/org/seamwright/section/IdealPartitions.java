package org.seamwright.section;

import java.util.List;
import java.util.Locale;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/**
 * Seams beside the shortest that are known or proved for equal areas. Prints the table of
 * docs/sections.md.
 *
 * <p>Sphere: M. Engelstein, "The least-perimeter partition of a sphere into four equal areas"
 * (2010), proves the tetrahedral one and names the others: a great circle for 2 (F. Bernstein,
 * 1905), three half circles for 3 (J. Masters, 1996), the dodecahedral one for 12 (T. Hales, 2002);
 * the cubical one for 6 is conjectured. Plane: T. Hales, "The honeycomb conjecture" (2001): cells
 * of area a have outlines of at least √(2√3)·√a each in all, outlines shared by two counted once;
 * that a hexagon has.
 */
public final class IdealPartitions {
  /** Limit for so many parts: sections may be this much larger than their mean. */
  private static final double ROOM = 1.03;

  private IdealPartitions() {}

  /**
   * A piece and what it is parted at best by.
   *
   * @param parts how many
   * @param idealMm length of all seams
   */
  record Case(String name, Mesh mesh, int parts, double idealMm) {
    double ratio() {
      SectionPlan plan = plan();
      if (plan.sections().size() != parts) {
        throw new IllegalStateException(name + ": " + plan.sections().size() + " sections");
      }
      return plan.seams().stream().mapToDouble(Seam::lengthMm).sum() / idealMm;
    }

    SectionPlan plan() {
      double limit = ROOM * PlanChecks.area(mesh) / parts;
      return Sectioning.split(
          PlanChecks.allPlated(mesh), new SectionSettings(limit, 0, 0), Progress.NONE);
    }
  }

  /** All cases. */
  static List<Case> cases() {
    double r = 30;
    Mesh sphere = Shapes.icosphere(r, 5);
    return List.of(
        new Case("rectangle 160 × 40, strips", Shapes.plane(160, 40, 80, 20), 4, 3 * 40),
        new Case(
            "cylinder 10 × 160, rings", Shapes.cylinder(10, 160, 64, 160, false), 4, rings(10)),
        new Case("cylinder 60 × 40, strips", Shapes.cylinder(60, 40, 240, 24, false), 4, 4 * 40),
        new Case("sphere, great circle", sphere, 2, 2 * Math.PI * r),
        new Case("sphere, three half circles", sphere, 3, 3 * Math.PI * r),
        new Case("sphere, tetrahedral", sphere, 4, 6 * Math.acos(-1.0 / 3) * r),
        new Case("sphere, cubical", sphere, 6, 12 * Math.acos(1.0 / 3) * r),
        new Case("sphere, dodecahedral", sphere, 12, 30 * Math.acos(Math.sqrt(5) / 3) * r),
        new Case("square 200, honeycomb", Shapes.plane(200, 200, 60, 60), 40, honeycomb(200, 40)));
  }

  /** Three circles of a prism of 64 sides. */
  private static double rings(double radius) {
    return 3 * 64 * 2 * radius * Math.sin(Math.PI / 64);
  }

  /**
   * As if all cells were regular hexagons, half of each outline counting, and that of the square
   * not at all. An estimate: cells at the border are no hexagons.
   */
  private static double honeycomb(double side, int parts) {
    double outline = 2 * Math.sqrt(2 * Math.sqrt(3)) * Math.sqrt(side * side / parts);
    return (parts * outline - 4 * side) / 2;
  }

  /**
   * Prints the table.
   *
   * @param args none
   */
  public static void main(String[] args) {
    System.out.println("| piece | parts | best known, mm | ours ÷ best |");
    System.out.println("|---|---|---|---|");
    for (Case c : cases()) {
      System.out.printf(
          Locale.ROOT, "| %s | %d | %.1f | %.3f |%n", c.name, c.parts, c.idealMm, c.ratio());
    }
  }
}
