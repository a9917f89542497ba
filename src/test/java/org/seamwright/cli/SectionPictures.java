package org.seamwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Draws the pictures of ways in {@code docs/sections.md} by running commands as they stand beside
 * them: {@code SectionPictures [NAME...]}, from the project's folder.
 */
final class SectionPictures {
  private SectionPictures() {}

  /** By name of the picture: the sample piece and the words after {@code section JOB}. */
  private static Map<String, String> commands() {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("rings", "cup way rings --axis found --count 8");
    all.put("sectors", "cup way sectors --axis found --count 6");
    all.put(
        "ringsAndSectors",
        "rim way ringsAndSectors --axis found --by radius --count 2 --sectors 10");
    all.put("strips", "plaque way strips --direction 1,0,0");
    all.put("naturalFaces", "plaque way naturalFaces --angle 40");
    all.put("symmetry", "rim symmetry --axis found");
    return all;
  }

  /** Draws all pictures, or those named. */
  public static void main(String[] args) throws IOException {
    Path folder = Files.createTempDirectory("sections");
    for (Map.Entry<String, String> entry : commands().entrySet()) {
      if (args.length == 0 || List.of(args).contains(entry.getKey())) {
        draw(entry.getKey(), entry.getValue().split(" "), folder);
      }
    }
  }

  private static void draw(String name, String[] words, Path folder) throws IOException {
    Path job = folder.resolve(words[0] + ".json");
    Files.writeString(
        job,
        Files.readString(Path.of("models", words[0] + ".json"))
            .replace("\"file\": \"", "\"file\": \"" + Path.of("models").toAbsolutePath() + "/"));
    List<Object> section = new ArrayList<>(List.of("section", job));
    section.addAll(Arrays.asList(words).subList(1, words.length));
    section.add("--quick");
    run(section);
    Path out = Path.of("docs", "images", "section-" + name + ".png");
    run(List.of("picture", job, "--out", out, "--width", "420", "--height", "380"));
  }

  private static void run(List<Object> words) {
    Run run = Run.of(words.toArray());
    if (run.code() != ExitCode.DONE && run.code() != ExitCode.LIMIT_BROKEN) {
      throw new IllegalStateException(run.err());
    }
  }
}
