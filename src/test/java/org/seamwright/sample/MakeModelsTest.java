package org.seamwright.sample;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MakeModelsTest {
  private static final Path MODELS = Path.of("models");
  private static final long MOST_BYTES = 25_000_000;

  @Test
  void modelsInTheRepositoryAreTheOnesThatTheProgramMakes(@TempDir Path dir) throws IOException {
    MakeModels.main(new String[] {dir.toString()});
    List<String> made;
    try (Stream<Path> files = Files.list(dir)) {
      made = files.map(f -> f.getFileName().toString()).sorted().toList();
    }
    assertThat(made).hasSize(8);
    long bytes = 0;
    for (String name : made) {
      assertThat(MODELS.resolve(name)).hasSameBinaryContentAs(dir.resolve(name));
      bytes += Files.size(dir.resolve(name));
    }
    assertThat(bytes).isLessThan(MOST_BYTES);
  }
}
