package org.seamwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Progress;
import org.seamwright.job.PlannedJob;
import org.seamwright.job.Planner;
import org.seamwright.job.SafeFiles;
import org.seamwright.picture.Letterhead;
import org.seamwright.share.GlbFile;
import org.seamwright.share.ModelFiles;
import org.seamwright.share.SharePage;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A planned piece for the customer's screen. */
@Command(
    name = "share",
    description =
        "Writes a page that shows the piece in three dimensions, or the piece as glTF, PLY or OBJ.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "The page opens in any present browser, on a phone too, and needs no network: turn the piece,",
      "tap a part for its name and area, switch between today's metal and gold. A large model is",
      "simplified for it, and the page says by how much; areas are those of the full model.",
      "",
      "The ending says what is written: .html the page; .glb the same as a model; .ply the full",
      "model, coloured by section; .obj the full model with a group for each section. PLY and OBJ",
      "are in mm, z up.",
      "",
      "Examples:",
      "  seamwright share cup.json --out cup.html",
      "  seamwright share cup.json --out cup.glb",
      "  seamwright share cup.json --out cup.ply"
    })
final class ShareCommand implements Callable<Integer> {
  private static final List<String> ENDINGS = List.of("html", "glb", "ply", "obj");

  @Parameters(paramLabel = "JOB", description = "Job file.")
  private Path jobFile;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      required = true,
      description = "Page (.html) or model (.glb, .ply, .obj) to write; replaced if it exists.")
  private Path file;

  @Mixin private ShopHeadAccess shop;
  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InputException {
    String name = file.toString().toLowerCase(Locale.ROOT);
    String ending = name.substring(name.lastIndexOf('.') + 1);
    if (!ENDINGS.contains(ending)) {
      throw new CommandLine.ParameterException(
          spec.commandLine(), "--out must name a .html, .glb, .ply or .obj file.");
    }
    if (Files.isDirectory(file)) {
      throw new InputException(file.toString(), "", "This is a folder", "Name a file in it.");
    }
    Letterhead head = shop.read();
    PlannedJob planned = Planner.plan(jobFile, Progress.NONE);
    try {
      SafeFiles.replace(file, content(planned, head, ending));
    } catch (IOException e) {
      throw OutputFolder.unwritable(file, e);
    }
    return Limits.code(planned, spec.commandLine().getErr());
  }

  private static byte[] content(PlannedJob planned, Letterhead head, String ending)
      throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    switch (ending) {
      case "glb" -> out.write(GlbFile.of(planned, Progress.NONE));
      case "ply" -> ModelFiles.ply(planned, out);
      case "obj" -> ModelFiles.obj(planned, out);
      default ->
          out.write(SharePage.of(planned, head, Progress.NONE).getBytes(StandardCharsets.UTF_8));
    }
    return out.toByteArray();
  }
}
