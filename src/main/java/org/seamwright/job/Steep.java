package org.seamwright.job;

import java.util.Map;
import java.util.TreeMap;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.section.SectionPlan;

/**
 * Plated area that liquid solution runs off as the piece is held: walls and overhangs, where a gel
 * serves. Whole faces, by their outward normal.
 *
 * @param areaMm2 steep plated area, mm²
 * @param shareOf share of each section's net area that is steep, by its id
 */
public record Steep(double areaMm2, Map<Integer, Double> shareOf) {
  /** Measures it on a split piece. */
  static Steep of(SectionPlan sections, Job.Hold hold) {
    double[] up = hold.up().normalize().toArray();
    double[] normal = new double[3];
    double least = Math.cos(Math.toRadians(hold.steeperDegrees()));
    Map<Integer, Sum> all = new TreeMap<>();
    Map<Integer, Sum> steep = new TreeMap<>();
    Sum total = new Sum();
    for (int f = 0; f < sections.mesh().faceCount(); f++) {
      int section = sections.sectionOf()[f];
      double area = Faces.area(sections.mesh(), f);
      if (section > 0 && area > 0) {
        all.computeIfAbsent(section, id -> new Sum()).add(area);
        Faces.normal(sections.mesh(), f, normal);
        if (normal[0] * up[0] + normal[1] * up[1] + normal[2] * up[2] < least) {
          steep.computeIfAbsent(section, id -> new Sum()).add(area);
          total.add(area);
        }
      }
    }
    Map<Integer, Double> shares = new TreeMap<>();
    all.forEach(
        (id, area) ->
            shares.put(id, steep.containsKey(id) ? steep.get(id).value() / area.value() : 0));
    return new Steep(total.value(), Map.copyOf(shares));
  }
}
