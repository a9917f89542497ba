package org.seamwright.section;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Levels of a field, linear inside faces, that part some faces in strips of equal area. Exact: the
 * area below a level is that of the clipped faces. O(n) for a histogram, and for each level some
 * {@value #HALVINGS} looks at the faces in one of its {@value #BINS} bins.
 */
final class EqualAreas {
  private static final int BINS = 512;
  private static final int HALVINGS = 60;

  private final Mesh mesh;
  private final double[] field;
  private final int[] faces;
  private final double low;
  private final double step;

  /** One entry per bin and one more: area below its lower end. */
  private final double[] below = new double[BINS + 1];

  private EqualAreas(Mesh mesh, double[] field, IntPredicate chosen) {
    this.mesh = mesh;
    this.field = field;
    int[] list = new int[mesh.faceCount()];
    int count = 0;
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int f = 0; f < list.length; f++) {
      if (chosen.test(f)) {
        list[count++] = f;
        least = Math.min(least, least(f));
        most = Math.max(most, most(f));
      }
    }
    faces = Arrays.copyOf(list, count);
    low = least;
    step = (most - least) / BINS;
    fill();
  }

  /**
   * Finds the levels.
   *
   * @param field one entry per vertex
   * @param chosen which faces
   * @param count number of strips
   * @return {@code count - 1} levels, ascending; fewer if the field is the same everywhere
   */
  static double[] levels(Mesh mesh, double[] field, IntPredicate chosen, int count) {
    EqualAreas areas = new EqualAreas(mesh, field, chosen);
    if (areas.faces.length == 0 || !(areas.step > 0)) {
      return new double[0];
    }
    double[] levels = new double[count - 1];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = areas.level(areas.below[BINS] * (i + 1) / count);
    }
    return levels;
  }

  /**
   * The level below which a share of the area lies.
   *
   * @param share above 0 and below 1
   */
  static double level(Mesh mesh, double[] field, double share) {
    EqualAreas areas = new EqualAreas(mesh, field, f -> true);
    return areas.step > 0 ? areas.level(areas.below[BINS] * share) : areas.low;
  }

  private double least(int f) {
    int[] c = mesh.corner();
    return Math.min(field[c[3 * f]], Math.min(field[c[3 * f + 1]], field[c[3 * f + 2]]));
  }

  private double most(int f) {
    int[] c = mesh.corner();
    return Math.max(field[c[3 * f]], Math.max(field[c[3 * f + 1]], field[c[3 * f + 2]]));
  }

  private int bin(double value) {
    return (int) Math.max(0, Math.min(BINS - 1, (value - low) / step));
  }

  private void fill() {
    double[] inBin = new double[BINS + 1];
    for (int f : faces) {
      double area = Faces.area(mesh, f);
      int first = bin(least(f));
      int last = bin(most(f));
      double done = 0;
      for (int b = first; b < last; b++) {
        double share = Clip.shareBelow(mesh, f, field, low + (b + 1) * step);
        inBin[b] += (share - done) * area;
        done = share;
      }
      inBin[last] += (1 - done) * area;
    }
    for (int b = 0; b < BINS; b++) {
      below[b + 1] = below[b] + inBin[b];
    }
  }

  private double level(double wantedMm2) {
    int found = 0;
    while (found < BINS - 1 && below[found + 1] < wantedMm2) {
      found++;
    }
    int b = found;
    // Faces that reach into the bin; the others are below it or above.
    int[] near =
        Arrays.stream(faces).filter(f -> bin(least(f)) <= b && bin(most(f)) >= b).toArray();
    double from = low + b * step;
    double to = from + step;
    double base = below[b];
    for (int f : near) {
      base -= Clip.shareBelow(mesh, f, field, from) * Faces.area(mesh, f);
    }
    double lower = from;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (lower + to) / 2;
      double area = base;
      for (int f : near) {
        area += Clip.shareBelow(mesh, f, field, middle) * Faces.area(mesh, f);
      }
      if (area < wantedMm2) {
        lower = middle;
      } else {
        to = middle;
      }
    }
    return (lower + to) / 2;
  }
}
