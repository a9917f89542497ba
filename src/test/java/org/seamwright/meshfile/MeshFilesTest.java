package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** What the readers accept, and that all formats give the same mesh. */
class MeshFilesTest {
  @TempDir Path directory;

  private MeshDocument read(String name, byte[] bytes) throws MeshFileException {
    return Bytes.read(directory, name, bytes);
  }

  private MeshDocument readObj(String text) throws MeshFileException {
    return read("a.obj", Bytes.text(text));
  }

  private static double area(Mesh mesh) {
    double sum = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      sum += Faces.area(mesh, f);
    }
    return sum;
  }

  /** A sphere whose coordinates are single-precision numbers, so that binary STL keeps them. */
  private static Mesh singlePrecision() {
    Mesh sphere = Shapes.sphere(20, 10, 16);
    double[] xyz = sphere.xyz().clone();
    for (int i = 0; i < xyz.length; i++) {
      xyz[i] = (float) xyz[i];
    }
    return Mesh.of(xyz, sphere.corner());
  }

  @Test
  void allFormatsGiveTheSameMesh() throws MeshFileException {
    Mesh mesh = singlePrecision();
    MeshDocument binary = read("a.stl", Bytes.stl(mesh));
    MeshDocument text = read("b.stl", Bytes.textStl(mesh));
    MeshDocument obj = read("c.obj", Bytes.obj(mesh));
    assertThat(binary.format()).isEqualTo("STL binary");
    assertThat(text.format()).isEqualTo("STL text");
    assertThat(obj.format()).isEqualTo("OBJ");
    assertThat(binary.mesh().vertexCount()).isEqualTo(mesh.vertexCount());
    assertThat(text.mesh().xyz()).isEqualTo(binary.mesh().xyz());
    assertThat(text.mesh().corner()).isEqualTo(binary.mesh().corner());
    assertThat(obj.mesh().xyz()).isEqualTo(binary.mesh().xyz());
    assertThat(obj.mesh().corner()).isEqualTo(binary.mesh().corner());
    for (int h = 0; h < mesh.corner().length; h++) {
      assertThat(binary.mesh().x(binary.mesh().corner()[h])).isEqualTo(mesh.x(mesh.corner()[h]));
    }
  }

  @Test
  void textFormatsKeepDoublesExactly() throws MeshFileException {
    Mesh mesh = Shapes.moved(Shapes.torus(30, 1e-3, 12, 7), 1e6, -1 / 3.0, 1e-17);
    MeshDocument text = read("b.stl", Bytes.textStl(mesh));
    MeshDocument obj = read("c.obj", Bytes.obj(mesh));
    assertThat(text.mesh().xyz()).isEqualTo(obj.mesh().xyz());
    for (int h = 0; h < mesh.corner().length; h++) {
      assertThat(obj.mesh().x(obj.mesh().corner()[h])).isEqualTo(mesh.x(mesh.corner()[h]));
      assertThat(obj.mesh().z(obj.mesh().corner()[h])).isEqualTo(mesh.z(mesh.corner()[h]) + 0.0);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"a.stl", "a.obj", "a", "a.txt"})
  void formatIsToldByContentNotByName(String name) throws MeshFileException {
    Mesh cube = Shapes.cube(1, 1);
    assertThat(read(name, Bytes.stl(cube)).format()).isEqualTo("STL binary");
    assertThat(read(name, Bytes.textStl(cube)).format()).isEqualTo("STL text");
    assertThat(read(name, Bytes.obj(cube)).format()).isEqualTo("OBJ");
  }

  @Test
  void binaryStlMayBeginWithSolid() throws MeshFileException {
    byte[] bytes = Bytes.stl(Shapes.cube(1, 1));
    System.arraycopy(Bytes.text("solid facet normal"), 0, bytes, 0, 18);
    MeshDocument document = read("a.stl", bytes);
    assertThat(document.format()).isEqualTo("STL binary");
    assertThat(document.mesh().faceCount()).isEqualTo(12);
  }

  @Test
  void textStlMayBeWrittenInAnyLayout() throws MeshFileException {
    String plain =
        "solid a part\n"
            + RefusalTest.facets("0 0 0", "1 0 0", "0 1 0")
            + RefusalTest.facets("0 0 0", "0 1 0", "0 0 1")
            + "endsolid a part\n";
    Mesh wanted = read("a.stl", Bytes.text(plain)).mesh();
    String[] layouts = {
      plain.replace("\n", "\r\n"),
      plain.replace("\n", "\r"),
      plain.toUpperCase(java.util.Locale.ROOT),
      "   \t" + plain,
      "\n\n" + plain,
      "\uFEFF" + plain,
      plain.replace(" 1", " 1.000000E+00").replace(" 0", " -0.0e0"),
      plain.replace("1 ", "0.1D+01 ").replace("1\n", "0.10000d+1\n"),
      plain.replace("1 ", "+1. ").replace("0 ", ".0 "),
      plain.replace("  ", "\t\t"),
      plain.substring(0, plain.length() - 1),
    };
    for (String layout : layouts) {
      Mesh mesh = read("a.stl", Bytes.text(layout)).mesh();
      assertThat(mesh.xyz()).as(layout).isEqualTo(wanted.xyz());
      assertThat(mesh.corner()).as(layout).isEqualTo(wanted.corner());
    }
  }

  @Test
  void namesOfSeveralSolidsBecomeLabels() throws MeshFileException {
    String text =
        "solid the cup\n"
            + RefusalTest.facets("0 0 0", "1 0 0", "0 1 0")
            + "endsolid the cup\nsolid handle\n"
            + RefusalTest.facets("0 0 0", "0 1 0", "0 0 1")
            + "endsolid\nsolid\n"
            + RefusalTest.facets("0 0 0", "0 0 1", "1 0 0")
            + "endsolid\n";
    MeshDocument document = read("a.stl", Bytes.text(text));
    assertThat(document.labels().names()).containsExactly("", "the cup", "handle");
    assertThat(document.labels().of()).containsExactly(1, 2, 0);
  }

  @Test
  void negativeZeroIsWeldedToZero() throws MeshFileException {
    float[] a = {0f, 0f, 0f, 1, 0, 0, 0, 1, 0};
    float[] b = {-0f, -0f, 0f, 0, 1, -0f, -1, 0, 0};
    Mesh mesh = read("a.stl", Bytes.stl("x", 2, a, b)).mesh();
    assertThat(mesh.vertexCount()).isEqualTo(4);
    assertThat(mesh.xyz()).doesNotContain(-0.0);
  }

  @Test
  void cornersThatDifferInTheLastBitStayApart() throws MeshFileException {
    float[] a = {0, 0, 0, 1, 0, 0, 0, 1, 0};
    float[] b = {0, 0, 0, 0, Math.nextUp(1f), 0, -1, 0, 0};
    assertThat(read("a.stl", Bytes.stl("x", 2, a, b)).mesh().vertexCount()).isEqualTo(5);
  }

  @Test
  void collapsedFacesAreDroppedAndCounted() throws MeshFileException {
    float[] good = {0, 0, 0, 1, 0, 0, 0, 1, 0};
    float[] collapsed = {5, 5, 5, 5, 5, 5, 0, 1, 0};
    MeshDocument document = read("a.stl", Bytes.stl("x", 3, collapsed, good, collapsed));
    assertThat(document.mesh().faceCount()).isEqualTo(1);
    assertThat(document.mesh().vertexCount()).isEqualTo(3);
    assertThat(document.droppedFaces()).isEqualTo(2);
    assertThat(document.notices())
        .singleElement()
        .satisfies(
            notice -> {
              assertThat(notice.code()).isEqualTo("collapsed-triangles");
              assertThat(notice.count()).isEqualTo(2);
            });
  }

  @Test
  void digestIsThatOfTheBytes() throws IOException, MeshFileException {
    // Expected value by the sha256sum program of GNU coreutils.
    Path file = directory.resolve("one.obj");
    Files.writeString(file, "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n");
    assertThat(MeshFiles.readWithDigest(file, Progress.NONE).sha256())
        .isEqualTo("697b00ab13410c52a542d2e9c63711fcc04e9cbf6c0d3439a9b43cc812e6e713");
  }

  @Test
  void objAcceptsEveryFormOfCorner() throws MeshFileException {
    String points = "v 0 0 0\nv 1 0 0 1.0\nv 1 1 0 0.2 0.4 0.6\nvt 0 0\nvn 0 0 1\n";
    Mesh wanted = readObj(points + "f 1 2 3\n").mesh();
    for (String face :
        new String[] {
          "1/1 2/1 3/1",
          "1//1 2//1 3//1",
          "1/1/1 2/1/1 3/1/1",
          "-3 -2 -1",
          "-3/-1/-1 -2/-1/-1 -1/-1/-1",
          "1/ 2/ 3/",
          "+1 2 3"
        }) {
      Mesh mesh = readObj(points + "f " + face + "\n").mesh();
      assertThat(mesh.xyz()).as(face).isEqualTo(wanted.xyz());
      assertThat(mesh.corner()).as(face).isEqualTo(wanted.corner());
    }
  }

  @Test
  void negativeIndicesCountBackFromTheirLine() throws MeshFileException {
    Mesh mesh =
        readObj(
                """
                v 0 0 0
                v 1 0 0
                v 0 1 0
                f -3 -2 -1
                v 5 0 0
                v 7 0 0
                v 5 2 0
                f -3 -2 -1
                v 9 9 9
                """)
            .mesh();
    assertThat(area(mesh)).isEqualTo(0.5 + 2);
  }

  @Test
  void objFacesMayComeBeforeTheirVertices() throws MeshFileException {
    Mesh mesh = readObj("f 1 2 3 4\nf 1 2 3\nv 0 0 0\nv 1 0 0\nv 1 1 0\nv 0 1 0\n").mesh();
    assertThat(mesh.faceCount()).isEqualTo(3);
    assertThat(area(mesh)).isEqualTo(1.5);
  }

  @Test
  void objLinesMayBeContinued() throws MeshFileException {
    Mesh mesh =
        readObj("v 0 0 \\\n 0\nv 2 0 0 # to the right\nv 0 2 0\r\nf 1 2\\\r\n 3\\\n# end\n").mesh();
    assertThat(area(mesh)).isEqualTo(2);
  }

  @Test
  void objGroupsObjectsAndMaterialsBecomeLabels() throws MeshFileException {
    MeshDocument document =
        readObj(
            """
            v 0 0 0
            v 1 0 0
            v 1 1 0
            v 0 1 0
            f 1 2 3
            o cup
            f 1 2 3 4
            g left handle
            usemtl gold
            f 1 3 4
            g
            f 2 3 4
            """);
    assertThat(document.labels().names())
        .containsExactly("", "cup", "cup / left handle", "cup / left handle / gold", "cup / gold");
    assertThat(document.labels().of()).containsExactly(0, 1, 1, 3, 4);
  }

  @Test
  void labelsSurviveWriting() throws IOException, MeshFileException {
    Mesh cube = Shapes.cube(1, 1);
    int[] of = new int[12];
    of[3] = 1;
    of[4] = 2;
    Labels labels = new Labels(java.util.List.of("", "the rim", "foot"), of);
    Path file = directory.resolve("labelled.obj");
    ObjWriter.write(cube, labels, file);
    MeshDocument document = MeshFiles.read(file, org.seamwright.basis.Progress.NONE);
    assertThat(document.labels().names()).isEqualTo(labels.names());
    assertThat(document.labels().of()).isEqualTo(of);
  }

  @Test
  void skippedObjContentIsTold() throws MeshFileException {
    MeshDocument document =
        readObj("v 0 0 0\nv 1 0 0\nv 1 1 0\nf 1 2 3\nl 1 2\np 1\nwhatever 7\ns off\n");
    assertThat(document.notices())
        .extracting("code", "count")
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("lines-and-points-skipped", 2L),
            org.assertj.core.groups.Tuple.tuple("lines-not-understood", 1L));
    assertThat(document.notices().get(1).text()).contains("line 7");
  }

  @Test
  void polygonsThatAreNotFlatAreToldWithTheirDeviation() throws MeshFileException {
    // Corners at height ±h of a unit square: off the mean plane z = 0 by h.
    MeshDocument document =
        readObj("v 0 0 0.25\nv 1 0 -0.25\nv 1 1 0.25\nv 0 1 -0.25\nf 1 2 3 4\n");
    assertThat(document.notices())
        .singleElement()
        .satisfies(
            notice -> {
              assertThat(notice.code()).isEqualTo("polygons-not-flat");
              assertThat(notice.text()).contains("up to 0.250 file units");
            });
    // Either diagonal gives two triangles with edges (1, 0, -1/2), (0, 1, -1/2): |(1/2, 1/2, 1)|/2.
    assertThat(area(document.mesh())).isCloseTo(Math.sqrt(1.5), within(1e-15));
  }

  @Test
  void readingCanBeCancelled() throws IOException {
    Path file = Files.write(directory.resolve("a.stl"), Bytes.stl(Shapes.sphere(1, 30, 30)));
    assertThatThrownBy(
            () ->
                MeshFiles.read(
                    file,
                    fraction -> {
                      if (fraction > 0.3) {
                        throw new CancellationException();
                      }
                    }))
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void writersReplaceTheirTargetOnlyWhenWhole() throws IOException {
    Path file = Files.writeString(directory.resolve("kept.stl"), "before");
    assertThatThrownBy(
            () ->
                AtomicFile.write(
                    file,
                    out -> {
                      out.write(Bytes.text("half"));
                      throw new IOException("the disk is full");
                    }))
        .isInstanceOf(IOException.class);
    assertThat(Files.readString(file, StandardCharsets.UTF_8)).isEqualTo("before");
    try (var left = Files.list(directory)) {
      assertThat(left).containsExactly(file);
    }
    StlWriter.writeBinary(Shapes.cube(1, 1), file, "cube");
    assertThat(Files.size(file)).isEqualTo(84 + 12 * 50);
  }

  @Test
  void modelsOneAfterTheOtherInABinaryStlAreOnePiece() throws MeshFileException {
    // Enough facets for several threads, the bodies' ends anywhere between theirs.
    Mesh whole = Shapes.torus(30, 7, 300, 120);
    byte[] file = {};
    for (int[] part : new int[][] {{0, 11}, {11, 40_000}, {40_000, whole.faceCount()}}) {
      int[] corner = Arrays.copyOfRange(whole.corner(), 3 * part[0], 3 * part[1]);
      file = Bytes.join(file, Bytes.stl(Mesh.of(whole.xyz(), corner)));
    }
    MeshDocument document = read("a.stl", file);
    Mesh expected = read("b.stl", Bytes.stl(whole)).mesh();
    assertThat(document.mesh().xyz()).isEqualTo(expected.xyz());
    assertThat(document.mesh().corner()).isEqualTo(expected.corner());
    assertThat(document.notices()).hasSize(1);
    assertThat(document.notices().get(0).code()).isEqualTo("several-stl-bodies");
    assertThat(document.notices().get(0).text()).contains("3 binary STL models", "11 facets");
    MeshDocument packed = read("a.stl.gz", SceneBytes.gzip(file));
    assertThat(packed.mesh().corner()).isEqualTo(expected.corner());
  }

  private static final String FOUR = "v 0 0 0 %s\nv 1 0 0 %s\nv 0 1 0 %s\nv 0 0 1 %s\n";

  private static String label(MeshDocument document, int face) {
    return document.labels().names().get(document.labels().of()[face]);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1 0 0|0 0.5 1", "255 0 0|0 127.5 255", "1.0 0 0 1|0 .5 1e0 1"})
  void aFewColoursOfObjVerticesNameFaces(String colours) throws MeshFileException {
    String red = colours.split("[|]")[0];
    String blue = colours.split("[|]")[1];
    String faces = "o body\nf 1 2 3\nf 1 3 4\no foot\nf 1 2 4\n";
    MeshDocument document = readObj(String.format(FOUR, red, red, blue, blue) + faces);
    // Two corners of the same colour decide; 0.5 of 255 is 127.5.
    assertThat(label(document, 0)).isEqualTo("body / #FF0000");
    assertThat(label(document, 1)).matches("body / #00(7F|80)FF");
    assertThat(label(document, 2)).isEqualTo("foot / #FF0000");
    assertThat(document.notices()).extracting(n -> n.code()).containsExactly("colours-named");
    assertThat(document.notices().get(0).text()).contains("4 vertices", "2 colours", "#FF0000");
  }

  @Test
  void aFaceOfThreeColoursHasNone() throws MeshFileException {
    MeshDocument document =
        readObj(String.format(FOUR, "1 0 0", "0 1 0", "0 0 1", "") + "f 1 2 3\nf 1 2 4\n");
    assertThat(label(document, 0)).isEmpty();
    assertThat(label(document, 1)).isEmpty();
  }

  @Test
  void weightsAreNoColours() throws MeshFileException {
    MeshDocument document = readObj(String.format(FOUR, "1", "1", "1", "1") + "f 1 2 3\n");
    assertThat(document.notices()).isEmpty();
  }

  @Test
  void manyColoursAreToldAndNotUsed() throws MeshFileException {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i <= Palette.MOST; i++) {
      text.append("v ").append(i).append(' ').append(i * i).append(" 0 0 0 ");
      text.append(i / 100.0).append('\n');
    }
    MeshDocument document = readObj(text + "f 1 2 3\n");
    assertThat(document.labels().names()).containsExactly("");
    assertThat(document.notices()).extracting(n -> n.code()).containsExactly("colours-ignored");
    assertThat(document.notices().get(0).text()).contains("17 vertices", "more than 16");
  }
}
