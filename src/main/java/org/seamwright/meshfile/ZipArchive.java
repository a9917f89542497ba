package org.seamwright.meshfile;

import java.io.ByteArrayInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.zip.CRC32;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;

/**
 * Reads the entries of a zip archive that is held as bytes, by its central directory: stored or
 * deflated, with the 64-bit fields that some writers always use. All entries together may unpack to
 * what {@link Growth} allows; claimed sizes are never trusted.
 *
 * <p>Source: PKWARE, "APPNOTE.TXT - .ZIP File Format Specification", version 6.3.
 */
final class ZipArchive {
  private static final int ENTRY = 0x02014B50;
  private static final int LOCAL = 0x04034B50;
  private static final int END = 0x06054B50;
  private static final int END_64 = 0x06064B50;
  private static final int LOCATOR_64 = 0x07064B50;
  private static final int END_LENGTH = 22;
  private static final int LONGEST_COMMENT = 0xFFFF;
  private static final long IN_EXTRA = 0xFFFFFFFFL;

  private final ByteBuffer in;
  private final Refusal refusal;
  private final Growth growth;
  private final Map<String, Entry> entries = new HashMap<>();

  private record Entry(int method, int flags, long crc, long packed, long local) {}

  private ZipArchive(byte[] bytes, Refusal refusal) {
    this.in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    this.refusal = refusal;
    this.growth = Growth.unpacking(bytes.length, refusal);
  }

  /** Whether the bytes open a zip archive. */
  static boolean is(byte[] bytes) {
    return bytes.length > 4 && bytes[0] == 'P' && bytes[1] == 'K' && bytes[2] == 3 && bytes[3] == 4;
  }

  /** Reads the directory. */
  static ZipArchive of(byte[] bytes, Refusal refusal) throws MeshFileException {
    ZipArchive archive = new ZipArchive(bytes, refusal);
    try {
      archive.readDirectory();
    } catch (IndexOutOfBoundsException | IllegalArgumentException e) {
      throw archive.damaged("its directory points outside of it", e);
    }
    return archive;
  }

  private MeshFileException damaged(String how, Throwable cause) {
    return new MeshFileException(
        refusal.file(),
        "",
        "the zip archive is damaged: " + how,
        "Copy or download the file again, or export it again.",
        cause);
  }

  private void readDirectory() throws MeshFileException {
    int end = endOfDirectory();
    long count = Short.toUnsignedLong(in.getShort(end + 10));
    long at = Integer.toUnsignedLong(in.getInt(end + 16));
    if ((count == 0xFFFF || at == IN_EXTRA) && end >= 20 && in.getInt(end - 20) == LOCATOR_64) {
      int end64 = index(in.getLong(end - 12));
      if (in.getInt(end64) != END_64) {
        throw damaged("its 64-bit directory is missing", null);
      }
      count = in.getLong(end64 + 32);
      at = in.getLong(end64 + 48);
    }
    for (long i = 0; i < count; i++) {
      int from = index(at);
      if (in.getInt(from) != ENTRY) {
        throw damaged("entry " + i + " of its directory is missing", null);
      }
      at = entry(from);
    }
  }

  private int endOfDirectory() throws MeshFileException {
    int lowest = Math.max(0, in.limit() - END_LENGTH - LONGEST_COMMENT);
    for (int at = in.limit() - END_LENGTH; at >= lowest; at--) {
      if (in.getInt(at) == END) {
        return at;
      }
    }
    throw damaged("its directory is missing, it may be cut off", null);
  }

  private int index(long at) {
    if (at < 0 || at > in.limit()) {
      throw new IndexOutOfBoundsException(at);
    }
    return (int) at;
  }

  /** Takes an entry of the directory over; says where the next begins. */
  private long entry(int from) {
    int nameLength = Short.toUnsignedInt(in.getShort(from + 28));
    int extraLength = Short.toUnsignedInt(in.getShort(from + 30));
    int commentLength = Short.toUnsignedInt(in.getShort(from + 32));
    long unpacked = Integer.toUnsignedLong(in.getInt(from + 24));
    long packed = Integer.toUnsignedLong(in.getInt(from + 20));
    long local = Integer.toUnsignedLong(in.getInt(from + 42));
    byte[] name = new byte[nameLength];
    in.get(from + 46, name);
    int extra = from + 46 + nameLength;
    int stop = extra + extraLength;
    while (extra + 4 <= stop) {
      int id = in.getShort(extra);
      int length = Short.toUnsignedInt(in.getShort(extra + 2));
      if (id == 1) {
        int wide = extra + 4 + (unpacked == IN_EXTRA ? 8 : 0);
        if (packed == IN_EXTRA) {
          packed = in.getLong(wide);
          wide += 8;
        }
        local = local == IN_EXTRA ? in.getLong(wide) : local;
      }
      extra += 4 + length;
    }
    entries.putIfAbsent(
        key(new String(name, StandardCharsets.UTF_8)),
        new Entry(
            in.getShort(from + 10),
            in.getShort(from + 8),
            Integer.toUnsignedLong(in.getInt(from + 16)),
            packed,
            local));
    return (long) stop + commentLength;
  }

  /** Part names are compared without regard to case and without the slash they begin with. */
  private static String key(String name) {
    String plain = name.replace('\\', '/').toLowerCase(Locale.ROOT);
    return plain.startsWith("/") ? plain.substring(1) : plain;
  }

  /** Whether there is an entry of that name. */
  boolean has(String name) {
    return entries.containsKey(key(name));
  }

  /**
   * Opens an entry that is there. Reading throws {@link Unreadable} where the entry is damaged or
   * too large.
   */
  InputStream open(String name) throws MeshFileException {
    Entry entry = entries.get(key(name));
    if ((entry.flags() & 1) != 0) {
      throw refusal.at(name, "it is encrypted", "Save the file without a password.");
    }
    try {
      int local = index(entry.local());
      if (in.getInt(local) != LOCAL) {
        throw damaged(name + " is not where it should be", null);
      }
      int from =
          local
              + 30
              + Short.toUnsignedInt(in.getShort(local + 26))
              + Short.toUnsignedInt(in.getShort(local + 28));
      int length = index(entry.packed());
      InputStream raw = new ByteArrayInputStream(in.array(), index(from), length);
      index((long) from + length);
      return switch (entry.method()) {
        case 0 -> new Checked(raw, null, name, entry.crc());
        case 8 -> {
          Inflater inflater = new Inflater(true);
          yield new Checked(
              new InflaterInputStream(raw, inflater, 1 << 14), inflater, name, entry.crc());
        }
        default ->
            throw refusal.at(
                name,
                "it is packed by method " + entry.method() + ", which is not read",
                "Save the file again as standard 3MF, STL or PLY.");
      };
    } catch (IndexOutOfBoundsException e) {
      throw damaged(name + " lies outside of it", e);
    }
  }

  /** A refusal on its way through readers that know no other exception. */
  static final class Unreadable extends IOException {
    private static final long serialVersionUID = 1L;

    Unreadable(MeshFileException refusal) {
      super(refusal);
    }
  }

  /** Counts what is unpacked and compares its checksum at the end. */
  private final class Checked extends FilterInputStream {
    private final Inflater inflater;
    private final String name;
    private final long crc;
    private final CRC32 sum = new CRC32();

    Checked(InputStream stream, Inflater inflater, String name, long crc) {
      super(stream);
      this.inflater = inflater;
      this.name = name;
      this.crc = crc;
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] target, int from, int length) throws IOException {
      int got;
      try {
        got = super.read(target, from, length);
      } catch (IOException broken) {
        throw new Unreadable(damaged(name + " can't be unpacked", broken));
      }
      try {
        if (got > 0) {
          sum.update(target, from, got);
          growth.take(
              got, name, "the unpacked content", "Save the piece as STL or PLY and read that.");
        } else if (got < 0 && sum.getValue() != crc) {
          throw damaged("the checksum of " + name + " is wrong", null);
        }
      } catch (MeshFileException refused) {
        throw new Unreadable(refused);
      }
      return got;
    }

    @Override
    public boolean markSupported() {
      return false;
    }

    @Override
    public long skip(long count) throws IOException {
      byte[] passed = new byte[(int) Math.min(count, 1 << 14)];
      return Math.max(0, read(passed, 0, passed.length));
    }

    @Override
    public void close() throws IOException {
      super.close();
      if (inflater != null) {
        inflater.end();
      }
    }
  }
}
