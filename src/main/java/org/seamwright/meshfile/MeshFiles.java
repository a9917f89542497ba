package org.seamwright.meshfile;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Reads STL (binary or text) and OBJ files. The format is told by content and size; the name's
 * ending is only a hint where the content leaves it open.
 *
 * <p>Coordinates stay in the file's unit. Equal corners are welded, faces that collapse by it are
 * dropped and counted. A file that is damaged or that holds no area is refused, never half-read.
 * O(n) time; at most about 150 bytes of memory a face beside the file itself.
 */
public final class MeshFiles {
  /** Largest file that is read: the longest array of bytes. */
  private static final long MOST_BYTES = Integer.MAX_VALUE - 8L;

  private MeshFiles() {}

  /**
   * Reads and welds a mesh file.
   *
   * @param file an STL or OBJ file
   * @param progress told the share done; may cancel
   * @throws MeshFileException if the file can't be read, is damaged or holds no area; it names the
   *     place and the remedy
   */
  public static MeshDocument read(Path file, Progress progress) throws MeshFileException {
    Refusal refusal = new Refusal(file);
    try {
      byte[] bytes = load(file, refusal);
      progress.at(0.1);
      return read(bytes, refusal, progress.between(0.1, 1));
    } catch (OutOfMemoryError tooLarge) {
      throw new MeshFileException(
          file,
          "",
          "the mesh needs more memory than the program may use",
          "Reduce the mesh, or start Java with more memory (for example -Xmx8g).",
          tooLarge);
    }
  }

  private static MeshDocument read(byte[] bytes, Refusal refusal, Progress progress)
      throws MeshFileException {
    Format format = Format.of(bytes, refusal);
    RawFaces raw = format.parse(bytes, refusal, progress.between(0, 0.5));
    if (raw.corner().length == 0 && (format == Format.OBJ || raw.points().count() == 0)) {
      throw refusal.noFaces();
    }
    Weld weld = Weld.of(raw, progress.between(0.5, 0.9));
    requireArea(weld, refusal);
    List<Notice> notices = new ArrayList<>(raw.notices());
    if (weld.dropped() > 0) {
      notices.add(
          new Notice(
              "collapsed-triangles",
              weld.dropped(),
              String.format(
                  Locale.ROOT,
                  "%,d faces have two corners at the same point and were left out.",
                  weld.dropped())));
    }
    String digest = sha256(bytes);
    progress.at(1);
    return new MeshDocument(
        weld.mesh(), weld.labels(), format.title(), digest, weld.dropped(), notices);
  }

  private static void requireArea(Weld weld, Refusal refusal) throws MeshFileException {
    Mesh mesh = weld.mesh();
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (Faces.area(mesh, f) > 0) {
        return;
      }
    }
    throw refusal.at(
        "",
        String.format(
            Locale.ROOT,
            "none of the %,d faces has any area",
            mesh.faceCount() + (long) weld.dropped()),
        "Check the model and its unit; the corners of every face lie in one line or point.");
  }

  private static byte[] load(Path file, Refusal refusal) throws MeshFileException {
    if (Files.isDirectory(file)) {
      throw refusal.at("", "this is a directory, not a mesh file", "Name an STL or OBJ file.");
    }
    if (!Files.exists(file)) {
      throw refusal.at("", "there is no such file", "Check the name and the directory.");
    }
    if (!Files.isRegularFile(file)) {
      throw refusal.at("", "this is not a regular file", "Copy the mesh into a file first.");
    }
    try (InputStream stream = Files.newInputStream(file)) {
      long size = Files.size(file);
      if (size == 0) {
        throw refusal.at("", "the file is empty", Refusal.EXPORT_AGAIN);
      }
      if (size > MOST_BYTES) {
        throw refusal.at(
            "", "the file is larger than 2 GiB", "Reduce the mesh, or save it as binary STL.");
      }
      byte[] bytes = stream.readNBytes((int) size);
      if (bytes.length < size || stream.read() >= 0) {
        throw refusal.at(
            "", "the file changed while it was being read", "Wait for the export to finish.");
      }
      return bytes;
    } catch (IOException unreadable) {
      throw new MeshFileException(
          refusal.file(),
          "",
          "the file can't be read (" + unreadable.getClass().getSimpleName() + ")",
          "Check that you may open it and that its disk is attached.",
          unreadable);
    }
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("Every Java platform has SHA-256", impossible);
    }
  }
}
