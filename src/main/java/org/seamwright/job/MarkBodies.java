package org.seamwright.job;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.AffineTransformMatrix3D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.meshfile.MeshDocument;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.region.Mark;

/**
 * Reads the bodies that marks of the kind {@code inside} name, scales and places them, and tells
 * whether their files are the ones that the marks were made with.
 */
public final class MarkBodies {
  /** Code of the notice that a body's file has another content than when the mark was made. */
  static final String CHANGED = "body-changed";

  /** Code of the notice that nothing is remembered of a body's file. */
  static final String NOT_RECORDED = "body-not-recorded";

  private MarkBodies() {}

  /**
   * The marks of a job with their bodies read.
   *
   * @param jobFile bodies' paths count from its folder
   * @param notices receives which files have changed
   * @throws InputException if a file is missing or refused, or nobody says its unit
   */
  public static List<Mark> read(Job job, Path jobFile, List<Notice> notices) throws InputException {
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < job.marks().size(); i++) {
      Mark mark = job.marks().get(i);
      if (mark instanceof Mark.Inside inside) {
        MeshDocument document = document(inside, i, jobFile);
        tell(inside, i, document, notices);
        mark =
            new Mark.Inside(
                inside.name(),
                inside.treatment(),
                inside.body(),
                Optional.of(placed(inside.body(), document, i, jobFile)));
      }
      marks.add(mark);
    }
    return marks;
  }

  /**
   * The job with the content of its bodies' files recorded.
   *
   * @param all also where another content was recorded already
   * @throws InputException if a file is missing or refused
   */
  public static Job recordedIn(Job job, Path jobFile, boolean all) throws InputException {
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < job.marks().size(); i++) {
      Mark mark = job.marks().get(i);
      if (mark instanceof Mark.Inside inside && (all || inside.body().sha256().isEmpty())) {
        String sha256 = document(inside, i, jobFile).sha256();
        mark = new Mark.Inside(inside.name(), inside.treatment(), inside.body().withSha256(sha256));
      }
      marks.add(mark);
    }
    return job.withMarks(marks);
  }

  private static MeshDocument document(Mark.Inside mark, int index, Path jobFile)
      throws InputException {
    Path file = Path.of(mark.body().file());
    Path found = file.isAbsolute() ? file : jobFile.resolveSibling(file).normalize();
    if (!Files.exists(found)) {
      throw new PlanException(
          jobFile.toString(),
          place(index, "file"),
          "The file " + found + " of a body does not exist",
          "Put it there, or change \"file\"; its path counts from the folder of the job.");
    }
    return MeshFiles.readWithDigest(found, Progress.NONE);
  }

  private static Mesh placed(Mark.Body body, MeshDocument document, int index, Path jobFile)
      throws InputException {
    Job.Scale scale =
        body.unit().isEmpty() ? new Job.Scale.OfFile() : new Job.Scale.Unit(body.unit());
    double mmPerUnit;
    try {
      mmPerUnit = PieceScale.of(document, body.file(), scale).mmPerUnit();
    } catch (UnitUnknownException e) {
      PlanException refusal =
          new PlanException(
              jobFile.toString(),
              place(index, "unit"),
              "The file " + body.file() + " of a body does not say the unit of its numbers",
              "Add \"unit\" to the mark: mm, cm, m, in or ft.");
      refusal.initCause(e);
      throw refusal;
    }
    AffineTransformMatrix3D placement = body.placement();
    Mesh mesh = document.mesh();
    double[] xyz = new double[mesh.xyz().length];
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vector3D own = Vector3D.of(mesh.x(v), mesh.y(v), mesh.z(v)).multiply(mmPerUnit);
      System.arraycopy(placement.apply(own).toArray(), 0, xyz, 3 * v, 3);
    }
    return Mesh.of(xyz, mesh.corner());
  }

  private static void tell(
      Mark.Inside mark, int index, MeshDocument document, List<Notice> notices) {
    String called = "mark " + (index + 1) + (mark.name().isEmpty() ? "" : " " + quoted(mark));
    String recorded = mark.body().sha256();
    if (recorded.isEmpty()) {
      notices.add(
          new Notice(
              NOT_RECORDED,
              1,
              "The job remembers nothing of the file "
                  + mark.body().file()
                  + " of "
                  + called
                  + ", so a later change of it would go unnoticed; plan with --accept-mesh to"
                  + " record it."));
    } else if (!recorded.equals(document.sha256())) {
      notices.add(
          new Notice(
              CHANGED,
              1,
              "The file "
                  + mark.body().file()
                  + " of "
                  + called
                  + " has changed since the mark was made. Look at what it covers; if it fits, plan"
                  + " with --accept-mesh to record it as it is."));
    }
  }

  private static String quoted(Mark mark) {
    return "\"" + mark.name() + "\"";
  }

  private static String place(int index, String key) {
    return "marks[" + index + "]." + key;
  }
}
