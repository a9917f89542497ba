package org.seamwright.benchmark;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.seamwright.basis.Progress;
import org.seamwright.measure.Area;
import org.seamwright.measure.Surveyor;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.region.Mark;
import org.seamwright.region.MarkException;
import org.seamwright.region.MarkSession;
import org.seamwright.region.Treatment;
import org.seamwright.testsupport.Shapes;

/** Edges, survey and marks on the torus of a million faces. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 4)
@Measurement(iterations = 3, time = 5)
public class EngineBenchmark {
  private final Mesh mesh = Torus.of(1000, 500);
  private final Random random = new Random(11);
  private Topology topology;
  private MarkSession marked;

  /** Checks the torus and marks it once. */
  @Setup
  public void mark() throws MarkException {
    topology = Topology.of(mesh);
    if (Math.abs(Area.ofFaces(mesh) / Torus.AREA_OF_A_MILLION - 1) > 1e-7) {
      throw new IllegalStateException("Not the torus that the peers read");
    }
    marked = MarkSession.of(mesh, Labels.none(mesh.faceCount()), Treatment.PLATE);
    for (int i = 0; i < 10; i++) {
      marked.add(any(i), Progress.NONE);
    }
  }

  private Vector3D place() {
    return Vector3D.of(
        Torus.near(2 * Math.PI * random.nextDouble(), 2 * Math.PI * random.nextDouble(), 0));
  }

  private Mark plane() {
    Vector3D normal =
        Vector3D.of(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    return new Mark.HalfSpace("", Treatment.BARE, place(), normal);
  }

  private Mark stroke() {
    double a = 2 * Math.PI * random.nextDouble();
    double b = 2 * Math.PI * random.nextDouble();
    List<Vector3D> path =
        List.of(Vector3D.of(Torus.near(a, b, 0)), Vector3D.of(Torus.near(a + 0.1, b + 0.4, 0)));
    return new Mark.Near("", Treatment.BARE, path, 3 + 4 * random.nextDouble());
  }

  private Mark any(int i) {
    Vector3D p = place();
    return switch (i % 6) {
      case 0 -> plane();
      case 1 -> new Mark.Near("", Treatment.PLATE, List.of(p), 4 + 8 * random.nextDouble());
      case 2 -> stroke();
      case 3 ->
          new Mark.Sector(
              "", Treatment.BARE, Vector3D.ZERO, Vector3D.Unit.PLUS_Z, p, 0, 10);
      case 4 ->
          new Mark.InBox(
              "", Treatment.BARE, p.subtract(Vector3D.of(8, 8, 8)), p.add(Vector3D.of(8, 8, 8)));
      default -> new Mark.CreaseFill("", Treatment.PLATE, p, 20);
    };
  }

  /** Half-edges. */
  @Benchmark
  public Object topology() {
    return Topology.of(mesh);
  }

  /** Area, smooth area, faults. */
  @Benchmark
  public Object survey() {
    return Surveyor.survey(mesh, topology, 0, Progress.NONE);
  }

  /** A copy of a marked surface: the way back before a mark. */
  @Benchmark
  public Object copyOfSession() {
    return marked.copy();
  }

  /** A copy, a plane and the new map. */
  @Benchmark
  public Object planeOnAMarkedPiece() throws MarkException {
    MarkSession session = marked.copy();
    session.add(plane(), Progress.NONE);
    return session.map();
  }

  /** A copy, a stroke and the new map. */
  @Benchmark
  public Object strokeOnAMarkedPiece() throws MarkException {
    MarkSession session = marked.copy();
    session.add(stroke(), Progress.NONE);
    return session.map();
  }

  /** What a tip of 3 mm cannot reach, on an unmarked piece. */
  @Benchmark
  public Object reachOfATip() throws MarkException {
    MarkSession session = MarkSession.of(mesh, Labels.none(mesh.faceCount()), Treatment.PLATE);
    return session.add(
        new Mark.OutOfReach("", Treatment.OUT_OF_SCOPE, 3), Progress.NONE);
  }

  /** A copy, a ball of 5,120 faces about a place of the surface, and the new map. */
  @Benchmark
  public Object bodyOnAMarkedPiece() throws MarkException {
    MarkSession session = marked.copy();
    Vector3D p = place();
    Mesh ball = Shapes.moved(Shapes.icosphere(15, 4), p.getX(), p.getY(), p.getZ());
    Mark.Body file = new Mark.Body("ball.stl", "mm", "", Vector3D.Unit.PLUS_Z, 0, Vector3D.ZERO);
    session.add(new Mark.Inside("", Treatment.BARE, file, Optional.of(ball)), Progress.NONE);
    return session.map();
  }

  /** A hundred marks of six kinds from nothing. */
  @Benchmark
  public Object hundredMarks() throws MarkException {
    MarkSession session = MarkSession.of(mesh, Labels.none(mesh.faceCount()), Treatment.PLATE);
    for (int i = 0; i < 100; i++) {
      session.add(any(i), Progress.NONE);
    }
    return session.map();
  }
}
