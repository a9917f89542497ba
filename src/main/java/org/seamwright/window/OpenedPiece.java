package org.seamwright.window;

import java.util.List;
import java.util.Optional;
import org.seamwright.basis.Progress;
import org.seamwright.job.PlannedJob;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Mesh;

/**
 * A planned job made ready to be shown and pointed at. Made off the user interface's thread:
 * building the search tree and the arrays to draw takes about a second per million faces.
 */
public final class OpenedPiece {
  private final PlannedJob job;
  private final Bounds bounds;
  private final double[] outline;
  private final int[] faceClass;
  private final FaceTree tree;
  private final List<MeshChunk> chunks;
  private final SectionPlaces places;

  private OpenedPiece(
      PlannedJob job,
      Bounds bounds,
      double[] outline,
      int[] faceClass,
      FaceTree tree,
      List<MeshChunk> chunks,
      SectionPlaces places) {
    this.job = job;
    this.bounds = bounds;
    this.outline = outline;
    this.faceClass = faceClass;
    this.tree = tree;
    this.chunks = chunks;
    this.places = places;
  }

  /** Makes a planned job ready. */
  public static OpenedPiece of(PlannedJob job, Progress progress) {
    Mesh mesh = job.sections().mesh();
    Bounds bounds = mesh.bounds();
    double[] centre = {
      (bounds.minX() + bounds.maxX()) / 2,
      (bounds.minY() + bounds.maxY()) / 2,
      (bounds.minZ() + bounds.maxZ()) / 2
    };
    int[] faceClass = FaceClasses.of(job);
    double[] outline = Outline.of(mesh);
    progress.at(0.1);
    FaceTree tree = FaceTree.of(mesh);
    progress.at(0.4);
    SectionPlaces places = SectionPlaces.of(job.sections());
    progress.at(0.5);
    CornerNormals shading = CornerNormals.of(job.mesh());
    progress.at(0.75);
    List<MeshChunk> chunks = MeshChunk.of(job, centre, shading, faceClass);
    progress.at(1);
    return new OpenedPiece(job, bounds, outline, faceClass, tree, chunks, places);
  }

  /** The job as planned. */
  public PlannedJob job() {
    return job;
  }

  /** Box around the piece, mm. */
  public Bounds bounds() {
    return bounds;
  }

  /** A viewer of the piece. */
  public OrbitCamera camera() {
    return new OrbitCamera(bounds, outline);
  }

  /** What to draw. */
  List<MeshChunk> chunks() {
    return chunks;
  }

  /** Places within each section. */
  SectionPlaces places() {
    return places;
  }

  /** What a ray meets first: O(log n). */
  public Optional<Spot> under(PickRay ray) {
    return tree.firstHit(ray.ox(), ray.oy(), ray.oz(), ray.dx(), ray.dy(), ray.dz())
        .map(
            hit ->
                new Spot(
                    hit.point().face(),
                    faceClass[hit.point().face()],
                    ray.at(hit.distance(), 0),
                    ray.at(hit.distance(), 1),
                    ray.at(hit.distance(), 2)));
  }

  /**
   * Whether nothing of the piece stands between a place on it and the outside in a direction.
   *
   * @param place x, y, z on the surface, mm
   * @param dx direction towards the viewer, of length 1
   */
  boolean sees(double[] place, double dx, double dy, double dz) {
    // Starts off the surface by far more than rounding and far less than anything visible.
    double off = 1e-6 * bounds.diagonal();
    return tree.firstHit(place[0] + off * dx, place[1] + off * dy, place[2] + off * dz, dx, dy, dz)
        .isEmpty();
  }
}
