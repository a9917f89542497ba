package org.seamwright.bench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.CRC32;
import org.seamwright.basis.IoReason;

/**
 * The file of a run's events: lines that are only ever added, each forced to disk before {@link
 * #append} returns.
 *
 * <p>A line is a checksum (CRC-32 of the rest, eight hex digits), the time, the kind and the
 * figures, parted by blanks. A last line that is torn, as a power cut leaves it, counts as not
 * written; a damaged line before others is refused. One program at a time: the file is locked while
 * it is open.
 */
final class BenchLog implements AutoCloseable {
  private static final String HEADER = "seamwright-bench 1 ";
  private static final int CRC_DIGITS = 8;
  private static final int FIELDS = 6;

  private final Path file;
  private final FileChannel channel;
  private final String fingerprint;
  private final List<BenchEvent> events;

  /** Where the next line goes: behind the last that is whole. */
  private long end;

  private BenchLog(
      Path file, FileChannel channel, String fingerprint, List<BenchEvent> events, long end) {
    this.file = file;
    this.channel = channel;
    this.fingerprint = fingerprint;
    this.events = events;
    this.end = end;
  }

  /** What stands in a file. */
  private record Content(Optional<String> fingerprint, List<BenchEvent> events, long end) {}

  /** The file that belongs to a job. */
  static Path of(Path jobFile) {
    return jobFile.resolveSibling(jobFile.getFileName() + ".bench");
  }

  /** Whether a file holds a run that has begun and is not over; false if it can't be read. */
  static boolean isUnderWay(Path file) {
    try {
      Content content = Files.exists(file) ? parse(Files.readAllBytes(file), file) : null;
      return content != null
          && !content.events().isEmpty()
          && content.events().stream().noneMatch(e -> e.what() == BenchEvent.What.ENDED);
    } catch (IOException | BenchException e) {
      // Opening it will say what is wrong.
      return false;
    }
  }

  /**
   * Opens the file of a run, making it if there is none.
   *
   * @param fingerprint that of the plan; a file that is there keeps its own
   * @throws BenchException if it can't be written, is damaged, or another program has it
   */
  static BenchLog open(Path file, String fingerprint) throws BenchException {
    FileChannel channel = null;
    try {
      channel =
          FileChannel.open(
              file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
      FileLock lock = channel.tryLock();
      if (lock == null) {
        throw elsewhere(file);
      }
      Content content = parse(read(channel), file);
      channel.truncate(content.end());
      BenchLog log =
          new BenchLog(
              file,
              channel,
              content.fingerprint().orElse(fingerprint),
              new ArrayList<>(content.events()),
              content.end());
      if (content.fingerprint().isEmpty()) {
        log.write(HEADER + fingerprint);
        forceFolder(file);
      }
      return log;
    } catch (OverlappingFileLockException e) {
      throw closed(channel, elsewhere(file));
    } catch (IOException e) {
      throw closed(channel, unwritten(file, e));
    } catch (BenchException e) {
      throw closed(channel, e);
    }
  }

  private static BenchException closed(FileChannel channel, BenchException why) {
    try {
      if (channel != null) {
        channel.close();
      }
    } catch (IOException e) {
      why.addSuppressed(e);
    }
    return why;
  }

  private static BenchException elsewhere(Path file) {
    return new BenchException(
        file.toString(),
        "",
        "another window is at the bench with this job",
        "Go on there, or close it first.");
  }

  private static BenchException unwritten(Path file, IOException e) {
    return new BenchException(
        file.toString(),
        "",
        "what happens at the bench cannot be kept: " + IoReason.of(e),
        "Mend that, then do it again.",
        e);
  }

  /** The name of a new file must be on disk, too; some systems can't be asked for it. */
  private static void forceFolder(Path file) {
    Path folder = file.toAbsolutePath().getParent();
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // Windows opens no folders; there the name goes with the file.
      return;
    }
  }

  private static byte[] read(FileChannel channel) throws IOException {
    ByteBuffer all = ByteBuffer.allocate(Math.toIntExact(channel.size()));
    while (all.hasRemaining() && channel.read(all, all.position()) >= 0) {
      // until all is there
    }
    return Arrays.copyOf(all.array(), all.position());
  }

  /** The events so far. */
  List<BenchEvent> events() {
    return List.copyOf(events);
  }

  /** The plan's fingerprint when the run began. */
  String fingerprint() {
    return fingerprint;
  }

  /**
   * Adds an event; when this returns it survives a power cut, as far as the disk keeps what it says
   * it has written.
   *
   * @throws BenchException if it can't be written; the file is as before then
   */
  void append(BenchEvent event) throws BenchException {
    try {
      write(
          String.join(
              " ",
              Long.toString(event.atMs()),
              event.what().name(),
              Integer.toString(event.section()),
              Integer.toString(event.step()),
              Double.toString(event.value()),
              Double.toString(event.resolution())));
    } catch (IOException e) {
      throw unwritten(file, e);
    }
    events.add(event);
  }

  private void write(String text) throws IOException {
    byte[] line = (crc(text) + " " + text + "\n").getBytes(StandardCharsets.US_ASCII);
    ByteBuffer buffer = ByteBuffer.wrap(line);
    long at = end;
    try {
      while (buffer.hasRemaining()) {
        at += channel.write(buffer, at);
      }
      channel.force(true);
    } catch (IOException e) {
      // Half a line would stand in the way of the next one.
      try {
        channel.truncate(end);
      } catch (IOException again) {
        e.addSuppressed(again);
      }
      throw e;
    }
    end = at;
  }

  private static String crc(String text) {
    CRC32 crc = new CRC32();
    crc.update(text.getBytes(StandardCharsets.US_ASCII));
    return String.format(Locale.ROOT, "%08x", crc.getValue());
  }

  private static Content parse(byte[] bytes, Path file) throws BenchException {
    Optional<String> fingerprint = Optional.empty();
    List<BenchEvent> events = new ArrayList<>();
    int good = 0;
    int start = 0;
    int line = 1;
    while (start < bytes.length) {
      int stop = start;
      while (stop < bytes.length && bytes[stop] != '\n') {
        stop++;
      }
      String text = new String(bytes, start, stop - start, StandardCharsets.US_ASCII);
      boolean whole = stop < bytes.length && isWhole(text);
      if (!whole) {
        if (stop + 1 < bytes.length) {
          throw new BenchException(
              file.toString(),
              "line " + line,
              "the file of the run is damaged",
              "Set the run aside and begin a new one; the file is kept.");
        }
        break;
      }
      String rest = text.substring(CRC_DIGITS + 1);
      if (fingerprint.isEmpty()) {
        fingerprint = Optional.of(fingerprint(rest, file));
      } else {
        events.add(event(rest, file, line));
      }
      start = stop + 1;
      good = start;
      line++;
    }
    return new Content(fingerprint, events, good);
  }

  private static boolean isWhole(String text) {
    return text.length() > CRC_DIGITS + 1
        && text.charAt(CRC_DIGITS) == ' '
        && text.substring(0, CRC_DIGITS).equals(crc(text.substring(CRC_DIGITS + 1)));
  }

  private static String fingerprint(String text, Path file) throws BenchException {
    if (!text.startsWith(HEADER)) {
      throw new BenchException(
          file.toString(),
          "line 1",
          "this is no run, or one of a later version",
          "Use the newer program, or set the run aside; the file is kept.");
    }
    return text.substring(HEADER.length());
  }

  private static BenchEvent event(String text, Path file, int line) throws BenchException {
    try {
      String[] field = text.split(" ", -1);
      if (field.length == FIELDS) {
        return new BenchEvent(
            Long.parseLong(field[0]),
            BenchEvent.What.valueOf(field[1]),
            Integer.parseInt(field[2]),
            Integer.parseInt(field[3]),
            Double.parseDouble(field[4]),
            Double.parseDouble(field[5]));
      }
    } catch (IllegalArgumentException e) {
      throw unknown(file, line, e);
    }
    throw unknown(file, line, null);
  }

  private static BenchException unknown(Path file, int line, Exception cause) {
    return new BenchException(
        file.toString(),
        "line " + line,
        "the run holds what this version does not know",
        "Use the newer program, or set the run aside; the file is kept.",
        cause);
  }

  /** Gives the file free. */
  @Override
  public void close() throws BenchException {
    try {
      channel.close();
    } catch (IOException e) {
      throw unwritten(file, e);
    }
  }
}
