package org.seamwright.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.job.MarkBodies;
import org.seamwright.job.Piece;
import org.seamwright.mesh.Mesh;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.meshfile.StlWriter;
import org.seamwright.region.Mark;
import org.seamwright.region.Marks;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;
import org.seamwright.testsupport.Shapes;

/** What is not carried out again when a list of marks changes. */
class MarkBenchTest {
  @TempDir private Path dir;

  private Path jobFile;
  private Job job;
  private Piece piece;

  @BeforeEach
  void write() throws Exception {
    StlWriter.writeBinary(Shapes.cube(40, 4), dir.resolve("block.stl"), "A test block");
    writePlug(Shapes.icosphere(9, 2), 0);
    jobFile = dir.resolve("block.json");
    Files.writeString(
        jobFile,
        """
        {"seamwright": 1, "mesh": {"file": "block.stl", "unit": "mm"}, "plating": {"recipe": "brass"},
         "marks": [
           {"kind": "inside", "treatment": "bare", "file": "plug.stl", "unit": "mm", "move": [20, 0, 0]},
           {"kind": "near", "treatment": "bare", "path": [[0, 0, 20]], "radius": "5 mm"},
           {"kind": "near", "treatment": "bare", "path": [[9, 0, 20]], "radius": "5 mm"},
           {"kind": "near", "treatment": "bare", "path": [[0, 9, 20]], "radius": "5 mm"},
           {"kind": "near", "treatment": "bare", "path": [[9, 9, 20]], "radius": "5 mm"}]}
        """);
    job = JobFile.read(jobFile);
    piece =
        Piece.of(
            MeshFiles.readWithDigest(dir.resolve("block.stl"), Progress.NONE),
            "block.stl",
            job.mesh().scale(),
            List.of(),
            Progress.NONE);
  }

  private void writePlug(Mesh plug, int second) throws Exception {
    Path file = dir.resolve("plug.stl");
    StlWriter.writeBinary(plug, file, "A test plug");
    Files.setLastModifiedTime(file, FileTime.fromMillis(1_000_000_000L + 1000L * second));
  }

  /** Shares of the work done at which a mark is begun: as many of equal size as are carried out. */
  private List<Double> shares(MarkBench bench, List<Mark> marks, boolean trial) throws Exception {
    List<Double> at = new ArrayList<>();
    SurfaceMap map =
        trial
            ? bench.trial(piece, Treatment.PLATE, marks, at::add)
            : bench.map(piece, Treatment.PLATE, marks, at::add);
    SurfaceMap anew =
        Marks.evaluate(piece.mesh(), piece.labels(), Treatment.PLATE, marks, Progress.NONE);
    assertThat(map.mesh().xyz()).isEqualTo(anew.mesh().xyz());
    assertThat(map.treatment()).isEqualTo(anew.treatment());
    return at;
  }

  @Test
  void aBodyIsTheSameUntilItsFileChanges() throws Exception {
    MarkBodies bodies = new MarkBodies();
    List<Mark> first = bodies.marks(job, jobFile);
    assertThat(bodies.marks(job, jobFile)).isEqualTo(first);
    // The same content again, at another time: still the same.
    writePlug(Shapes.icosphere(9, 2), 5);
    assertThat(bodies.marks(job, jobFile)).isEqualTo(first);
    writePlug(Shapes.icosphere(8, 2), 9);
    List<Mark> other = bodies.marks(job, jobFile);
    assertThat(other.get(0)).isNotEqualTo(first.get(0));
    Mesh mesh = ((Mark.Inside) other.get(0)).mesh().orElseThrow();
    assertThat(mesh.bounds().sizeX()).isLessThan(17);
  }

  @Test
  void aChangeBehindAMarkInsideABodyLeavesThatAlone() throws Exception {
    MarkBodies bodies = new MarkBodies();
    MarkBench bench = new MarkBench(-1);
    assertThat(shares(bench, bodies.marks(job, jobFile), false)).contains(1 / 5.0, 4 / 5.0);
    List<Mark> changed = bodies.marks(job, jobFile);
    changed.set(3, new Mark.Near("", Treatment.BARE, List.of(Vector3D.of(1, 1, 20)), 4));
    // Two marks are carried out, and not five.
    assertThat(shares(bench, changed, false)).contains(1 / 2.0);
  }

  @Test
  void slowMarksAreKeptWhateverIsTriedOut() throws Exception {
    List<Mark> marks = new MarkBodies().marks(job, jobFile);
    MarkBench bench = new MarkBench(-1);
    bench.map(piece, Treatment.PLATE, marks.subList(0, 1), Progress.NONE);
    for (int i = 0; i < 9; i++) {
      List<Mark> tried = new ArrayList<>(marks.subList(0, 1));
      tried.add(new Mark.Near("", Treatment.BARE, List.of(Vector3D.of(i, 1, 20)), 4));
      shares(bench, tried, true);
    }
    assertThat(shares(bench, marks, false)).contains(1 / 4.0);
  }
}
