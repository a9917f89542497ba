package org.seamwright.meshfile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Locale;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;

/**
 * Reads binary STL: an 80-byte header, a 4-byte count, then 50 bytes a facet (normal, three
 * corners, two bytes that some programs keep a colour in), little-endian. Normals and colours are
 * ignored: corners tell the side.
 *
 * <p>The facets are read in as many runs as there are cores and welded while they come; nothing of
 * the file stays in memory. The count is never trusted: nothing is allocated before it agrees with
 * the file's length.
 */
final class BinaryStlReader {
  static final int HEADER = 84;
  static final int FACET = 50;
  private static final int COUNT_AT = 80;

  /** Facets of one read: a megabyte, which the second-level cache holds. */
  private static final int STRIDE = 20_480;

  /** Facets that are welded together; a call for each keeps what the compiler takes small. */
  private static final int BATCH = WeldBlock.BATCH / 3;

  private static final int LEAST_PER_RANGE = 1 << 15;

  /** Corners are numbered by int. */
  private static final long MOST_FACETS = Integer.MAX_VALUE / 3;

  private final ByteSource source;
  private final Refusal refusal;
  private final Progress progress;
  private final int facets;
  private final int[] corner;
  private final WeldBlock[] blocks;
  private final int[] coloured;
  private final Exception[] failed;

  private BinaryStlReader(ByteSource source, int facets, Refusal refusal, Progress progress) {
    this.source = source;
    this.refusal = refusal;
    this.progress = progress;
    this.facets = facets;
    this.corner = new int[3 * facets];
    this.blocks = new WeldBlock[Parallel.ranges(facets, LEAST_PER_RANGE)];
    this.coloured = new int[blocks.length];
    this.failed = new Exception[blocks.length];
  }

  /** Whether the length is exactly what the count asks for; no text file can fulfil it. */
  static boolean fits(byte[] head, long length) {
    return length >= HEADER && lengthFor(count(head, 0)) == length;
  }

  private static long count(byte[] bytes, int from) {
    return Integer.toUnsignedLong(
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getInt(from + COUNT_AT));
  }

  private static long lengthFor(long facets) {
    return HEADER + FACET * facets;
  }

  /** Reads and welds a file for which {@link #fits} holds. */
  static Weld read(ByteSource source, List<Notice> notices, Refusal refusal, Progress progress)
      throws MeshFileException, IOException {
    long facets = (source.length() - HEADER) / FACET;
    if (facets == 0) {
      throw refusal.noFaces();
    }
    if (facets > MOST_FACETS) {
      throw refusal.at(
          "",
          String.format(
              Locale.ROOT, "the STL has %,d facets; at most %,d can be held", facets, MOST_FACETS),
          "Reduce the mesh.");
    }
    return new BinaryStlReader(source, (int) facets, refusal, progress).weld(notices);
  }

  private Weld weld(List<Notice> notices) throws MeshFileException, IOException {
    Parallel.each(blocks.length, this::tryBlock);
    int coloured = 0;
    for (int b = 0; b < blocks.length; b++) {
      if (failed[b] instanceof MeshFileException e) {
        throw e;
      }
      if (failed[b] instanceof IOException e) {
        throw e;
      }
      coloured += this.coloured[b];
    }
    if (coloured > 0) {
      notices.add(
          new Notice(
              "colours-ignored",
              coloured,
              String.format(
                  Locale.ROOT,
                  "%,d facets carry a colour or other marks in their last two bytes; they were"
                      + " ignored.",
                  coloured)));
    }
    WeldBlock.Joined joined = WeldBlock.join(blocks);
    return Weld.of(joined, new int[0], List.of(""));
  }

  private void tryBlock(int b) {
    try {
      block(
          b,
          Parallel.begin(facets, blocks.length, b),
          Parallel.begin(facets, blocks.length, b + 1));
    } catch (MeshFileException | IOException e) {
      failed[b] = e;
    }
  }

  private void block(int b, int from, int to) throws MeshFileException, IOException {
    blocks[b] = WeldBlock.in(corner, 3 * from, 3 * (to - from));
    ByteBuffer buffer =
        ByteBuffer.allocateDirect(FACET * Math.min(STRIDE, to - from))
            .order(ByteOrder.LITTLE_ENDIAN);
    for (int facet = from; facet < to; facet += STRIDE) {
      int some = Math.min(STRIDE, to - facet);
      source.read(buffer.clear().limit(FACET * some), lengthFor(facet));
      for (int i = 0; i < some; i += BATCH) {
        int bad = scan(buffer, i, Math.min(some, i + BATCH), b);
        if (bad >= 0) {
          throw notFinite(buffer, facet, bad);
        }
      }
      if (b == 0) {
        progress.at((double) (facet - from) / (to - from));
      }
    }
    blocks[b].close();
  }

  /** Takes facets of a buffer; gives the first with a coordinate that is not finite, or -1. */
  private int scan(ByteBuffer buffer, int from, int to, int b) {
    WeldBlock block = blocks[b];
    int marks = 0;
    for (int i = from, at = FACET * from + 12; i < to; i++, at += FACET) {
      for (int k = at; k < at + 36; k += 12) {
        float x = buffer.getFloat(k);
        float y = buffer.getFloat(k + 4);
        float z = buffer.getFloat(k + 8);
        if (!(Math.abs(x) + Math.abs(y) + Math.abs(z) <= Float.MAX_VALUE) && !areFinite(x, y, z)) {
          return i;
        }
        block.put(x, y, z);
      }
      marks += buffer.getShort(at + 36) == 0 ? 0 : 1;
    }
    coloured[b] += marks;
    return -1;
  }

  private static boolean areFinite(float x, float y, float z) {
    return Float.isFinite(x) && Float.isFinite(y) && Float.isFinite(z);
  }

  private MeshFileException notFinite(ByteBuffer buffer, int facet, int bad) {
    int at = FACET * bad + 12;
    while (Float.isFinite(buffer.getFloat(at))) {
      at += 4;
    }
    return refusal.notFinite(
        place(facet + bad, lengthFor(facet) + at), Float.toString(buffer.getFloat(at)));
  }

  private static String place(long facet, long at) {
    return "facet " + (facet + 1) + ", byte " + at;
  }

  /** Says why {@link #fits} does not hold for a file that is taken for binary STL. */
  static MeshFileException explain(byte[] bytes, Refusal refusal) {
    if (bytes.length < HEADER) {
      return refusal.at(
          "byte " + bytes.length,
          "the file ends within the 84 bytes that open a binary STL",
          "Copy or download the file again, or export it again.");
    }
    long count = count(bytes, 0);
    long whole = ((long) bytes.length - HEADER) / FACET;
    if (lengthFor(count) > bytes.length) {
      return refusal.at(
          place(whole, lengthFor(whole)),
          String.format(
              Locale.ROOT,
              "the STL is cut off: it announces %,d facets (%,d bytes) but has %,d bytes, room for"
                  + " %,d",
              count,
              lengthFor(count),
              bytes.length,
              whole),
          "Copy or download the file again, or export it again.");
    }
    long end = lengthFor(count);
    long second = appended(bytes, end);
    if (second >= 0) {
      return refusal.at(
          "byte " + end,
          String.format(
              Locale.ROOT,
              "a second STL with %,d facets follows the first with %,d",
              second,
              count),
          "Export the bodies as one STL, or as a file each.");
    }
    return refusal.at(
        "byte " + end,
        String.format(
            Locale.ROOT,
            "the STL announces %,d facets but %,d more bytes follow them, room for %,d facets",
            count,
            bytes.length - end,
            (bytes.length - end) / FACET),
        "Part of the piece may be missing. " + Refusal.EXPORT_AGAIN);
  }

  /** Facets of a further STL that begins at a byte and, with others after it, fills the file. */
  private static long appended(byte[] bytes, long from) {
    long at = from;
    long first = -1;
    while (at + HEADER <= bytes.length) {
      long facets = count(bytes, (int) at);
      at += lengthFor(facets);
      if (first < 0) {
        first = facets;
      }
    }
    return at == bytes.length ? first : -1;
  }
}
