package org.seamwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.seamwright.mend.Repair;
import org.seamwright.section.SectionEdit;
import org.seamwright.units.UnitSystem;

/** Keeps {@code docs/job-file.md} true. */
class JobFilePageTest {
  private static String page;
  private static List<String> examples;

  @BeforeAll
  static void readPage() throws Exception {
    page = Files.readString(Path.of("docs", "job-file.md"));
    examples =
        Pattern.compile("```json\n(.*?)```", Pattern.DOTALL)
            .matcher(page)
            .results()
            .map(m -> m.group(1))
            .toList();
  }

  private static Job parse(String text) throws JobFileException {
    return JobFile.parse(text.getBytes(StandardCharsets.UTF_8), "docs/job-file.md");
  }

  @Test
  void bothExamplesAreJobs() throws Exception {
    assertThat(examples).hasSize(2);
    parse(examples.get(0));
    Job full = parse(examples.get(1));

    assertThat(full.marks().stream().map(Object::getClass).distinct())
        .as("every kind of mark is shown")
        .hasSize(MarkKinds.keys().size());
    assertThat(full.cleaning().stream().map(Object::getClass).distinct())
        .as("every kind of cleaning step is shown")
        .hasSize(Repair.class.getPermittedSubclasses().length);
    assertThat(full.sections().choices().edits().stream().map(Object::getClass).distinct())
        .as("every edit of sections is shown")
        .hasSize(SectionEdit.class.getPermittedSubclasses().length);
    assertThat(parse(JobFile.text(full))).isEqualTo(full);
  }

  @Test
  void everyKeyAndWordOfTheReaderIsNamed() {
    Set<String> spelled = new TreeSet<>();
    Pattern.compile("`([A-Za-z0-9]+)`")
        .matcher(page)
        .results()
        .map((MatchResult m) -> m.group(1))
        .forEach(spelled::add);
    List<Collection<String>> known = new ArrayList<>(MarkKinds.keys().values());
    known.addAll(JobKeys.REPAIRS.values());
    known.addAll(JobKeys.WAYS.values());
    known.addAll(JobKeys.SECTION_EDITS.values());
    known.addAll(
        List.of(
            JobKeys.REPAIRS.keySet(),
            JobKeys.JOB,
            JobKeys.MESH,
            JobKeys.SURFACE,
            JobKeys.KNOWN_LENGTH,
            JobKeys.SECTIONS,
            JobKeys.ORDER,
            JobKeys.BEFORE,
            JobKeys.SYMMETRY,
            JobKeys.WAYS.keySet(),
            JobKeys.SECTION_EDITS.keySet(),
            JobKeys.RINGS_BY.keySet(),
            JobKeys.BENCH,
            JobKeys.BENCH_STEP,
            JobKeys.PLATING,
            JobKeys.SHEET,
            PlatingReader.FORMS.keySet(),
            JobKeys.MASKING,
            MarkKinds.keys().keySet(),
            JobKeys.TREATMENTS.keySet(),
            JobKeys.DISPLAYS.keySet(),
            JobKeys.ALONGS.keySet()));

    known.forEach(words -> assertThat(spelled).containsAll(words));
  }

  @Test
  void theDefaultsNamedAreTheDefaultsUsed() throws Exception {
    Job least = parse(examples.get(0));

    // The page's own words, read as the reader would read them.
    assertThat(defaultOf("flash")).startsWith(thickness(least.plating().flashUm()));
    assertThat(defaultOf("thickness")).startsWith(thickness(least.plating().thicknessUm()));
    assertThat(defaultOf("activationLap")).isEqualTo(length(least.sections().activationLapMm()));
    assertThat(defaultOf("flashLap")).isEqualTo(length(least.sections().flashLapMm()));
    assertThat(defaultOf("loss")).isEqualTo(PlainNumber.of(least.plating().lossShare()));
    assertThat(defaultOf("usable")).isEqualTo(PlainNumber.of(least.plating().usableShare()));
    assertThat(defaultOf("efficiency")).isEqualTo(PlainNumber.of(least.plating().efficiency()));
    assertThat(defaultOf("secondsPerCm2PerUm"))
        .isEqualTo(PlainNumber.of(least.plating().secondsPerCm2PerUm()));
    assertThat(AmountKind.CONCENTRATION.read(defaultOf("solution")))
        .isEqualTo(least.plating().solutionGPerL());
    assertThat(defaultOf("tapeWidth")).startsWith(length(least.masking().tapeWidthMm()));
    assertThat(defaultOf("tapeOverlap")).isEqualTo(length(least.masking().tapeOverlapMm()));
    assertThat(AmountKind.LENGTH.read(defaultOf("tapeRoll")))
        .isEqualTo(least.masking().tapeRollMm());
    assertThat(defaultOf("splash")).isEqualTo(length(least.masking().splashMm()));
    assertThat(defaultOf("lacquerSolids"))
        .isEqualTo(PlainNumber.of(least.masking().lacquerSolids()));
    assertThat(defaultOf("lacquerDry")).isEqualTo(thickness(least.masking().lacquerDryUm()));
    assertThat(defaultOf("lacquerCoats")).isEqualTo("" + least.masking().lacquerCoats());
    assertThat(defaultOf("lacquerLoss")).isEqualTo(PlainNumber.of(least.masking().lacquerLoss()));
    assertThat(defaultOf("deposit")).isEqualTo("`" + least.plating().deposit() + "`");
    assertThat(least.sections().limit()).isEqualTo(new Job.Limit.Wet(45));
    assertThat(defaultOf("wetWindow")).startsWith("45 s");
  }

  private static String length(double mm) {
    return AmountKind.LENGTH.write(mm, UnitSystem.METRIC);
  }

  private static String thickness(double um) {
    return AmountKind.THICKNESS.write(um, UnitSystem.METRIC);
  }

  /** Last column of a key's row. */
  private static String defaultOf(String key) {
    return Pattern.compile("^\\| `" + key + "` \\|.*\\| ([^|]+) \\|$", Pattern.MULTILINE)
        .matcher(page)
        .results()
        .map(m -> m.group(1))
        .findFirst()
        .orElseThrow();
  }
}
