package org.seamwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamwright.section.SectionAxis;
import org.seamwright.section.SectionChoices;
import org.seamwright.section.SectionEdit;
import org.seamwright.section.SectionSymmetry;
import org.seamwright.section.SectionWay;

/** Ways, symmetry and edits of sections in a job file. */
class SectionChoicesFileTest {
  private static String job(String sections) {
    return "{\"seamwright\": 1,\n\"mesh\": {\"file\": \"a.stl\", \"unit\": \"mm\"},\n"
        + "\"plating\": {\"recipe\": \"brass\"},\n\"sections\": {"
        + sections
        + "}}";
  }

  private static SectionChoices read(String sections) throws JobFileException {
    return JobFileTest.parse(job(sections)).sections().choices();
  }

  @Test
  void nothingIsAskedForUnlessItIsWritten() throws Exception {
    assertThat(read("")).isEqualTo(SectionChoices.NONE);
  }

  @Test
  void waysAreRead() throws Exception {
    assertThat(read("\"way\": {\"kind\": \"rings\", \"at\": [\"1 in\", \"40 mm\"]}").way())
        .hasValue(
            new SectionWay.Rings(SectionAxis.FOUND, SectionWay.By.HEIGHT, 0, List.of(25.4, 40.0)));
    assertThat(
            read("\"way\": {\"kind\": \"sectors\", \"axis\": [0, 0, 2], \"zero\": [0, 1, 0], \"count\": 6}")
                .way())
        .hasValue(
            new SectionWay.Sectors(
                new SectionAxis(
                    Optional.empty(),
                    Optional.of(Vector3D.of(0, 0, 2)),
                    Optional.of(Vector3D.of(0, 1, 0))),
                6));
    assertThat(read("\"symmetry\": {\"axis\": \"found\"}").symmetry())
        .hasValue(new SectionSymmetry(SectionAxis.FOUND, 0));
  }

  @Test
  void editsAreReadInOrder() throws Exception {
    assertThat(
            read("\"edits\": [{\"kind\": \"split\", \"point\": [1, 2, 3], \"parts\": 4},"
                    + " {\"kind\": \"rename\", \"point\": [1, 2, \"1 in\"], \"name\": \"lip\"}]")
                .edits())
        .containsExactly(
            new SectionEdit.SplitEvenly(Vector3D.of(1, 2, 3), 4),
            new SectionEdit.Rename(Vector3D.of(1, 2, 25.4), "lip"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          "way": {"kind": "ring"}                                            | Did you mean "rings"?
          "way": {"kind": "sectors", "count": 1}                             | sections.way.count
          "way": {"kind": "strips", "direction": [0, 0, 0]}                  | cannot be all zero
          "way": {"kind": "strips", "direction": [0, 0, 1], "angle": 3}      | no key "angle" here
          "way": {"kind": "rings", "count": 3, "at": ["1 mm"]}               | exclude each other
          "way": {"kind": "rings", "at": ["2 mm", "1 mm"]}                   | must ascend
          "way": {"kind": "naturalFaces"}                                    | "angle" is missing
          "way": {"kind": "rings", "by": "hight"}                            | Did you mean "height"?
          "way": {"kind": "naturalFaces", "angle": 9}, "symmetry": {}        | automatic way only
          "symmetry": {"count": 1}                                           | sections.symmetry.count
          "edits": [{"kind": "merge", "points": [[1, 2, 3]]}]                | Expected two points
          "edits": [{"kind": "split", "point": [1, 2, 3]}]                   | "path" and "parts"
          "edits": [{"kind": "pin", "path": [[1, 2, 3]]}]                    | at least two points
          "edits": [{"kind": "renumber", "point": [1, 2, 3], "number": 0}]   | sections.edits[0].number
          "edits": [{"kind": "move"}]                                        | sections.edits[0].kind
          """)
  void whatDoesNotFitIsRefused(String sections, String says) {
    assertThat(JobFileTest.refused(job(sections))).hasMessageContaining(says);
  }
}
