package org.seamwright.mend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/** What tests of repairs ask again and again. */
final class MendChecks {
  private MendChecks() {}

  static double area(Mesh mesh) {
    return Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
  }

  static double volume(Mesh mesh) {
    double[] p = mesh.xyz();
    Sum sum = new Sum();
    for (int f = 0; f < mesh.faceCount(); f++) {
      int a = 3 * mesh.corner()[3 * f];
      int b = 3 * mesh.corner()[3 * f + 1];
      int c = 3 * mesh.corner()[3 * f + 2];
      sum.add(
          (p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1])
                  + p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2])
                  + p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]))
              / 6);
    }
    return sum.value();
  }

  /** Carries out steps and checks the books of each, and the parents. */
  static Mended mend(Mesh mesh, Repair... repairs) {
    double[] xyz = mesh.xyz().clone();
    int[] corner = mesh.corner().clone();
    Mended mended;
    try {
      mended = Mender.mend(mesh, List.of(repairs), Progress.NONE);
    } catch (MendException e) {
      throw new AssertionError(e);
    }
    assertThat(mesh.xyz()).as("the raw mesh stays").isEqualTo(xyz);
    assertThat(mesh.corner()).as("the raw mesh stays").isEqualTo(corner);
    double area = area(mesh);
    for (Mended.Done done : mended.done()) {
      assertThat(done.beforeMm2()).isCloseTo(area, within(1e-9 * area));
      assertThat(done.lostMm2()).isNotNegative();
      assertThat(done.gainedMm2()).isNotNegative();
      assertThat(done.afterMm2())
          .as("books of %s", done.kind())
          .isCloseTo(
              done.beforeMm2() - done.lostMm2() + done.gainedMm2(),
              within(1e-9 * Math.max(1e-9, done.beforeMm2())));
      area = done.afterMm2();
    }
    assertThat(area(mended.mesh())).isCloseTo(area, within(1e-9 * area));
    for (int parent : mended.parent()) {
      assertThat(parent).isBetween(Mended.FILLED, mesh.faceCount() - 1);
    }
    return mended;
  }

  static int openEdges(Mesh mesh) {
    return Topology.of(mesh).openEdges();
  }

  static boolean closed(Mesh mesh) {
    Topology topology = Topology.of(mesh);
    return topology.openEdges() == 0
        && topology.branchingEdges() == 0
        && topology.flippedEdges() == 0;
  }
}
