package org.seamwright.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.seamwright.mask.MaskEdge;
import org.seamwright.mask.MaskPlan;
import org.seamwright.mesh.Mesh;
import org.seamwright.section.SectionPlan;

/**
 * Which sections each mask stands beside, and so when it must be there and when it may go.
 *
 * <p>A mask is put on before the first section beside it is wetted, its edge is looked at before
 * each of them, and it comes off after the last.
 *
 * @param besideMask sections beside each mask, by the mask's number, in working order
 */
public record MaskOrder(Map<Integer, List<Integer>> besideMask) {
  /** Finds the sections by the places that mask edges and sections share. */
  public static MaskOrder of(MaskPlan masks, SectionPlan sections) {
    Map<Place, SortedSet<Integer>> at = new HashMap<>();
    for (MaskPlan.Mask mask : masks.masks()) {
      for (MaskEdge edge : mask.edges()) {
        for (int i = 0; i < edge.points().length; i += 3) {
          at.computeIfAbsent(Place.of(edge.points(), i), p -> new TreeSet<>());
        }
      }
    }
    Mesh mesh = sections.mesh();
    for (int h = 0; h < mesh.corner().length; h++) {
      int section = sections.sectionOf()[h / 3];
      if (section > 0) {
        SortedSet<Integer> there = at.get(Place.of(mesh.xyz(), 3 * mesh.corner()[h]));
        if (there != null) {
          there.add(section);
        }
      }
    }
    Map<Integer, List<Integer>> beside = new TreeMap<>();
    for (MaskPlan.Mask mask : masks.masks()) {
      SortedSet<Integer> all = new TreeSet<>();
      for (MaskEdge edge : mask.edges()) {
        for (int i = 0; i < edge.points().length; i += 3) {
          all.addAll(at.get(Place.of(edge.points(), i)));
        }
      }
      beside.put(mask.id(), new ArrayList<>(all));
    }
    return new MaskOrder(beside);
  }

  /** The sections beside a mask, first worked first; empty if none is. */
  public List<Integer> beside(int mask) {
    return besideMask.getOrDefault(mask, List.of());
  }

  /** A place, to the bit: the cuts of marks stay vertices when sections are cut. */
  private record Place(double x, double y, double z) {
    static Place of(double[] p, int at) {
      // Adding 0 makes -0 the same place as 0.
      return new Place(p[at] + 0.0, p[at + 1] + 0.0, p[at + 2] + 0.0);
    }
  }
}
