package org.seamwright.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ForkJoinTask;
import org.seamwright.basis.Count;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * Gathers what is known of a mesh into a {@link Survey}, with a notice for everything a user should
 * know before trusting the figures. Nothing is mended. O(n).
 */
public final class Surveyor {
  /** Roughness below this share of the area is not worth telling. */
  private static final double ROUGH = 1e-3;

  /** Folded facets with less than this share of the area are ornament rather than a fault. */
  private static final double FOLDED = 1e-3;

  /** A bar wider than this share of the area is told. */
  private static final double UNCERTAIN = 0.05;

  private Surveyor() {}

  /**
   * Surveys a mesh.
   *
   * @param mesh the piece in mm
   * @param topology its edges
   * @param droppedFaces faces left out while welding, counted as degenerate
   * @param progress told the share done; may cancel
   */
  public static Survey survey(Mesh mesh, Topology topology, int droppedFaces, Progress progress) {
    return survey(mesh, topology, droppedFaces, Survey.DEFAULT_TIP_MM, progress);
  }

  /**
   * Surveys a mesh for a brush.
   *
   * @param mesh the piece in mm
   * @param topology its edges
   * @param droppedFaces faces left out while welding, counted as degenerate
   * @param tipMm length of the brush's tip, mm, above zero: what is finer and all over is noise
   * @param progress told the share done; may cancel
   */
  public static Survey survey(
      Mesh mesh, Topology topology, int droppedFaces, double tipMm, Progress progress) {
    ForkJoinTask<Parts> joined = ForkJoinTask.adapt(() -> Parts.of(mesh, topology)).fork();
    Fans fans = Fans.of(mesh);
    Bounds bounds = fans.bounds(mesh);
    progress.at(0.05);
    FacetSums sums = FacetSums.of(mesh, bounds);
    int duplicates = Duplicates.count(mesh, topology);
    progress.at(0.2);
    SmoothSurface.Estimate smooth =
        SmoothSurface.of(mesh, topology, fans, sums.areaMm2(), progress.between(0.2, 0.6));
    Survey.SmoothArea area =
        ScanNoise.takenOff(
            mesh,
            topology,
            smooth.area().withTip(tipMm),
            sums.areaMm2(),
            progress.between(0.6, 0.95));
    Parts parts = joined.join();
    Survey survey =
        new Survey(
            mesh.faceCount(),
            fans.used(),
            sums.areaMm2(),
            area,
            sums.volumeMm3(),
            bounds,
            parts.count(),
            topology.openEdges(),
            topology.branchingEdges(),
            topology.flippedEdges(),
            duplicates,
            droppedFaces + sums.withoutArea(),
            topology.openEdges() == 0 && topology.branchingEdges() == 0,
            List.of());
    progress.at(1);
    List<Notice> notices = notices(survey, smooth, largestPart(mesh, parts));
    tell(
        notices,
        "nearly-closed-edges",
        NearlyClosed.count(mesh, topology),
        "open edge has",
        "open edges have",
        " another beside it within a hundred-thousandth of the model's size: the file wrote shared"
            + " corners with different last digits. Parts and holes are counted too many; the area"
            + " is hardly touched. The cleaning step weld joins such corners.");
    return withNotices(survey, notices);
  }

  private static Survey withNotices(Survey s, List<Notice> notices) {
    return new Survey(
        s.triangles(),
        s.vertices(),
        s.areaMm2(),
        s.smooth(),
        s.volumeMm3(),
        s.bounds(),
        s.parts(),
        s.openEdges(),
        s.branchingEdges(),
        s.flippedEdges(),
        s.duplicateTriangles(),
        s.degenerateTriangles(),
        s.closed(),
        notices);
  }

  /** Area of the largest part, mm². */
  private static double largestPart(Mesh mesh, Parts parts) {
    if (parts.count() < 2) {
      return 0;
    }
    double[] area = new double[parts.count()];
    for (int f = 0; f < mesh.faceCount(); f++) {
      area[parts.of()[f]] += Faces.area(mesh, f);
    }
    double largest = 0;
    for (double a : area) {
      largest = Math.max(largest, a);
    }
    return largest;
  }

  private static List<Notice> notices(Survey s, SmoothSurface.Estimate smooth, double largestPart) {
    List<Notice> list = new ArrayList<>();
    tell(
        list,
        "open-edges",
        s.openEdges(),
        "edge has",
        "edges have",
        " a face on one side only: the surface has holes, or faces that meet without sharing corners."
            + " The volume has no meaning. The cleaning step weld joins corners that are nearly the"
            + " same, splitEdges splits long edges beside short ones, and fillHoles then closes holes"
            + " up to a size.");
    tell(
        list,
        "branching-edges",
        s.branchingEdges(),
        "edge has",
        "edges have",
        " three or more faces. Inside and outside are not clear there; area may be counted that no"
            + " brush can reach. The cleaning step dropFaulty takes out faces that are there twice,"
            + " dropHidden walls between bodies that touch.");
    tell(
        list,
        "flipped-edges",
        s.flippedEdges(),
        "edge lies",
        "edges lie",
        " between faces turned against each other. The area is not touched by it, the volume is. The"
            + " cleaning step turnOutward turns them.");
    tell(
        list,
        "duplicate-triangles",
        s.duplicateTriangles(),
        "face repeats an earlier one and is",
        "faces repeat an earlier one and are",
        " counted twice in the area. The cleaning step dropFaulty takes out what is repeated.");
    tell(
        list,
        "degenerate-triangles",
        s.degenerateTriangles(),
        "face has",
        "faces have",
        " no area. The cleaning step dropFaulty takes out such faces.");
    if (s.parts() > 1) {
      tell(
          list,
          "several-parts",
          s.parts(),
          "part makes",
          "parts make",
          " up the model and are not joined; the largest has "
              + percent(largestPart / s.areaMm2())
              + " of the area. Check that all belong to the piece. The cleaning steps keepLargest,"
              + " keepAbove and keepParts drop what does not, cutTable a table that was scanned along,"
              + " dropInner what lies inside.");
    }
    if (s.closed() && s.flippedEdges() == 0 && s.volumeMm3() < 0) {
      list.add(
          new Notice(
              "inside-out",
              1,
              "The faces are turned inwards; the volume is negative. The cleaning step turnOutward"
                  + " turns them."));
    }
    surfaceNotices(list, s, smooth);
    return list;
  }

  private static void surfaceNotices(List<Notice> list, Survey s, SmoothSurface.Estimate smooth) {
    if (smooth.folds().areaMm2() > FOLDED * s.areaMm2()) {
      tell(
          list,
          "folded-facets",
          smooth.folds().count(),
          "face is",
          "faces are",
          " folded against all neighbours, like a paper lantern ("
              + percent(smooth.folds().areaMm2() / s.areaMm2())
              + " of the area)."
              + " Faces folded so over-measure without limit as they get finer (H. A. Schwarz,"
              + " 1890); unless the piece is knurled or pleated like that, their area can be far"
              + " above that of the piece. Export it again with more even faces, or clean the"
              + " scan.");
    }
    if (s.smooth().noiseMm2() > 0) {
      list.add(
          new Notice(
              "scan-noise",
              1,
              String.format(
                      Locale.ROOT,
                      "Scan noise, all over and finer than a brush's tip of %.3g mm, adds about %.4g mm² (",
                      s.smooth().tipMm(),
                      s.smooth().noiseMm2())
                  + percent(s.smooth().noiseMm2() / s.areaMm2())
                  + " of the faces' area), which no brush sees. It has been taken off the smooth area,"
                  + " which is an estimate; the area of the faces still has it."));
    }
    if (s.smooth().roughnessMm2() > ROUGH * s.areaMm2()) {
      list.add(
          new Notice(
              "rough-surface",
              1,
              "The surface is rough at the scale of its faces, as scans are; that adds about "
                  + percent(s.smooth().roughnessMm2() / s.areaMm2())
                  + " to the faces' area, and has been taken off the smooth area."));
    }
    double width = s.smooth().highMm2() - s.smooth().lowMm2();
    if (width > UNCERTAIN * s.areaMm2()) {
      list.add(
          new Notice(
              "coarse-facets",
              1,
              "The faces leave the area of the surface behind them uncertain by "
                  + percent(width / 2 / s.areaMm2())
                  + " either way. A finer model would tell."));
    }
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%.2g%%", 100 * share);
  }

  /** Tells of a count, if there is one: words for one, for several, and for both after them. */
  private static void tell(
      List<Notice> list, String code, long count, String one, String several, String rest) {
    if (count > 0) {
      list.add(new Notice(code, count, Count.of(count, one, several) + rest));
    }
  }
}
