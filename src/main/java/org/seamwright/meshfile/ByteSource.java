package org.seamwright.meshfile;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.util.Arrays;
import org.seamwright.basis.Parallel;

/** The bytes of a file, or of what was unpacked from it; any number of threads may read. */
sealed interface ByteSource {
  /** Number of bytes. */
  long length();

  /**
   * Fills a buffer up to its limit with the bytes from a place on.
   *
   * @throws EOFException if the bytes end before that
   */
  void read(ByteBuffer into, long at) throws IOException;

  /** All bytes; the caller knows that they fit an array. */
  byte[] all() throws IOException;

  /** The first bytes, at most so many. */
  default byte[] head(int most) throws IOException {
    byte[] head = new byte[(int) Math.min(most, length())];
    read(ByteBuffer.wrap(head), 0);
    return head;
  }

  /** Bytes in memory. */
  record Memory(byte[] bytes) implements ByteSource {
    @Override
    public long length() {
      return bytes.length;
    }

    @Override
    public void read(ByteBuffer into, long at) throws EOFException {
      if (at + into.remaining() > bytes.length) {
        throw new EOFException();
      }
      into.put(bytes, (int) at, into.remaining());
    }

    @Override
    public byte[] all() {
      return bytes;
    }

    @Override
    public byte[] head(int most) {
      return Arrays.copyOf(bytes, Math.min(most, bytes.length));
    }
  }

  /**
   * An open file of a known length.
   *
   * @param channel stays open while this is used
   * @param length bytes when it was opened
   */
  record Opened(FileChannel channel, long length) implements ByteSource {
    /** Bytes a read call asks for: enough to hide its cost, small enough to stay in the cache. */
    private static final int STEP = 1 << 20;

    private static final int LEAST_PER_RANGE = 1 << 23;

    @Override
    public void read(ByteBuffer into, long at) throws IOException {
      long from = at - into.position();
      while (into.hasRemaining()) {
        if (channel.read(into, from + into.position()) < 0) {
          throw new EOFException();
        }
      }
    }

    @Override
    public byte[] all() throws IOException {
      byte[] bytes = new byte[(int) length];
      int ranges = Parallel.ranges(length, LEAST_PER_RANGE);
      IOException[] failed = new IOException[ranges];
      Parallel.each(
          ranges,
          i -> {
            int to = Parallel.begin(bytes.length, ranges, i + 1);
            try {
              for (int at = Parallel.begin(bytes.length, ranges, i); at < to; at += STEP) {
                read(ByteBuffer.wrap(bytes, at, Math.min(STEP, to - at)).slice(), at);
              }
            } catch (IOException e) {
              failed[i] = e;
            }
          });
      for (IOException e : failed) {
        if (e != null) {
          throw e;
        }
      }
      return bytes;
    }
  }
}
