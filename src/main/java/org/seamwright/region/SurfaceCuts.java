package org.seamwright.region;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;

/**
 * A mesh that is cut again and again along planes, levels of a field and drawn lines, each at the
 * cost of the faces it meets. Faces and vertices keep their numbers, pieces come at the end, so
 * values per face are carried over by {@link #carried}. Neighbours stay welded on any soup.
 *
 * <p>For work on sections, as {@link MarkSession} is for marks. Not for two threads at a time.
 */
public final class SurfaceCuts {
  /** As for outlines: places this near to a vertex or edge, as a share of a leg, go onto it. */
  private static final double SNAP_SHARE = 1e-3;

  /** Legs of a line that follows edges are short: no snap below this share of the diagonal. */
  private static final double LEAST_SNAP = 1e-7;

  private final Piece piece;
  private final EditableSurface surface;

  /** A function of space that changes by no more than 1 mm per mm, such as a distance. */
  @FunctionalInterface
  public interface Field {
    /** Value at a place, mm. */
    double at(double x, double y, double z);
  }

  /**
   * A line laid.
   *
   * @param vertices those its points have become
   * @param broken how many legs have no way between their ends
   */
  public record Laid(int[] vertices, int broken) {}

  private SurfaceCuts(Piece piece, EditableSurface surface) {
    this.piece = piece;
    this.surface = surface;
  }

  /** Starts from a mesh. */
  public static SurfaceCuts of(Mesh mesh) {
    Piece piece = new Piece(mesh);
    return new SurfaceCuts(piece, new EditableSurface(mesh, piece.ring(), Treatment.PLATE.code()));
  }

  /** An independent copy. */
  public SurfaceCuts copy() {
    return new SurfaceCuts(piece, surface.copy());
  }

  /** Number of faces now. */
  public int faceCount() {
    return surface.faceCount();
  }

  /** The surface as it is now. */
  public Mesh toMesh() {
    return surface.toMesh();
  }

  /** Some faces as a mesh of their own. */
  public Mesh part(int[] faces) {
    return new Patch.Maker(surface).of(faces).mesh();
  }

  /** One entry per face: the face at the start that it is a piece of. */
  public int[] parents() {
    return surface.parents();
  }

  /** Start vertex of a half-edge. */
  public int from(int h) {
    return surface.from(h);
  }

  /** End vertex of a half-edge. */
  public int to(int h) {
    return surface.to(h);
  }

  /** The next half-edge on the same edge; after all of them h again. */
  public int ring(int h) {
    return surface.ring(h);
  }

  /** Area of a face, mm². */
  public double area(int face) {
    return surface.area(face);
  }

  /** Length of a half-edge, mm. */
  public double length(int h) {
    return surface.length(h);
  }

  /** Coordinates, 3 per vertex, mm; not to be written, and valid until the next cut. */
  public double[] coordinates() {
    return surface.coordinates();
  }

  /** Whether a half-edge lies on a line laid since {@link #clearLines}. */
  public boolean isOnLine(int h) {
    return surface.isMarked(h);
  }

  /** Forgets which edges lie on lines. */
  public void clearLines() {
    surface.clearMarks();
  }

  /** The face nearest to a point as the surface is now; empty only without faces. */
  public Optional<Integer> faceAt(Vector3D point) {
    return piece
        .nearest(point)
        .map(at -> Patch.locate(new Patch.Maker(surface), surface, piece, List.of(at))[0].face());
  }

  /** How far a point lies off the surface, mm. */
  public double farOff(Vector3D point) {
    return piece.nearest(point).map(at -> piece.position(at).distance(point)).orElse(0.0);
  }

  /** Diagonal of the box around the mesh at the start, mm. */
  public double diagonalMm() {
    return piece.diagonalMm();
  }

  /** The face at the start that a face is a piece of. */
  public int parent(int face) {
    return surface.parent(face);
  }

  /** Number of vertices now. */
  public int vertexCount() {
    return surface.vertexCount();
  }

  /** Cuts along a plane. */
  public void alongPlane(Vector3D point, Vector3D unit, IntPredicate faces) {
    surface.cutAlongZero(distances(point, unit), admitted(faces), Progress.NONE);
  }

  /**
   * Cuts where a value per vertex, linear inside faces, is 0.
   *
   * @param value one entry per vertex; written to
   * @return one entry per vertex, that of new ones 0; at the end there may be more entries
   */
  public double[] alongZero(double[] value, IntPredicate faces) {
    return surface.cutAlongZero(value, admitted(faces), Progress.NONE);
  }

  /** The choice of faces as it is now, kept for the pieces of those that are cut. */
  private IntPredicate admitted(IntPredicate faces) {
    for (int f = 0; f < surface.faceCount(); f++) {
      Treatment code = faces.test(f) ? Treatment.PLATE : Treatment.BARE;
      surface.setTreatment(f, code.code());
    }
    return f -> surface.treatment(f) == Treatment.PLATE.code();
  }

  /**
   * Cuts along the half of a plane that lies on one side of a line.
   *
   * @param point on the line
   * @param along unit vector in the plane, from the line to where it is cut
   * @param unit square to the plane
   */
  public void alongHalfPlane(Vector3D point, Vector3D along, Vector3D unit, IntPredicate faces) {
    new PlaneMarks(surface, piece.diagonalMm(), Progress.NONE)
        .cutAlongHalfPlane(point, along, unit, admitted(faces));
  }

  /** Cuts where a field is 0, to within a tolerance. */
  public void alongLevel(Field field, double toleranceMm, IntPredicate faces) {
    new LevelCut(surface, field::at, toleranceMm).cut(admitted(faces), Progress.NONE);
  }

  private double[] distances(Vector3D point, Vector3D unit) {
    double snapMm = PlaneMarks.SNAP * piece.diagonalMm();
    double[] field = new double[surface.vertexCount()];
    for (int v = 0; v < field.length; v++) {
      double d =
          (surface.at(v, 0) - point.getX()) * unit.getX()
              + (surface.at(v, 1) - point.getY()) * unit.getY()
              + (surface.at(v, 2) - point.getZ()) * unit.getZ();
      field[v] = Math.abs(d) <= snapMm ? 0 : d;
    }
    return field;
  }

  /**
   * Lays a line: the shortest ways between its points become edges that {@link #isOnLine} tells.
   *
   * @param path at least two points on or near the surface
   * @param faces where ways may lead
   */
  public Laid lay(List<Vector3D> path, IntPredicate faces) {
    List<SurfacePoint> places = new ArrayList<>();
    double length = 0;
    for (Vector3D point : path) {
      places.add(piece.nearest(point).orElseThrow());
      if (places.size() > 1) {
        length += point.distance(path.get(places.size() - 2));
      }
    }
    double leg = Math.max(length / (path.size() - 1), LEAST_SNAP * piece.diagonalMm());
    Patch.Maker patches = new Patch.Maker(surface);
    Stroke stroke =
        new Stroke(
            piece, surface, patches, new Front(surface, leg), SNAP_SHARE * leg, admitted(faces));
    int[] vertices = stroke.lay(places);
    return new Laid(vertices, stroke.broken());
  }

  /**
   * Carries a value per face over to the pieces made since.
   *
   * @param value one entry per face before the cuts
   */
  public int[] carried(int[] value) {
    int[] carried = Arrays.copyOf(value, surface.faceCount());
    boolean[] done = new boolean[surface.faceCount() - value.length];
    for (int f = value.length; f < carried.length; f++) {
      if (!done[f - value.length]) {
        // A piece stands in the list after the face that it was split off, or after a later piece
        // of the same.
        int last = surface.parent(f);
        for (int piece = last; piece >= 0; piece = surface.nextPiece(piece)) {
          if (piece >= value.length) {
            carried[piece] = carried[last];
            done[piece - value.length] = true;
          }
          last = piece;
        }
      }
    }
    return carried;
  }
}
