package org.seamwright.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Notice;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;
import org.seamwright.units.UnitFormat;

/**
 * Whether the mesh of a job is still the one its marks were made on. Marks are geometry, so they
 * apply to a changed mesh too; but the user is told how far the surface lies from where it was, and
 * a mesh that is another piece altogether is refused.
 */
final class MeshCheck {
  /** Code of the notice that nothing is remembered of the mesh. */
  static final String NOT_RECORDED = "mesh-not-recorded";

  /** Code of the notice that the mesh has changed. */
  static final String CHANGED = "mesh-changed";

  /** The same file and scale give the same area to the last digits on any machine. */
  private static final double SAME_AREA = 1e-9;

  /** More marks than this in one notice are not read. */
  private static final int MOST_MARKS = 12;

  private final Job job;
  private final Optional<SurfaceShift> shift;
  private final List<Notice> notices = new ArrayList<>();
  private final UnitFormat in;

  /** Area of the mesh as it is now, before cleaning. */
  private double areaMm2;

  private MeshCheck(Job job, Optional<SurfaceShift> shift) {
    this.job = job;
    this.shift = shift;
    in = new UnitFormat(job.display(), Locale.ROOT).withPlainSpaces();
  }

  /**
   * Compares the piece with what the job remembers.
   *
   * @throws PlanException if it is another piece, or has changed and nothing tells how far
   */
  static MeshCheck of(Job job, Path jobFile, Piece piece) throws PlanException {
    Job.MeshSource source = job.mesh();
    if (source.sha256().isEmpty() && source.surface().isEmpty()) {
      MeshCheck check = new MeshCheck(job, Optional.empty());
      check.notices.add(
          new Notice(
              NOT_RECORDED,
              1,
              "The job remembers nothing of its mesh, so a later change of the mesh would go"
                  + " unnoticed; plan with --accept-mesh to record it."));
      return check;
    }
    boolean sameFile = source.sha256().equals(piece.document().sha256());
    if (source.surface().isEmpty()) {
      if (!sameFile) {
        throw new PlanException(
            jobFile.toString(),
            "mesh.sha256",
            "The mesh "
                + source.file()
                + " has changed since the marks were made, and the job does"
                + " not remember its surface to tell how far",
            "Look at the marks on the new mesh (command \"window\"); if they still fit, plan once"
                + " with --accept-mesh.");
      }
      return new MeshCheck(job, Optional.empty());
    }
    SurfaceRecord before = source.surface().get();
    // Before cleaning, so that a step of cleaning added or dropped is no change of the mesh.
    Mesh mesh = piece.asRead();
    double areaMm2 = SurfaceRecord.areaMm2(mesh);
    if (sameFile && Math.abs(areaMm2 - before.areaMm2()) <= SAME_AREA * areaMm2) {
      return new MeshCheck(job, Optional.empty());
    }
    MeshCheck check = new MeshCheck(job, Optional.of(SurfaceShift.of(before, mesh)));
    check.areaMm2 = areaMm2;
    check.requireSamePiece(jobFile, mesh);
    return check;
  }

  private void requireSamePiece(Path jobFile, Mesh mesh) throws PlanException {
    SurfaceShift moved = shift.orElseThrow();
    if (moved.isAnotherPiece()) {
      throw new PlanException(
          jobFile.toString(),
          "mesh.surface",
          "The mesh "
              + job.mesh().file()
              + " is another piece than the marks were made on, or has another size or pose: "
              + moved.far()
              + " of "
              + moved.count()
              + " recorded places lie more than "
              + in.length(moved.farMm())
              + " off it; it is "
              + Piece.size(mesh.bounds()),
          "Name the right file, mend its unit or pose, or, if the marks do fit, plan once with"
              + " --accept-mesh.");
    }
  }

  /** Places of which it must be known which marks cover them; none if the mesh is as it was. */
  List<Vector3D> places() {
    return shift.isPresent() ? job.mesh().surface().orElseThrow().samples() : List.of();
  }

  /** What to tell once the marks have been carried out. */
  List<Notice> notices(SurfaceMap map) {
    List<Notice> all = new ArrayList<>(notices);
    shift.ifPresent(
        moved ->
            all.add(
                new Notice(
                    CHANGED,
                    1,
                    text(moved, map)
                        + " Look at the marks; if they"
                        + " fit, plan with --accept-mesh to record the mesh as it is.")));
    return all;
  }

  private String text(SurfaceShift moved, SurfaceMap map) {
    SurfaceRecord before = job.mesh().surface().orElseThrow();
    String start = "The mesh has changed since the marks were made: ";
    String area = "Its area is " + in.area(areaMm2) + ", it was " + in.area(before.areaMm2()) + ".";
    if (moved.isRoundingAlone()) {
      return start + "the surface is where it was, in other faces. " + area;
    }
    SurfaceShift marked = SurfaceShift.of(before, map.mesh());
    return start
        + "the surface lies up to "
        + length(moved, moved.mostMm())
        + " (median "
        + length(moved, moved.medianMm())
        + ") from where it was, furthest near "
        + point(moved.furthest())
        + byTreatment(moved, marked, map)
        + ". "
        + byMark(moved, marked, map)
        + area;
  }

  /**
   * How far the surface lies off under each mark, in their order; the furthest if there are many.
   */
  private String byMark(SurfaceShift moved, SurfaceShift marked, SurfaceMap map) {
    List<Integer> told = new ArrayList<>();
    double[] most = new double[map.effects().size()];
    int without = 0;
    for (int m = 0; m < most.length; m++) {
      most[m] = -1;
      for (int i : map.effects().get(m).places()) {
        if (isThere(moved, marked, i)) {
          most[m] = Math.max(most[m], moved.distanceMm(i));
        }
      }
      without += most[m] < 0 ? 1 : 0;
      if (most[m] >= 0) {
        told.add(m);
      }
    }
    boolean all = told.size() <= MOST_MARKS;
    told.sort((a, b) -> Double.compare(most[b], most[a]));
    List<String> parts =
        told.stream()
            .limit(MOST_MARKS)
            .sorted()
            .map(m -> called(m) + " up to " + length(moved, most[m]))
            .collect(Collectors.toCollection(ArrayList::new));
    if (without > 0) {
      parts.add(without == 1 ? "one mark covers no recorded place" : without + " marks cover none");
    }
    if (parts.isEmpty()) {
      return "";
    }
    return (all ? "Under " : "Under the marks most moved: ") + String.join(", ", parts) + ". ";
  }

  private String called(int mark) {
    String name = job.marks().get(mark).name();
    return "mark " + (mark + 1) + (name.isEmpty() ? "" : " \"" + name + "\"");
  }

  /** Places that are gone from the cleaned mesh have no treatment and no marks. */
  private static boolean isThere(SurfaceShift moved, SurfaceShift marked, int i) {
    return marked.distanceMm(i) <= moved.distanceMm(i) + moved.roundingMm();
  }

  /** How far the surface lies off under each treatment. */
  private String byTreatment(SurfaceShift moved, SurfaceShift marked, SurfaceMap map) {
    StringBuilder text = new StringBuilder();
    for (Treatment treatment : Treatment.values()) {
      double most = -1;
      for (int i = 0; i < moved.count(); i++) {
        if (isThere(moved, marked, i) && map.of(marked.face(i)) == treatment) {
          most = Math.max(most, moved.distanceMm(i));
        }
      }
      if (most >= 0) {
        text.append(text.isEmpty() ? "; " : ", ").append(words(treatment)).append(" up to ");
        text.append(length(moved, most));
      }
    }
    return text.toString();
  }

  private String length(SurfaceShift moved, double mm) {
    return mm <= moved.roundingMm() ? "under " + in.length(moved.roundingMm()) : in.length(mm);
  }

  private static String words(Treatment treatment) {
    return switch (treatment) {
      case PLATE -> "where it is plated";
      case BARE -> "where it stays bare";
      case OUT_OF_SCOPE -> "out of scope";
    };
  }

  private static String point(Vector3D p) {
    return "("
        + PlainNumber.of(p.getX())
        + ", "
        + PlainNumber.of(p.getY())
        + ", "
        + PlainNumber.of(p.getZ())
        + ") mm";
  }
}
