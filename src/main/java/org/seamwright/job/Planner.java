package org.seamwright.job;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mask.MaskPlan;
import org.seamwright.mask.Masking;
import org.seamwright.mend.MendException;
import org.seamwright.mesh.Faces;
import org.seamwright.plating.Deposits;
import org.seamwright.plating.PlatingArithmetic;
import org.seamwright.plating.PlatingException;
import org.seamwright.plating.PlatingNotices;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.plating.PlatingSettings;
import org.seamwright.plating.Quote;
import org.seamwright.plating.QuoteRates;
import org.seamwright.plating.Recipe;
import org.seamwright.plating.Recipes;
import org.seamwright.plating.SectionArea;
import org.seamwright.plating.WetLimit;
import org.seamwright.plating.WetLimits;
import org.seamwright.region.Mark;
import org.seamwright.region.MarkException;
import org.seamwright.region.Marks;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;
import org.seamwright.section.SectionException;
import org.seamwright.section.SectionPlan;
import org.seamwright.section.SectionSettings;
import org.seamwright.section.Sectioning;
import org.seamwright.units.UnitFormat;

/**
 * Plans a job end to end: mesh, survey, marks, limit, sections, masks, plating.
 *
 * <p>The cost is that of the splitting, near linear in faces. The same job and mesh give the same
 * plan on any machine.
 */
public final class Planner {
  /** Nobody works more at a bench; more always means a slip in a unit or in the limit. */
  private static final int MOST_SECTIONS = 2000;

  private Planner() {}

  /**
   * Reads a job file and plans it.
   *
   * @throws InputException if job, mesh, a mark or a limit is refused
   */
  public static PlannedJob plan(Path jobFile, Progress progress) throws InputException {
    return plan(JobFile.read(jobFile), jobFile, progress);
  }

  /**
   * Plans a job.
   *
   * @param jobFile where it is kept: the mesh's path counts from its folder
   * @throws InputException if mesh, a mark or a limit is refused
   */
  public static PlannedJob plan(Job job, Path jobFile, Progress progress) throws InputException {
    Piece piece = piece(job, jobFile, progress.between(0, 0.3));
    return plan(job, jobFile, piece, progress.between(0.3, 1));
  }

  /** Where the mesh of a job is. */
  public static Path meshFile(Job job, Path jobFile) {
    Path file = Path.of(job.mesh().file());
    return file.isAbsolute() ? file : jobFile.resolveSibling(file).normalize();
  }

  /**
   * Reads and surveys the piece of a job. It may be kept for several plans as long as file and
   * scale stay the same.
   *
   * @throws InputException if the mesh is missing or refused
   */
  public static Piece piece(Job job, Path jobFile, Progress progress) throws InputException {
    Path file = meshFile(job, jobFile);
    if (!Files.exists(file)) {
      throw new PlanException(
          jobFile.toString(),
          "mesh.file",
          "The mesh file " + file + " does not exist",
          "Put it there, or change mesh.file; its path counts from the folder of the job.");
    }
    try {
      return Piece.read(file, job.mesh().scale(), job.cleaning(), progress);
    } catch (MendException e) {
      throw inJob(jobFile, e.place(), e);
    }
  }

  /**
   * Plans a job on a piece that has been read already.
   *
   * @throws InputException if the piece is not the one the marks were made on, or a mark or limit
   *     is refused
   */
  public static PlannedJob plan(Job job, Path jobFile, Piece piece, Progress progress)
      throws InputException {
    List<Notice> notices = new ArrayList<>(piece.notices());
    MeshCheck check = MeshCheck.of(job, jobFile, piece);
    SurfaceMap map = marked(job, jobFile, piece, check, notices, progress.between(0, 0.3));
    return plan(job, jobFile, piece, check, map, notices, progress.between(0.3, 1));
  }

  /**
   * Plans a job on a piece whose marks have been carried out already.
   *
   * @param map the piece cut along the job's marks
   * @throws InputException if the piece is not the one the marks were made on, or a limit is
   *     refused
   */
  public static PlannedJob plan(
      Job job, Path jobFile, Piece piece, SurfaceMap map, Progress progress) throws InputException {
    List<Notice> notices = new ArrayList<>(piece.notices());
    MarkBodies.read(job, jobFile, notices);
    MeshCheck check = MeshCheck.of(job, jobFile, piece);
    return plan(job, jobFile, piece, check, map, notices, progress);
  }

  private static PlannedJob plan(
      Job job,
      Path jobFile,
      Piece piece,
      MeshCheck check,
      SurfaceMap map,
      List<Notice> notices,
      Progress progress)
      throws InputException {
    PlatingSettings settings = settings(job, jobFile);
    notices.addAll(check.notices(map));
    notices.addAll(map.notices());
    double plateMm2 = map.areaMm2(Treatment.PLATE);
    if (!(plateMm2 > 0)) {
      throw new PlanException(
          jobFile.toString(),
          "marks",
          "Nothing is left to plate",
          "Set \"ground\" to \"plate\", or add a mark with the treatment \"plate\".");
    }
    double filledMm2 = filledMm2(piece, map);
    if (filledMm2 > 0) {
      notices.add(invented(filledMm2, plateMm2));
    }
    Optional<WetLimit> wet = wetLimit(job, jobFile, settings);
    double limitMm2 = limit(job, jobFile, wet, plateMm2);
    if (wet.isPresent() && limitMm2 > wet.get().limitMm2()) {
      notices.add(aboveWetWindow(job, limitMm2, wet.get()));
    }
    SectionPlan sections = sections(job, jobFile, piece, map, limitMm2, progress.between(0, 0.85));
    notices.addAll(sections.notices());
    MaskPlan masks = Masking.plan(map, job.masking(), progress.between(0.85, 1));
    notices.addAll(masks.notices());
    PlatingPlan plating = PlatingArithmetic.plan(areas(sections), settings);
    notices.addAll(PlatingNotices.of(settings, plating));
    Optional<Steep> steep = job.plating().hold().map(hold -> Steep.of(sections, hold));
    Optional<Quote> quote = job.quote().map(r -> quote(areas(sections), settings, masks, r));
    progress.at(1);
    return new PlannedJob(
        job,
        jobFile,
        piece.mesh(),
        piece.mmPerUnit(),
        piece.survey(),
        map,
        limitMm2,
        wet,
        sections,
        masks,
        settings,
        plating,
        steep,
        quote,
        piece.cleaned().done(),
        filledMm2,
        notices);
  }

  /**
   * Carries out the marks of a job on a piece that has been read already, without planning.
   *
   * @throws InputException if the piece is not the one the marks were made on, or a mark is refused
   */
  public static MarkedJob mark(Job job, Path jobFile, Piece piece, Progress progress)
      throws InputException {
    List<Notice> notices = new ArrayList<>(piece.notices());
    MeshCheck check = MeshCheck.of(job, jobFile, piece);
    SurfaceMap map = marked(job, jobFile, piece, check, notices, progress);
    notices.addAll(check.notices(map));
    notices.addAll(map.notices());
    return new MarkedJob(job, piece, map, notices);
  }

  /** Plated area on faces that cleaning made to close holes. */
  private static double filledMm2(Piece piece, SurfaceMap map) {
    return Sum.over(
        map.mesh().faceCount(),
        f ->
            map.of(f) == Treatment.PLATE && piece.cleaned().filled(map.parentFace()[f])
                ? Faces.area(map.mesh(), f)
                : 0);
  }

  private static Notice invented(double filledMm2, double plateMm2) {
    return new Notice(
        "invented-area",
        1,
        String.format(
            Locale.ROOT,
            "%,.2f mm² of the area to plate (%.2g%%) lies on faces that close holes of the model:"
                + " what the piece looks like there is a guess.",
            filledMm2,
            100 * filledMm2 / plateMm2));
  }

  /**
   * The settings of the arithmetic that a job asks for.
   *
   * @throws PlanException if there is no such recipe or deposit
   */
  public static PlatingSettings settings(Job job, Path jobFile) throws PlanException {
    Job.PlatingRules rules = job.plating();
    try {
      Recipe recipe =
          rules.own().isPresent()
              ? rules.own().get().inPlaceOfGold(Deposits.byId(rules.deposit()))
              : Recipes.byId(rules.recipe())
                  .laying(Deposits.byId(rules.deposit()))
                  .using(rules.sheet());
      return new PlatingSettings(
          rules.bench().of(recipe),
          Deposits.byId(rules.deposit()),
          rules.flashUm(),
          rules.thicknessUm() - rules.flashUm(),
          rules.loss(),
          rules.solutionGPerL(),
          rules.usableShare(),
          rules.pace(),
          rules.efficiency(),
          rules.tool());
    } catch (PlatingException e) {
      throw inJob(jobFile, "plating", e);
    }
  }

  private static SurfaceMap marked(
      Job job, Path jobFile, Piece piece, MeshCheck check, List<Notice> notices, Progress progress)
      throws InputException {
    List<Mark> marks = MarkBodies.read(job, jobFile, notices);
    try {
      return Marks.evaluate(
          piece.mesh(), piece.labels(), job.ground(), marks, check.places(), progress);
    } catch (MarkException e) {
      throw inJob(jobFile, e.place(), e);
    }
  }

  /** What the wet window allows; nothing if it can't be told and the limit is set directly. */
  private static SectionPlan sections(
      Job job, Path jobFile, Piece piece, SurfaceMap map, double limitMm2, Progress progress)
      throws PlanException {
    boolean[] show = ShowFaces.of(job, jobFile, piece, map);
    try {
      return Sectioning.split(
          map, show, sectionSettings(job, limitMm2), job.sections().choices(), progress);
    } catch (SectionException e) {
      throw inJob(jobFile, e.place(), e);
    }
  }

  /** What the sections of a job must keep to, given their limit. */
  public static SectionSettings sectionSettings(Job job, double limitMm2) {
    return new SectionSettings(
        limitMm2,
        job.sections().activationLapMm(),
        job.sections().flashLapMm(),
        job.sections().order(),
        job.sections().seams().weights(),
        job.sections().seams().rings());
  }

  private static Optional<WetLimit> wetLimit(Job job, Path jobFile, PlatingSettings settings)
      throws PlanException {
    try {
      return Optional.of(WetLimits.of(settings, job.sections().limit().windowSeconds()));
    } catch (PlatingException e) {
      if (job.sections().limit() instanceof Job.Limit.Wet) {
        throw inJob(jobFile, "sections.wetWindow", e);
      }
      return Optional.empty();
    }
  }

  private static Notice aboveWetWindow(Job job, double limitMm2, WetLimit wet) {
    UnitFormat format = new UnitFormat(job.display(), Locale.ROOT).withPlainSpaces();
    return new Notice(
        PlannedJob.ABOVE_WET_WINDOW,
        1,
        "The limit of "
            + format.area(limitMm2)
            + " set in the job is above the "
            + format.area(wet.limitMm2())
            + " that stay wet at the job's pace: "
            + wet.explanation()
            + " Places may dry before they are covered, unless the pace is faster than given.");
  }

  /** A refusal from deeper down, placed in the job file. */
  private static PlanException inJob(Path jobFile, String place, InputException e) {
    String where = e.place().isEmpty() || e.place().equals(place) ? "" : ", " + e.place();
    PlanException refusal =
        new PlanException(
            jobFile.toString(), place, e.source() + where + ": " + e.problem(), e.remedy());
    refusal.initCause(e);
    return refusal;
  }

  private static double limit(Job job, Path jobFile, Optional<WetLimit> wet, double plateMm2)
      throws PlanException {
    double limitMm2 =
        job.sections().limit() instanceof Job.Limit.Area area
            ? area.mm2()
            : wet.orElseThrow().limitMm2();
    String place =
        job.sections().limit() instanceof Job.Limit.Wet ? "sections.wetWindow" : "sections.limit";
    String shown = AmountKind.AREA.write(limitMm2, job.display());
    double lapMm = Math.max(job.sections().activationLapMm(), job.sections().flashLapMm());
    // A strip of a section as wide as its lap already spends half of the limit on the lap.
    if (limitMm2 < plateMm2 && limitMm2 < 2 * lapMm * lapMm) {
      throw new PlanException(
          jobFile.toString(),
          place,
          "The limit of "
              + shown
              + " leaves no room beside laps "
              + AmountKind.LENGTH.write(lapMm, job.display())
              + " wide",
          "Raise the limit, or make the laps narrower.");
    }
    if (plateMm2 / limitMm2 > MOST_SECTIONS) {
      throw new PlanException(
          jobFile.toString(),
          place,
          "The limit of "
              + shown
              + " would make more than "
              + MOST_SECTIONS
              + " sections of the "
              + AmountKind.AREA.write(Math.rint(plateMm2), job.display())
              + " to plate",
          "Raise the limit, and check the unit of the mesh.");
    }
    return limitMm2;
  }

  private static Quote quote(
      List<SectionArea> areas, PlatingSettings settings, MaskPlan masks, QuoteRates rates) {
    MaskTotals totals = MaskTotals.of(masks);
    return Quote.of(areas, settings, new Quote.Masking(totals.tapeMm(), totals.lacquerMl()), rates);
  }

  private static List<SectionArea> areas(SectionPlan sections) {
    return sections.sections().stream()
        .map(s -> new SectionArea(s.id(), s.netMm2(), s.activationLapMm2(), s.flashLapMm2()))
        .toList();
  }
}
