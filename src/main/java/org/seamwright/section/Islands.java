package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Makes every label one connected piece: of the pieces of a label the largest stays, each other one
 * goes to the label it shares the longest border with. A piece that borders on no label becomes a
 * label of its own. Cost: O(n) per round, a few rounds.
 */
final class Islands {
  /** Merging an island may join others to it, but not for ever. */
  private static final int ROUNDS = 8;

  private Islands() {}

  /**
   * Merges islands in place.
   *
   * @param label one entry per face: label, or negative for none; changed
   * @param labels number of labels
   * @return number of labels after; each is one piece or has no face
   */
  static int merge(Mesh mesh, EdgeRings rings, int[] label, int labels) {
    for (int round = 0; round < ROUNDS; round++) {
      Pieces pieces = Pieces.of(mesh, rings, label);
      boolean[] stays = largest(pieces, labels);
      if (!mergeInto(mesh, rings, label, pieces, stays)) {
        return nameStrays(label, pieces, stays, labels);
      }
    }
    Pieces pieces = Pieces.of(mesh, rings, label);
    return nameStrays(label, pieces, largest(pieces, labels), labels);
  }

  private static boolean[] largest(Pieces pieces, int labels) {
    int[] best = new int[labels];
    Arrays.fill(best, Pieces.NONE);
    for (int i = 0; i < pieces.count(); i++) {
      int l = pieces.label()[i];
      if (best[l] < 0 || pieces.areaMm2()[i] > pieces.areaMm2()[best[l]]) {
        best[l] = i;
      }
    }
    boolean[] stays = new boolean[pieces.count()];
    for (int i : best) {
      if (i >= 0) {
        stays[i] = true;
      }
    }
    return stays;
  }

  private static boolean mergeInto(
      Mesh mesh, EdgeRings rings, int[] label, Pieces pieces, boolean[] stays) {
    Borders borders = islandBorders(mesh, rings, label, pieces, stays);
    int[] target = new int[pieces.count()];
    double[] longest = new double[pieces.count()];
    Arrays.fill(target, -1);
    for (int i = 0; i < borders.count(); i++) {
      int piece = borders.low()[i];
      if (borders.lengthMm()[i] > longest[piece]) {
        longest[piece] = borders.lengthMm()[i];
        target[piece] = borders.high()[i] - pieces.count();
      }
    }
    boolean any = false;
    for (int f = 0; f < label.length; f++) {
      int piece = pieces.of()[f];
      if (piece >= 0 && target[piece] >= 0) {
        label[f] = target[piece];
        any = true;
      }
    }
    return any;
  }

  /** Border of each island (low) with each label that stays there (high, after all pieces). */
  private static Borders islandBorders(
      Mesh mesh, EdgeRings rings, int[] label, Pieces pieces, boolean[] stays) {
    Borders.Builder borders = new Borders.Builder();
    int[] corner = mesh.corner();
    for (int h = 0; h < corner.length; h++) {
      int piece = pieces.of()[h / 3];
      if (piece >= 0 && !stays[piece]) {
        double length = Faces.length(mesh, corner[h], corner[Topology.next(h)]);
        for (int other = rings.next(h); other != h; other = rings.next(other)) {
          int there = pieces.of()[other / 3];
          if (there >= 0 && stays[there]) {
            borders.add(piece, pieces.count() + label[other / 3], length, 0);
          }
        }
      }
    }
    return borders.build();
  }

  private static int nameStrays(int[] label, Pieces pieces, boolean[] stays, int labels) {
    int[] name = new int[pieces.count()];
    int next = labels;
    for (int i = 0; i < name.length; i++) {
      name[i] = stays[i] ? pieces.label()[i] : next++;
    }
    for (int f = 0; f < label.length; f++) {
      label[f] = pieces.of()[f] >= 0 ? name[pieces.of()[f]] : label[f];
    }
    return next;
  }
}
