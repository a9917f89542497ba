package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Sections in a working order, measured: one try at a plan.
 *
 * @param cut the sections
 * @param order entry i is the section (from 0) that is worked as the i-th
 * @param section one entry per face: id from 1 in working order, 0 for none
 * @param from distances over the plated faces
 * @param seams seams between ids
 * @param bands laps, as far as the wider one reaches
 * @param workedMm2 one entry per section (from 0, not by id): net area and the wider lap
 */
record Layout(
    SeamCut cut,
    int[] order,
    int[] section,
    SeamDistance from,
    SeamLines seams,
    Bands bands,
    double[] workedMm2) {

  /** Measures sections in an order. */
  static Layout of(SeamCut cut, int[] order, double widerLapMm, Progress progress) {
    Mesh mesh = cut.cut().mesh();
    int[] id = new int[order.length];
    for (int i = 0; i < order.length; i++) {
      id[order[i]] = i + 1;
    }
    int[] section = new int[cut.label().length];
    for (int f = 0; f < section.length; f++) {
      section[f] = cut.label()[f] >= 0 ? id[cut.label()[f]] : 0;
    }
    SeamLines seams = SeamLines.of(mesh, cut.rings(), section, 1);
    SeamDistance from = SeamDistance.of(mesh, cut.rings().topology(), section, 1);
    Bands bands = Bands.of(from, seams, order.length, widerLapMm, progress);
    double[] lap = bands.lapMm2(mesh, section, order.length, widerLapMm);
    double[] worked = areas(mesh, cut.label(), order.length);
    for (int s = 0; s < worked.length; s++) {
      worked[s] += lap[id[s]];
    }
    return new Layout(cut, order, section, from, seams, bands, worked);
  }

  /** Area per section, mm². */
  static double[] areas(Mesh mesh, int[] label, int sections) {
    Sum[] sums = new Sum[sections];
    Arrays.setAll(sums, i -> new Sum());
    for (int f = 0; f < label.length; f++) {
      if (label[f] >= 0) {
        sums[label[f]].add(Faces.area(mesh, f));
      }
    }
    double[] area = new double[sections];
    Arrays.setAll(area, i -> sums[i].value());
    return area;
  }

  /** Worked area beyond the limit, over all sections, mm². */
  double excessMm2(double limitMm2) {
    double excess = 0;
    for (double worked : workedMm2) {
      excess += Math.max(0, worked - limitMm2);
    }
    return excess;
  }
}
