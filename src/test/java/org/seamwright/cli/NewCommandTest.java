package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.testsupport.Shapes;
import org.seamwright.units.UnitSystem;

class NewCommandTest {
  @TempDir Path folder;

  @Test
  void aJobNamesItsMeshFromItsOwnFolderWithItsDigest() throws Exception {
    byte[] bytes = MeshBytes.stl(Shapes.cube(2, 1));
    Path mesh = Files.createDirectories(folder.resolve("models")).resolve("cube.stl");
    MeshBytes.write(mesh, bytes);
    Path file = Files.createDirectories(folder.resolve("jobs")).resolve("a.job");

    Run run = Run.of("new", mesh, "--unit", "in", "--out", file, "--display", "inch");
    Job job = JobFile.read(file);

    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    assertThat(run.out()).contains("brass", "taken to be in in");
    assertThat(job.mesh().file()).isEqualTo("../models/cube.stl");
    assertThat(job.mesh().sha256())
        .isEqualTo(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)));
    assertThat(job.mesh().scale()).isEqualTo(new Job.Scale.Unit("in"));
    assertThat(job.piece()).isEqualTo("cube");
    assertThat(job.display()).isEqualTo(UnitSystem.INCH);
  }

  @Test
  void withoutAUnitTheLikelyOnesAreShownAndNoJobIsWritten() {
    Path mesh = MeshBytes.write(folder.resolve("c.stl"), MeshBytes.stl(Shapes.cube(2, 1)));
    Path file = folder.resolve("a.job");

    Run run = Run.of("new", mesh, "--out", file);

    assertThat(run.code()).isEqualTo(ExitCode.USAGE);
    assertThat(run.err()).contains("in the piece is 50.8 mm", "--known-length");
    assertThat(file).doesNotExist();
  }

  @Test
  void anExistingFileIsLeftAlone() throws Exception {
    Path mesh = MeshBytes.write(folder.resolve("c.stl"), MeshBytes.stl(Shapes.cube(2, 1)));
    Path file = Files.writeString(folder.resolve("a.job"), "mine");

    Run run = Run.of("new", mesh, "--unit", "mm", "--out", file);

    assertThat(run.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("There is such a file already");
    assertThat(file).hasContent("mine");
  }

  @Test
  void aBadMeshOrFolderLeavesNoJob() {
    Path bad = MeshBytes.write(folder.resolve("bad.stl"), new byte[10]);
    Path good = MeshBytes.write(folder.resolve("c.stl"), MeshBytes.stl(Shapes.cube(2, 1)));
    Path job = folder.resolve("a.job");

    assertThat(Run.of("new", bad, "--unit", "mm", "--out", job).code()).isEqualTo(ExitCode.REFUSED);
    assertThat(job).doesNotExist();
    Run run = Run.of("new", good, "--unit", "mm", "--out", folder.resolve("none/a.job"));
    assertThat(run.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("The folder for this file does not exist");
  }
}
