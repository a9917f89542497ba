package org.seamwright.meshfile;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.List;
import org.seamwright.basis.Progress;

/**
 * Reads binary STL: an 80-byte header, a 4-byte count, then 50 bytes a facet (normal, three
 * corners, two bytes that are ignored), little-endian. Normals are ignored: corners tell the side.
 *
 * <p>The count is never trusted: nothing is allocated before it agrees with the file's length.
 */
final class BinaryStlReader {
  static final int HEADER = 84;
  static final int FACET = 50;
  private static final int COUNT_AT = 80;
  private static final VarHandle INT =
      MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);
  private static final VarHandle FLOAT =
      MethodHandles.byteArrayViewVarHandle(float[].class, ByteOrder.LITTLE_ENDIAN);
  private static final int STRIDE = 1 << 15;

  private BinaryStlReader() {}

  /** Whether the length is exactly what the count asks for; no text file can fulfil it. */
  static boolean fits(byte[] bytes) {
    return bytes.length >= HEADER && lengthFor(count(bytes, 0)) == bytes.length;
  }

  private static long count(byte[] bytes, int from) {
    return Integer.toUnsignedLong((int) INT.get(bytes, from + COUNT_AT));
  }

  private static long lengthFor(long facets) {
    return HEADER + FACET * facets;
  }

  /** Reads a file for which {@link #fits} holds. */
  static RawFaces read(byte[] bytes, Refusal refusal, Progress progress) throws MeshFileException {
    int facets = (int) count(bytes, 0);
    float[] xyz = new float[9 * facets];
    for (int f = 0; f < facets; f++) {
      int from = HEADER + FACET * f + 12;
      for (int k = 0; k < 9; k++) {
        float value = (float) FLOAT.get(bytes, from + 4 * k);
        if (!Float.isFinite(value)) {
          throw refusal.notFinite(place(f, from + 4 * k), Float.toString(value));
        }
        xyz[9 * f + k] = value;
      }
      if ((f & (STRIDE - 1)) == 0) {
        progress.at((double) f / facets);
      }
    }
    return new RawFaces(
        new RawFaces.Points.Single(xyz), new int[0], new int[0], List.of(""), List.of());
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
              java.util.Locale.ROOT,
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
              java.util.Locale.ROOT,
              "a second STL with %,d facets follows the first with %,d",
              second,
              count),
          "Export the bodies as one STL, or as a file each.");
    }
    return refusal.at(
        "byte " + end,
        String.format(
            java.util.Locale.ROOT,
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
