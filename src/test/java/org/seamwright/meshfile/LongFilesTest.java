package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.measure.Area;

/**
 * Long texts are read in time near linear in their length. The limits are far above what that takes
 * on a slow machine and far below what looking back over the text for each face would.
 */
class LongFilesTest {
  private static final int CELLS = 400;
  private static final Duration LIMIT = Duration.ofSeconds(30);

  @TempDir Path directory;

  private static void points(StringBuilder text, String before) {
    for (int j = 0; j <= CELLS; j++) {
      for (int i = 0; i <= CELLS; i++) {
        text.append(before).append(i).append(' ').append(j).append(" 0\n");
      }
    }
  }

  /** Cells as polygons of five corners, the last of which is the first again. */
  private static void faces(StringBuilder text, String before, int first) {
    for (int j = 0; j < CELLS; j++) {
      for (int i = 0; i < CELLS; i++) {
        int a = first + j * (CELLS + 1) + i;
        int d = a + CELLS + 1;
        text.append(before).append(a).append(' ').append(a + 1).append(' ').append(d + 1);
        text.append(' ').append(d).append(' ').append(a).append('\n');
      }
    }
  }

  private double area(String name, CharSequence text) {
    MeshDocument document =
        Assertions.assertTimeoutPreemptively(
            LIMIT, () -> Bytes.read(directory, name, Bytes.text(text.toString())));
    return Area.ofFaces(document.mesh());
  }

  @Test
  void obj() {
    StringBuilder text = new StringBuilder();
    points(text, "v ");
    faces(text, "f ", 1);
    assertThat(area("long.obj", text)).isEqualTo(CELLS * CELLS);
  }

  @Test
  void textPlyWithItsFacesFirst() {
    int points = (CELLS + 1) * (CELLS + 1);
    StringBuilder text = new StringBuilder("ply\nformat ascii 1.0\n");
    text.append("element face ").append(CELLS * CELLS);
    text.append("\nproperty list uchar int vertex_indices\n");
    text.append("element vertex ").append(points);
    text.append("\nproperty float x\nproperty float y\nproperty float z\nend_header\n");
    faces(text, "5 ", 0);
    points(text, "");
    assertThat(area("long.ply", text)).isEqualTo(CELLS * CELLS);
  }
}
