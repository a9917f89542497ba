package org.seamwright.region;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamwright.basis.Progress;
import org.seamwright.measure.Revolution;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/**
 * What holds of any marks on any mesh; the seed is the name of the case. {@code
 * -Dseamwright.seeds=1000} tries so many of them.
 */
class MarksPropertyTest {
  private static final int KINDS = 19;
  private static final int MESHES = 13;

  static IntStream seeds() {
    return IntStream.range(0, Integer.getInteger("seamwright.seeds", 39));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void areasAddUpAndNothingTears(int seed) throws MarkException {
    Random random = new Random(seed);
    Mesh mesh = mesh(seed % MESHES);
    Mark[] marks = marks(mesh, random);
    SurfaceMap map = Maps.of(mesh, marks);
    Maps.requireSound(mesh, map);
    for (SurfaceMap.Effect effect : map.effects()) {
      assertThat(effect.changedMm2()).isBetween(0.0, effect.coveredMm2() * (1 + 1e-12));
    }
    SurfaceMap again = Maps.of(mesh, marks);
    assertThat(again.mesh().xyz()).isEqualTo(map.mesh().xyz());
    assertThat(again.mesh().corner()).isEqualTo(map.mesh().corner());
    assertThat(again.treatment()).isEqualTo(map.treatment());
    assertThat(again.parentFace()).isEqualTo(map.parentFace());
    assertThat(again.effects()).isEqualTo(map.effects());
    assertThat(again.notices()).isEqualTo(map.notices());
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void addingOneByOneOrFromACopyGivesTheSame(int seed) throws MarkException {
    Random random = new Random(seed);
    Mesh mesh = mesh(seed % MESHES);
    Mark[] marks = marks(mesh, random);
    SurfaceMap map = Maps.of(mesh, marks);
    MarkSession session = MarkSession.of(mesh, Maps.labels(mesh), Treatment.PLATE);
    for (Mark mark : marks) {
      MarkSession astray = session;
      session = session.copy();
      astray.add(Maps.above(0.1), Progress.NONE);
      session.add(mark, Progress.NONE);
    }
    assertThat(session.map().mesh().xyz()).isEqualTo(map.mesh().xyz());
    assertThat(session.map().mesh().corner()).isEqualTo(map.mesh().corner());
    assertThat(session.map().treatment()).isEqualTo(map.treatment());
    assertThat(session.map().effects()).isEqualTo(map.effects());
    assertThat(session.map().notices()).isEqualTo(map.notices());
  }

  private static Mesh mesh(int kind) {
    return switch (kind) {
      case 0 -> Shapes.sphere(10, 16, 24);
      case 1 -> Shapes.cube(12, 1);
      case 2 -> Shapes.plane(30, 20, 3, 2);
      case 3 -> Shapes.mobius(15, 8, 40, 3);
      case 4 -> Shapes.blades(5, 9, 14);
      case 5 -> Shapes.torus(12, 4, 30, 16);
      case 6 -> Shapes.cylinder(6, 15, 20, 2, true);
      case 7 -> Shapes.withFlipped(Shapes.cube(10, 3), 4, 5, 60);
      case 8 -> Shapes.join(Shapes.cube(8, 2), Shapes.moved(Shapes.sphere(4, 9, 12), 9, 1, 0));
      case 9 -> Shapes.shuffled(Shapes.lantern(6, 12, 6, 9), 77);
      case 10 -> faulty(Shapes.icosphere(9, 2));
      case 11 -> faulty(Shapes.without(Shapes.cube(11, 3), 2, 31, 50));
      default -> Shapes.join(Shapes.sphere(9, 12, 18), inside(Shapes.sphere(5, 8, 12)));
    };
  }

  /** Turned to the other side, as the wall of a hollow is. */
  private static Mesh inside(Mesh mesh) {
    return Shapes.withFlipped(mesh, IntStream.range(0, mesh.faceCount()).toArray());
  }

  /**
   * With faces that name a vertex twice, one that is there twice, one more turned over, one on
   * three places in a line, and a vertex that no face uses.
   */
  private static Mesh faulty(Mesh mesh) {
    int[] c = mesh.corner();
    int n = mesh.vertexCount();
    double[] xyz = Arrays.copyOf(mesh.xyz(), 3 * n + 6);
    for (int axis = 0; axis < 3; axis++) {
      xyz[3 * n + axis] = (xyz[3 * c[60] + axis] + xyz[3 * c[61] + axis]) / 2;
      xyz[3 * n + 3 + axis] = 2;
    }
    int[] more = {
      0, 0, 1, 5, 2, 5, 3, 3, 3, c[21], c[22], c[23], c[31], c[30], c[32], c[61], c[60], n
    };
    int[] corner = Arrays.copyOf(c, c.length + more.length);
    System.arraycopy(more, 0, corner, c.length, more.length);
    return Mesh.of(xyz, corner);
  }

  private static Mark[] marks(Mesh mesh, Random random) {
    List<Mark> marks = new ArrayList<>();
    int count = 2 + random.nextInt(5);
    for (int i = 0; i < count; i++) {
      Treatment treatment = Treatment.ofCode((byte) random.nextInt(3));
      Mark mark = mark(random.nextInt(KINDS), treatment, mesh, random);
      boolean refused = isOutlineCarriedOff(mesh, marks, mark);
      marks.add(refused ? new Mark.Near("", treatment, List.of(Vector3D.ZERO), 2) : mark);
    }
    return marks.toArray(new Mark[0]);
  }

  /**
   * Whether an outline before a turn or mirror would be carried off the piece, where its corners
   * drop to places that no outline joins: such a copy is refused, and the test puts a disc.
   */
  private static boolean isOutlineCarriedOff(Mesh mesh, List<Mark> before, Mark mark) {
    boolean copies = mark instanceof Mark.Turn || mark instanceof Mark.Mirror;
    if (!copies || before.stream().noneMatch(m -> m instanceof Mark.Outline)) {
      return false;
    }
    List<Mark> all = new ArrayList<>(before);
    all.add(mark);
    try {
      Maps.of(mesh, all.toArray(new Mark[0]));
      return false;
    } catch (MarkException e) {
      assertThat(e).hasMessageContaining("outline");
      return true;
    }
  }

  private static Mark mark(int kind, Treatment treatment, Mesh mesh, Random random) {
    Vector3D point = vertexOrPlace(mesh, random);
    double degrees = 15 * random.nextInt(24);
    return switch (kind) {
      case 0 -> new Mark.HalfSpace("", treatment, point, direction(random));
      case 1 -> {
        Vector3D axis = direction(random);
        Vector3D zero = direction(random);
        if (axis.cross(zero).norm() < 0.1) {
          zero = axis.orthogonal();
        }
        double span = 1 + 358 * random.nextDouble();
        yield new Mark.Sector("", treatment, point, axis, zero, degrees, degrees + span);
      }
      case 2 -> {
        Vector3D other = vertexOrPlace(mesh, random).add(Vector3D.of(0.1, 0.2, 0.3));
        Vector3D low = pick(point, other, true);
        Vector3D high = pick(point, other, false);
        yield new Mark.InBox("", treatment, low, high.add(Vector3D.of(0.5, 0.5, 0.5)));
      }
      case 3 ->
          new Mark.CreaseFill(
              "", treatment, point, 5 + 80 * random.nextDouble(), 4 * random.nextInt(2));
      case 4 -> {
        List<Vector3D> path = new ArrayList<>();
        for (int i = random.nextInt(4); i >= 0; i--) {
          path.add(vertexOrPlace(mesh, random));
        }
        yield new Mark.Near("", treatment, path, 0.5 + 5 * random.nextDouble());
      }
      case 5 -> {
        double low = -3 + random.nextInt(5);
        double inner = random.nextInt(5);
        double high = random.nextBoolean() ? Double.POSITIVE_INFINITY : low + 4;
        yield new Mark.Ring("", treatment, point, direction(random), low, high, inner, inner + 3);
      }
      case 6 -> new Mark.Facing("", treatment, direction(random), 10 + 20 * random.nextInt(8));
      case 7 -> new Mark.Mirror("", point, direction(random));
      case 8 -> new Mark.Turn("", point, direction(random), 2 + random.nextInt(3));
      case 9 -> new Mark.Invert("");
      case 10 -> {
        Treatment into = Treatment.ofCode((byte) ((treatment.code() + 1) % 3));
        Optional<Treatment> only = random.nextBoolean() ? Optional.of(into) : Optional.empty();
        yield new Mark.Grow("", treatment, 0.3 + 2 * random.nextDouble(), only);
      }
      case 12 -> new Mark.Smooth("", treatment, 0.2 + random.nextDouble());
      case 13 -> insideBody(treatment, point, random);
      case 14 -> new Mark.OutOfReach("", treatment, 0.4 + 4 * random.nextDouble());
      case 15 -> new Mark.InnerShells("", treatment);
      case 16 -> new Mark.Named("", treatment, random.nextBoolean() ? "odd" : "third");
      case 17 -> triangle(treatment, mesh, random);
      case 11 -> aboutFoundAxis(treatment, mesh, random);
      default -> new Mark.WholePart("", treatment, point);
    };
  }

  /** Half of the time unturned, so that its sides meet those of the piece. */
  private static Mark insideBody(Treatment treatment, Vector3D at, Random random) {
    double size = 1 + 7 * random.nextDouble();
    Mesh body =
        switch (random.nextInt(5)) {
          case 0 -> Shapes.box(size, size, 2 * size, 1 + random.nextInt(3));
          case 1 -> Shapes.icosphere(size, 2);
          case 2 -> Shapes.cylinder(size, 12, 3 + random.nextInt(30), 2, true);
          case 3 -> Shapes.torus(size, size / 3, 18, 10);
          default -> Shapes.join(Shapes.cube(8, 2), Shapes.moved(Shapes.cube(5, 1), 2, 3, 1));
        };
    if (random.nextBoolean()) {
      Vector3D axis = direction(random);
      body = Shapes.rotated(body, axis.getX(), axis.getY(), axis.getZ(), 6 * random.nextDouble());
    }
    return InsideMarkTest.inside(treatment, Shapes.moved(body, at.getX(), at.getY(), at.getZ()));
  }

  /** A small outline within a face; its sides lie in that face. */
  private static Mark triangle(Treatment treatment, Mesh mesh, Random random) {
    int f = random.nextInt(mesh.faceCount());
    Vector3D[] corner = new Vector3D[3];
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner()[3 * f + k];
      corner[k] = Vector3D.of(mesh.x(v), mesh.y(v), mesh.z(v));
    }
    Vector3D middle = Vector3D.centroid(corner[0], corner[1], corner[2]);
    double grown = 0.3 + 0.6 * random.nextDouble();
    List<Vector3D> path = new ArrayList<>();
    for (Vector3D c : corner) {
      path.add(middle.lerp(c, grown));
    }
    return new Mark.Outline("", treatment, path, middle);
  }

  /** Pieces without a clear axis refuse these, and get a disc instead. */
  private static Mark aboutFoundAxis(Treatment treatment, Mesh mesh, Random random) {
    Vector3D point = vertexOrPlace(mesh, random);
    Optional<Mark.FoundAxis> found = Optional.of(new Mark.FoundAxis(random.nextBoolean(), false));
    if (!Revolution.of(mesh).isSure()) {
      return new Mark.Near("", treatment, List.of(point), 2);
    }
    return switch (random.nextInt(3)) {
      case 0 -> new Mark.Ring("", treatment, point, Maps.Z, 1, 7, 2, 9, found);
      case 1 -> new Mark.Sector("", treatment, point, Maps.Z, Maps.X, 20, 110, found);
      default -> new Mark.Turn("", point, Maps.Z, 3, found);
    };
  }

  private static Vector3D pick(Vector3D a, Vector3D b, boolean low) {
    return low
        ? Vector3D.of(
            Math.min(a.getX(), b.getX()),
            Math.min(a.getY(), b.getY()),
            Math.min(a.getZ(), b.getZ()))
        : Vector3D.of(
            Math.max(a.getX(), b.getX()),
            Math.max(a.getY(), b.getY()),
            Math.max(a.getZ(), b.getZ()));
  }

  /** Half of the time along an axis, where coincidences with edges and faces are. */
  private static Vector3D direction(Random random) {
    if (random.nextBoolean()) {
      Vector3D[] axes = {Maps.X, Maps.Y, Maps.Z};
      return axes[random.nextInt(3)];
    }
    return Vector3D.of(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
  }

  /** Half of the time a vertex of the mesh, for the same reason. */
  private static Vector3D vertexOrPlace(Mesh mesh, Random random) {
    if (random.nextBoolean()) {
      int v = random.nextInt(mesh.vertexCount());
      return Vector3D.of(mesh.x(v), mesh.y(v), mesh.z(v));
    }
    Bounds box = mesh.bounds();
    return Vector3D.of(
        box.minX() + random.nextDouble() * box.sizeX(),
        box.minY() + random.nextDouble() * box.sizeY(),
        box.minZ() + random.nextDouble() * box.sizeZ());
  }
}
