package org.seamwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class ArchitecturePictureTest {
  @Test
  void thePictureIsThatOfTheImports() throws Exception {
    assertThat(Files.readString(ArchitecturePicture.FILE))
        .as("run org.seamwright.ArchitecturePicture to draw it anew")
        .isEqualTo(ArchitecturePicture.svg(ArchitecturePicture.imports()));
  }

  /** a imports b and c, b imports c: the line from a to c says nothing new. */
  @Test
  void aLineIsDrawnOnlyWhereNoOtherLeads() {
    Map<String, Set<String>> imports = new TreeMap<>();
    imports.put("a", Set.of("b", "c"));
    imports.put("b", Set.of("c"));
    imports.put("c", Set.of());
    String svg = ArchitecturePicture.svg(imports);
    assertThat(svg.split("<polyline", -1)).hasSize(3);
    assertThat(svg.split("<text", -1)).hasSize(4);
  }
}
