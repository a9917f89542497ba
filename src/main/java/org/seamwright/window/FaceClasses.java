package org.seamwright.window;

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

  /** Number of classes for so many sections. */
  static int count(int sections) {
    return 2 + 2 * sections;
  }

  /** Class of the faces of a section that are worked once. */
  static int plain(int section) {
    return 2 * section;
  }

  /** Class of the faces of a section that are worked again with a later neighbour. */
  static int lap(int section) {
    return 2 * section + 1;
  }

  /** Section of a class; 0 where nothing is plated. */
  static int section(int faceClass) {
    return faceClass / 2;
  }

  /** Whether a class is that of lap bands. */
  static boolean isLap(int faceClass) {
    return faceClass > BARE && faceClass % 2 == 1;
  }

  /** Class of each face of the section plan's mesh. */
  static int[] of(PlannedJob job) {
    SectionPlan plan = job.sections();
    int[] of = new int[plan.mesh().faceCount()];
    for (int f = 0; f < of.length; f++) {
      int section = plan.sectionOf()[f];
      if (section > 0) {
        boolean again = plan.activations()[f] > 1 || plan.flashes()[f] > 1;
        of[f] = again ? lap(section) : plain(section);
      } else {
        of[f] = job.map().of(plan.parentFace()[f]) == Treatment.BARE ? BARE : OUT_OF_SCOPE;
      }
    }
    return of;
  }
}
