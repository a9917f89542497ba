package org.seamwright.plating;

import java.util.List;

/**
 * Names that standards give to gold thicknesses. Information beside a plan; nothing is decided by
 * it, and it is not legal advice.
 */
public final class ThicknessClasses {
  private static final String B488 = "ASTM B488, thickness class (seen in a secondary copy)";
  private static final String CFR =
      "16 CFR 23.3 and its notes, 83 FR 40665 (2018); information, not legal advice: it guides the"
          + " naming of jewellery, needs at least 10 karat, and its current text should be read"
          + " before a mark is used";

  /** Flash and build are added in binary; a rounding must not cost the name. */
  private static final double ROUNDING_UM = 1e-9;

  private static final List<ThicknessClass> ALL =
      List.of(
          new ThicknessClass("gold electroplate", 0.175, CFR),
          new ThicknessClass("B488 class 0.25", 0.25, B488),
          new ThicknessClass("gold plate of reasonable durability", 0.5, CFR + " (from memory)"),
          new ThicknessClass("B488 class 0.50", 0.5, B488),
          new ThicknessClass("B488 class 0.75", 0.75, B488),
          new ThicknessClass("B488 class 1.0", 1.0, B488),
          new ThicknessClass("B488 class 1.25", 1.25, B488),
          new ThicknessClass("heavy gold electroplate", 2.5, CFR),
          new ThicknessClass("B488 class 2.5", 2.5, B488),
          new ThicknessClass("B488 class 5.0", 5.0, B488));

  private ThicknessClasses() {}

  /**
   * A named least thickness.
   *
   * @param name as the standard has it
   * @param leastUm least thickness, µm
   * @param source the standard
   */
  public record ThicknessClass(String name, double leastUm, String source) {}

  /** All of them, thinnest first. */
  public static List<ThicknessClass> all() {
    return ALL;
  }

  /**
   * Those that a thickness reaches, thinnest first. An even thickness is meant: a place that is
   * thinner than planned does not reach what the plan does.
   *
   * @param thicknessUm flash and build together, µm
   */
  public static List<ThicknessClass> reachedBy(double thicknessUm) {
    return ALL.stream().filter(c -> thicknessUm >= c.leastUm() - ROUNDING_UM).toList();
  }
}
