package org.seamwright.desk;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The invented sample jobs, if their folder is where the program was built or is run. */
public final class SampleModels {
  private static final String FOLDER = "models";

  private SampleModels() {}

  /** Job files of the samples, by name; none if the folder isn't found. */
  public static List<Path> find() {
    List<Path> roots = new ArrayList<>(List.of(Path.of("").toAbsolutePath()));
    home(roots);
    for (Path root : roots) {
      for (Path at = root; at != null; at = at.getParent()) {
        List<Path> jobs = in(at.resolve(FOLDER));
        if (!jobs.isEmpty()) {
          return jobs;
        }
      }
    }
    return List.of();
  }

  private static void home(List<Path> roots) {
    CodeSource source = SampleModels.class.getProtectionDomain().getCodeSource();
    if (source == null || source.getLocation() == null) {
      return;
    }
    try {
      URI uri = source.getLocation().toURI();
      roots.add(Path.of(uri));
    } catch (URISyntaxException | IllegalArgumentException e) {
      // Run from somewhere that is no file: only the working folder is looked at.
      return;
    }
  }

  /** The samples of a folder: job files whose note says that they are invented. */
  static List<Path> in(Path folder) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(f -> f.toString().endsWith(".json"))
          .filter(SampleModels::isSample)
          .sorted()
          .toList();
    } catch (IOException e) {
      // Samples are an offer: a folder that can't be read offers none.
      return List.of();
    }
  }

  private static boolean isSample(Path file) {
    try {
      return Files.size(file) < 1 << 20 && Files.readString(file).contains("Invented sample");
    } catch (IOException e) {
      return false;
    }
  }
}
