package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.geometry.euclidean.threed.mesh.TriangleMesh;
import org.apache.commons.geometry.io.euclidean.threed.IO3D;
import org.apache.commons.numbers.core.Precision;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Open meshes against independent readers. The figures were measured with VTK 9.1 and Open3D 0.16;
 * Apache Commons Geometry 1.0 reads the same files here.
 */
class OpenMeshesTest {
  private static final String CELLS = "/graphics/scenery/models/";
  private static final String CUBES = "/models/";

  @TempDir Path directory;

  private Path copy(String resource) throws IOException {
    Path file = directory.resolve(resource.substring(resource.lastIndexOf('/') + 1));
    try (InputStream stream = OpenMeshesTest.class.getResourceAsStream(resource)) {
      Files.write(file, stream.readAllBytes());
    }
    return file;
  }

  private static double area(Mesh mesh) {
    return Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
  }

  @ParameterizedTest
  @CsvSource({
    CELLS + "erythrocyte.stl, STL binary, 502, 1000, 60.3845245, 0",
    CELLS + "erythrocyte_ascii.stl, STL text, 502, 1000, 60.3845244, 0",
    CELLS + "erythrocyte.obj, OBJ, 502, 1000, 60.3845244, 0",
    CELLS + "leukocyte.obj, OBJ, 4002, 8000, 16.0768029, 0",
    CUBES + "cube-binary.stl, STL binary, 8, 12, 6, 0",
    CUBES + "cube-ascii.stl, STL text, 8, 12, 6, 0",
    CUBES + "cube.stl, STL text, 8, 12, 6, 0",
    CUBES + "cube.obj, OBJ, 8, 12, 6, 0",
    CUBES + "cube-minus-sphere.stl, STL binary, 624, 728, 4.58556178, 904",
    CUBES + "cube-minus-sphere.obj, OBJ, 520, 728, 4.58555667, 664"
  })
  void figuresAreThoseOfVtkAndOpen3d(
      String resource, String format, int vertices, int faces, double area, int open)
      throws IOException, MeshFileException {
    MeshDocument document = MeshFiles.read(copy(resource), Progress.NONE);
    Mesh mesh = document.mesh();
    assertThat(document.format()).isEqualTo(format);
    assertThat(mesh.vertexCount()).isEqualTo(vertices);
    assertThat(mesh.faceCount()).isEqualTo(faces);
    // Their sums are in single precision: seven digits.
    assertThat(area(mesh)).isCloseTo(area, within(1e-7 * area));
    assertThat(Topology.of(mesh).openEdges()).isEqualTo(open);
  }

  @ParameterizedTest
  @CsvSource({
    CELLS + "erythrocyte.stl",
    CELLS + "erythrocyte_ascii.stl",
    CELLS + "erythrocyte.obj",
    CELLS + "leukocyte.obj",
    CUBES + "cube-binary.stl",
    CUBES + "cube-ascii.stl",
    CUBES + "cube.stl",
    CUBES + "cube.obj",
    CUBES + "cube-minus-sphere.stl",
    CUBES + "cube-minus-sphere.obj"
  })
  void facesAreThoseOfCommonsGeometry(String resource) throws IOException, MeshFileException {
    Path file = copy(resource);
    Mesh mesh = MeshFiles.read(file, Progress.NONE).mesh();
    TriangleMesh theirs = IO3D.readTriangleMesh(file, Precision.doubleEquivalenceOfEpsilon(1e-12));
    assertThat(mesh.faceCount()).isEqualTo(theirs.getFaceCount());
    double sum = 0;
    for (TriangleMesh.Face face : theirs.getFaces()) {
      sum += face.getPolygon().getSize();
    }
    assertThat(area(mesh)).isCloseTo(sum, within(1e-10 * sum));
    if (!resource.endsWith(".obj")) {
      for (int f = 0; f < mesh.faceCount(); f++) {
        assertThat(Faces.area(mesh, f))
            .as("facet %d", f)
            .isCloseTo(theirs.getFace(f).getPolygon().getSize(), within(1e-10 * sum));
      }
    }
  }

  @Test
  void oneShapeInThreeFormatsIsOneShape() throws IOException, MeshFileException {
    double binary = area(MeshFiles.read(copy(CELLS + "erythrocyte.stl"), Progress.NONE).mesh());
    double text = area(MeshFiles.read(copy(CELLS + "erythrocyte_ascii.stl"), Progress.NONE).mesh());
    double obj = area(MeshFiles.read(copy(CELLS + "erythrocyte.obj"), Progress.NONE).mesh());
    assertThat(text).isCloseTo(binary, within(1e-7 * binary));
    assertThat(obj).isCloseTo(binary, within(1e-7 * binary));
  }

  @ParameterizedTest
  @CsvSource({CUBES + "empty.stl", CUBES + "empty.obj"})
  void openFilesWithoutFacesAreRefused(String resource) throws IOException {
    Path file = copy(resource);
    org.assertj.core.api.Assertions.assertThatThrownBy(() -> MeshFiles.read(file, Progress.NONE))
        .isInstanceOf(MeshFileException.class);
  }
}
