package org.seamwright.meshfile;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.util.Arrays;
import java.util.zip.GZIPInputStream;
import org.seamwright.basis.Progress;

/**
 * Unpacks gzip (RFC 1952), in steps and within {@link Growth}: the size that the file claims is
 * never trusted.
 */
final class GzipFile {
  private static final int STEP = 1 << 16;
  private static final int MOST = Integer.MAX_VALUE - 8;

  private GzipFile() {}

  /** Whether the bytes open a gzip file. */
  static boolean is(byte[] bytes) {
    return bytes.length > 2 && (bytes[0] & 0xFF) == 0x1F && (bytes[1] & 0xFF) == 0x8B;
  }

  /** The content, all members of the file one after the other. */
  static byte[] unpack(byte[] bytes, Refusal refusal, Progress progress) throws MeshFileException {
    Growth growth = Growth.unpacking(bytes.length, refusal);
    byte[] content = new byte[(int) Math.min(4L * bytes.length + STEP, MOST)];
    int size = 0;
    ByteArrayInputStream packed = new ByteArrayInputStream(bytes);
    try (GZIPInputStream stream = new GZIPInputStream(packed, STEP)) {
      while (true) {
        if (size == content.length) {
          content = Arrays.copyOf(content, (int) Math.min(MOST, size + (size >> 1) + (long) STEP));
        }
        int got = stream.read(content, size, Math.min(STEP, content.length - size));
        if (got < 0) {
          break;
        }
        growth.take(
            got,
            "byte " + (bytes.length - packed.available()),
            "the unpacked content",
            "If you trust the file, unpack it with gunzip and name the unpacked file.");
        size += got;
        if (size == MOST) {
          throw refusal.at(
              "", "the unpacked file is larger than 2 GiB", "Reduce the mesh, or use binary STL.");
        }
        progress.at(1 - (double) packed.available() / bytes.length);
      }
    } catch (EOFException cut) {
      throw broken(refusal, bytes.length, "the gzip file is cut off", cut);
    } catch (IOException damaged) {
      int at = bytes.length - packed.available();
      throw broken(refusal, at, "the gzip file is damaged", damaged);
    }
    return Arrays.copyOf(content, size);
  }

  private static MeshFileException broken(
      Refusal refusal, int at, String problem, IOException cause) {
    return new MeshFileException(
        refusal.file(),
        "byte " + at,
        problem,
        "Copy or download the file again, or pack it again.",
        cause);
  }
}
