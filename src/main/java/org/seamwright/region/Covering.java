package org.seamwright.region;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.function.IntPredicate;
import org.apache.commons.geometry.euclidean.threed.AffineTransformMatrix3D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.measure.ClosedBody;
import org.seamwright.measure.TipReach;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;

/**
 * Finds what a mark covers: cuts the surface along its edge and gives one entry per face of the cut
 * surface.
 */
final class Covering implements Mark.Cases<boolean[], MarkException> {
  /** Share of the piece's diagonal beyond which a point is called far off: a slip, not a scan. */
  private static final double FAR = 0.05;

  /** Diagonals off the surface beyond which a point is refused: cm for mm puts it about 4 off. */
  private static final double LOST = 3;

  private final Piece piece;
  private final Labels labels;
  private final EditableSurface surface;
  private final Step step;
  private final List<Notice> notices;
  private final Progress progress;
  private final PlaneMarks planes;

  /** One code per face where not all covered faces get the same; else empty. */
  private byte[] codes = new byte[0];

  Covering(
      Piece piece,
      Labels labels,
      EditableSurface surface,
      Step step,
      List<Notice> notices,
      Progress progress) {
    this.piece = piece;
    this.labels = labels;
    this.surface = surface;
    this.step = step;
    this.notices = notices;
    this.progress = progress;
    this.planes = new PlaneMarks(surface, piece.diagonalMm(), progress);
  }

  @Override
  public boolean[] halfSpace(Mark.HalfSpace mark) {
    return planes.halfSpace(mark);
  }

  @Override
  public boolean[] inBox(Mark.InBox mark) {
    return planes.box(mark, step.motion());
  }

  @Override
  public boolean[] sector(Mark.Sector mark) {
    return planes.sector(mark);
  }

  @Override
  public boolean[] ring(Mark.Ring mark) {
    return new RingMark(surface, mark, piece.diagonalMm()).cover(progress);
  }

  @Override
  public boolean[] inside(Mark.Inside mark) throws MarkException {
    Mesh own =
        mark.mesh().orElseThrow(() -> new IllegalStateException("Read the body before marking"));
    Mesh placed = moved(own, step.motion());
    Topology topology = Topology.of(placed);
    OptionalInt gap = ClosedBody.gap(placed, topology);
    if (gap.isPresent() || placed.faceCount() == 0) {
      throw new MarkException(
          step.owner(),
          mark,
          "file",
          "the body " + mark.body().file() + " is not closed" + gapText(own, topology, gap),
          "Close its holes in the program that made it; its inside is not clear.");
    }
    ClosedBody body = ClosedBody.of(placed, progress.between(0, 0.1));
    return new BodyCut(surface, body, piece.diagonalMm()).cover(progress.between(0.1, 1));
  }

  private static String gapText(Mesh body, Topology topology, OptionalInt gap) {
    if (gap.isEmpty()) {
      return ": it has no faces";
    }
    int v = body.corner()[gap.getAsInt()];
    return String.format(
        Locale.ROOT,
        ": %,d of its edges have a face on one side only, the first near (%.3f, %.3f, %.3f) mm",
        topology.openEdges() + topology.branchingEdges(),
        body.x(v),
        body.y(v),
        body.z(v));
  }

  private static Mesh moved(Mesh mesh, AffineTransformMatrix3D motion) {
    if (motion.equals(AffineTransformMatrix3D.identity())) {
      return mesh;
    }
    double[] xyz = new double[mesh.xyz().length];
    for (int v = 0; v < mesh.vertexCount(); v++) {
      double[] p = motion.apply(Vector3D.of(mesh.x(v), mesh.y(v), mesh.z(v))).toArray();
      System.arraycopy(p, 0, xyz, 3 * v, 3);
    }
    return Mesh.of(xyz, mesh.corner());
  }

  @Override
  public boolean[] outOfReach(Mark.OutOfReach mark) throws MarkException {
    if (mark.radiusMm() < ReachMark.LEAST_SHARE * piece.diagonalMm()) {
      throw new MarkException(
          step.owner(),
          mark,
          "radius",
          "the tip is so small beside the piece that its line would take millions of faces",
          "Give the radius of the tip that will be worked with; check the mesh's unit.");
    }
    TipReach reach = piece.reach(mark.radiusMm(), progress.between(0, 0.1));
    boolean[] inner = piece.isInnerShell(Progress.NONE);
    ReachMark work = new ReachMark(surface, reach, piece.normals(), mark.radiusMm());
    boolean[] covered = work.cover(progress.between(0.1, 1));
    tellCoarse(mark, work.coarseMm2());
    for (int f = 0; f < covered.length; f++) {
      covered[f] |= inner[surface.parent(f)];
    }
    return covered;
  }

  @Override
  public boolean[] innerShells(Mark.InnerShells mark) {
    return ofParents(piece.isInnerShell(progress));
  }

  @Override
  public boolean[] creaseFill(Mark.CreaseFill mark) throws MarkException {
    int seed = drop(mark, List.of(mark.point())).get(0).face();
    boolean[] reached =
        FloodMarks.upToCreases(
            piece.mesh(),
            piece.ring(),
            piece.normals(),
            seed,
            mark.angleDegrees(),
            mark.gapsMm(),
            progress);
    tell(mark, Pockets.fill(piece.mesh(), piece.ring(), reached));
    return ofParents(reached);
  }

  @Override
  public boolean[] wholePart(Mark.WholePart mark) throws MarkException {
    int seed = drop(mark, List.of(mark.point())).get(0).face();
    return ofParents(FloodMarks.part(piece.parts(), seed));
  }

  @Override
  public boolean[] near(Mark.Near mark) throws MarkException {
    List<SurfacePoint> places = drop(mark, mark.path());
    NearMark work = new NearMark(piece, surface, progress);
    boolean[] covered = work.cover(places, mark.radiusMm());
    tellBroken(mark, work.broken());
    return covered;
  }

  @Override
  public boolean[] outline(Mark.Outline mark) throws MarkException {
    List<SurfacePoint> places = drop(mark, mark.path());
    SurfacePoint inside = drop(mark, List.of(mark.inside())).get(0);
    OutlineMark work = new OutlineMark(piece, surface);
    boolean[] covered = work.cover(places, inside, progress);
    if (work.broken() > 0 || work.isCrossing() || work.isLeaking()) {
      throw new MarkException(
          step.owner(),
          mark,
          "path",
          work.broken() > 0
              ? "a side of the outline has no surface between its ends"
              : work.isCrossing()
                  ? "sides of the outline cross or touch each other"
                  : "the outline does not part the surface in two: its sides are joined some other"
                      + " way round",
          "Move its corners so that the outline runs round the place on one part of the piece.");
    }
    return covered;
  }

  @Override
  public boolean[] facing(Mark.Facing mark) {
    Vector3D direction = mark.direction().normalize();
    double least = Math.cos(Math.toRadians(mark.angleDegrees()));
    double[] normal = piece.normals();
    boolean[] faces = new boolean[piece.mesh().faceCount()];
    for (int f = 0; f < faces.length; f++) {
      double x = normal[3 * f];
      double y = normal[3 * f + 1];
      double z = normal[3 * f + 2];
      double along = x * direction.getX() + y * direction.getY() + z * direction.getZ();
      boolean flat = x == 0 && y == 0 && z == 0;
      faces[f] = !flat && along >= least - PlaneMarks.SNAP;
    }
    return ofParents(faces);
  }

  @Override
  public boolean[] named(Mark.Named mark) throws MarkException {
    boolean[] wanted = new boolean[labels.names().size()];
    boolean any = false;
    for (int i = 0; i < wanted.length; i++) {
      String name = labels.names().get(i);
      wanted[i] =
          name.equals(mark.label()) || Arrays.asList(name.split(" / ")).contains(mark.label());
      any |= wanted[i];
    }
    if (!any) {
      List<String> known = labels.names().stream().filter(n -> !n.isEmpty()).limit(12).toList();
      throw new MarkException(
          step.owner(),
          mark,
          "label",
          "the mesh file has no group, object, material or solid named '" + mark.label() + "'",
          known.isEmpty()
              ? "The file names no faces; use another kind of mark."
              : "It has: " + String.join(", ", known) + ".");
    }
    boolean[] faces = new boolean[piece.mesh().faceCount()];
    for (int f = 0; f < faces.length; f++) {
      faces[f] = wanted[labels.of()[f]];
    }
    return ofParents(faces);
  }

  @Override
  public boolean[] grow(Mark.Grow mark) {
    byte own = mark.treatment().code();
    IntPredicate into =
        f ->
            mark.into().isPresent()
                ? surface.treatment(f) == mark.into().get().code()
                : surface.treatment(f) != own;
    boolean[] gained =
        new GrowMark(surface, progress).gained(f -> surface.treatment(f) == own, into, mark.byMm());
    for (int f = 0; f < gained.length; f++) {
      gained[f] &= into.test(f);
    }
    return gained;
  }

  @Override
  public boolean[] smooth(Mark.Smooth mark) {
    byte own = mark.treatment().code();
    codes = new SmoothMark(surface, own).codes(mark.radiusMm(), progress);
    return surface.facesWhere(f -> codes[f] == own || surface.treatment(f) == own);
  }

  /** What the mark makes of a face that it covers. */
  byte after(int face) {
    if (codes.length > 0) {
      return codes[face];
    }
    if (step.mark() instanceof Mark.Place place) {
      return place.treatment().code();
    }
    return surface.treatment(face) == Treatment.PLATE.code()
        ? Treatment.BARE.code()
        : Treatment.PLATE.code();
  }

  @Override
  public boolean[] mirror(Mark.Mirror mark) {
    throw new AssertionError("Repeats are written out before");
  }

  @Override
  public boolean[] turn(Mark.Turn mark) {
    throw new AssertionError("Repeats are written out before");
  }

  @Override
  public boolean[] invert(Mark.Invert mark) {
    boolean[] covered = new boolean[surface.faceCount()];
    for (int f = 0; f < covered.length; f++) {
      covered[f] = surface.treatment(f) != Treatment.OUT_OF_SCOPE.code();
    }
    return covered;
  }

  private void tell(Mark mark, Pockets pockets) {
    if (pockets.count() > 0) {
      notices.add(
          new Notice(
              Marks.POCKETS,
              pockets.count(),
              String.format(
                  Locale.ROOT,
                  "The %s took in %,d pocket(s) between creases, too small to be worked apart:"
                      + " %.3g mm² together.",
                  called(mark),
                  pockets.count(),
                  pockets.areaMm2())));
    }
  }

  private void tellBroken(Mark mark, int legs) {
    if (legs > 0) {
      notices.add(
          new Notice(
              Marks.PATH_BROKEN,
              legs,
              "The path of "
                  + called(mark)
                  + " jumps between parts that no surface joins; what lies between was left out."));
    }
  }

  private void tellCoarse(Mark mark, double areaMm2) {
    if (areaMm2 > 0) {
      notices.add(
          new Notice(
              Marks.REACH_COARSE,
              1,
              String.format(
                  Locale.ROOT,
                  "The edge of the %s is so long that it was left coarse on faces of %.3g mm²"
                      + " together; what of them is out of reach goes by their middles.",
                  called(mark),
                  areaMm2)));
    }
  }

  private boolean[] ofParents(boolean[] reached) {
    boolean[] covered = new boolean[surface.faceCount()];
    for (int f = 0; f < covered.length; f++) {
      covered[f] = reached[surface.parent(f)];
    }
    return covered;
  }

  /**
   * The nearest places of the surface; a notice tells of points far off it. A point that lies
   * several sizes of the piece off was given in another unit or for another piece, and is refused.
   */
  private List<SurfacePoint> drop(Mark mark, List<Vector3D> points) throws MarkException {
    List<SurfacePoint> dropped = new ArrayList<>();
    int far = 0;
    double furthest = 0;
    for (Vector3D point : points) {
      SurfacePoint at = piece.nearest(point).orElseThrow();
      double distance = piece.position(at).distance(point);
      if (distance > LOST * piece.diagonalMm()) {
        throw new MarkException(
            step.owner(),
            mark,
            points.size() == 1 ? "" : "path[" + dropped.size() + "]",
            String.format(
                Locale.ROOT,
                "the point lies %,.1f mm off the surface of a piece that is %,.1f mm large",
                distance,
                piece.diagonalMm()),
            "Give points in mm, in the mesh's own coordinates times its unit; check that unit.");
      }
      if (distance > FAR * piece.diagonalMm()) {
        far++;
        furthest = Math.max(furthest, distance);
      }
      dropped.add(at);
    }
    if (far > 0) {
      notices.add(
          new Notice(
              Marks.POINT_FAR,
              far,
              String.format(
                  Locale.ROOT,
                  "The %s has %d of %d points off the surface, by up to %,.1f mm; the nearest"
                      + " place was taken.",
                  called(mark),
                  far,
                  points.size(),
                  furthest)));
    }
    return dropped;
  }

  private String called(Mark mark) {
    return Marks.called(step.owner(), mark);
  }
}
