package org.seamwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;

/**
 * Holds the published schemas against an independent validator (networknt, JSON Schema 2020-12).
 */
class SchemaTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final JsonSchema JOB = schema("job");
  private static final JsonSchema PLAN = schema("plan");

  private static JsonSchema schema(String name) {
    try {
      JsonNode tree = JSON.readTree(Path.of("docs/schema", name + ".schema.json").toFile());
      return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
          .getSchema(tree, SchemaValidatorsConfig.builder().build());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> faults(JsonSchema schema, String json) throws Exception {
    return schema.validate(JSON.readTree(json)).stream()
        .map(ValidationMessage::getMessage)
        .toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"job", "plan"})
  void schemasAreSchemas(String name) throws Exception {
    JsonSchema meta =
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(URI.create("https://json-schema.org/draft/2020-12/schema"));
    String text = Files.readString(Path.of("docs/schema", name + ".schema.json"));
    assertThat(faults(meta, text)).isEmpty();
    assertThat(JSON.readTree(text).get("$schema").asText())
        .isEqualTo("https://json-schema.org/draft/2020-12/schema");
  }

  static Stream<Path> samples() throws Exception {
    try (Stream<Path> files = Files.list(Path.of("models"))) {
      return files.filter(f -> f.toString().endsWith(".json")).sorted().toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void everySampleAndItsPlanFit(Path job) throws Exception {
    assertThat(faults(JOB, Files.readString(job))).isEmpty();
    JsonNode plan = JSON.readTree(PlanJson.text(Planner.plan(job, Progress.NONE)));
    assertThat(faults(PLAN, plan.toString())).isEmpty();
    // A plan without a figure, or with one that can't be, is told.
    ObjectNode totals = (ObjectNode) plan.get("totals");
    totals.remove("goldG");
    assertThat(PLAN.validate(plan)).hasSize(1);
    totals.put("goldG", -1);
    assertThat(PLAN.validate(plan)).hasSize(1);
  }

  @Test
  void examplesOfThePageFit() throws Exception {
    String page = Files.readString(Path.of("docs/job-file.md"));
    List<String> examples = new ArrayList<>();
    Pattern.compile("```json\n(.*?)```", Pattern.DOTALL)
        .matcher(page)
        .results()
        .forEach(m -> examples.add(m.group(1)));
    assertThat(examples).hasSize(2);
    for (String example : examples) {
      assertThat(faults(JOB, example)).isEmpty();
    }
  }

  @Test
  void whateverTheProgramWritesFits() throws Exception {
    for (long seed = 0; seed < 300; seed++) {
      assertThat(faults(JOB, JobFile.text(JobSamples.random(seed)))).as("seed %d", seed).isEmpty();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"seamwright\": 2, \"mesh\": {\"file\": \"a.stl\"}, \"plating\": {\"recipe\": \"brass\"}}",
        "{\"seamwright\": 1, \"mesh\": {\"file\": \"a.stl\"}}",
        "{\"seamwright\": 1, \"mesh\": {\"file\": \"a.stl\"}, \"plating\": {\"recipe\": \"brass\"},"
            + " \"ground\": \"gold\"}",
        "{\"seamwright\": 1, \"mesh\": {\"file\": \"a.stl\"}, \"plating\": {\"recipe\": \"brass\"},"
            + " \"sections\": {\"limit\": 40}}",
        "{\"seamwright\": 1, \"mesh\": {\"file\": \"a.stl\"}, \"plating\": {\"recipe\": \"brass\"},"
            + " \"marks\": [{\"kind\": \"part\", \"point\": [1, 2]}]}"
      })
  void whatTheReaderRefusesTheSchemaRefuses(String job) throws Exception {
    assertThat(faults(JOB, job)).isNotEmpty();
    try {
      JobFile.parse(job.getBytes(StandardCharsets.UTF_8), "test");
      throw new AssertionError("read: " + job);
    } catch (JobFileException e) {
      assertThat(e).hasMessageContaining("test");
    }
  }
}
