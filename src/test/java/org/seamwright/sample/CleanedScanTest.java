package org.seamwright.sample;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.job.Piece;
import org.seamwright.job.Planner;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/** The scan of the cup, cleaned as its job says, against the cup that was scanned. */
class CleanedScanTest {
  private static double area(Mesh mesh) {
    double sum = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      sum += Faces.area(mesh, f);
    }
    return sum;
  }

  @Test
  void theCleanedScanHasTheCupsAreaWithoutItsUnderside() throws Exception {
    Path file = Path.of("models", "cup-scan.json");
    Job job = JobFile.read(file);
    Piece piece =
        Piece.read(
            Planner.meshFile(job, file), new Job.Scale.Unit("in"), job.cleaning(), Progress.NONE);
    double cup = area(CupMaker.cup()) - Math.PI * Math.pow(CupMaker.FOOT_RADIUS_MM, 2);
    double table = Math.PI * (85 * 85 - 60 * 60);

    // The table's rough annulus and a strip of the foot, at most 0.5 mm high, are lost.
    assertThat(piece.cleaned().done().get(0).lostMm2())
        .isBetween(table, 1.02 * table + 0.5 * 2 * Math.PI * 60);
    // Roughness adds some per mille (80 µm on faces of 2 mm), the flat fills and the strip take.
    assertThat(piece.survey().areaMm2() / cup).isBetween(0.998, 1.006);
    assertThat(piece.notices().stream().map(Notice::code))
        .contains("cleaning-cut-table", "cleaning-keep-largest", "cleaning-fill-holes");
    assertThat(piece.cleaned().done().get(2).count()).as("holes that the maker left").isEqualTo(2);
  }
}
