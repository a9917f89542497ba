package org.seamwright.mend;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.measure.Surveyor;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

/** What is wrong with a model is told with the step that mends it, and the step does. */
class AdviceTest {
  private static Mesh faulty(String code) {
    Mesh ball = Shapes.icosphere(10, 2);
    int[] all = java.util.stream.IntStream.range(0, ball.faceCount()).toArray();
    return switch (code) {
      case "open-edges" -> Shapes.without(ball, 7);
      case "nearly-closed-edges" -> {
        // A second copy of a corner, a hundred-millionth off.
        double[] xyz = java.util.Arrays.copyOf(ball.xyz(), ball.xyz().length + 3);
        int v = ball.corner()[0];
        for (int axis = 0; axis < 3; axis++) {
          xyz[ball.xyz().length + axis] = ball.xyz()[3 * v + axis] * (1 + 1e-8);
        }
        int[] corner = ball.corner().clone();
        corner[0] = ball.vertexCount();
        yield Mesh.of(xyz, corner);
      }
      case "flipped-edges" -> Shapes.withFlipped(ball, 3, 4, 9);
      case "inside-out" -> Shapes.withFlipped(ball, all);
      case "duplicate-triangles", "branching-edges" -> Shapes.withRepeated(ball, 5);
      case "degenerate-triangles" -> {
        // A face whose third corner lies in the middle of the edge of the other two.
        double[] xyz = java.util.Arrays.copyOf(ball.xyz(), ball.xyz().length + 3);
        int[] corner = java.util.Arrays.copyOf(ball.corner(), ball.corner().length + 3);
        int a = ball.corner()[0];
        int b = ball.corner()[1];
        for (int axis = 0; axis < 3; axis++) {
          xyz[ball.xyz().length + axis] = (xyz[3 * a + axis] + xyz[3 * b + axis]) / 2;
        }
        corner[corner.length - 3] = a;
        corner[corner.length - 2] = b;
        corner[corner.length - 1] = ball.vertexCount();
        yield Mesh.of(xyz, corner);
      }
      default -> Shapes.join(ball, Shapes.moved(Shapes.icosphere(1, 1), 30, 0, 0));
    };
  }

  private static Repair step(String code) {
    return switch (code) {
      case "open-edges" -> new Repair.FillHoles(100);
      case "nearly-closed-edges" -> new Repair.Weld(OptionalDouble.empty());
      case "flipped-edges", "inside-out" -> new Repair.TurnOutward();
      case "several-parts" -> new Repair.KeepLargest(1);
      default -> new Repair.DropFaulty();
    };
  }

  private static Optional<Notice> notice(Mesh mesh, String code) {
    List<Notice> notices = Surveyor.survey(mesh, Topology.of(mesh), 0, Progress.NONE).notices();
    return notices.stream().filter(n -> n.code().equals(code)).findFirst();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "open-edges",
        "nearly-closed-edges",
        "flipped-edges",
        "inside-out",
        "duplicate-triangles",
        "branching-edges",
        "degenerate-triangles",
        "several-parts"
      })
  void theStepThatIsNamedMends(String code) {
    Mesh mesh = faulty(code);
    Repair step = step(code);
    assertThat(notice(mesh, code)).isPresent();
    assertThat(notice(mesh, code).get().text()).contains("cleaning step", step.kind());
    assertThat(notice(MendChecks.mend(mesh, step).mesh(), code)).isEmpty();
  }
}
