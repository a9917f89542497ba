package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** What the readers of PLY, glTF, 3MF and gzip accept; one shape is one shape in all of them. */
class SceneFilesTest {
  @TempDir Path directory;

  private MeshDocument read(byte[] bytes) throws MeshFileException {
    return Bytes.read(directory, "file", bytes);
  }

  private MeshFileException refused(byte[] bytes) {
    return catchThrowableOfType(MeshFileException.class, () -> read(bytes));
  }

  private static double area(MeshDocument document) {
    Mesh mesh = document.mesh();
    return Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
  }

  /** Signed volume; above 0 if faces turn outwards. */
  private static double volume(Mesh mesh) {
    return Sum.over(
        mesh.faceCount(),
        f -> {
          int a = mesh.corner()[3 * f];
          int b = mesh.corner()[3 * f + 1];
          int c = mesh.corner()[3 * f + 2];
          return (mesh.x(a) * (mesh.y(b) * mesh.z(c) - mesh.z(b) * mesh.y(c))
                  - mesh.y(a) * (mesh.x(b) * mesh.z(c) - mesh.z(b) * mesh.x(c))
                  + mesh.z(a) * (mesh.x(b) * mesh.y(c) - mesh.y(b) * mesh.x(c)))
              / 6;
        });
  }

  /** A torus whose coordinates are single-precision numbers, so that every format keeps them. */
  private static Mesh single() {
    Mesh torus = Shapes.torus(20, 5, 24, 10);
    double[] xyz = torus.xyz().clone();
    for (int i = 0; i < xyz.length; i++) {
      xyz[i] = (float) xyz[i];
    }
    return Mesh.of(xyz, torus.corner());
  }

  @Test
  void oneShapeIsOneMeshInEveryFormat() throws MeshFileException {
    Mesh mesh = single();
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("STL binary", Bytes.stl(mesh));
    files.put("STL text", Bytes.textStl(mesh));
    files.put("OBJ", Bytes.obj(mesh));
    files.put("PLY", SceneBytes.ply(mesh, "ascii"));
    files.put("PLY ", SceneBytes.ply(mesh, "binary_little_endian"));
    files.put("PLY  ", SceneBytes.ply(mesh, "binary_big_endian"));
    files.put("glTF binary", SceneBytes.glb(mesh));
    files.put("glTF", SceneBytes.gltfText(mesh));
    files.put("3MF", SceneBytes.threeMf(mesh));
    Mesh wanted = read(files.get("STL binary")).mesh();
    assertThat(wanted.vertexCount()).isEqualTo(mesh.vertexCount());
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      for (boolean packed : new boolean[] {false, true}) {
        MeshDocument document = read(packed ? SceneBytes.gzip(file.getValue()) : file.getValue());
        String format = file.getKey().strip() + (packed ? ", gzip" : "");
        assertThat(document.format()).isEqualTo(format);
        assertThat(document.mesh().xyz()).as(format).isEqualTo(wanted.xyz());
        assertThat(document.mesh().corner()).as(format).isEqualTo(wanted.corner());
        assertThat(document.notices()).as(format).isEmpty();
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "micron, um, 0.001",
    "millimeter, mm, 1",
    "centimeter, cm, 10",
    "meter, m, 1000",
    "inch, in, 25.4",
    "foot, ft, 304.8"
  })
  void threeMfSaysItsUnit(String unit, String symbol, double mm) throws MeshFileException {
    String text =
        SceneBytes.model(
            "unit=\"" + unit + "\"",
            SceneBytes.object(Shapes.cube(1, 1), 1, ""),
            "<item objectid=\"1\"/>");
    FileUnit found = read(SceneBytes.threeMf(text)).unit().orElseThrow();
    assertThat(found.symbol()).isEqualTo(symbol);
    assertThat(found.mmPerUnit()).isEqualTo(mm);
  }

  @Test
  void unitsAreMetresInGltfMillimetresInBare3mfAndUnknownElsewhere() throws MeshFileException {
    Mesh cube = Shapes.cube(1, 1);
    assertThat(read(SceneBytes.glb(cube)).unit().orElseThrow().symbol()).isEqualTo("m");
    String bare = SceneBytes.model("", SceneBytes.object(cube, 1, ""), "<item objectid=\"1\"/>");
    assertThat(read(SceneBytes.threeMf(bare)).unit().orElseThrow().symbol()).isEqualTo("mm");
    assertThat(read(Bytes.stl(cube)).unit()).isEmpty();
    assertThat(read(SceneBytes.ply(cube, "ascii")).unit()).isEmpty();
  }

  // PLY

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void plyHeadersMayEndTheirLinesAnyWay(String end) throws MeshFileException {
    Mesh mesh = single();
    byte[] bytes = SceneBytes.ply(mesh, "binary_little_endian");
    int header = new String(bytes, StandardCharsets.ISO_8859_1).indexOf("end_header\n") + 11;
    String head = new String(bytes, 0, header, StandardCharsets.US_ASCII).replace("\n", end);
    byte[] body = java.util.Arrays.copyOfRange(bytes, header, bytes.length);
    Mesh found = read(Bytes.join(Bytes.text(head), body)).mesh();
    assertThat(found.xyz()).isEqualTo(read(bytes).mesh().xyz());
  }

  @Test
  void aLineFeedAsFirstByteOfTheValuesIsNoLineEnd() throws MeshFileException {
    // The first coordinate, 10 = 0x0A, opens the values behind a header that ends its lines by CR.
    String head =
        "ply\rformat binary_little_endian 1.0\relement vertex 3\rproperty char x\r"
            + "property char y\rproperty char z\relement face 1\r"
            + "property list uchar uchar vertex_index\rend_header\r";
    byte[] values = {10, 0, 0, 12, 0, 0, 10, 3, 0, 3, 0, 1, 2};
    MeshDocument document = read(Bytes.join(Bytes.text(head), values));
    assertThat(area(document)).isEqualTo(3);
  }

  @Test
  void plyTakesAnyTypesAndPassesOverTheRest() throws MeshFileException {
    String text =
        """
        ply
        format ascii 1.0
        comment invented
        obj_info invented
        element material 1
        property list int float things
        property uchar red
        element vertex 5
        property uint8 red
        property int16 x
        property float64 y
        property list uchar double extra
        property uint32 z
        element face 3
        property float quality
        property list float32 float32 vertex_index
        property list uint8 float32 texcoord
        element edge 2
        property int vertex1
        property int vertex2
        element nothing 99999999999
        end_header
        2 1.5 2.5 9
        255 0 0 0 0
        255 2 0 1 7 0
        255 2 2 0 0
        255 0 2e0 2 8 9 0
        255 0 0 0 1
        0.5 4 0 1 2 3 2 0.5 0.5
        0.5 3 0 1 4 0
        0.5 2 0 1 0
        0 1
        1 2
        """;
    MeshDocument document = read(Bytes.text(text));
    // The square of 2 × 2 in two triangles and the triangle (0,0,0) (2,0,0) (0,0,1).
    assertThat(document.mesh().faceCount()).isEqualTo(3);
    assertThat(area(document)).isEqualTo(4 + 1);
    assertThat(document.notices())
        .extracting(Notice::code)
        .containsExactly("colours-ignored", "lines-and-points-skipped");
    assertThat(document.notices().get(1).count()).isEqualTo(1 + 2);
  }

  @Test
  void plyFacesMayComeBeforeTheirVertices() throws MeshFileException {
    String text =
        """
        ply
        format ascii 1.0
        element face 1
        property list uchar int vertex_indices
        element vertex 5
        property float x
        property float y
        property float z
        end_header
        5 0 1 2 3 4
        0 0 0
        4 0 0
        4 4 0
        2 1 0
        0 4 0
        """;
    // The square 4 × 4 less the triangle (4,4) (2,1) (0,4), whose area is 4 · 3 / 2.
    assertThat(area(read(Bytes.text(text)))).isEqualTo(16 - 6);
  }

  @Test
  void plyStripsTurnEverySecondTriangle() throws MeshFileException {
    String text =
        """
        ply
        format ascii 1.0
        element vertex 6
        property float x
        property float y
        property float z
        element tristrips 1
        property list int int vertex_indices
        end_header
        0 0 0
        0 1 0
        1 0 0
        1 1 0
        2 0 0
        2 1 0
        10 0 1 2 3 -1 2 3 4 4 5
        """;
    MeshDocument document = read(Bytes.text(text));
    // Strip 0 1 2 3 is two triangles; 2 3 4 4 5 is one and two that only join.
    assertThat(document.mesh().faceCount()).isEqualTo(3);
    assertThat(area(document)).isEqualTo(1.5);
    double[] normal = new double[3];
    Faces.normal(document.mesh(), 0, normal);
    double first = normal[2];
    Faces.normal(document.mesh(), 1, normal);
    assertThat(normal[2]).isEqualTo(first);
  }

  // glTF

  @Test
  void gltfNodesMoveTurnAndMirrorTheirMeshes() throws MeshFileException {
    Mesh mesh = Shapes.moved(Shapes.box(2, 4, 6, 1), 1, 2, 3);
    double area = 2 * (8 + 12 + 24);
    String half = Double.toString(Math.sqrt(0.5));
    for (String members :
        new String[] {
          ",\"translation\":[5,6,7]",
          ",\"rotation\":[0,0," + half + "," + half + "]",
          ",\"rotation\":[0,0,2,2]",
          ",\"matrix\":[0,1,0,0,-1,0,0,0,0,0,1,0,9,8,7,1]"
        }) {
      MeshDocument document =
          read(SceneBytes.glb(SceneBytes.gltf(mesh, "", members), SceneBytes.numbers(mesh)));
      assertThat(area(document)).as(members).isCloseTo(area, within(1e-12 * area));
      assertThat(volume(document.mesh())).as(members).isCloseTo(48, within(1e-9));
    }
    for (String members : new String[] {",\"scale\":[-1,1,1]", ",\"scale\":[-1,-1,-1]"}) {
      MeshDocument document =
          read(SceneBytes.glb(SceneBytes.gltf(mesh, "", members), SceneBytes.numbers(mesh)));
      assertThat(volume(document.mesh())).as(members).isCloseTo(48, within(1e-12));
    }
  }

  @Test
  void gltfQuarterTurnTakesXToY() throws MeshFileException {
    Mesh mesh = Shapes.moved(Shapes.cube(2, 1), 11, 1, 1);
    String half = Double.toString(Math.sqrt(0.5));
    String members =
        ",\"rotation\":[0,0," + half + "," + half + "],\"translation\":[0,0,5],\"scale\":[1,1,3]";
    MeshDocument document =
        read(SceneBytes.glb(SceneBytes.gltf(mesh, "", members), SceneBytes.numbers(mesh)));
    // x 10 … 12 → y 10 … 12; z 0 … 2 → 5 … 11.
    assertThat(document.mesh().bounds().maxY()).isCloseTo(12, within(1e-12));
    assertThat(document.mesh().bounds().minY()).isCloseTo(10, within(1e-12));
    assertThat(document.mesh().bounds().maxZ()).isCloseTo(11, within(1e-12));
    assertThat(document.mesh().bounds().minZ()).isCloseTo(5, within(1e-12));
  }

  @Test
  void gltfChildrenFollowTheirParents() throws MeshFileException {
    Mesh mesh = Shapes.cube(2, 1);
    String json =
        SceneBytes.gltf(mesh, "", "")
            .replace(
                "\"nodes\":[{\"name\":\"body\",\"mesh\":0}]",
                "\"nodes\":[{\"children\":[1,2],\"scale\":[2,2,2]},"
                    + "{\"name\":\"left\",\"mesh\":0,\"translation\":[-3,0,0]},"
                    + "{\"name\":\"right\",\"mesh\":0,\"translation\":[3,0,0]},"
                    + "{\"name\":\"away\",\"mesh\":0}]");
    MeshDocument document = read(SceneBytes.glb(json, SceneBytes.numbers(mesh)));
    assertThat(area(document)).isEqualTo(2 * 6 * 16.0);
    assertThat(document.mesh().bounds().sizeX()).isEqualTo(2 * (6 + 2));
    assertThat(document.labels().names()).containsExactly("", "left / brass", "right / brass");
    assertThat(document.notices())
        .singleElement()
        .satisfies(n -> assertThat(n.code()).isEqualTo("nodes-outside-scene"));
  }

  @ParameterizedTest
  @CsvSource({"4, 1", "5, 1.5", "6, 1"})
  void gltfModesAreTrianglesStripsAndFans(int mode, double area) throws MeshFileException {
    // Unit-high points by turns below and above: 0 (0,0) 1 (0,1) 2 (1,0) 3 (1,1) 4 (2,0).
    float[] points = {0, 0, 0, 0, 1, 0, 1, 0, 0, 1, 1, 0, 2, 0, 0};
    ByteBuffer data = ByteBuffer.allocate(80).order(ByteOrder.LITTLE_ENDIAN);
    for (float value : points) {
      data.putFloat(value);
    }
    byte[] corners =
        switch (mode) {
          case 4 -> new byte[] {0, 1, 2, 2, 1, 3};
          case 5 -> new byte[] {0, 1, 2, 3, 4};
          default -> new byte[] {0, 2, 3, 1};
        };
    data.put(corners);
    String json =
        """
        {"asset":{"version":"2.0"},
         "meshes":[{"primitives":[{"attributes":{"POSITION":0},"indices":1,"mode":%d},
          {"attributes":{"POSITION":0},"mode":1}]}],
         "accessors":[{"bufferView":0,"componentType":5126,"count":5,"type":"VEC3"},
          {"bufferView":0,"byteOffset":60,"componentType":5121,"count":%d,"type":"SCALAR"}],
         "bufferViews":[{"buffer":0,"byteLength":80}],"buffers":[{"byteLength":80}]}
        """
            .formatted(mode, corners.length);
    MeshDocument document = read(SceneBytes.glb(json, data.array()));
    assertThat(area(document)).isEqualTo(area);
    assertThat(document.notices())
        .singleElement()
        .satisfies(n -> assertThat(n.code()).isEqualTo("lines-and-points-skipped"));
    double[] normal = new double[3];
    for (int f = 0; f < document.mesh().faceCount(); f++) {
      Faces.normal(document.mesh(), f, normal);
      assertThat(normal[2]).as("face %d", f).isEqualTo(mode == 6 ? 1 : -1);
    }
  }

  @Test
  void gltfSparseAndQuantizedPointsAreRead() throws MeshFileException {
    // Zeros, two of three replaced: (0,0,0) (4,0,0) (0,2,0), as signed bytes.
    byte[] data = {1, 2, 0, 0, 4, 0, 0, 0, 2, 0, 0, 0};
    String json =
        """
        {"asset":{"version":"2.0"},"extensionsRequired":["KHR_mesh_quantization"],
         "meshes":[{"name":"sheet","primitives":[{"attributes":{"POSITION":0}}]}],
         "accessors":[{"componentType":5120,"count":3,"type":"VEC3","sparse":{"count":2,
          "indices":{"bufferView":0,"componentType":5121},
          "values":{"bufferView":0,"byteOffset":4,"componentType":5120}}}],
         "bufferViews":[{"buffer":0,"byteLength":12}],"buffers":[{"byteLength":12}]}
        """;
    MeshDocument document = read(SceneBytes.glb(json, data));
    assertThat(area(document)).isEqualTo(4);
    assertThat(document.labels().names()).containsExactly("", "sheet");
  }

  @Test
  void gltfThatNeedsMoreIsRefusedWithItsJsonPath() {
    Mesh cube = Shapes.cube(1, 1);
    String json = SceneBytes.gltf(cube, "", "");
    byte[] numbers = SceneBytes.numbers(cube);
    String draco =
        json.replace(
            "\"scene\":0", "\"extensionsRequired\":[\"KHR_draco_mesh_compression\"],\"scene\":0");
    MeshFileException refusal = refused(SceneBytes.glb(draco, numbers));
    assertThat(refusal.place()).isEqualTo("extensionsRequired[0]");
    assertThat(refusal.remedy()).contains("without compression");
    refusal = refused(SceneBytes.glb(json.replace("\"indices\":1", "\"indices\":7"), numbers));
    assertThat(refusal.place()).isEqualTo("accessors");
    refusal =
        refused(
            SceneBytes.glb(
                json.replace("\"scene\":0", "\"scene\":0,\"x\":1").replace("5126", "5130"),
                numbers));
    assertThat(refusal.place()).isEqualTo("accessors[0]");
    assertThat(refusal.problem()).contains("5130");
    refusal = refused(SceneBytes.glb(SceneBytes.gltf(cube, "", ",\"children\":[0]"), numbers));
    assertThat(refusal.place()).isEqualTo("nodes[0].children[0]");
    refusal = refused(Bytes.text(SceneBytes.gltf(cube, "\"uri\":\"cube.bin\",", "")));
    assertThat(refusal.place()).isEqualTo("buffers[0].uri");
    assertThat(refusal.remedy()).contains("GLB");
    refusal = refused(Bytes.text("{\"asset\":{\"version\":\"2.0\"},"));
    assertThat(refusal.problem()).contains("JSON");
    refusal = refused(Bytes.text("{\"asset\":{\"version\":\"1.0\"}}"));
    assertThat(refusal.problem()).contains("1.0");
  }

  // 3MF

  @Test
  void threeMfItemsAndComponentsArePlaced() throws MeshFileException {
    Mesh cube = Shapes.moved(Shapes.cube(2, 1), 1, 1, 1);
    String resources =
        SceneBytes.object(cube, 1, "name=\"cube\"")
            + SceneBytes.object(cube, 2, "type=\"support\"")
            + "<object id=\"3\" name=\"pair\"><components><component objectid=\"1\"/>"
            + "<component objectid=\"1\" transform=\"0 1 0 -1 0 0 0 0 1 10 0 0\"/>"
            + "<component objectid=\"2\"/></components></object>";
    String build =
        "<item objectid=\"3\" transform=\"2 0 0 0 2 0 0 0 2 0 0 0\"/>"
            + "<item objectid=\"1\" transform=\"-1 0 0 0 1 0 0 0 1 0 0 50\"/>";
    MeshDocument document = read(SceneBytes.threeMf(SceneBytes.model("", resources, build)));
    assertThat(area(document)).isEqualTo(2 * 6 * 16.0 + 6 * 4);
    // The mirrored one is turned, so that all volumes add up: 2 · 64 + 8.
    assertThat(volume(document.mesh())).isCloseTo(136, within(1e-9));
    // x: the first cube 0 … 4, its quarter turn about z moved by 10: -2 … 0 → 8 … 10, doubled.
    assertThat(document.mesh().bounds().maxX()).isEqualTo(20);
    assertThat(document.mesh().bounds().minX()).isEqualTo(-2);
    assertThat(document.mesh().bounds().maxZ()).isEqualTo(52);
    assertThat(document.labels().names()).containsExactly("", "pair", "pair / cube", "cube");
    assertThat(document.notices())
        .singleElement()
        .satisfies(n -> assertThat(n.code()).isEqualTo("supports-left-out"));
  }

  @Test
  void threeMfObjectsMayLieInOtherParts() throws MeshFileException {
    Map<String, byte[]> parts = new LinkedHashMap<>();
    String production = "http://schemas.microsoft.com/3dmanufacturing/production/2015/06";
    parts.put(
        "3D/3dmodel.model",
        Bytes.text(
            SceneBytes.model(
                "xmlns:p=\"" + production + "\" requiredextensions=\"p\"",
                "<object id=\"8\"><components><component p:path=\"/3D/Objects/a.model\""
                    + " objectid=\"1\"/></components></object>",
                "<item objectid=\"8\"/>")));
    parts.put(
        "3D/Objects/a.model",
        Bytes.text(SceneBytes.model("", SceneBytes.object(Shapes.cube(1, 1), 1, ""), "")));
    assertThat(area(read(SceneBytes.zip(SceneBytes.withRelations(parts))))).isEqualTo(6);
  }

  @Test
  void threeMfIsRefusedWithPartAndLine() {
    String cube = SceneBytes.object(Shapes.cube(1, 1), 1, "");
    String item = "<item objectid=\"1\"/>";
    MeshFileException refusal =
        refused(SceneBytes.threeMf(SceneBytes.model("", cube, "<item objectid=\"2\"/>")));
    assertThat(refusal.problem()).contains("no such object");
    refusal =
        refused(
            SceneBytes.threeMf(SceneBytes.model("", cube.replace("v3=\"7\"", "v3=\"99\""), item)));
    assertThat(refusal.place()).matches("/3D/3dmodel.model, line \\d+");
    assertThat(refusal.problem()).contains("vertex 99").contains("8");
    String lattice = "http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02";
    refusal =
        refused(
            SceneBytes.threeMf(
                SceneBytes.model(
                    "xmlns:b=\"" + lattice + "\" requiredextensions=\"b\"", cube, item)));
    assertThat(refusal.problem()).contains("beamlattice");
    refusal =
        refused(
            SceneBytes.threeMf(
                SceneBytes.model("", cube, item)
                    .replace("<model ", "<!DOCTYPE model [<!ENTITY e \"x\">]><model ")));
    assertThat(refusal.problem()).contains("document type");
    refusal =
        refused(
            SceneBytes.threeMf(
                SceneBytes.model(
                    "",
                    "<object id=\"1\"><components><component objectid=\"1\"/></components></object>",
                    item)));
    assertThat(refusal.problem()).contains("each other");
    refusal = refused(SceneBytes.zip(Map.of("cup.stl", Bytes.stl(Shapes.cube(1, 1)))));
    assertThat(refusal.remedy()).contains("Unpack");
  }

  @Test
  void archivesMayUse64BitFieldsThroughout() throws MeshFileException {
    byte[] plain = SceneBytes.threeMf(Shapes.cube(1, 1));
    assertThat(area(read(SceneBytes.withWideDirectory(plain)))).isEqualTo(6);
  }

  private static String ply(String vertexColour, String faceColour, String values) {
    return "ply\nformat ascii 1.0\nelement vertex 4\nproperty float x\nproperty float y\n"
        + "property float z\n"
        + vertexColour
        + "element face 2\nproperty list uchar int vertex_indices\n"
        + faceColour
        + "end_header\n"
        + values;
  }

  private static String label(MeshDocument document, int face) {
    return document.labels().names().get(document.labels().of()[face]);
  }

  @Test
  void aFewColoursOfPlyFacesNameThem() throws MeshFileException {
    String colour = "property uchar red\nproperty uchar green\nproperty uchar blue\n";
    String values = "0 0 0\n1 0 0\n1 1 0\n0 1 0\n3 0 1 2 1 0 0\n3 0 2 3 255 192 0\n";
    MeshDocument document = read(Bytes.text(ply("", colour, values)));
    assertThat(label(document, 0)).isEqualTo("#010000");
    assertThat(label(document, 1)).isEqualTo("#FFC000");
    assertThat(document.notices()).extracting(Notice::code).containsExactly("colours-named");
  }

  @Test
  void aFewColoursOfPlyVerticesNameFaces() throws MeshFileException {
    String colour = "property float red\nproperty float green\nproperty float blue\n";
    String values = "0 0 0 1 0 0\n1 0 0 1 0 0\n1 1 0 0 0 1\n0 1 0 0 0 1\n3 0 1 2\n3 0 2 3\n";
    MeshDocument document = read(Bytes.text(ply(colour, "", values)));
    assertThat(label(document, 0)).isEqualTo("#FF0000");
    assertThat(label(document, 1)).isEqualTo("#0000FF");
  }

  @Test
  void aPlyWhoseCountIsTooSmallIsRefused() {
    String values = "0 0 0\n1 0 0\n1 1 0\n0 1 0\n3 0 1 2\n3 0 2 3\n3 0 1 3\n";
    assertThatThrownBy(() -> read(Bytes.text(ply("", "", values))))
        .isInstanceOf(MeshFileException.class)
        .hasMessageContaining("goes on after the last value")
        .hasMessageContaining("count in the header is too small");
  }
}
