package org.seamwright.desk;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.job.JobFileException;

/**
 * Saves one job file, never over what another program has written to it since.
 *
 * <p>Files are replaced in one step ({@link JobFile#write}), so that a crash leaves the last
 * version or the one before. Belongs to one thread but for its making and closing.
 */
final class JobStore implements AutoCloseable {
  private final Path file;
  private final Optional<JobLock> lock;
  private final boolean heldElsewhere;

  /** What the file held when it was last read or written here; empty if there was none. */
  private byte[] known;

  private JobStore(Path file, JobLock.Answer answer, byte[] known) {
    this.file = file;
    this.lock = answer.lock();
    this.heldElsewhere = answer.heldElsewhere();
    this.known = known;
  }

  /** Takes hold of a job file, there already or not. */
  static JobStore at(Path file) {
    return new JobStore(file, JobLock.ask(file), content(file));
  }

  Path file() {
    return file;
  }

  /** Whether another window has the job open. */
  boolean isHeldElsewhere() {
    return heldElsewhere;
  }

  /** Saves a job, unless that would undo another's work. */
  DeskState.Saving save(Job job, boolean evenIfChanged) {
    if (heldElsewhere) {
      return new DeskState.Saving.Elsewhere();
    }
    if (!evenIfChanged && !Arrays.equals(content(file), known)) {
      return new DeskState.Saving.Changed();
    }
    try {
      JobFile.write(job, file);
      known = JobFile.text(job).getBytes(StandardCharsets.UTF_8);
      return new DeskState.Saving.Done();
    } catch (JobFileException e) {
      return new DeskState.Saving.Failed(Trouble.sentence(e.problem()) + " " + e.remedy());
    }
  }

  private static byte[] content(Path file) {
    try {
      return Files.isRegularFile(file) ? Files.readAllBytes(file) : new byte[0];
    } catch (IOException e) {
      // Unreadable counts as something else than what is known: saving will say what is wrong.
      return new byte[] {0};
    }
  }

  @Override
  public void close() {
    lock.ifPresent(JobLock::close);
  }
}
