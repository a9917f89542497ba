package org.seamwright.window;

import org.seamwright.mesh.Mesh;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;

/** Classes of faces while marking: what becomes of each, and what a draft would change. */
final class MarkClasses {
  /** Number of classes: three treatments, and three that a draft would give. */
  static final int COUNT = 6;

  /** A draft's classes come after those of treatments. */
  private static final int DRAFT = 3;

  /** Colours by class, 0xRRGGBB; a draft's stand out from its treatment's. */
  private static final int[] COLOURS = {0xDCD7CF, 0x9CA6B1, 0xDDA93F, 0xF4F1EC, 0x4FA3D1, 0xFFD75E};

  private MarkClasses() {}

  /** Class of a treatment: as in {@link FaceClasses} for what is not plated. */
  static int of(Treatment treatment) {
    return switch (treatment) {
      case OUT_OF_SCOPE -> FaceClasses.OUT_OF_SCOPE;
      case BARE -> FaceClasses.BARE;
      case PLATE -> 2;
    };
  }

  /** Pattern of a class, as {@link HatchLines} draws them: gold is plain. */
  static int pattern(int faceClass) {
    return switch (faceClass) {
      case FaceClasses.OUT_OF_SCOPE -> 2;
      case FaceClasses.BARE -> 1;
      case 2 -> 0;
      default -> 3;
    };
  }

  static int[] colours() {
    return COLOURS.clone();
  }

  /** Colour of a treatment. */
  static int colour(Treatment treatment) {
    return COLOURS[of(treatment)];
  }

  /** The piece with its marks. */
  static ShownSurface surface(PieceModel model, SurfaceMap map) {
    int[] classes = new int[map.mesh().faceCount()];
    for (int f = 0; f < classes.length; f++) {
      classes[f] = of(map.of(f));
    }
    return new ShownSurface(map.mesh(), map.parentFace(), classes, model.mesh().faceCount());
  }

  /** The piece as a draft would leave it, with what changes in colours of its own. */
  static ShownSurface surface(PieceModel model, ShownSurface before, SurfaceMap after) {
    Mesh mesh = after.mesh();
    double[] p = mesh.xyz();
    int[] classes = new int[mesh.faceCount()];
    for (int f = 0; f < classes.length; f++) {
      int now = of(after.of(f));
      int origin = after.parentFace()[f];
      int part;
      if (before.parts(origin) == 1) {
        part = before.part(origin, 0);
      } else {
        int a = 3 * mesh.corner()[3 * f];
        int b = 3 * mesh.corner()[3 * f + 1];
        int c = 3 * mesh.corner()[3 * f + 2];
        part =
            before.partAt(
                origin,
                (p[a] + p[b] + p[c]) / 3,
                (p[a + 1] + p[b + 1] + p[c + 1]) / 3,
                (p[a + 2] + p[b + 2] + p[c + 2]) / 3);
      }
      boolean changed = part >= 0 && before.faceClass(part) != now;
      classes[f] = changed ? now + DRAFT : now;
    }
    return new ShownSurface(mesh, after.parentFace(), classes, model.mesh().faceCount());
  }
}
