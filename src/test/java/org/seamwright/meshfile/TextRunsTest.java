package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** A text read in any number of runs gives what it gives in one. */
class TextRunsTest {
  private static final Refusal REFUSAL = new Refusal(Path.of("model"));

  private static String stl(Random random) {
    StringBuilder text = new StringBuilder("\n  SOLID one\r\n");
    for (int f = 0; f < 200; f++) {
      if (random.nextInt(20) == 0) {
        text.append("endsolid one\nsolid part ").append(random.nextInt(3)).append('\n');
      }
      String end = random.nextBoolean() ? "\n" : "\r\n";
      text.append("facet normal 0 0 1").append(end).append("outer loop").append(end);
      for (int k = 0; k < 3; k++) {
        text.append("vertex ").append(random.nextInt(4)).append(" 1.5e0 ");
        text.append(random.nextInt(5)).append(end);
      }
      text.append("endloop").append(end).append("endfacet").append(end);
    }
    return text + "endsolid";
  }

  private static String obj(Random random) {
    StringBuilder text = new StringBuilder("# model\nv 0 0 0\nv 1 0 0\nv 0 1 0\n");
    int points = 3;
    for (int line = 0; line < 400; line++) {
      switch (random.nextInt(9)) {
        case 0, 1, 2 -> {
          text.append("v ").append(random.nextInt(5)).append(" \\\n ").append(random.nextInt(5));
          text.append(' ').append(random.nextDouble()).append(random.nextBoolean() ? "\n" : "\r");
          points++;
        }
        case 3 -> text.append("f -1 -2 \\\r\n -3\n");
        case 4 -> text.append("f 1 ").append(points).append("/2 3//4\n");
        case 5 -> text.append("f 1 2 ").append(points).append(" 3\n");
        case 6 -> text.append("g group").append(random.nextInt(3)).append('\n');
        case 7 -> text.append(random.nextBoolean() ? "usemtl m\n" : "o thing\n");
        default -> text.append("unknown word\nl 1 2\n");
      }
    }
    return text.toString();
  }

  private static int[] begin(byte[] bytes, int runs, boolean obj) {
    return TextRuns.of(
        bytes,
        0,
        runs,
        at ->
            obj
                ? ObjRun.mayBegin(bytes, at)
                : new String(bytes, at, Math.min(5, bytes.length - at), StandardCharsets.US_ASCII)
                    .equals("facet"));
  }

  private static void assertSame(Weld actual, Weld expected) {
    assertThat(actual.mesh().corner()).isEqualTo(expected.mesh().corner());
    assertThat(actual.mesh().xyz()).isEqualTo(expected.mesh().xyz());
    assertThat(actual.labels().of()).isEqualTo(expected.labels().of());
    assertThat(actual.labels().names()).isEqualTo(expected.labels().names());
    assertThat(actual.dropped()).isEqualTo(expected.dropped());
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void textStlInAnyNumberOfRuns(long seed) throws MeshFileException {
    byte[] bytes = stl(new Random(seed)).getBytes(StandardCharsets.US_ASCII);
    Weld whole = TextStlReader.read(bytes, begin(bytes, 1, false), REFUSAL, Progress.NONE);
    assertThat(whole.mesh().faceCount() + whole.dropped()).isEqualTo(200);
    for (int runs = 2; runs <= 7; runs++) {
      int[] begin = begin(bytes, runs, false);
      assertThat(begin.length).isGreaterThan(2);
      assertSame(TextStlReader.read(bytes, begin, REFUSAL, Progress.NONE), whole);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void objInAnyNumberOfRuns(long seed) throws MeshFileException {
    byte[] bytes = obj(new Random(seed)).getBytes(StandardCharsets.US_ASCII);
    RawFaces whole = ObjReader.read(bytes, begin(bytes, 1, true), REFUSAL, Progress.NONE);
    for (int runs = 2; runs <= 7; runs++) {
      int[] begin = begin(bytes, runs, true);
      assertThat(begin.length).isGreaterThan(2);
      RawFaces split = ObjReader.read(bytes, begin, REFUSAL, Progress.NONE);
      assertThat(split.notices()).isEqualTo(whole.notices());
      assertSame(Weld.of(split, Progress.NONE), Weld.of(whole, Progress.NONE));
    }
  }

  @ParameterizedTest(name = "{0} runs")
  @ValueSource(ints = {1, 2, 3, 5})
  void troubleIsPlacedTheSameInAnyNumberOfRuns(int runs) {
    Mesh mesh = Shapes.cylinder(2, 3, 20, 5, true);
    String stl = new String(Bytes.textStl(mesh), StandardCharsets.US_ASCII);
    int at = stl.lastIndexOf("endloop");
    byte[] bytes = Bytes.text(stl.substring(0, at) + "oops" + stl.substring(at));
    String line = "line " + (1 + stl.substring(0, at).chars().filter(c -> c == '\n').count());
    assertThatThrownBy(
            () -> TextStlReader.read(bytes, begin(bytes, runs, false), REFUSAL, Progress.NONE))
        .hasMessageContaining(line + ", facet " + mesh.faceCount())
        .hasMessageContaining("oopsendloop");
    byte[] obj = Bytes.text("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n\n\nf 1 2 4\nf 3 2 1\n");
    assertThatThrownBy(() -> ObjReader.read(obj, begin(obj, runs, true), REFUSAL, Progress.NONE))
        .hasMessageContaining("line 7")
        .hasMessageContaining("vertex 4");
  }
}
