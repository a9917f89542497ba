package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** Damaged files are read or refused, whatever the damage: no other exception, no hang. */
class MutationTest {
  private static final int MUTATIONS = 1000;

  @TempDir Path directory;

  private static byte[] original(String format) {
    Mesh mesh = Shapes.cylinder(2, 3, 6, 1, true);
    return switch (format) {
      case "binary.stl" -> Bytes.stl(mesh);
      case "text.stl" -> Bytes.textStl(mesh);
      default ->
          Bytes.text(
              new String(Bytes.obj(mesh), java.nio.charset.StandardCharsets.UTF_8)
                  + "g lid\nusemtl m\nf 1 2 3 4 5 6\nf -1/1 -2/2/2 -3//3 \\\n -4 # end\n");
    };
  }

  @ParameterizedTest
  @ValueSource(strings = {"binary.stl", "text.stl", "mesh.obj"})
  void damagedFilesAreReadOrRefused(String format) {
    byte[] original = original(format);
    long seed = 4711;
    Random random = new Random(seed);
    int refused = 0;
    for (int i = 0; i < MUTATIONS; i++) {
      byte[] damaged = damage(original, random);
      String name = "seed " + seed + ", mutation " + i;
      boolean accepted =
          Assertions.assertTimeoutPreemptively(
              Duration.ofSeconds(20), () -> readsSoundly(format, damaged, name), name);
      refused += accepted ? 0 : 1;
    }
    assertThat(refused).as("damage that shows").isGreaterThan(MUTATIONS / 20);
  }

  /** Whether the file is accepted; any exception but the refusal fails the test. */
  private boolean readsSoundly(String format, byte[] bytes, String name) {
    MeshDocument document;
    try {
      document = Bytes.read(directory, format, bytes);
    } catch (MeshFileException refusal) {
      assertThat(refusal.getMessage()).as(name).doesNotContain("memory");
      assertThat(refusal.remedy()).as(name).isNotBlank();
      return false;
    } catch (RuntimeException other) {
      return fail(name, other);
    }
    assertThat(document.mesh().faceCount()).as(name).isPositive();
    assertThat(document.labels().of()).as(name).hasSize(document.mesh().faceCount());
    assertThat(Arrays.stream(document.mesh().xyz()).allMatch(Double::isFinite)).as(name).isTrue();
    return true;
  }

  private static byte[] damage(byte[] original, Random random) {
    byte[] bytes = original.clone();
    int blows = 1 + random.nextInt(4);
    for (int b = 0; b < blows; b++) {
      int at = random.nextInt(bytes.length);
      switch (random.nextInt(6)) {
        case 0 -> bytes[at] = (byte) random.nextInt(256);
        case 1 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
        case 2 -> bytes = Arrays.copyOf(bytes, Math.max(1, at));
        case 3 -> bytes[at] = (byte) "0123456789-+.eE/\\#\n\r vfgo".charAt(random.nextInt(25));
        case 4 -> {
          int from = random.nextInt(bytes.length);
          int length = Math.min(bytes.length - Math.max(at, from), random.nextInt(60));
          System.arraycopy(bytes, from, bytes, at, length);
        }
        default ->
            bytes =
                Bytes.join(
                    Arrays.copyOf(bytes, at),
                    Arrays.copyOfRange(bytes, random.nextInt(at + 1), bytes.length));
      }
    }
    return bytes;
  }

  @ParameterizedTest
  @ValueSource(strings = {"a.stl", "a.obj", "a"})
  void noiseIsRefused(String name) {
    Random random = new Random(99);
    for (int i = 0; i < 300; i++) {
      byte[] noise = new byte[random.nextInt(3000)];
      random.nextBytes(noise);
      try {
        Bytes.read(directory, name, noise);
        fail("Noise %d was read as a mesh", i);
      } catch (MeshFileException refusal) {
        assertThat(refusal.remedy()).isNotBlank();
      }
    }
  }
}
