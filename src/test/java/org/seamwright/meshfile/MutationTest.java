package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Damaged files are read or refused, whatever the damage: no other exception, no hang. */
class MutationTest {
  private static final int MUTATIONS = 400;

  @TempDir Path directory;

  static List<String> formats() {
    return Damage.FORMATS;
  }

  @ParameterizedTest
  @MethodSource("formats")
  void damagedFilesAreReadOrRefused(String format) {
    long seed = 4711;
    Random random = new Random(seed);
    int refused = 0;
    for (int i = 0; i < MUTATIONS; i++) {
      byte[] damaged = Damage.of(format, random);
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
