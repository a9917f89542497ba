package org.seamwright.window;

import java.util.Optional;
import org.seamwright.basis.Progress;
import org.seamwright.job.PlannedJob;
import org.seamwright.mesh.Bounds;

/**
 * A planned job made ready to be shown and pointed at. Made off the user interface's thread: the
 * search tree and the light take about a second per million faces, what belongs to the plan less.
 */
public final class OpenedPiece {
  private final PlannedJob job;
  private final PieceModel model;
  private final ShownSurface surface;
  private final SectionPlaces places;

  private OpenedPiece(
      PlannedJob job, PieceModel model, ShownSurface surface, SectionPlaces places) {
    this.job = job;
    this.model = model;
    this.surface = surface;
    this.places = places;
  }

  /** Makes a planned job ready. */
  public static OpenedPiece of(PlannedJob job, Progress progress) {
    PieceModel model = PieceModel.of(job.mesh(), job.survey().closed());
    progress.at(0.6);
    return of(job, model);
  }

  /** Makes a planned job ready on its piece. */
  static OpenedPiece of(PlannedJob job, PieceModel model) {
    int[] origin = job.sections().parentFace().clone();
    for (int f = 0; f < origin.length; f++) {
      origin[f] = job.map().parentFace()[origin[f]];
    }
    ShownSurface surface =
        new ShownSurface(
            job.sections().mesh(), origin, FaceClasses.of(job), model.mesh().faceCount());
    return new OpenedPiece(job, model, surface, SectionPlaces.of(job.sections()));
  }

  /** The job as planned. */
  public PlannedJob job() {
    return job;
  }

  /** Box around the piece, mm. */
  public Bounds bounds() {
    return model.bounds();
  }

  /** A viewer of the piece. */
  public OrbitCamera camera() {
    return model.camera();
  }

  /** The piece before it was cut. */
  PieceModel model() {
    return model;
  }

  /** What is drawn. */
  ShownSurface surface() {
    return surface;
  }

  /** Places within each section. */
  SectionPlaces places() {
    return places;
  }

  /** What a ray meets first: O(log n). */
  public Optional<Spot> under(PickRay ray) {
    return model.firstHit(ray).flatMap(hit -> spot(Pick.of(model, ray, hit)));
  }

  /** What is there at a place on the uncut piece. */
  Optional<Spot> spot(Pick pick) {
    int part = surface.partAt(pick.face(), pick.x(), pick.y(), pick.z());
    return part < 0
        ? Optional.empty()
        : Optional.of(new Spot(part, surface.faceClass(part), pick.x(), pick.y(), pick.z()));
  }

  /** Whether nothing of the piece stands between a place on it and the outside in a direction. */
  boolean sees(double[] place, double dx, double dy, double dz) {
    return model.sees(place, dx, dy, dz);
  }
}
