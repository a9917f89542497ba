package org.seamwright.meshfile;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;

/**
 * Reads damaged files until a time is over; to be run by hand, not by the build:
 *
 * <pre>java -Xmx512m -cp … org.seamwright.meshfile.Fuzz SECONDS [FORMAT …]</pre>
 *
 * <p>Every file must be read soundly or be refused with a place and a remedy, in under five seconds
 * of its thread's time and without allocating more than 20 times its size and {@link #ALWAYS}: what
 * is held at once is less than what is allocated. The first file that is not is kept.
 */
final class Fuzz {
  private static final long LONGEST_NANOS = 5_000_000_000L;

  /** Bytes that reading the smallest file allocates: channel, buffers, messages, first tables. */
  private static final long ALWAYS = 4 << 20;

  private static final int MOST_TIMES = 20;

  private Fuzz() {}

  /** Seconds for each format, then formats, all if none is named. */
  public static void main(String[] args) throws Exception {
    long seconds = Long.parseLong(args[0]);
    Path directory = Files.createTempDirectory("fuzz");
    for (String format :
        args.length > 1 ? Arrays.asList(args).subList(1, args.length) : Damage.FORMATS) {
      run(format, seconds, directory);
    }
  }

  private static void run(String format, long seconds, Path directory) throws Exception {
    long end = System.nanoTime() + seconds * 1_000_000_000L;
    long read = 0;
    long refused = 0;
    long slowest = 0;
    long most = 0;
    ThreadMXBean thread = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    for (long seed = 1; System.nanoTime() < end; seed++) {
      byte[] bytes = Damage.of(format, new Random(seed));
      long before = thread.getCurrentThreadAllocatedBytes();
      long start = thread.getCurrentThreadCpuTime();
      try {
        check(Bytes.read(directory, format, bytes));
        read++;
      } catch (MeshFileException refusal) {
        refused++;
        if (refusal.remedy().isBlank() || refusal.getMessage().contains("memory")) {
          throw new AssertionError(keep(format, seed, bytes), refusal);
        }
      } catch (Exception | Error other) {
        throw new AssertionError(keep(format, seed, bytes), other);
      }
      long took = thread.getCurrentThreadCpuTime() - start;
      slowest = Math.max(slowest, took);
      if (took > LONGEST_NANOS) {
        throw new AssertionError(keep(format, seed, bytes) + ", " + took / 1_000_000 + " ms");
      }
      long allocated = thread.getCurrentThreadAllocatedBytes() - before;
      most = Math.max(most, allocated - MOST_TIMES * (long) bytes.length);
      if (most > ALWAYS) {
        throw new AssertionError(keep(format, seed, bytes) + ", " + allocated + " bytes");
      }
    }
    System.out.printf(
        "%-10s %,d read, %,d refused, slowest %d ms, most allocated beyond %d times the file: %,d"
            + " bytes%n",
        format, read, refused, slowest / 1_000_000, MOST_TIMES, most);
  }

  private static void check(MeshDocument document) {
    boolean sound =
        document.mesh().faceCount() > 0
            && document.labels().of().length == document.mesh().faceCount()
            && Arrays.stream(document.mesh().xyz()).allMatch(Double::isFinite);
    if (!sound) {
      throw new IllegalStateException("unsound mesh");
    }
  }

  private static String keep(String format, long seed, byte[] bytes) throws Exception {
    Path file = Files.write(Files.createTempFile("seed-" + seed + "-", "-" + format), bytes);
    return format + ", seed " + seed + ", kept as " + file;
  }
}
