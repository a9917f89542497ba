package org.seamwright.benchmark;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
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
import org.seamwright.mesh.Mesh;
import org.seamwright.region.SurfaceMap;
import org.seamwright.section.SectionAxis;
import org.seamwright.section.SectionChoices;
import org.seamwright.section.SectionEdit;
import org.seamwright.section.SectionSession;
import org.seamwright.section.SectionSettings;
import org.seamwright.section.SectionWay;

/** One seam moved on the torus of a million faces in forty sections. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 3)
@Measurement(iterations = 3, time = 4)
public class SeamMoveBenchmark {
  private SectionSession session;
  private SectionEdit.MoveSeam move;

  /** Cuts the torus in forty sectors; the seam at angle 0 is bent by some 4 mm. */
  @Setup
  public void prepare() throws Exception {
    Mesh mesh = Torus.of(1000, 500);
    int[] parent = new int[mesh.faceCount()];
    Arrays.setAll(parent, f -> f);
    SurfaceMap map =
        new SurfaceMap(mesh, parent, new byte[mesh.faceCount()], List.of(), List.of());
    SectionAxis axis =
        new SectionAxis(
            Optional.of(Vector3D.ZERO),
            Optional.of(Vector3D.Unit.PLUS_Z),
            Optional.of(Vector3D.Unit.PLUS_X));
    session =
        SectionSession.of(
            map,
            new SectionSettings(20_000, 2, 5),
            SectionChoices.of(new SectionWay.Sectors(axis, 40)),
            Progress.NONE);
    move =
        new SectionEdit.MoveSeam(
            at(9 * 0.5, 1.2),
            at(-9 * 0.5, 1.2),
            List.of(at(0, 0.3), at(1.2, 0.6), at(0, 0.9)));
  }

  /** A place of the torus by degrees round its axis and radians round its tube. */
  private static Vector3D at(double degrees, double tube) {
    double[] p = Torus.near(Math.toRadians(degrees), tube, 0);
    return Vector3D.of(p[0], p[1], p[2]);
  }

  /** Moves the seam and takes the move back. */
  @Benchmark
  public Object moveSeam() throws Exception {
    Object figures = session.edit(move);
    session.undo();
    return figures;
  }
}
