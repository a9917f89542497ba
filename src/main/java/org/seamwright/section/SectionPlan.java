package org.seamwright.section;

import java.util.List;
import java.util.Objects;
import org.seamwright.basis.Notice;
import org.seamwright.mesh.Mesh;

/**
 * The plated surface split into sections, with seams, laps and working order.
 *
 * @param mesh the piece, cut along marks, seams and lap edges
 * @param parentFace one entry per face: its face in the surface map's mesh
 * @param sectionOf one entry per face: section id (1 …), or 0 where nothing is plated
 * @param activations one entry per face: how often it is activated (its own section's time and each
 *     activation lap over it); 0 where nothing is plated
 * @param flashes one entry per face: how often it is flashed; 0 where nothing is plated
 * @param sections by id, in working order
 * @param seams by earlier, then later id
 * @param onceMm2 area activated exactly once
 * @param twiceMm2 area activated exactly twice
 * @param moreMm2 area activated three times or more
 * @param junctions where three sections or more meet, with those nearer to each other than the
 *     wider lap
 * @param rings sections that close a ring, by id
 * @param notices limits that could not be kept (code {@code section-over-limit}) and what was
 *     assumed
 */
public record SectionPlan(
    Mesh mesh,
    int[] parentFace,
    int[] sectionOf,
    byte[] activations,
    byte[] flashes,
    List<Section> sections,
    List<Seam> seams,
    double onceMm2,
    double twiceMm2,
    double moreMm2,
    Junctions junctions,
    List<RingClosing> rings,
    List<Notice> notices) {
  /** Code of the notice that a section is larger than the limit. */
  public static final String OVER_LIMIT = "section-over-limit";

  /** Code of the notice that a section is long and narrow for the seams round it. */
  public static final String NEEDLE = "section-narrow";

  /** Code of the notice that sections close on themselves though none should. */
  public static final String RING = "section-ring";

  /** Code of the notice that a wish for the order of work could not be kept. */
  public static final String PIN_BROKEN = "order-pin-broken";

  /** Code of the notice that says which axis sections go about. */
  public static final String AXIS_FOUND = "section-axis-found";

  /** Code of the notice that says how often sections repeat. */
  public static final String REPEATS = "sections-repeat";

  /** Checks that the arrays fit the mesh. */
  public SectionPlan {
    Objects.requireNonNull(mesh, "mesh");
    sections = List.copyOf(sections);
    seams = List.copyOf(seams);
    rings = List.copyOf(rings);
    notices = List.copyOf(notices);
    int faces = mesh.faceCount();
    if (parentFace.length != faces
        || sectionOf.length != faces
        || activations.length != faces
        || flashes.length != faces) {
      throw new IllegalArgumentException("Arrays of a section plan don't fit its mesh");
    }
  }

  /** A plan of which neither junctions nor rings are known. */
  public SectionPlan(
      Mesh mesh,
      int[] parentFace,
      int[] sectionOf,
      byte[] activations,
      byte[] flashes,
      List<Section> sections,
      List<Seam> seams,
      double onceMm2,
      double twiceMm2,
      double moreMm2,
      List<Notice> notices) {
    this(
        mesh,
        parentFace,
        sectionOf,
        activations,
        flashes,
        sections,
        seams,
        onceMm2,
        twiceMm2,
        moreMm2,
        Junctions.NONE,
        List.of(),
        notices);
  }

  /** The same plan with other sections (named, say) and notices. */
  SectionPlan with(List<Section> otherSections, List<Notice> otherNotices) {
    return new SectionPlan(
        mesh,
        parentFace,
        sectionOf,
        activations,
        flashes,
        otherSections,
        seams,
        onceMm2,
        twiceMm2,
        moreMm2,
        junctions,
        rings,
        otherNotices);
  }
}
