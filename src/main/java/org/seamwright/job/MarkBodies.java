package org.seamwright.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
 *
 * <p>An object of it remembers the bodies of the job read last: a file is read again if its size or
 * time has changed, and a body with the same content in the same place is given as the same mesh,
 * so that what was worked out with it still holds. For one thread at a time.
 */
public final class MarkBodies {
  /** Code of the notice that a body's file has another content than when the mark was made. */
  static final String CHANGED = "body-changed";

  /** Code of the notice that nothing is remembered of a body's file. */
  static final String NOT_RECORDED = "body-not-recorded";

  private Map<FileKey, MeshDocument> documents = new HashMap<>();
  private Map<PlacedKey, Mesh> bodies = new HashMap<>();

  /** Remembers nothing yet. */
  public MarkBodies() {}

  /** A file as it was when it was read. */
  private record FileKey(Path file, long bytes, FileTime changed) {}

  /** What a placed body follows from. */
  private record PlacedKey(
      String sha256, double mmPerUnit, Vector3D axis, double turnDegrees, Vector3D move) {}

  /**
   * The marks of a job with their bodies read, as {@link #read} gives them; what is remembered of
   * the bodies before is used.
   *
   * @throws InputException if a file is missing or refused, or nobody says its unit
   */
  public List<Mark> marks(Job job, Path jobFile) throws InputException {
    Map<FileKey, MeshDocument> knownDocuments = documents;
    Map<PlacedKey, Mesh> knownBodies = bodies;
    documents = new HashMap<>();
    bodies = new HashMap<>();
    List<Mark> marks = new ArrayList<>(job.marks());
    for (int i = 0; i < marks.size(); i++) {
      if (marks.get(i) instanceof Mark.Inside inside) {
        FileKey file = key(found(inside, i, jobFile));
        MeshDocument document = knownDocuments.get(file);
        document = document == null ? document(inside, i, jobFile) : document;
        documents.put(file, document);
        Mark.Body body = inside.body();
        double mmPerUnit = mmPerUnit(body, document, i, jobFile);
        PlacedKey key =
            new PlacedKey(
                document.sha256(), mmPerUnit, body.axis(), body.turnDegrees(), body.move());
        Mesh mesh = knownBodies.get(key);
        mesh = mesh == null ? placed(body, document, mmPerUnit) : mesh;
        bodies.put(key, mesh);
        marks.set(i, with(inside, mesh));
      }
    }
    return marks;
  }

  private static FileKey key(Path file) throws InputException {
    try {
      return new FileKey(file, Files.size(file), Files.getLastModifiedTime(file));
    } catch (IOException e) {
      throw new PlanException(
          file.toString(), "", "The file can't be looked at: " + e, "See that it may be read.");
    }
  }

  private static Mark.Inside with(Mark.Inside mark, Mesh mesh) {
    return new Mark.Inside(mark.name(), mark.treatment(), mark.body(), Optional.of(mesh));
  }

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
        double mmPerUnit = mmPerUnit(inside.body(), document, i, jobFile);
        mark = with(inside, placed(inside.body(), document, mmPerUnit));
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
      if (mark instanceof Mark.Inside inside) {
        mark = recorded(inside, i, jobFile, all);
      } else if (mark instanceof Mark.Off off
          && off.mark() instanceof Mark.Inside inside
          && Files.exists(path(inside, jobFile))) {
        // Without its file a mark that is off does no harm.
        mark = new Mark.Off(recorded(inside, i, jobFile, all));
      }
      marks.add(mark);
    }
    return job.withMarks(marks);
  }

  private static Mark.Inside recorded(Mark.Inside mark, int index, Path jobFile, boolean all)
      throws InputException {
    if (!all && !mark.body().sha256().isEmpty()) {
      return mark;
    }
    String sha256 = document(mark, index, jobFile).sha256();
    return new Mark.Inside(mark.name(), mark.treatment(), mark.body().withSha256(sha256));
  }

  private static Path path(Mark.Inside mark, Path jobFile) {
    Path file = Path.of(mark.body().file());
    return file.isAbsolute() ? file : jobFile.resolveSibling(file).normalize();
  }

  private static MeshDocument document(Mark.Inside mark, int index, Path jobFile)
      throws InputException {
    return MeshFiles.readWithDigest(found(mark, index, jobFile), Progress.NONE);
  }

  private static Path found(Mark.Inside mark, int index, Path jobFile) throws PlanException {
    Path found = path(mark, jobFile);
    if (!Files.exists(found)) {
      throw new PlanException(
          jobFile.toString(),
          place(index, "file"),
          "The file " + found + " of a body does not exist",
          "Put it there, or change \"file\"; its path counts from the folder of the job.");
    }
    return found;
  }

  private static double mmPerUnit(Mark.Body body, MeshDocument document, int index, Path jobFile)
      throws InputException {
    Job.Scale scale =
        body.unit().isEmpty() ? new Job.Scale.OfFile() : new Job.Scale.Unit(body.unit());
    try {
      return PieceScale.of(document, body.file(), scale).mmPerUnit();
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
  }

  private static Mesh placed(Mark.Body body, MeshDocument document, double mmPerUnit) {
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
