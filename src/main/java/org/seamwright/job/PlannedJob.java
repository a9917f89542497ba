package org.seamwright.job;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamwright.basis.Notice;
import org.seamwright.mask.MaskPlan;
import org.seamwright.measure.Survey;
import org.seamwright.mend.Mended;
import org.seamwright.mesh.Mesh;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.plating.PlatingSettings;
import org.seamwright.plating.Quote;
import org.seamwright.plating.WetLimit;
import org.seamwright.region.SurfaceMap;
import org.seamwright.section.SectionPlan;

/**
 * A job planned end to end: all that papers, pictures and the window show.
 *
 * @param job the decisions
 * @param jobFile where they are kept
 * @param mesh the piece as read and cleaned, in mm
 * @param mmPerUnit what the file's unit was taken to be, mm
 * @param survey what is known of it
 * @param map the piece cut along marks
 * @param limitMm2 area limit of a section
 * @param wetLimit what the wet window allows: it is the limit unless one is set directly; none if
 *     it can't be told
 * @param sections the piece cut further into sections and laps
 * @param masks tape and lacquer
 * @param settings deposit and rates
 * @param plating amounts
 * @param steep places that liquid runs off, if the job says how the piece is held
 * @param quote the price, if the job asks for one
 * @param cleaning what each step of cleaning did
 * @param filledMm2 plated area on faces that close holes, whose place is invented
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
    Optional<Steep> steep,
    Optional<Quote> quote,
    List<Mended.Done> cleaning,
    double filledMm2,
    List<Notice> notices) {
  /** Code of the notice that the limit set in the job is above what stays wet. */
  public static final String ABOVE_WET_WINDOW = "limit-above-wet-window";

  /** Copies the lists. */
  public PlannedJob {
    cleaning = List.copyOf(cleaning);
    notices = List.copyOf(notices);
  }

  /** A job whose model was not cleaned. */
  public PlannedJob(
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
    this(
        job,
        jobFile,
        mesh,
        mmPerUnit,
        survey,
        map,
        limitMm2,
        wetLimit,
        sections,
        masks,
        settings,
        plating,
        Optional.empty(),
        Optional.empty(),
        List.of(),
        0,
        notices);
  }

  /** Whether the limit is set in the job and not taken from the wet window. */
  public boolean limitIsSet() {
    return job.sections().limit() instanceof Job.Limit.Area;
  }

  /** Whether the plan breaks a limit or an order that it was given: exit code 4. */
  public boolean breaksLimit() {
    return notices.stream().anyMatch(PlannedJob::tellsOfBreach);
  }

  /** Whether a notice tells of a limit or an order that was given and not kept. */
  public static boolean tellsOfBreach(Notice notice) {
    return notice.code().equals(SectionPlan.OVER_LIMIT)
        || notice.code().equals(SectionPlan.PIN_BROKEN);
  }
}
