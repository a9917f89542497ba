package org.seamwright.benchmark;

import java.util.Arrays;
import java.util.concurrent.TimeUnit;
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
import org.seamwright.geodesic.Sources;
import org.seamwright.geodesic.SurfaceDistance;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;
import org.seamwright.testsupport.Shapes;

/** Distances on a sphere of radius 100 mm by parallels, about 980,000 faces. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 4)
@Measurement(iterations = 3, time = 5)
public class DistanceBenchmark {
  private static final double RADIUS = 100;

  private final Mesh mesh = Shapes.sphere(RADIUS, 700, 700);
  private final Topology topology = Topology.of(mesh);
  private final VertexFans fans = VertexFans.of(mesh);
  private int pole;
  private int[] equator;
  private double width;

  /** Finds the sources; tells the largest error of the whole field once. */
  @Setup
  public void sources() {
    int[] corner = mesh.corner();
    for (int v = 0; v < mesh.vertexCount(); v++) {
      pole = mesh.z(v) > mesh.z(pole) ? v : pole;
    }
    equator =
        java.util.stream.IntStream.range(0, corner.length)
            .filter(h -> topology.twin(h) > h)
            .filter(
                h ->
                    Math.abs(mesh.z(corner[h])) < 1e-9
                        && Math.abs(mesh.z(corner[Topology.next(h)])) < 1e-9)
            .toArray();
    // A zone that holds 2% of the sphere has 2% of its height (Archimedes), half on each side.
    width = RADIUS * Math.asin(0.02);
    double[] field = wholeField();
    double worst = 0;
    for (int v = 0; v < field.length; v++) {
      double exact = RADIUS * Math.acos(Math.max(-1, Math.min(1, mesh.z(v) / RADIUS)));
      worst = Math.max(worst, Math.abs(field[v] - exact));
    }
    System.out.printf(
        "%n%d faces, largest error %.4f mm, %d equator edges, band holds %.3f of the vertices%n",
        mesh.faceCount(), worst, equator.length, share(band()));
  }

  private double share(double[] field) {
    return (double) Arrays.stream(field).filter(d -> d <= width).count() / field.length;
  }

  /** From one point over everything. */
  @Benchmark
  public double[] wholeField() {
    return SurfaceDistance.from(
        mesh, topology, fans, Sources.vertices(pole), Double.POSITIVE_INFINITY, Progress.NONE);
  }

  /** A band beside a line that holds 2% of the faces. */
  @Benchmark
  public double[] band() {
    return SurfaceDistance.from(mesh, topology, fans, Sources.edges(equator), width, Progress.NONE);
  }
}
