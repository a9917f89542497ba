package org.seamwright.meshfile;

import java.util.Locale;

/**
 * How far a file may grow while it is read, so that a small file made to burst (packed zeros,
 * copies of copies) is refused before it takes memory.
 *
 * <p>Packed content may grow to 20 times the file, copies of bodies to 8 times; 64 MiB are always
 * allowed, since small regular pieces pack far better. Deflate reaches 1032 : 1; text meshes seen
 * in practice reach 5 to 15 : 1 (common practice, no source).
 */
final class Growth {
  /** Bytes unpacked for one byte of the file. */
  static final int UNPACKED = 20;

  /** Bytes of coordinates and corners for one byte of the file. */
  static final int COPIED = 8;

  /** Bytes held at once for one byte of content. */
  static final int HELD = 20;

  /**
   * Bytes that a point takes at most while it is parsed and welded: in a list grown by half, in the
   * table of points at 24 by half more and its slots, and as it is handed on.
   */
  static final long HELD_POINT = 130;

  /**
   * The same of a triangle: its corners in a list grown by half, twice more in a row, its label.
   */
  static final long HELD_TRIANGLE = 70;

  /** Bytes that any file may grow to. */
  static final long ALWAYS = 64L << 20;

  /** Bytes that no file may grow to, so that counts of numbers fit an int. */
  private static final long NEVER = 8L << 30;

  private final Refusal refusal;
  private final int ratio;
  private final long most;
  private long used;

  private Growth(Refusal refusal, int ratio, long fileBytes) {
    this.refusal = refusal;
    this.ratio = ratio;
    this.most = Math.min(NEVER, Math.max(ALWAYS, ratio * fileBytes));
  }

  /** For content that is unpacked from so many bytes. */
  static Growth unpacking(long packedBytes, Refusal refusal) {
    return new Growth(refusal, UNPACKED, packedBytes);
  }

  /** For bodies that are placed once or several times by content of so many bytes. */
  static Growth copying(long contentBytes, Refusal refusal) {
    long fileBytes = refusal.packedBytes() > 0 ? refusal.packedBytes() : contentBytes;
    return new Growth(refusal, COPIED, fileBytes);
  }

  /** For the points and triangles of content of so many bytes. */
  static Growth holding(long contentBytes, Refusal refusal) {
    return new Growth(refusal, HELD, contentBytes);
  }

  /**
   * Refuses a mesh too dense for the bytes it was written in: points of three bytes, or polygons
   * whose corners take two, as no program writes them.
   */
  void requireHeld(long points, long triangles, String place) throws MeshFileException {
    if (HELD_POINT * points + HELD_TRIANGLE * triangles > most) {
      take(Long.MAX_VALUE, place, "the mesh", "Export the model again as binary STL.");
    }
  }

  /** Bytes that may still be taken. */
  long left() {
    return most - used;
  }

  /**
   * Takes bytes from what is left.
   *
   * @param what grows, a clause's subject: "the unpacked content", "the bodies with their copies"
   * @throws MeshFileException if there is not enough left
   */
  void take(long bytes, String place, String what, String remedy) throws MeshFileException {
    if (bytes > left()) {
      throw refusal.at(
          place,
          String.format(
              Locale.ROOT,
              "%s would take more than %,d MiB, over %d times the file",
              what,
              most >> 20,
              ratio),
          remedy);
    }
    used += bytes;
  }
}
