package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.testsupport.Shapes;

class PictureCommandTest {
  @TempDir Path folder;
  private Path jobFile;
  private Path out;

  @BeforeEach
  void writeJob() throws Exception {
    MeshBytes.write(folder.resolve("cube.stl"), MeshBytes.stl(Shapes.cube(100, 2)));
    jobFile =
        Files.writeString(
            folder.resolve("cube.job"),
            """
            {"seamwright": 1,
             "mesh": {"file": "cube.stl", "unit": "mm"},
             "sections": {"limit": "700 cm2"},
             "plating": {"recipe": "brass"}}
            """);
    out = folder.resolve("cube.png");
  }

  @ParameterizedTest
  @ValueSource(strings = {"sections", "laps", "customer", "masks"})
  void drawsWhatIsAskedFor(String subject) throws Exception {
    Run run =
        Run.of(
            "picture", jobFile, "--out", out, "--show", subject, "--width", 160, "--height", 120);

    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    BufferedImage image = ImageIO.read(out.toFile());
    assertThat(image.getWidth()).isEqualTo(160);
    assertThat(image.getHeight()).isEqualTo(120);
    assertThat(image.getRGB(0, 0)).as("paper").isEqualTo(0xFFFFFFFF);
    assertThat(image.getRGB(80, 70)).as("the piece").isNotEqualTo(0xFFFFFFFF);
  }

  @Test
  void aSheetShowsSixSides() throws Exception {
    Run run =
        Run.of("picture", jobFile, "--out", out, "--view", "all", "--width", 100, "--height", 90);

    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    BufferedImage image = ImageIO.read(out.toFile());
    assertThat(image.getWidth()).isEqualTo(300);
    assertThat(image.getHeight()).isEqualTo(180);
    for (int i = 0; i < 6; i++) {
      // Off the middle, where the number stands.
      assertThat(image.getRGB(100 * (i % 3) + 65, 90 * (i / 3) + 60)).isNotEqualTo(0xFFFFFFFF);
    }
  }

  @Test
  void aSectionIsShownFromItsBestSideAndWhatIsNotTurnedIsNotRolledOut() throws Exception {
    Object[] small = {"picture", jobFile, "--out", out, "--width", 160, "--height", 120};
    Run best = Run.of(with(small, "--section", 1));
    assertThat(best.code()).as(best.err()).isEqualTo(ExitCode.DONE);
    Files.delete(out);
    assertThat(Run.of(with(small, "--section", 99)).err()).contains("no section 99");
    assertThat(Run.of(with(small, "--show", "unrolled")).err()).contains("cannot be rolled out");
    assertThat(out).doesNotExist();

    MeshBytes.write(
        folder.resolve("cube.stl"), MeshBytes.stl(Shapes.cylinder(30, 100, 96, 12, true)));
    Run turned = Run.of(with(small, "--show", "unrolled"));
    assertThat(turned.code()).as(turned.err()).isEqualTo(ExitCode.DONE);
    BufferedImage image = ImageIO.read(out.toFile());
    // 2πr by h, 188 by 100 mm, between columns for labels.
    assertThat(image.getWidth()).isEqualTo(160);
    assertThat(image.getHeight()).isBetween(70, 95);
  }

  private static Object[] with(Object[] words, Object... more) {
    return Stream.concat(Stream.of(words), Stream.of(more)).toArray();
  }

  @Test
  void aRefusedJobLeavesNoPicture() throws Exception {
    Files.writeString(jobFile, "{}");
    Run run = Run.of("picture", jobFile, "--out", out);

    assertThat(run.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(out).doesNotExist();
    assertThat(Run.of("picture", jobFile, "--out", folder).err()).contains("This is a folder");
  }

  @Test
  void onlyPngIsWritten() {
    Run run = Run.of("picture", jobFile, "--out", folder.resolve("piece.jpg"));
    assertThat(run.code()).isEqualTo(ExitCode.USAGE);
    assertThat(run.err()).contains(".png");
    assertThat(folder.resolve("piece.jpg")).doesNotExist();
  }
}
