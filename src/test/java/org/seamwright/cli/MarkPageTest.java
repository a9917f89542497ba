package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.job.MarkWords;

/** Keeps {@code docs/marks.md} true. */
class MarkPageTest {
  private static final long LARGEST_PICTURE = 60_000;

  @Test
  void everyKindIsExplainedAndPictured() throws Exception {
    Map<String, MarkPage.Example> examples = MarkPage.examples();

    assertThat(examples.keySet())
        .containsExactlyInAnyOrderElementsOf(
            MarkWords.kinds().stream().map(MarkWords.Kind::word).toList());
    for (MarkPage.Example example : examples.values()) {
      assertThat(example.image()).exists();
      assertThat(Files.size(example.image())).isLessThan(LARGEST_PICTURE);
    }
  }

  /**
   * On the plaque, whose mesh is small; the cup's examples are run when their pictures are made.
   */
  @Test
  void theExamplesCoverSomething(@TempDir Path folder) throws Exception {
    for (MarkPage.Example example : MarkPage.examples().values()) {
      if (!example.piece().equals("plaque")) {
        continue;
      }
      Path job = MarkPictures.job(example.piece(), folder);
      for (List<String> command : example.commands()) {
        List<Object> words = new ArrayList<>(List.of("mark", job));
        words.addAll(command);
        words.add("--json");
        Run run = Run.of(words.toArray());
        assertThat(run.code()).as(run.err()).isZero();
        JsonNode marks = new ObjectMapper().readTree(run.out()).get("marks");
        assertThat(marks.get(marks.size() - 1).get("changedMm2").doubleValue()).isPositive();
      }
    }
  }
}
