package org.seamwright.job;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.seamwright.basis.IoReason;

/**
 * The job file: JSON that a person can write, version {@value Job#VERSION} of the format. {@code
 * docs/job-file.md} describes every key.
 *
 * <p>Reading is strict: an unknown key, a wrong type, a missing unit or a value out of range is
 * refused with its path and line. Writing then reading gives an equal job, to the last bit.
 */
public final class JobFile {
  /** A job with painted strokes takes a few hundred kilobytes; this guards against a wrong file. */
  private static final long LARGEST = 64L << 20;

  private JobFile() {}

  /**
   * Reads a job.
   *
   * @throws JobFileException if the file cannot be read or is refused
   */
  public static Job read(Path file) throws JobFileException {
    String source = file.toString();
    byte[] bytes;
    try {
      if (Files.isDirectory(file)) {
        throw new JobFileException(source, "", "This is a folder", "Name a job file in it.");
      }
      if (Files.size(file) > LARGEST) {
        throw new JobFileException(
            source,
            "",
            "The file is larger than " + (LARGEST >> 20) + " MB, too large for a job",
            "Check the name; a mesh is given with the commands \"measure\" and \"new\".");
      }
      bytes = Files.readAllBytes(file);
    } catch (NoSuchFileException e) {
      throw new JobFileException(
          source,
          "",
          "There is no such file",
          "Check the name, or make a job with the command \"new\".",
          e);
    } catch (AccessDeniedException e) {
      throw new JobFileException(
          source, "", "The file may not be read", "Change its permissions.", e);
    } catch (IOException e) {
      throw new JobFileException(
          source, "", "The file cannot be read: " + e.getMessage(), "Check the disk.", e);
    }
    return parse(bytes, source);
  }

  /**
   * Reads a job from its bytes.
   *
   * @param source name for messages
   * @throws JobFileException if it is refused
   */
  public static Job parse(byte[] bytes, String source) throws JobFileException {
    return JobReader.read(new JobNode(source, "", JsonTree.parse(bytes, source)));
  }

  /** The text that {@link #write} writes. The same job gives the same text. */
  public static String text(Job job) {
    return JsonText.of(JobWriter.tree(job));
  }

  /**
   * Writes a job in one step; the version before is kept beside it with {@code .bak} added to its
   * name.
   *
   * @throws JobFileException if the file cannot be written; it is as before then
   */
  public static void write(Job job, Path file) throws JobFileException {
    try {
      SafeFiles.replaceKeepingLast(file, text(job).getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchFileException e) {
      throw new JobFileException(
          file.toString(),
          "",
          "The folder for this file does not exist",
          "Make the folder first.",
          e);
    } catch (IOException e) {
      throw new JobFileException(
          file.toString(),
          "",
          "The file cannot be written (" + IoReason.of(e) + ")",
          "Check the permissions and the space on the disk, or choose another place.",
          e);
    }
  }
}
