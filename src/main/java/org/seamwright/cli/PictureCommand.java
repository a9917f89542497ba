package org.seamwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Progress;
import org.seamwright.job.PlannedJob;
import org.seamwright.job.Planner;
import org.seamwright.job.SafeFiles;
import org.seamwright.measure.Revolution;
import org.seamwright.paper.MaskScene;
import org.seamwright.picture.Background;
import org.seamwright.picture.Image;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Png;
import org.seamwright.picture.Unrolled;
import org.seamwright.picture.View;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Plans a job and draws it. */
@Command(
    name = "picture",
    description = "Plans a job and draws it as a PNG file. Needs no display.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "The piece's z axis points up; its front looks towards -y.",
      "",
      "Examples:",
      "  seamwright picture cup.json --out sections.png",
      "  seamwright picture cup.json --show customer --view front --out cup.png",
      "  seamwright picture cup.json --section 3 --out section-3.png",
      "  seamwright picture rim.json --show unrolled --out unrolled.png"
    })
final class PictureCommand implements Callable<Integer> {
  private static final int SMALLEST = 64;

  /** A quarter of the memory of a small machine. */
  private static final int LARGEST = 8192;

  /** What a picture shows. */
  enum Subject {
    /** Numbered sections, laps darker. */
    SECTIONS,
    /** How often places are activated, and where three sections meet. */
    LAPS,
    /** The finished piece. */
    CUSTOMER,
    /** What is to be covered. */
    MASKS,
    /** A turned piece rolled out flat. */
    UNROLLED
  }

  /** From where; a sheet of all six sides for all. */
  enum Side {
    FRONT,
    BACK,
    LEFT,
    RIGHT,
    TOP,
    BOTTOM,
    SLANT,
    ALL;

    List<View> views() {
      return switch (this) {
        case FRONT -> List.of(View.FRONT);
        case BACK -> List.of(View.BACK);
        case LEFT -> List.of(View.LEFT);
        case RIGHT -> List.of(View.RIGHT);
        case TOP -> List.of(View.TOP);
        case BOTTOM -> List.of(View.BOTTOM);
        case SLANT -> List.of(View.THREE_QUARTER);
        case ALL -> View.sides();
      };
    }
  }

  @Parameters(paramLabel = "JOB", description = "Job file.")
  private Path jobFile;

  @Option(
      names = "--out",
      paramLabel = "FILE.png",
      required = true,
      description = "Picture to write; replaced if it exists.")
  private Path file;

  @Option(
      names = "--show",
      paramLabel = "WHAT",
      defaultValue = "sections",
      description =
          "sections (numbered), laps (places activated twice in blue, more often in red, places"
              + " where three sections meet numbered), customer (the finished piece), masks, or"
              + " unrolled (a turned piece laid flat, as high as it needs to be) (if left out:"
              + " ${DEFAULT-VALUE}).")
  private Subject subject;

  @Option(
      names = "--view",
      paramLabel = "SIDE",
      defaultValue = "slant",
      description =
          "front, back, left, right, top, bottom, slant, or all for a sheet of the six sides (if"
              + " left out: ${DEFAULT-VALUE}).")
  private Side side;

  @Option(
      names = "--section",
      paramLabel = "NUMBER",
      description = "Look from the side that shows most of this section, in place of --view.")
  private Integer section;

  @Option(
      names = "--width",
      paramLabel = "PIXELS",
      defaultValue = "1600",
      description = "Width of one view (if left out: ${DEFAULT-VALUE}).")
  private int width;

  @Option(
      names = "--height",
      paramLabel = "PIXELS",
      defaultValue = "1200",
      description = "Height of one view (if left out: ${DEFAULT-VALUE}).")
  private int height;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    requireSize("--width", width);
    requireSize("--height", height);
    if (Files.isDirectory(file)) {
      throw new InputException(
          file.toString(), "", "This is a folder", "Name the picture's file in it.");
    }
    if (!file.toString().toLowerCase(Locale.ROOT).endsWith(".png")) {
      throw new CommandLine.ParameterException(
          spec.commandLine(), "--out must name a .png file; no other kind of picture is written.");
    }
    PlannedJob planned = Planner.plan(jobFile, Progress.NONE);
    if (subject == Subject.UNROLLED) {
      write(unrolled(planned));
    } else {
      List<Image> images = views(planned).stream().map(view -> draw(planned, view)).toList();
      write(images.size() == 1 ? images.get(0) : Pictures.sheet(images, 3));
    }
    return Limits.code(planned, spec.commandLine().getErr());
  }

  private List<View> views(PlannedJob planned) throws InputException {
    if (section == null) {
      return side.views();
    }
    if (planned.sections().sections().stream().noneMatch(s -> s.id() == section)) {
      throw new InputException(
          jobFile.toString(),
          "",
          "There is no section " + section,
          "Sections go from 1 to " + planned.sections().sections().size() + ".");
    }
    return List.of(Pictures.bestView(planned.sections(), section));
  }

  private Image unrolled(PlannedJob planned) throws InputException {
    Revolution axis = Revolution.of(planned.mesh());
    Optional<Image> image =
        axis.isSure()
            ? Unrolled.of(
                    Pictures.sectionScene(planned.sections(), planned.map()),
                    axis.point(),
                    axis.direction())
                .image(width)
            : Optional.empty();
    return image.orElseThrow(
        () ->
            new InputException(
                jobFile.toString(),
                "",
                "The piece cannot be rolled out: it shows no axis that plated sides go round",
                "Draw it with --show sections --view all."));
  }

  private Image draw(PlannedJob planned, View view) {
    return switch (subject) {
      case UNROLLED -> throw new IllegalStateException("Rolled out, not looked at");
      case SECTIONS ->
          Pictures.sections(planned.sections(), planned.map(), view, width, height).image();
      case LAPS ->
          Pictures.withCallouts(
                  Pictures.lapScene(planned.sections(), planned.map()),
                  Pictures.junctions(planned.sections()),
                  view,
                  width,
                  height,
                  Background.WHITE)
              .image();
      case CUSTOMER ->
          Pictures.photograph(
              Pictures.customerScene(planned.map()), view, width, height, Background.WHITE);
      case MASKS -> {
        MaskScene masks = MaskScene.of(planned.map(), planned.masks(), planned.job().masking());
        yield Pictures.withCallouts(
                masks.scene(), masks.callouts(), view, width, height, Background.WHITE)
            .image();
      }
    };
  }

  private void write(Image image) throws InputException {
    try {
      ByteArrayOutputStream png = new ByteArrayOutputStream();
      Png.write(image, png);
      SafeFiles.replace(file, png.toByteArray());
    } catch (IOException e) {
      throw OutputFolder.unwritable(file, e);
    }
  }

  private void requireSize(String option, int pixels) {
    // A sheet of six views is three wide and two high.
    int most = side == Side.ALL ? LARGEST / 3 : LARGEST;
    if (pixels < SMALLEST || pixels > most) {
      throw new CommandLine.ParameterException(
          spec.commandLine(), option + " must be from " + SMALLEST + " to " + most + ".");
    }
  }
}
