package org.seamwright.job;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;

/**
 * Replaces a file in one step: whoever looks sees the old content or the new, never a part, even if
 * the program or the machine stops half-way.
 *
 * <p>The new content goes to a file beside the target, is forced to disk, and takes the target's
 * name by an atomic move. A target that is a symbolic link keeps being one.
 */
public final class SafeFiles {
  private SafeFiles() {}

  /**
   * Replaces the content of a file, or makes the file.
   *
   * @throws IOException if that fails; the target is as before then
   */
  public static void replace(Path target, byte[] content) throws IOException {
    Path real = Files.isSymbolicLink(target) ? target.toRealPath() : target.toAbsolutePath();
    Path fresh = beside(real);
    try {
      try (FileChannel out =
          FileChannel.open(fresh, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
        ByteBuffer buffer = ByteBuffer.wrap(content);
        while (buffer.hasRemaining()) {
          out.write(buffer);
        }
        out.force(true);
      }
      move(fresh, real);
    } finally {
      Files.deleteIfExists(fresh);
    }
  }

  /**
   * The same, keeping what was there before under the target's name with {@code .bak} added. Writes
   * nothing if the content is there already, so that the earlier version isn't lost to a save
   * without a change.
   */
  public static void replaceKeepingLast(Path target, byte[] content) throws IOException {
    if (Files.isRegularFile(target)) {
      byte[] before = Files.readAllBytes(target);
      if (Arrays.equals(before, content)) {
        return;
      }
      replace(target.resolveSibling(target.getFileName() + ".bak"), before);
    }
    replace(target, content);
  }

  /** Moves a finished file onto its target in one step, replacing what is there. */
  public static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      // Network and FAT file systems: nearly as good, and the alternative is not to save at all.
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static Path beside(Path target) {
    return target.resolveSibling(
        "." + target.getFileName() + "." + ProcessHandle.current().pid() + ".part");
  }
}
