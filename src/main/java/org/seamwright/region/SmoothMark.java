package org.seamwright.region;

import java.util.function.IntPredicate;
import org.seamwright.basis.Progress;

/**
 * Smoothing of a region's edge: closing, then opening, by a disc along the surface (J. Serra,
 * "Image Analysis and Mathematical Morphology", 1982). The region grows by the radius, shrinks by
 * twice the radius and grows again.
 *
 * <p>While it works a bit of the faces' treatment code says which are members; pieces inherit it.
 */
final class SmoothMark {
  private static final int MEMBER = 4;

  private final EditableSurface surface;
  private final byte own;

  SmoothMark(EditableSurface surface, byte own) {
    this.surface = surface;
    this.own = own;
  }

  /**
   * Cuts along the smoothed edge.
   *
   * @return one entry per face of the cut surface: the code that it is to have
   */
  byte[] codes(double radiusMm, Progress progress) {
    for (int f = 0; f < surface.faceCount(); f++) {
      if (surface.treatment(f) == own) {
        set(f, true);
      }
    }
    IntPredicate members = this::isMember;
    move(members, true, radiusMm, progress.between(0, 0.3));
    move(members.negate(), false, 2 * radiusMm, progress.between(0.3, 0.6));
    move(members, true, radiusMm, progress.between(0.6, 0.9));
    byte[] codes = new byte[surface.faceCount()];
    for (int f = 0; f < codes.length; f++) {
      byte before = (byte) (surface.treatment(f) & ~MEMBER);
      codes[f] = isMember(f) ? own : before;
      if (!isMember(f) && before == own) {
        codes[f] = NONE;
      }
      surface.setTreatment(f, before);
    }
    giveAway(codes);
    progress.at(1);
    return codes;
  }

  /** A face that lost the treatment and has no other yet. */
  private static final byte NONE = -1;

  private boolean isMember(int face) {
    return (surface.treatment(face) & MEMBER) != 0;
  }

  private void set(int face, boolean member) {
    int code = surface.treatment(face);
    surface.setTreatment(face, (byte) (member ? code | MEMBER : code & ~MEMBER));
  }

  /** Lets one side grow into the other. */
  private void move(IntPredicate grows, boolean becomeMembers, double byMm, Progress progress) {
    boolean[] gained = new GrowMark(surface, progress).gained(grows, grows.negate(), byMm);
    for (int f = 0; f < gained.length; f++) {
      if (gained[f]) {
        set(f, becomeMembers);
      }
    }
  }

  /** Gives the faces that lost the treatment that of the nearest others, step by step. */
  private void giveAway(byte[] codes) {
    int[] queue = new int[codes.length];
    int end = 0;
    for (int f = 0; f < codes.length; f++) {
      if (codes[f] != NONE && codes[f] != own) {
        queue[end++] = f;
      }
    }
    for (int begin = 0; begin < end; begin++) {
      int f = queue[begin];
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        for (int g = surface.ring(h); g != h; g = surface.ring(g)) {
          if (codes[g / 3] == NONE) {
            codes[g / 3] = codes[f];
            queue[end++] = g / 3;
          }
        }
      }
    }
    for (int f = 0; f < codes.length; f++) {
      // Nothing round it has another treatment: it stays.
      codes[f] = codes[f] == NONE ? own : codes[f];
    }
  }
}
