package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamwright.job.JobFile;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** Planning on a mesh that is no longer the one the job was made for. */
class PlanChangedMeshTest extends PlanFixture {
  private String notice(String code) throws IOException {
    for (JsonNode notice : written().get("notices")) {
      if (notice.get("code").textValue().equals(code)) {
        return notice.get("text").textValue();
      }
    }
    return "";
  }

  private void mesh(Mesh mesh) {
    MeshBytes.write(folder.resolve(MESH), MeshBytes.stl(mesh));
  }

  @Test
  void aChangedMeshIsPlannedAndToldHowFarItLies() throws Exception {
    job("\"marks\": [{\"kind\": \"halfSpace\", \"point\": [0, 0, 0], \"normal\": [0, 0, -1]}]");
    assertThat(plan(jobFile, "--out", out, "--accept-mesh").code()).isEqualTo(ExitCode.DONE);
    String recorded = Files.readString(jobFile);
    assertThat(JobFile.read(jobFile).mesh().sha256()).hasSize(64);
    assertThat(written().get("notices").findValuesAsText("code"))
        .doesNotContain("mesh-not-recorded", "mesh-changed");

    mesh(Shapes.cube(100, 8));
    assertThat(plan(jobFile, "--out", out).code()).isEqualTo(ExitCode.DONE);
    assertThat(notice("mesh-changed")).contains("the surface is where it was, in other faces");

    // Each side moves out by half a millimetre, and so does every place on it; 6 · 101² mm².
    mesh(Shapes.cube(101, 4));
    Run run = plan(jobFile, "--out", out);
    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    assertThat(notice("mesh-changed"))
        .contains("up to 0.5 mm (median 0.5 mm)")
        .contains("where it is plated up to 0.5 mm, where it stays bare up to 0.5 mm")
        .contains("area is 612 cm², it was 600 cm²", "--accept-mesh");
    assertThat(run.out()).contains("The mesh has changed");
    assertThat(jobFile).hasContent(recorded);

    assertThat(plan(jobFile, "--out", out, "--accept-mesh").code()).isEqualTo(ExitCode.DONE);
    assertThat(notice("mesh-changed")).isEmpty();
    assertThat(Files.readString(jobFile)).isNotEqualTo(recorded);
    assertThat(plan(jobFile, "--out", out).code()).isEqualTo(ExitCode.DONE);
    assertThat(notice("mesh-changed")).isEmpty();
  }

  @Test
  void theChangeIsToldForEachMark() throws Exception {
    job(
        "\"marks\": ["
            + "{\"kind\": \"halfSpace\", \"name\": \"foot\", \"point\": [0, 0, 0],"
            + " \"normal\": [0, 0, -1]},"
            + "{\"kind\": \"facing\", \"direction\": [0, 0, 1], \"angle\": 5},"
            + "{\"kind\": \"near\", \"path\": [[49, 49, 50]], \"radius\": \"0.1 mm\"}]");
    assertThat(plan(jobFile, "--out", out, "--accept-mesh").code()).isEqualTo(ExitCode.DONE);

    // The top alone rises by 0.8 mm: the sides are longer, the lower half is as it was.
    double[] xyz = Shapes.cube(100, 4).xyz().clone();
    for (int i = 2; i < xyz.length; i += 3) {
      xyz[i] += xyz[i] > 49 ? 0.8 : 0;
    }
    mesh(Mesh.of(xyz, Shapes.cube(100, 4).corner()));
    Run run = plan(jobFile, "--out", out);
    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    assertThat(notice("mesh-changed"))
        .contains(
            "Under mark 1 \"foot\" up to under ",
            ", mark 2 up to 0.8 mm, one mark covers no recorded place. ");
  }

  @Test
  void anotherPieceIsRefusedUntilItIsAccepted() throws Exception {
    job("");
    assertThat(plan(jobFile, "--out", out, "--accept-mesh").code()).isEqualTo(ExitCode.DONE);
    Path fresh = folder.resolve("fresh");
    for (Mesh other : List.of(Shapes.cube(90, 4), Shapes.moved(Shapes.cube(100, 4), 9, 9, 9))) {
      // A side 5 mm in, or four of six moved by 9 mm: beyond 2 parts in 100 of a diagonal of 173.
      mesh(other);
      Run refused = plan(jobFile, "--out", fresh);
      assertThat(refused.code()).isEqualTo(ExitCode.REFUSED);
      assertThat(refused.err())
          .contains(jobFile.toString(), "mesh.surface", "another piece", "--accept-mesh");
      assertThat(fresh).doesNotExist();
    }
    assertThat(plan(jobFile, "--out", fresh, "--accept-mesh").code()).isEqualTo(ExitCode.DONE);
    assertThat(plan(jobFile, "--out", fresh).code()).isEqualTo(ExitCode.DONE);
  }

  @Test
  void aChangedUnitIsSeenThoughTheFileIsTheSame() throws Exception {
    job("");
    assertThat(plan(jobFile, "--out", out, "--accept-mesh").code()).isEqualTo(ExitCode.DONE);
    Files.writeString(
        jobFile, Files.readString(jobFile).replace("\"unit\": \"mm\"", "\"unit\": \"in\""));
    Run refused = plan(jobFile, "--out", folder.resolve("fresh"));

    assertThat(refused.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(refused.err()).contains("another piece", "mend its unit");
  }

  @Test
  void aStepOfCleaningIsNoChangeOfTheMesh() throws Exception {
    job("");
    assertThat(plan(jobFile, "--out", out, "--accept-mesh").code()).isEqualTo(ExitCode.DONE);
    String step = "{\"kind\": \"cutBelow\", \"point\": [0, 0, 10], \"normal\": [0, 0, 1]}";
    String text = Files.readString(jobFile);
    Files.writeString(jobFile, text.replace("\"cleaning\": []", "\"cleaning\": [" + step + "]"));
    assertThat(jobFile.toFile()).content().contains(step);
    Run run = plan(jobFile, "--out", out);

    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    assertThat(notice("mesh-changed")).isEmpty();
  }

  @Test
  void aChangeOfWhichNothingTellsHowFarIsRefused() throws Exception {
    job("");
    String digest = "0123456789abcdef".repeat(4);
    Files.writeString(
        jobFile,
        Files.readString(jobFile).replace("\"unit\"", "\"sha256\": \"" + digest + "\", \"unit\""));
    Run refused = plan(jobFile, "--out", folder.resolve("fresh"));

    assertThat(refused.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(refused.err()).contains("mesh.sha256", "has changed", "--accept-mesh");
  }
}
