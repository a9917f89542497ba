package org.seamwright.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.region.Mark;
import org.seamwright.region.MarkException;
import org.seamwright.region.Marks;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;

/** Which faces of a marked piece are show faces: those in the places of marks named in the job. */
final class ShowFaces {
  private ShowFaces() {}

  /**
   * Finds show faces.
   *
   * @param map the piece with all its marks
   * @return one entry per face of the map
   * @throws PlanException if a name is not that of a mark that plates a place of its own
   */
  static boolean[] of(Job job, Path jobFile, Piece piece, SurfaceMap map) throws PlanException {
    boolean[] show = new boolean[map.mesh().faceCount()];
    List<Mark> marks = new ArrayList<>();
    List<String> names = job.sections().seams().showFaces();
    for (int i = 0; i < names.size(); i++) {
      marks.addAll(named(job, jobFile, names.get(i), "sections.seams.showFaces[" + i + "]"));
    }
    if (marks.isEmpty()) {
      return show;
    }
    SurfaceMap places = places(jobFile, piece, marks);
    FaceTree tree = FaceTree.of(places.mesh());
    double[] centre = new double[3];
    for (int f = 0; f < show.length; f++) {
      if (map.of(f) == Treatment.PLATE) {
        Faces.centroid(map.mesh(), f, centre);
        show[f] =
            tree.nearest(centre[0], centre[1], centre[2])
                .filter(p -> places.of(p.face()) == Treatment.PLATE)
                .isPresent();
      }
    }
    return show;
  }

  private static SurfaceMap places(Path jobFile, Piece piece, List<Mark> marks)
      throws PlanException {
    try {
      return Marks.evaluate(piece.mesh(), piece.labels(), Treatment.BARE, marks, Progress.NONE);
    } catch (MarkException e) {
      throw new PlanException(
          jobFile.toString(), "sections.seams.showFaces", e.problem(), e.remedy());
    }
  }

  private static List<Mark> named(Job job, Path jobFile, String name, String place)
      throws PlanException {
    List<Mark> found = job.marks().stream().filter(m -> m.name().equals(name)).toList();
    boolean plates =
        found.stream()
            .allMatch(
                m ->
                    m instanceof Mark.Place p
                        && p.treatment() == Treatment.PLATE
                        && !(m instanceof Mark.Grow)
                        && !(m instanceof Mark.Smooth));
    if (found.isEmpty() || !plates) {
      throw new PlanException(
          jobFile.toString(),
          place,
          found.isEmpty()
              ? "No mark is called \"" + name + "\""
              : "The mark \"" + name + "\" has no place of its own that is plated",
          "Name a mark that says \"plate\" of a place, such as a box or a fill up to creases.");
    }
    return found;
  }
}
