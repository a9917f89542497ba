package org.seamwright.region;

import java.util.Arrays;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.measure.TipReach;

/**
 * Cuts a surface along the edge of what a round tip can touch ({@link TipReach}), and tells what it
 * cannot.
 *
 * <p>Each face is looked at ({@link ReachLook}): most are free or barred as a whole, exactly so
 * where nothing or one thing is in the way. Where the edge crosses a face in a straight line it is
 * cut there ({@link ReachLines}), whatever its size; where the line bends or more is in the way the
 * face is halved first. So the cost follows the bends of the line and not its length.
 *
 * <p>Cost: some microseconds for each face, some ten for each along the line.
 */
final class ReachMark {
  /** A tip smaller than this share of the piece is a slip in a unit. */
  static final double LEAST_SHARE = 5e-5;

  private static final int MOST_PASSES = 40;

  /** After so many new faces the line is left as coarse as it is. */
  private static final int MOST_MADE = 6_000_000;

  /** Faces looked at in one go: small enough to share the work out evenly. */
  private static final int BLOCK = 1 << 11;

  private final EditableSurface surface;
  private final TipReach reach;
  private final double radiusMm;
  private final double[] normal;

  /** One entry per face: whether it, or its middle, is free. */
  private boolean[] free = {};

  /** One entry per face: what is to be done with it. */
  private ReachLook.Verdict[] verdict = {};

  /** One entry per half-edge: its start when its face was looked at. */
  private int[] seen = {};

  private final ReachLines lines;
  private double coarseMm2;

  /**
   * Prepares.
   *
   * @param normal unit normals of the piece as read, 3 per face
   */
  ReachMark(EditableSurface surface, TipReach reach, double[] normal, double radiusMm) {
    this.surface = surface;
    this.reach = reach;
    this.normal = normal;
    this.radiusMm = radiusMm;
    this.lines = new ReachLines(surface, radiusMm);
  }

  /** Cuts; gives for each face of the cut surface whether the tip cannot touch it. */
  boolean[] cover(Progress progress) {
    int before = surface.faceCount();
    int[] all = new int[before];
    Arrays.setAll(all, f -> f);
    look(all, progress.between(0, 0.7));
    for (int pass = 0; pass < MOST_PASSES; pass++) {
      progress.at(0.7 + 0.2 * pass / MOST_PASSES);
      int[] halved = having(ReachLook.Verdict.HALVE);
      int[] opened = having(ReachLook.Verdict.MIDDLE);
      if (halved.length + opened.length == 0) {
        break;
      }
      if (surface.faceCount() - before > MOST_MADE) {
        coarseMm2 = Arrays.stream(halved).mapToDouble(surface::area).sum();
        break;
      }
      split(halved, opened);
      look(changed(), progress.between(0.7, 0.7));
    }
    boolean[] barred = lines.cut(having(ReachLook.Verdict.LINE), free);
    progress.at(1);
    return barred;
  }

  /** Area of faces on which the line was left coarse, mm². */
  double coarseMm2() {
    return coarseMm2;
  }

  /** Looks at faces. */
  private void look(int[] faces, Progress progress) {
    free = Arrays.copyOf(free, surface.faceCount());
    verdict = Arrays.copyOf(verdict, surface.faceCount());
    seen = Arrays.copyOf(seen, 3 * surface.faceCount());
    int blocks = (faces.length + BLOCK - 1) / BLOCK;
    double[][] found = new double[blocks][];
    Parallel.each(
        blocks,
        b -> {
          int from = b * BLOCK;
          int to = Math.min(faces.length, from + BLOCK);
          found[b] = look(faces, from, to);
          progress.at((double) b / blocks);
        });
    int b = 0;
    int i = 0;
    for (int f : faces) {
      if (verdict[f] == ReachLook.Verdict.LINE) {
        while (i == found[b].length) {
          b++;
          i = 0;
        }
        lines.put(f, found[b], i);
        i += ReachLines.NUMBERS;
      }
    }
  }

  /** Looks at some faces; gives the lines found. */
  private double[] look(int[] faces, int from, int to) {
    ReachLook look = new ReachLook(surface, reach, normal, radiusMm);
    double[] found = new double[64];
    int size = 0;
    for (int i = from; i < to; i++) {
      int f = faces[i];
      ReachLook.Verdict now = look.look(f);
      free[f] = look.isFree();
      verdict[f] = now;
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        seen[h] = surface.from(h);
      }
      if (now == ReachLook.Verdict.LINE) {
        found = size + ReachLines.NUMBERS > found.length ? Arrays.copyOf(found, 2 * size) : found;
        System.arraycopy(look.line(), 0, found, size, ReachLines.NUMBERS);
        size += ReachLines.NUMBERS;
      }
    }
    return Arrays.copyOf(found, size);
  }

  private int[] having(ReachLook.Verdict wanted) {
    int[] found = new int[verdict.length];
    int count = 0;
    for (int f = 0; f < verdict.length; f++) {
      if (verdict[f] == wanted) {
        found[count++] = f;
      }
    }
    return Arrays.copyOf(found, count);
  }

  private void split(int[] halved, int[] opened) {
    Halving halving = new Halving(surface);
    for (int f : halved) {
      halving.choose(f);
    }
    for (int f : opened) {
      surface.splitFace(f, 1 / 3.0, 1 / 3.0, 1 / 3.0);
    }
    halving.split(halved);
  }

  /** Faces that are not what they were when they were looked at. */
  private int[] changed() {
    int[] found = new int[surface.faceCount()];
    int count = 0;
    for (int f = 0; f < found.length; f++) {
      boolean same = 3 * f < seen.length;
      for (int h = 3 * f; same && h < 3 * f + 3; h++) {
        same = seen[h] == surface.from(h);
      }
      if (!same) {
        found[count++] = f;
      }
    }
    return Arrays.copyOf(found, count);
  }
}
