package org.seamwright.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.job.PlannedJob;
import org.seamwright.section.Section;
import org.seamwright.units.UnitSystem;

class CsvTest {
  @Test
  void holdsEveryFigureWithItsUnit(@TempDir Path dir) throws Exception {
    PlannedJob planned = TestJobs.goblet("Cup, \"quoted\"", 2, UnitSystem.INCH);
    Path file = dir.resolve("sections.csv");
    Csv.sections(planned, file);
    String text = Files.readString(file, StandardCharsets.UTF_8);
    // RFC 4180: lines end in CRLF, all have as many fields as the head.
    assertThat(text).endsWith("\r\n");
    String[] lines = text.split("\r\n");
    assertThat(lines).hasSize(1 + 4);
    String[] head = lines[0].split(",");
    for (int i = 1; i < lines.length; i++) {
      String[] fields = lines[i].split(",");
      assertThat(fields).hasSameSizeAs(head);
      Section s = planned.sections().sections().get(i - 1);
      assertThat(Integer.parseInt(fields[0])).isEqualTo(s.id());
      assertThat(Double.parseDouble(fields[1])).isCloseTo(s.netMm2(), within(1e-6));
      assertThat(Double.parseDouble(fields[4])).isCloseTo(s.workedMm2(), within(1e-6));
    }
    assertThat(head).contains("net_mm2", "gold_g", "solution_ml", "time_s", "charge_ah");
  }

  @Test
  void decimalsHaveAPointInEveryCountry(@TempDir Path dir) throws Exception {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      PlannedJob planned = TestJobs.goblet("Pokal", 2, UnitSystem.METRIC);
      Path file = dir.resolve("seams.csv");
      Csv.seams(planned, file);
      assertThat(Files.readString(file)).contains("1,2,40,0,0\r\n");
      Csv.masks(planned, file);
      assertThat(Files.readString(file)).contains(",0.95,12000\r\n");
    } finally {
      Locale.setDefault(before);
    }
  }
}
