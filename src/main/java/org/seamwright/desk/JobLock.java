package org.seamwright.desk;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * Says to other windows that a job is open in this one.
 *
 * <p>A lock of the operating system on a hidden file beside the job: it goes with the process, so
 * that a killed window leaves no job locked. Where no lock can be had (a folder without write
 * permission, some network disks) there is none, and saving will tell what is wrong.
 */
final class JobLock implements AutoCloseable {
  private final Path file;
  private final FileChannel channel;

  private JobLock(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /** What came of asking for a lock. */
  record Answer(Optional<JobLock> lock, boolean heldElsewhere) {}

  /** Asks for the lock of a job file. */
  static Answer ask(Path jobFile) {
    Path whole = jobFile.toAbsolutePath().normalize();
    Path file = whole.resolveSibling("." + whole.getFileName() + ".open");
    FileChannel channel = null;
    try {
      channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      FileLock lock = channel.tryLock();
      if (lock != null) {
        return new Answer(Optional.of(new JobLock(file, channel)), false);
      }
      channel.close();
      return new Answer(Optional.empty(), true);
    } catch (OverlappingFileLockException e) {
      closeQuietly(channel);
      return new Answer(Optional.empty(), true);
    } catch (IOException e) {
      closeQuietly(channel);
      return new Answer(Optional.empty(), false);
    }
  }

  private static void closeQuietly(FileChannel channel) {
    try {
      if (channel != null) {
        channel.close();
      }
    } catch (IOException e) {
      // Nothing was written through it, and the system closes it with the process.
      return;
    }
  }

  /** Gives the job free. */
  @Override
  public void close() {
    try {
      // The file goes while the lock is still held, so that no other window's file is deleted.
      Files.deleteIfExists(file);
    } catch (IOException e) {
      // An empty hidden file is left; the lock itself goes with the channel.
      closeQuietly(channel);
      return;
    }
    closeQuietly(channel);
  }
}
