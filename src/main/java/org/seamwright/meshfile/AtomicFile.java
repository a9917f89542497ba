package org.seamwright.meshfile;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * Streams a file under a temporary name beside its target, forces it to disk and moves it onto the
 * target: whoever looks sees the old file or the whole new one. A target that is a symbolic link
 * keeps being one.
 */
final class AtomicFile {
  private static final int BUFFER = 1 << 16;

  private AtomicFile() {}

  /** What goes into the file. */
  interface Content {
    void writeTo(OutputStream stream) throws IOException;
  }

  /**
   * Writes a file.
   *
   * @throws IOException if it can't be written; the target is as before then
   */
  static void write(Path target, Content content) throws IOException {
    Path real = Files.isSymbolicLink(target) ? target.toRealPath() : target.toAbsolutePath();
    Path fresh =
        real.resolveSibling(
            "." + real.getFileName() + "." + ProcessHandle.current().pid() + ".part");
    try {
      try (FileChannel channel =
              FileChannel.open(
                  fresh,
                  StandardOpenOption.CREATE,
                  StandardOpenOption.TRUNCATE_EXISTING,
                  StandardOpenOption.WRITE);
          OutputStream stream =
              new BufferedOutputStream(Channels.newOutputStream(channel), BUFFER)) {
        content.writeTo(stream);
        stream.flush();
        channel.force(true);
      }
      try {
        Files.move(fresh, real, StandardCopyOption.ATOMIC_MOVE);
      } catch (AtomicMoveNotSupportedException e) {
        // Network and FAT file systems: nearly as good, and the alternative is not to save at all.
        Files.move(fresh, real, StandardCopyOption.REPLACE_EXISTING);
      }
    } finally {
      Files.deleteIfExists(fresh);
    }
  }
}
