package org.seamwright.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.measure.Survey;
import org.seamwright.measure.Surveyor;
import org.seamwright.mend.HiddenArea;
import org.seamwright.mend.Mended;
import org.seamwright.mend.Mender;
import org.seamwright.mend.Repair;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.meshfile.MeshDocument;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.units.UnitFormat;
import org.seamwright.units.UnitSystem;

/**
 * The piece as read from its file, in mm, cleaned and surveyed: the part of planning that no mark
 * changes, so a caller that plans again and again reads it once.
 *
 * @param document the file as read, in its own unit
 * @param cleaned the faces, in mm, after the steps of cleaning, and what each did
 * @param mmPerUnit what the file's unit was taken to be, mm
 * @param topology edges of the cleaned mesh
 * @param survey what is known of the cleaned mesh
 * @param notices which unit was taken, and what reading, cleaning and surveying had to say
 */
public record Piece(
    MeshDocument document,
    Mended cleaned,
    double mmPerUnit,
    Topology topology,
    Survey survey,
    List<Notice> notices) {
  /** Code of the notice that says which unit was taken. */
  public static final String UNIT_TAKEN = "unit-taken";

  /** Copies the list. */
  public Piece {
    notices = List.copyOf(notices);
  }

  /** The faces after cleaning, in mm. */
  public Mesh mesh() {
    return cleaned.mesh();
  }

  /** The faces before cleaning, in mm: what a job knows its mesh by. */
  Mesh asRead() {
    return cleaned.done().isEmpty() ? mesh() : document.mesh().scaledBy(mmPerUnit);
  }

  /** Names that came with the file for the faces of {@link #mesh()}; filled faces have none. */
  public Labels labels() {
    Labels read = document.labels();
    if (cleaned.done().isEmpty()) {
      return read;
    }
    int[] of = new int[mesh().faceCount()];
    for (int f = 0; f < of.length; f++) {
      of[f] = cleaned.filled(f) ? 0 : read.of()[cleaned.parent()[f]];
    }
    return new Labels(read.names(), of);
  }

  /**
   * Reads and surveys a piece as it is.
   *
   * @param file the mesh
   * @param scale how large its unit is
   * @throws InputException if the file is refused, or holds no area
   */
  public static Piece read(Path file, Job.Scale scale, Progress progress) throws InputException {
    return read(file, scale, List.of(), progress);
  }

  /**
   * Reads, cleans and surveys a piece.
   *
   * @param file the mesh
   * @param scale how large its unit is
   * @param cleaning what to do to it first
   * @throws InputException if the file or a step is refused, or there is no area
   */
  public static Piece read(Path file, Job.Scale scale, List<Repair> cleaning, Progress progress)
      throws InputException {
    MeshDocument document = MeshFiles.readWithDigest(file, progress.between(0, 0.5));
    return of(document, file.toString(), scale, cleaning, progress.between(0.5, 1));
  }

  /**
   * Scales and surveys a piece that has been read.
   *
   * @param source the mesh file's name, for messages
   * @throws InputException if it holds no area, or nobody says its unit ({@link
   *     UnitUnknownException})
   */
  public static Piece of(MeshDocument document, String source, Job.Scale scale, Progress progress)
      throws InputException {
    return of(document, source, scale, List.of(), progress);
  }

  /**
   * Scales and surveys a piece that has been read, for a brush.
   *
   * @param source the mesh file's name, for messages
   * @param tipMm length of the brush's tip, mm: what is finer and all over is noise
   * @throws InputException if it holds no area, or nobody says its unit ({@link
   *     UnitUnknownException})
   */
  public static Piece of(
      MeshDocument document, String source, Job.Scale scale, double tipMm, Progress progress)
      throws InputException {
    return of(document, source, scale, List.of(), tipMm, progress);
  }

  /**
   * Scales, cleans and surveys a piece that has been read. A known length is one of the file as it
   * is, before cleaning.
   *
   * @param source the mesh file's name, for messages
   * @param cleaning what to do to it first
   * @throws InputException if a step is refused, or there is no area
   */
  public static Piece of(
      MeshDocument document,
      String source,
      Job.Scale scale,
      List<Repair> cleaning,
      Progress progress)
      throws InputException {
    return of(document, source, scale, cleaning, Survey.DEFAULT_TIP_MM, progress);
  }

  private static Piece of(
      MeshDocument document,
      String source,
      Job.Scale scale,
      List<Repair> cleaning,
      double tipMm,
      Progress progress)
      throws InputException {
    PieceScale taken = PieceScale.of(document, source, scale);
    Mesh raw = document.mesh().scaledBy(taken.mmPerUnit());
    checkSize(source, raw);
    Mended cleaned = Mender.mend(raw, cleaning, progress.between(0, cleaning.isEmpty() ? 0 : 0.5));
    Mesh mesh = cleaned.mesh();
    Topology topology = Topology.of(mesh);
    // What welding dropped while reading is part of the model as it is, not of a cleaned one.
    int dropped = cleaning.isEmpty() ? document.droppedFaces() : 0;
    Progress rest = progress.between(cleaning.isEmpty() ? 0 : 0.5, 1);
    Survey survey = Surveyor.survey(mesh, topology, dropped, tipMm, rest);
    checkArea(source, survey);
    List<Notice> notices = new ArrayList<>();
    notices.addAll(taken.notices(survey.bounds()));
    notices.addAll(document.notices());
    cleaned.done().forEach(d -> notices.add(d.notice()));
    notices.addAll(survey.notices());
    notices.addAll(
        HiddenArea.notices(mesh, topology, survey.parts(), survey.areaMm2(), Progress.NONE));
    return new Piece(document, cleaned, taken.mmPerUnit(), topology, survey, notices);
  }

  private static void checkSize(String source, Mesh mesh) throws PlanException {
    if (!Double.isFinite(mesh.bounds().diagonal())) {
      throw tooLarge(source);
    }
  }

  private static PlanException tooLarge(String source) {
    return new PlanException(
        source,
        "",
        "The piece is too large to be measured",
        "Look for a stray point far away, and check the unit.");
  }

  private static void checkArea(String source, Survey survey) throws PlanException {
    if (!(survey.areaMm2() > 0)) {
      throw new PlanException(
          source,
          "",
          "The faces have no area",
          "Export the piece again as triangles, in a format with enough digits.");
    }
    if (!Double.isFinite(survey.areaMm2()) || !Double.isFinite(survey.bounds().diagonal())) {
      throw tooLarge(source);
    }
  }

  /** Extents in mm and in inches: "431.8 × 431.8 × 210 mm (17 × 17 × 8.27 in)". */
  public static String size(Bounds bounds) {
    return extents(bounds, UnitSystem.METRIC) + " (" + extents(bounds, UnitSystem.INCH) + ")";
  }

  private static String extents(Bounds bounds, UnitSystem system) {
    UnitFormat format = new UnitFormat(system, Locale.ROOT).withPlainSpaces();
    return format.length(bounds.sizeX())
        + " × "
        + format.length(bounds.sizeY())
        + " × "
        + format.length(bounds.sizeZ());
  }

  /** The job with this piece recorded: its marks are taken to fit this mesh. */
  public Job recordedIn(Job job) {
    Job.MeshSource mesh =
        new Job.MeshSource(
            job.mesh().file(),
            document.sha256(),
            Optional.of(SurfaceRecord.of(asRead())),
            job.mesh().scale());
    return job.withMesh(mesh);
  }
}
