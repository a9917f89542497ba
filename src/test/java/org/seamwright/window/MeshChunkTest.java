package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.BitSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Progress;
import org.seamwright.job.PlannedJob;
import org.seamwright.mesh.Mesh;

class MeshChunkTest {
  private static final PlannedJob JOB = PlannedFixture.ring(256, 80);
  private static final OpenedPiece PIECE = OpenedPiece.of(JOB, Progress.NONE);

  @Test
  void drawsEveryFaceOnceInItsPlaceAndClass() {
    Mesh mesh = JOB.sections().mesh();
    PieceModel model = PIECE.model();
    assertThat(mesh.faceCount()).isGreaterThan(PieceModel.CHUNK);
    int[] expected = FaceClasses.of(JOB);
    BitSet seen = new BitSet();
    for (int c = 0; c < model.chunks(); c++) {
      MeshChunk chunk = MeshChunk.of(model, PIECE.surface(), c);
      int[] faces = model.chunk(c);
      // The fixture is not cut: each face of the piece has one part.
      assertThat(chunk.faces().length / 9).isEqualTo(faces.length);
      for (int f = 0; f < faces.length; f++) {
        seen.set(faces[f]);
        for (int k = 0; k < 3; k++) {
          int entry = 9 * f + 3 * k;
          int point = 3 * chunk.faces()[entry];
          int v = mesh.corner()[3 * faces[f] + k];
          // The ring's middle is the fixture's; single precision at 80 mm is good to 1e-5 mm.
          assertThat(chunk.points()[point] + PlannedFixture.MIDDLE[0])
              .isCloseTo(mesh.x(v), within(1e-5));
          assertThat(chunk.points()[point + 1] + PlannedFixture.MIDDLE[1])
              .isCloseTo(mesh.y(v), within(1e-5));
          assertThat(chunk.points()[point + 2] + PlannedFixture.MIDDLE[2])
              .isCloseTo(mesh.z(v), within(1e-5));
          assertThat(chunk.faces()[entry + 2]).isEqualTo(expected[faces[f]]);
        }
      }
    }
    assertThat(seen.cardinality()).isEqualTo(mesh.faceCount());
  }

  @Test
  void aChangeOfOneFaceChangesOneChunk() {
    Mesh mesh = JOB.mesh();
    PieceModel model = PIECE.model();
    int[] same = IntStream.range(0, mesh.faceCount()).toArray();
    int[] classes = new int[mesh.faceCount()];
    long[] before =
        new ShownSurface(mesh, same.clone(), classes.clone(), mesh.faceCount()).hashes(model);
    int face = 4321;
    classes[face] = 1;
    long[] after = new ShownSurface(mesh, same, classes, mesh.faceCount()).hashes(model);
    int[] changed = IntStream.range(0, after.length).filter(c -> before[c] != after[c]).toArray();
    assertThat(changed).hasSize(1);
    assertThat(Arrays.stream(model.chunk(changed[0])).anyMatch(f -> f == face)).isTrue();
  }
}
