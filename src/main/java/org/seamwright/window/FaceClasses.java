package org.seamwright.window;

import org.seamwright.desk.SectionDraft;
import org.seamwright.job.PlannedJob;
import org.seamwright.region.Treatment;
import org.seamwright.section.SectionPlan;

/**
 * What a face is to the eye: out of scope, bare, or of a section, within or without its lap bands.
 * Faces of one class share one colour, so that a highlight changes a colour and no mesh.
 */
final class FaceClasses {
  /** Class of faces that are not part of the work. */
  static final int OUT_OF_SCOPE = 0;

  /** Class of faces that stay bare. */
  static final int BARE = 1;

  private FaceClasses() {}

  /** Classes per section: worked once, lapped, activated twice, activated more often. */
  private static final int PER_SECTION = 4;

  /** Number of classes for so many sections. */
  static int count(int sections) {
    return 2 + PER_SECTION * sections;
  }

  /** Class of the faces of a section that are worked once. */
  static int plain(int section) {
    return 2 + PER_SECTION * (section - 1);
  }

  /** Class of the faces of a section that are flashed again, but activated once. */
  static int lap(int section) {
    return plain(section) + 1;
  }

  /** Class of the faces of a section that are activated twice. */
  static int twice(int section) {
    return plain(section) + 2;
  }

  /** Class of the faces of a section that are activated three times or more. */
  static int more(int section) {
    return plain(section) + 3;
  }

  /** Section of a class; 0 where nothing is plated. */
  static int section(int faceClass) {
    return (faceClass + 2) / PER_SECTION;
  }

  /** Whether a class is that of lap bands. */
  static boolean isLap(int faceClass) {
    return faceClass > BARE && (faceClass - 2) % PER_SECTION > 0;
  }

  /** How often faces of a class are activated, 3 standing for more; 0 where nothing is plated. */
  static int activations(int faceClass) {
    return faceClass > BARE ? Math.max(1, (faceClass - 2) % PER_SECTION) : 0;
  }

  /** Class of each face of sections as an edit would leave them; laps are not told. */
  static int[] of(SectionDraft.Shown shown) {
    int[] of = new int[shown.sectionOf().length];
    for (int f = 0; f < of.length; f++) {
      int section = shown.sectionOf()[f];
      of[f] = section > 0 ? plain(section) : section == 0 ? BARE : OUT_OF_SCOPE;
    }
    return of;
  }

  /** Class of each face of the section plan's mesh. */
  static int[] of(PlannedJob job) {
    SectionPlan plan = job.sections();
    int[] of = new int[plan.mesh().faceCount()];
    for (int f = 0; f < of.length; f++) {
      int section = plan.sectionOf()[f];
      if (section > 0) {
        int times = plan.activations()[f];
        of[f] =
            times > 2
                ? more(section)
                : times == 2
                    ? twice(section)
                    : plan.flashes()[f] > 1 ? lap(section) : plain(section);
      } else {
        of[f] = job.map().of(plan.parentFace()[f]) == Treatment.BARE ? BARE : OUT_OF_SCOPE;
      }
    }
    return of;
  }
}
