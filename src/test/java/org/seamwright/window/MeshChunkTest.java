package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Progress;
import org.seamwright.job.PlannedJob;
import org.seamwright.mesh.Mesh;

class MeshChunkTest {
  @Test
  void drawsEveryFaceOnceInItsPlaceAndClass() {
    PlannedJob job = PlannedFixture.ring(256, 80);
    Mesh mesh = job.sections().mesh();
    assertThat(mesh.faceCount()).isGreaterThan(MeshChunk.FACES);
    List<MeshChunk> chunks = OpenedPiece.of(job, Progress.NONE).chunks();
    int[] expected = FaceClasses.of(job);
    int face = 0;
    for (MeshChunk chunk : chunks) {
      assertThat(chunk.faces().length / 9).isBetween(1, MeshChunk.FACES);
      for (int f = 0; f < chunk.faces().length / 9; f++, face++) {
        for (int k = 0; k < 3; k++) {
          int entry = 9 * f + 3 * k;
          int point = 3 * chunk.faces()[entry];
          int v = mesh.corner()[3 * face + k];
          // The ring's middle is the fixture's; single precision at 80 mm is good to 1e-5 mm.
          assertThat(chunk.points()[point] + PlannedFixture.MIDDLE[0])
              .isCloseTo(mesh.x(v), within(1e-5));
          assertThat(chunk.points()[point + 1] + PlannedFixture.MIDDLE[1])
              .isCloseTo(mesh.y(v), within(1e-5));
          assertThat(chunk.points()[point + 2] + PlannedFixture.MIDDLE[2])
              .isCloseTo(mesh.z(v), within(1e-5));
          assertThat(chunk.faces()[entry + 2]).isEqualTo(expected[face]);
        }
      }
    }
    assertThat(face).isEqualTo(mesh.faceCount());
  }
}
