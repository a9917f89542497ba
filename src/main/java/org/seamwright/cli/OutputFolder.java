package org.seamwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.seamwright.basis.InputException;
import org.seamwright.basis.IoReason;
import org.seamwright.job.SafeFiles;

/**
 * A folder that results appear in only when all of them are finished.
 *
 * <p>Files are written to a hidden folder: inside the target if that exists, so that moving never
 * crosses to another disk, else beside it. {@link #commit} moves them to their place one by one, or
 * renames the whole folder. What else is in the target stays untouched. If it isn't committed, or
 * the program is stopped, the hidden folder goes.
 */
final class OutputFolder implements AutoCloseable {
  /** The plan for scripts, in every folder of results. */
  static final String PLAN = "plan.json";

  private final Path target;
  private final Path work;
  private final Thread atExit;

  private OutputFolder(Path target, Path work) {
    this.target = target;
    this.work = work;
    this.atExit = new Thread(this::deleteWork, "delete unfinished output");
    Runtime.getRuntime().addShutdownHook(atExit);
  }

  /**
   * Makes the hidden folder, so that a target that cannot be written is refused before long work.
   *
   * @throws InputException if it cannot be made
   */
  static OutputFolder open(Path target) throws InputException {
    Path whole = target.toAbsolutePath().normalize();
    if (Files.exists(whole) && !Files.isDirectory(whole)) {
      throw new InputException(
          target.toString(), "", "This is a file, not a folder", "Name a folder to write to.");
    }
    Path home = whole;
    while (!Files.isDirectory(home)) {
      if (Files.exists(home) || home.getParent() == null) {
        throw new InputException(
            home.toString(), "", "This is not a folder", "Name a folder that can be made.");
      }
      home = home.getParent();
    }
    try {
      return new OutputFolder(whole, Files.createTempDirectory(home, ".seamwright-part-"));
    } catch (IOException e) {
      throw unwritable(home, e);
    }
  }

  /** Where to write. */
  Path path() {
    return work;
  }

  /**
   * Puts all files in their place.
   *
   * @return their names, in order
   * @throws InputException if that fails
   */
  List<String> commit() throws InputException {
    try (Stream<Path> written = Files.list(work)) {
      List<Path> files = new ArrayList<>(written.sorted().toList());
      // The plan itself comes last: where it is new, so is all beside it.
      files.sort(Comparator.comparing(f -> f.endsWith(PLAN)));
      for (Path file : files) {
        if (Files.isDirectory(target.resolve(file.getFileName()))) {
          throw new InputException(
              target.resolve(file.getFileName()).toString(),
              "",
              "A folder stands where a file is to be written",
              "Move it away, or name another folder.");
        }
      }
      Files.createDirectories(target);
      for (Path file : files) {
        SafeFiles.move(file, target.resolve(file.getFileName()));
      }
      return files.stream().map(f -> f.getFileName().toString()).toList();
    } catch (IOException e) {
      throw unwritable(target, e);
    }
  }

  @Override
  public void close() {
    deleteWork();
    try {
      Runtime.getRuntime().removeShutdownHook(atExit);
    } catch (IllegalStateException e) {
      // The program is ending already, and the hook has run or will.
      return;
    }
  }

  private void deleteWork() {
    try (Stream<Path> left = Files.walk(work)) {
      for (Path path : left.sorted((a, b) -> b.compareTo(a)).toList()) {
        Files.deleteIfExists(path);
      }
    } catch (IOException e) {
      // Nothing more can be done for a folder that cannot be listed; results are not concerned.
      return;
    }
  }

  /** The refusal of a target that cannot be written. */
  static InputException unwritable(Path target, IOException e) {
    return new InputException(
        target.toString(),
        "",
        "It cannot be written to (" + IoReason.of(e) + ")",
        "Check the permissions and the space on the disk, or name another folder.",
        e);
  }
}
