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
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.meshfile.MeshDocument;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.units.UnitFormat;
import org.seamwright.units.UnitSystem;

/**
 * The piece as read from its file, in mm and surveyed: the part of planning that no mark changes,
 * so a caller that plans again and again reads it once.
 *
 * @param document the file as read, in its own unit
 * @param mesh the faces, in mm
 * @param mmPerUnit what the file's unit was taken to be, mm
 * @param topology edges of the mesh
 * @param survey what is known of it
 * @param notices which unit was taken, and what reading and surveying had to say
 */
public record Piece(
    MeshDocument document,
    Mesh mesh,
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

  /**
   * Reads and surveys a piece.
   *
   * @param file the mesh
   * @param scale how large its unit is
   * @throws InputException if the file is refused, or holds no area
   */
  public static Piece read(Path file, Job.Scale scale, Progress progress) throws InputException {
    MeshDocument document = MeshFiles.readWithDigest(file, progress.between(0, 0.5));
    return of(document, file.toString(), scale, progress.between(0.5, 1));
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
    PieceScale taken = PieceScale.of(document, source, scale);
    Mesh mesh = document.mesh().scaledBy(taken.mmPerUnit());
    Topology topology = Topology.of(mesh);
    Survey survey = Surveyor.survey(mesh, topology, document.droppedFaces(), progress);
    if (!(survey.areaMm2() > 0)) {
      throw new PlanException(
          source,
          "",
          "The faces have no area",
          "Export the piece again as triangles, in a format with enough digits.");
    }
    if (!Double.isFinite(survey.areaMm2()) || !Double.isFinite(survey.bounds().diagonal())) {
      throw new PlanException(
          source,
          "",
          "The piece is too large to be measured",
          "Look for a stray point far away, and check the unit.");
    }
    List<Notice> notices = new ArrayList<>();
    notices.addAll(taken.notices(survey.bounds()));
    notices.addAll(document.notices());
    notices.addAll(survey.notices());
    return new Piece(document, mesh, taken.mmPerUnit(), topology, survey, notices);
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
            Optional.of(SurfaceRecord.of(this.mesh)),
            job.mesh().scale());
    return job.withMesh(mesh);
  }
}
