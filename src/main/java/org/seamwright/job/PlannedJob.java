package org.seamwright.job;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamwright.basis.Notice;
import org.seamwright.mask.MaskPlan;
import org.seamwright.measure.Survey;
import org.seamwright.mesh.Mesh;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.plating.PlatingSettings;
import org.seamwright.plating.WetLimit;
import org.seamwright.region.SurfaceMap;
import org.seamwright.section.SectionPlan;

/**
 * A job planned end to end: all that papers, pictures and the window show.
 *
 * @param job the decisions
 * @param jobFile where they are kept
 * @param mesh the piece as read, in mm
 * @param mmPerUnit what the file's unit was taken to be, mm
 * @param survey what is known of it
 * @param map the piece cut along marks
 * @param limitMm2 area limit of a section
 * @param wetLimit how the limit came about, if from the wet window
 * @param sections the piece cut further into sections and laps
 * @param masks tape and lacquer
 * @param settings deposit and rates
 * @param plating amounts
 * @param notices all notices of all steps, in that order
 */
public record PlannedJob(
    Job job,
    Path jobFile,
    Mesh mesh,
    double mmPerUnit,
    Survey survey,
    SurfaceMap map,
    double limitMm2,
    Optional<WetLimit> wetLimit,
    SectionPlan sections,
    MaskPlan masks,
    PlatingSettings settings,
    PlatingPlan plating,
    List<Notice> notices) {
  /** Copies the list. */
  public PlannedJob {
    notices = List.copyOf(notices);
  }

  /** Whether the plan breaks a limit it was given: exit code 4. */
  public boolean breaksLimit() {
    return notices.stream().anyMatch(n -> n.code().equals(SectionPlan.OVER_LIMIT));
  }
}
