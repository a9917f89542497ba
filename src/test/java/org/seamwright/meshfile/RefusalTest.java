package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.testsupport.Shapes;

/** Files that must be refused: each refusal names the place and what to do. */
class RefusalTest {
  private static final float[] FACET = {0, 0, 0, 1, 0, 0, 0, 1, 0};
  private static final String TRIANGLE = "v 0 0 0\nv 1 0 0\nv 0 1 0\n";

  @TempDir Path directory;

  private MeshFileException refused(String name, byte[] bytes) {
    MeshFileException refusal =
        catchThrowableOfType(MeshFileException.class, () -> Bytes.read(directory, name, bytes));
    return checked(refusal, name);
  }

  private MeshFileException refused(Path file) {
    MeshFileException refusal =
        catchThrowableOfType(MeshFileException.class, () -> MeshFiles.read(file, Progress.NONE));
    return checked(refusal, file.getFileName().toString());
  }

  private static MeshFileException checked(MeshFileException refusal, String name) {
    assertThat(refusal).as("must be refused").isNotNull();
    assertThat(refusal.source()).endsWith(name);
    assertThat(refusal.problem()).isNotBlank().doesNotEndWith(".");
    assertThat(refusal.remedy()).isNotBlank().endsWith(".");
    return refusal;
  }

  @Test
  void refusesMissingFile() {
    assertThat(refused(directory.resolve("nowhere.stl")).problem()).contains("no such file");
  }

  @Test
  void refusesDirectory() throws IOException {
    Path folder = Files.createDirectory(directory.resolve("folder.stl"));
    assertThat(refused(folder).problem()).contains("directory");
  }

  @Test
  void refusesUnreadableFile() throws IOException {
    Path file = Files.write(directory.resolve("locked.stl"), Bytes.stl("x", 1, FACET));
    assumeThat(file.toFile().setReadable(false)).isTrue();
    assumeThat(Files.isReadable(file)).as("the superuser reads every file").isFalse();
    assertThat(refused(file).problem()).contains("can't be read");
  }

  @Test
  void refusesEndlessDevice() {
    Path device = Path.of("/dev/zero");
    assumeThat(Files.exists(device)).isTrue();
    assertThat(refused(device).problem()).contains("not a regular file");
  }

  @ParameterizedTest
  @ValueSource(strings = {"empty.stl", "empty.obj", "empty"})
  void refusesEmptyFile(String name) {
    assertThat(refused(name, new byte[0]).problem()).contains("empty");
  }

  @Test
  void refusesBinaryStlCutInItsHeader() {
    byte[] whole = Bytes.stl("x", 1, FACET);
    assertThat(refused("a.stl", Arrays.copyOf(whole, 60)).place()).isEqualTo("byte 60");
  }

  @Test
  void refusesBinaryStlCutInAFacet() {
    byte[] whole = Bytes.stl(Shapes.cube(1, 1));
    MeshFileException refusal = refused("a.stl", Arrays.copyOf(whole, 84 + 5 * 50 + 7));
    assertThat(refusal.place()).isEqualTo("facet 6, byte 334");
    assertThat(refusal.problem()).contains("cut off").contains("12 facets");
  }

  @Test
  void refusesCutBinaryStlWhoseHeaderBeginsWithSolid() {
    byte[] whole = Bytes.stl("solid cube", 2, FACET, FACET);
    MeshFileException refusal = refused("a.stl", Arrays.copyOf(whole, 84 + 60));
    assertThat(refusal.place()).isEqualTo("facet 2, byte 134");
    assertThat(refusal.problem()).contains("cut off");
  }

  @Test
  void refusesFacetCountAboveTheContent() {
    MeshFileException refusal = refused("a.stl", Bytes.stl("x", 3, FACET, FACET));
    assertThat(refusal.place()).isEqualTo("facet 3, byte 184");
    assertThat(refusal.problem()).contains("3 facets").contains("room for 2");
  }

  @Test
  void refusesFacetCountBelowTheContent() {
    MeshFileException refusal = refused("a.stl", Bytes.stl("x", 1, FACET, FACET, FACET));
    assertThat(refusal.place()).isEqualTo("byte 134");
    assertThat(refusal.problem()).contains("room for 2 facets");
  }

  @Test
  void refusesExtraBytes() {
    byte[] file = Bytes.join(Bytes.stl("x", 1, FACET), new byte[7]);
    MeshFileException refusal = refused("a.stl", file);
    assertThat(refusal.place()).isEqualTo("byte 134");
    assertThat(refusal.problem()).contains("7 more bytes");
  }

  @Test
  void refusesASecondStlThatIsCutOff() {
    byte[] file = Bytes.join(Bytes.stl("x", 2, FACET, FACET), Bytes.stl("y", 2, FACET));
    MeshFileException refusal = refused("a.stl", file);
    assertThat(refusal.place()).isEqualTo("byte 184");
    assertThat(refusal.remedy()).contains("missing");
  }

  @Test
  void namesTheByteInTheSecondOfTwoStls() {
    float[] bad = FACET.clone();
    bad[4] = Float.NaN;
    byte[] file = Bytes.join(Bytes.stl("x", 2, FACET, FACET), Bytes.stl("y", 2, FACET, bad));
    // Header 84, two facets of 50, header 84, one facet of 50, normal 12, corner 12, x 4.
    assertThat(refused("a.stl", file).place()).isEqualTo("facet 4, byte 346");
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, Integer.MAX_VALUE, 100_000_000})
  void refusesHugeCountsWithoutAllocating(int count) {
    long unsigned = Integer.toUnsignedLong(count);
    assertThat(refused("a.stl", Bytes.stl("x", count, FACET)).problem())
        .contains(String.format("%,d facets", unsigned));
  }

  @Test
  void refusesBinaryStlWithoutFacets() {
    assertThat(refused("a.stl", Bytes.stl("x", 0)).problem()).contains("no faces");
  }

  @ParameterizedTest
  @ValueSource(floats = {Float.NaN, Float.POSITIVE_INFINITY, Float.NEGATIVE_INFINITY})
  void refusesNonFiniteCoordinatesInBinaryStl(float bad) {
    float[] facet = FACET.clone();
    facet[4] = bad;
    MeshFileException refusal = refused("a.stl", Bytes.stl("x", 2, FACET, facet));
    assertThat(refusal.place()).isEqualTo("facet 2, byte 162");
    assertThat(refusal.problem()).contains("not a finite number");
  }

  @ParameterizedTest
  @ValueSource(strings = {"nan", "NaN", "-nan(ind)", "inf", "-Infinity", "1.#QNAN"})
  void refusesNonFiniteCoordinatesInText(String bad) {
    String text = facets("0 0 0", "1 0 0", "0 1 0") + facets("0 0 0", "1 " + bad + " 0", "0 1 0");
    MeshFileException refusal = refused("a.stl", Bytes.text("solid\n" + text + "endsolid\n"));
    assertThat(refusal.place()).isEqualTo("line 12, facet 2");
    assertThat(refusal.problem()).contains("not a finite number");

    MeshFileException inObj = refused("a.obj", Bytes.text("v 0 0 0\nv 1 " + bad + " 0\n"));
    assertThat(inObj.place()).isEqualTo("line 2");
    assertThat(inObj.problem()).contains("not a finite number");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1e39", "-1e308", "1e999"})
  void refusesCoordinatesWhoseAreaWouldOverflow(String bad) {
    assertThat(refused("a.obj", Bytes.text("v 0 0 " + bad + "\n")).problem()).contains("3.4e38");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "abc|'abc'",
        "1,5|decimal mark",
        "1.2.3|'1.2.3'",
        "0x10|'0x10'",
        "--1|'--1'",
        "1e|'1e'"
      })
  void refusesMalformedNumbers(String bad, String said) {
    String text = "solid\n" + facets("0 0 0", "1 0 0", "0 " + bad + " 0") + "endsolid\n";
    MeshFileException refusal = refused("a.stl", Bytes.text(text));
    assertThat(refusal.place()).isEqualTo("line 6, facet 1");
    assertThat(refusal.getMessage()).contains(said);

    MeshFileException inObj = refused("a.obj", Bytes.text("# a\nv 0 0 " + bad + "\n"));
    assertThat(inObj.place()).isEqualTo("line 2");
    assertThat(inObj.getMessage()).contains(said);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13})
  void refusesTextStlCutAfterAnyLine(int lines) {
    String text =
        "solid cut\n" + facets("0 0 0", "1 0 0", "0 1 0") + facets("0 0 0", "0 1 0", "0 0 1");
    String cut = String.join("\n", Arrays.asList(text.split("\n")).subList(0, lines)) + "\n";
    MeshFileException refusal = refused("a.stl", Bytes.text(cut));
    assertThat(refusal.problem()).contains("cut off");
    assertThat(refusal.place()).startsWith("line ");
  }

  @Test
  void refusesTextStlCutInAWord() {
    String text = "solid cut\n" + facets("0 0 0", "1 0 0", "0 1 0") + "endso";
    assertThat(refused("a.stl", Bytes.text(text)).place()).isEqualTo("line 9, facet 1");
  }

  @Test
  void refusesTextStlFacetWithFourCorners() {
    String text =
        """
        solid
        facet normal 0 0 1
        outer loop
        vertex 0 0 0
        vertex 1 0 0
        vertex 1 1 0
        vertex 0 1 0
        endloop
        endfacet
        endsolid
        """;
    MeshFileException refusal = refused("a.stl", Bytes.text(text));
    assertThat(refusal.place()).isEqualTo("line 7, facet 1");
    assertThat(refusal.problem()).contains("more than three corners");
  }

  @Test
  void refusesTextAfterTheLastSolid() {
    String text = "solid\n" + facets("0 0 0", "1 0 0", "0 1 0") + "endsolid\nmore\n";
    assertThat(refused("a.stl", Bytes.text(text)).place()).isEqualTo("line 10, facet 1");
  }

  @ParameterizedTest
  @ValueSource(strings = {"solid nothing\nendsolid nothing\n", "# nothing\n", "  \n\n", TRIANGLE})
  void refusesTextWithoutFaces(String text) {
    String name = text.startsWith("solid") ? "a.stl" : "a.obj";
    assertThat(refused(name, Bytes.text(text)).problem()).contains("no faces");
  }

  @Test
  void refusesFacesThatAllLackArea() {
    float[] inLine = {0, 0, 0, 1, 0, 0, 2, 0, 0};
    float[] point = {1, 1, 1, 1, 1, 1, 1, 1, 1};
    assertThat(refused("a.stl", Bytes.stl("x", 2, inLine, point)).problem())
        .contains("none of the 2 faces has any area");
    assertThat(refused("a.stl", Bytes.stl("x", 1, point)).problem())
        .contains("the only face has no area");
  }

  @Test
  void refusesObjIndexOutOfRange() {
    MeshFileException refusal = refused("a.obj", Bytes.text(TRIANGLE + "f 1 2 3\nf 1 2 4\n"));
    assertThat(refusal.place()).isEqualTo("line 5");
    assertThat(refusal.problem()).contains("vertex 4").contains("there are 3");
  }

  @Test
  void refusesObjIndexBeforeTheFirst() {
    MeshFileException refusal = refused("a.obj", Bytes.text(TRIANGLE + "f -1 -2 -4\n"));
    assertThat(refusal.place()).isEqualTo("line 4");
    assertThat(refusal.problem()).contains("vertex -4");
  }

  @ParameterizedTest
  @ValueSource(strings = {"99999999999", "2147483647", "4294967297"})
  void refusesObjIndicesBeyondTheRangeOfAnInteger(String index) {
    assertThat(refused("a.obj", Bytes.text(TRIANGLE + "f 1 2 " + index + "\n")).place())
        .isEqualTo("line 4");
  }

  @Test
  void refusesObjIndexZero() {
    MeshFileException refusal = refused("a.obj", Bytes.text(TRIANGLE + "\nf 0 1 2\n"));
    assertThat(refusal.place()).isEqualTo("line 5");
    assertThat(refusal.problem()).contains("vertex 0");
  }

  @ParameterizedTest
  @ValueSource(strings = {"f 1 2 x", "f 1 2 3.5", "f 1/a 2 3", "f 1/1/1/1 2 3", "f / 2 3", "f 1 2"})
  void refusesMalformedObjFaces(String line) {
    assertThat(refused("a.obj", Bytes.text(TRIANGLE + line + "\n")).place()).isEqualTo("line 4");
  }

  @Test
  void refusesObjVertexWithTooFewCoordinates() {
    MeshFileException refusal = refused("a.obj", Bytes.text("v 0 0 0\nv 1 0\n"));
    assertThat(refusal.place()).isEqualTo("line 2");
    assertThat(refusal.problem()).contains("2 of 3");
  }

  @Test
  void refusesFreeFormSurfaces() {
    assertThat(refused("a.obj", Bytes.text(TRIANGLE + "surf 0 1 0 1 1 2 3\n")).problem())
        .contains("free-form");
  }

  @Test
  void refusesPolygonsTooLongToSplit() {
    StringBuilder text = new StringBuilder(TRIANGLE + "f");
    for (int i = 0; i < 10_001; i++) {
      text.append(' ').append(1 + i % 3);
    }
    assertThat(refused("a.obj", Bytes.text(text + "\n")).problem()).contains("10001 corners");
  }

  @Test
  void refusesOtherFormatsByName() {
    assertThat(refused("a.txt", Bytes.text("pl\nformat ascii 1.0\n")).problem()).contains("STL");
    assertThat(refused("a.3mf", Bytes.join(new byte[] {'P', 'K', 3, 4}, new byte[200])).problem())
        .contains("zip");
    byte[] packed = SceneBytes.gzip(SceneBytes.gzip(Bytes.text("solid x")));
    assertThat(refused("a.stl.gz", packed).problem()).contains("gzip more than once");
    assertThat(refused("a.obj", new byte[] {(byte) 0xFF, (byte) 0xFE, 'v', 0}).problem())
        .contains("UTF-16");
    assertThat(refused("a.obj", new byte[300]).problem()).contains("not text");
  }

  static String facets(String a, String b, String c) {
    return "facet normal 0 0 1\n outer loop\n  vertex "
        + a
        + "\n  vertex "
        + b
        + "\n  vertex "
        + c
        + "\n endloop\nendfacet\n";
  }
}
