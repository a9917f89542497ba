package org.seamwright.meshfile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.seamwright.basis.Count;
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
 *
 * <p>Some programs write a body after the other into one file, each with a header and count of its
 * own. They are read as one model where the counts lead from header to header to the file's very
 * end, which no other file is likely to do.
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

  /** First facet of each body, and the number of facets as last entry. */
  private final int[] firstOf;

  private final int[] corner;
  private final WeldBlock[] blocks;
  private final int[] coloured;
  private final Exception[] failed;

  private BinaryStlReader(ByteSource source, int[] firstOf, Refusal refusal, Progress progress) {
    this.source = source;
    this.refusal = refusal;
    this.progress = progress;
    this.firstOf = firstOf;
    this.facets = firstOf[firstOf.length - 1];
    this.corner = new int[3 * facets];
    this.blocks = new WeldBlock[Parallel.ranges(facets, LEAST_PER_RANGE)];
    this.coloured = new int[blocks.length];
    this.failed = new Exception[blocks.length];
  }

  /**
   * Whether the counts lead to exactly the end of the file: that of the header, or those of headers
   * one after the other. No text file can fulfil it.
   */
  static boolean fits(ByteSource source) throws IOException {
    return bodies(source) > 0;
  }

  /** Number of bodies that fill the file; 0 if it is no whole binary STL. */
  private static int bodies(ByteSource source) throws IOException {
    long at = 0;
    int bodies = 0;
    ByteBuffer head = ByteBuffer.allocate(HEADER);
    while (at + HEADER <= source.length()) {
      source.read(head.clear(), at);
      long facets = count(head.array());
      if (bodies > 0 && facets == 0) {
        return 0;
      }
      at += lengthFor(facets);
      bodies++;
    }
    return at == source.length() ? bodies : 0;
  }

  private static long count(byte[] head) {
    return Integer.toUnsignedLong(
        ByteBuffer.wrap(head).order(ByteOrder.LITTLE_ENDIAN).getInt(COUNT_AT));
  }

  private static long lengthFor(long facets) {
    return HEADER + FACET * facets;
  }

  /** Reads and welds a file for which {@link #fits} holds. */
  static Weld read(ByteSource source, List<Notice> notices, Refusal refusal, Progress progress)
      throws MeshFileException, IOException {
    int bodies = bodies(source);
    long facets = (source.length() - (long) HEADER * bodies) / FACET;
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
    int[] firstOf = firstOf(source, bodies);
    if (bodies > 1) {
      notices.add(several(firstOf));
    }
    return new BinaryStlReader(source, firstOf, refusal, progress).weld(notices);
  }

  private static int[] firstOf(ByteSource source, int bodies) throws IOException {
    int[] firstOf = new int[bodies + 1];
    ByteBuffer head = ByteBuffer.allocate(HEADER);
    for (int body = 0; body < bodies; body++) {
      source.read(head.clear(), (long) HEADER * body + (long) FACET * firstOf[body]);
      firstOf[body + 1] = firstOf[body] + (int) count(head.array());
    }
    return firstOf;
  }

  private static Notice several(int[] firstOf) {
    int bodies = firstOf.length - 1;
    return new Notice(
        "several-stl-bodies",
        bodies,
        String.format(
            Locale.ROOT,
            "The file holds %,d binary STL models one after the other, the first of %s and the last"
                + " of %s; all were read as one piece. Other programs may read only the first.",
            bodies,
            Count.of(firstOf[1], "facet"),
            Count.of(firstOf[bodies] - firstOf[bodies - 1], "facet")));
  }

  /** Byte at which a facet of a body begins. */
  private static long placeOf(int facet, int body) {
    return (long) HEADER * (body + 1) + (long) FACET * facet;
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
              Count.of(coloured, "facet carries", "facets carry")
                  + " a colour or other marks in the last two bytes, which were ignored."));
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
    int body = bodyOf(from);
    for (int facet = from; facet < to; ) {
      while (facet >= firstOf[body + 1]) {
        body++;
      }
      int some = Math.min(STRIDE, Math.min(to, firstOf[body + 1]) - facet);
      source.read(buffer.clear().limit(FACET * some), placeOf(facet, body));
      for (int i = 0; i < some; i += BATCH) {
        int bad = scan(buffer, i, Math.min(some, i + BATCH), b);
        if (bad >= 0) {
          throw notFinite(buffer, bad, facet + bad, placeOf(facet + bad, body));
        }
      }
      if (b == 0) {
        progress.at((double) (facet - from) / (to - from));
      }
      facet += some;
    }
    blocks[b].close();
  }

  private int bodyOf(int facet) {
    int found = Arrays.binarySearch(firstOf, facet);
    return found >= 0 ? found : -found - 2;
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

  /**
   * Says which coordinate it is.
   *
   * @param bad place of the facet in the buffer
   * @param facet its number in the file, from 0
   * @param begin its first byte in the file
   */
  private MeshFileException notFinite(ByteBuffer buffer, int bad, int facet, long begin) {
    int at = 12;
    while (Float.isFinite(buffer.getFloat(FACET * bad + at))) {
      at += 4;
    }
    return refusal.notFinite(
        place(facet, begin + at), Float.toString(buffer.getFloat(FACET * bad + at)));
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
    long count = count(bytes);
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
}
