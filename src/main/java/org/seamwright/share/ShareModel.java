package org.seamwright.share;

import java.util.ArrayList;
import java.util.List;
import org.seamwright.basis.Parallel;
import org.seamwright.job.PlannedJob;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.picture.Palette;
import org.seamwright.picture.Tones;
import org.seamwright.region.Treatment;
import org.seamwright.section.Section;
import org.seamwright.section.SectionPlan;

/**
 * A planned piece made light for showing: its regions with names and the areas of the full model,
 * on a mesh of at most {@value #MOST_FACES} faces.
 *
 * @param mesh the light mesh
 * @param region one entry per face: place in {@code regions}
 * @param regions sections by number, then what stays bare, then what is no part of the work; those
 *     that have no face are left out
 * @param offMm how far the furthest vertex of the full model lies off the light one, mm; 0 if it
 *     was not made lighter
 */
record ShareModel(Mesh mesh, int[] region, List<Region> regions, double offMm) {
  /** Turns smoothly on a phone, and its page stays below 6 MB. */
  static final int MOST_FACES = 120_000;

  /** Share of the diagonal that a collapse may go off. */
  private static final double LARGEST_SHARE = 2e-3;

  private static final int LEAST_VERTICES = 20_000;

  private static final int BARE_RGB = 0x878F9C;
  private static final int OUTSIDE_RGB = 0xD3D7DC;

  /** What a region is. */
  enum Kind {
    SECTION,
    BARE,
    OUTSIDE
  }

  /**
   * One region.
   *
   * @param name "Section 3"
   * @param kind what it is
   * @param section its number; 0 for none
   * @param areaMm2 its area on the full model
   * @param rgb its colour where sections are told apart
   */
  record Region(String name, Kind kind, int section, double areaMm2, int rgb) {}

  static ShareModel of(PlannedJob planned) {
    SectionPlan plan = planned.sections();
    int faces = plan.mesh().faceCount();
    int sections = plan.sections().size();
    int[] first = new int[faces];
    double[] area = new double[sections + 2];
    for (int f = 0; f < faces; f++) {
      int section = plan.sectionOf()[f];
      boolean outside = planned.map().of(plan.parentFace()[f]) == Treatment.OUT_OF_SCOPE;
      first[f] = section > 0 ? section - 1 : outside ? sections + 1 : sections;
      area[first[f]] += Faces.area(plan.mesh(), f);
    }
    List<Region> regions = new ArrayList<>();
    int[] place = new int[sections + 2];
    int[] tones = Tones.of(plan);
    for (Section section : plan.sections()) {
      place[section.id() - 1] = regions.size();
      regions.add(
          new Region(
              "Section " + section.id() + (section.name().isBlank() ? "" : ", " + section.name()),
              Kind.SECTION,
              section.id(),
              section.netMm2(),
              Palette.light(tones[section.id()])));
    }
    String[] names = {"Stays as it is", "Not part of this work"};
    Kind[] kinds = {Kind.BARE, Kind.OUTSIDE};
    int[] rgb = {BARE_RGB, OUTSIDE_RGB};
    for (int k = 0; k < 2; k++) {
      place[sections + k] = regions.size();
      if (area[sections + k] > 0) {
        regions.add(new Region(names[k], kinds[k], 0, area[sections + k], rgb[k]));
      }
    }
    int[] region = new int[faces];
    for (int f = 0; f < faces; f++) {
      region[f] = place[first[f]];
    }
    var bounds = plan.mesh().bounds();
    double diagonal = Math.hypot(Math.hypot(bounds.sizeX(), bounds.sizeY()), bounds.sizeZ());
    Simplifier.Light light =
        Simplifier.of(plan.mesh(), region, MOST_FACES, LARGEST_SHARE * diagonal);
    double off = light.mesh() == plan.mesh() ? 0 : off(plan.mesh(), light.mesh());
    return new ShareModel(light.mesh(), light.region(), List.copyOf(regions), off);
  }

  /** The furthest that a vertex of one mesh lies off another. */
  private static double off(Mesh full, Mesh light) {
    FaceTree tree = FaceTree.of(light);
    double[] p = full.xyz();
    int vertices = full.vertexCount();
    int ranges = Parallel.ranges(vertices, LEAST_VERTICES);
    double[] furthest = new double[ranges];
    Parallel.each(
        ranges,
        part -> {
          int to = Parallel.begin(vertices, ranges, part + 1);
          for (int v = Parallel.begin(vertices, ranges, part); v < to; v++) {
            SurfacePoint near = tree.nearest(p[3 * v], p[3 * v + 1], p[3 * v + 2]).orElseThrow();
            furthest[part] = Math.max(furthest[part], distance(p, v, light, near));
          }
        });
    double worst = 0;
    for (double part : furthest) {
      worst = Math.max(worst, part);
    }
    return worst;
  }

  private static double distance(double[] p, int v, Mesh light, SurfacePoint near) {
    return Math.sqrt(
        square(p[3 * v] - near.at(light, 0))
            + square(p[3 * v + 1] - near.at(light, 1))
            + square(p[3 * v + 2] - near.at(light, 2)));
  }

  private static double square(double x) {
    return x * x;
  }
}
