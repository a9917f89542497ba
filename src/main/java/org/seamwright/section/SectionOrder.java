package org.seamwright.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Orders the sections of a cut mesh: measures what laps would cover in any order, finds the
 * sections that {@link OrderPins} name, and asks {@link WorkingOrder}.
 *
 * <p>A point names the section of the plated face whose nearest point is nearest to it; of equals
 * the face with the lowest number. Pins are taken up in the order of the job: those of {@code
 * first}, of {@code last}, of {@code before}. One that contradicts earlier ones is left out, and
 * told.
 */
final class SectionOrder {
  /**
   * Areas activated three times that differ by less than this share of a square of the lap count as
   * equal: less than a brush can be placed to.
   */
  private static final double THRICE_STEP = 1.0 / 50;

  /** The same for areas of laps, which are larger. */
  private static final double LAP_STEP = 1.0 / 10;

  private SectionOrder() {}

  /** The order of the sections of a cut; entry i is the section, from 0, worked as the i-th. */
  static int[] of(SeamCut cut, SectionSettings settings, Progress progress) {
    Mesh mesh = cut.cut().mesh();
    SeamLines seams = SeamLines.of(mesh, cut.rings(), cut.label(), 0);
    Coverage[] coverage =
        SeamPatches.of(
            SeamDistance.of(mesh, cut.rings().topology(), cut.label(), 0),
            seams,
            cut.sections(),
            new double[] {settings.activationLapMm(), settings.flashLapMm()},
            progress.between(0, 0.7));
    Precedence precedence = Precedence.none(cut.sections());
    require(named(mesh, cut.label(), 0, settings.pins()), precedence);
    return new WorkingOrder(
            coverage[0],
            coverage[1],
            centres(mesh, cut.label(), cut.sections()),
            step(THRICE_STEP, settings.activationLapMm()),
            step(LAP_STEP, settings.flashLapMm()))
        .best(precedence, progress.between(0.7, 1));
  }

  private static double step(double share, double lapMm) {
    return Math.max(Double.MIN_NORMAL, share * lapMm * lapMm);
  }

  private static double[] centres(Mesh mesh, int[] label, int sections) {
    double[] sum = new double[3 * sections];
    double[] area = new double[sections];
    double[] centre = new double[3];
    for (int f = 0; f < label.length; f++) {
      if (label[f] >= 0) {
        double here = Faces.area(mesh, f);
        Faces.centroid(mesh, f, centre);
        area[label[f]] += here;
        for (int axis = 0; axis < 3; axis++) {
          sum[3 * label[f] + axis] += here * centre[axis];
        }
      }
    }
    for (int i = 0; i < sum.length; i++) {
      sum[i] /= area[i / 3];
    }
    return sum;
  }

  /**
   * Wishes for the order that a plan doesn't keep.
   *
   * @param section one entry per face: id in working order from 1, 0 for none
   */
  static List<Notice> broken(Mesh mesh, int[] section, int sections, OrderPins pins) {
    List<Notice> notices = new ArrayList<>();
    Named named = named(mesh, section, 1, pins);
    for (int i = 0; i < named.first.length; i++) {
      told(notices, named.first[i] == i + 1, "first", i, named.first[i]);
    }
    for (int i = 0; i < named.last.length; i++) {
      int id = sections - (named.last.length - 1 - i);
      told(notices, named.last[i] == id, "last", i, named.last[i]);
    }
    for (int i = 0; i < named.before.length; i++) {
      int[] pair = named.before[i];
      told(notices, pair[0] < pair[1], "before", i, pair[0]);
    }
    return notices;
  }

  private static void told(List<Notice> notices, boolean kept, String list, int index, int id) {
    if (!kept) {
      notices.add(
          new Notice(
              SectionPlan.PIN_BROKEN,
              1,
              String.format(
                  Locale.ROOT,
                  "sections.order.%s[%d] could not be kept: it contradicts what stands before it, or"
                      + " names the same section again; the section there is worked as number %d",
                  list,
                  index,
                  id)));
    }
  }

  /**
   * Sections that pins name.
   *
   * @param from number of the lowest section
   */
  private record Named(int[] first, int[] last, int[][] before, int from) {}

  private static Named named(Mesh mesh, int[] label, int from, OrderPins pins) {
    return new Named(
        nearest(mesh, label, from, pins.first()),
        nearest(mesh, label, from, pins.last()),
        pins.before().stream()
            .map(p -> nearest(mesh, label, from, List.of(p.section(), p.before())))
            .toArray(int[][]::new),
        from);
  }

  private static int[] nearest(Mesh mesh, int[] label, int from, List<Vector3D> points) {
    return points.stream().mapToInt(p -> nearest(mesh, label, from, p)).toArray();
  }

  private static int nearest(Mesh mesh, int[] label, int from, Vector3D point) {
    double least = Double.POSITIVE_INFINITY;
    int nearest = from;
    for (int f = 0; f < label.length; f++) {
      if (label[f] >= from) {
        double squared = Faces.squaredDistance(mesh, f, point.getX(), point.getY(), point.getZ());
        if (squared < least) {
          least = squared;
          nearest = label[f];
        }
      }
    }
    return nearest;
  }

  /** Takes up demands, as far as they don't contradict what was taken up before. */
  private static void require(Named named, Precedence precedence) {
    for (int i = 0; i < named.first.length; i++) {
      for (int s = named.from; s < precedence.sections(); s++) {
        if (!within(named.first, 0, i + 1, s)) {
          precedence.require(named.first[i], s);
        }
      }
    }
    for (int i = named.last.length - 1; i >= 0; i--) {
      for (int s = named.from; s < precedence.sections(); s++) {
        if (!within(named.last, i, named.last.length, s)) {
          precedence.require(s, named.last[i]);
        }
      }
    }
    for (int[] pair : named.before) {
      precedence.require(pair[0], pair[1]);
    }
  }

  private static boolean within(int[] sections, int begin, int end, int section) {
    for (int i = begin; i < end; i++) {
      if (sections[i] == section) {
        return true;
      }
    }
    return false;
  }
}
