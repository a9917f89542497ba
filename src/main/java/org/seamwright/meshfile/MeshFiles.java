package org.seamwright.meshfile;

import java.io.EOFException;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamwright.basis.Count;
import org.seamwright.basis.IoReason;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Reads STL (binary or text), OBJ, PLY, glTF (GLB or embedded) and 3MF files, each also packed by
 * gzip. The format is told by content and size; the name's ending is only a hint where the content
 * leaves it open.
 *
 * <p>Coordinates stay in the file's unit, which some formats name. Equal corners are welded, faces
 * that collapse by it are dropped and counted. A file that is damaged or that holds no area is
 * refused, never half-read. O(n) time; about 40 bytes of memory a face while a binary STL is read;
 * other formats are held in memory as a whole beside that. What is packed or copied may grow only
 * as {@link Growth} says.
 */
public final class MeshFiles {
  /** Longest text or other file that is held in memory as a whole: the longest array of bytes. */
  private static final long MOST_BYTES = Integer.MAX_VALUE - 8L;

  private MeshFiles() {}

  /**
   * Reads and welds a mesh file.
   *
   * @param file a mesh file
   * @param progress told the share done; may cancel
   * @throws MeshFileException if the file can't be read, is damaged or holds no area; it names the
   *     place and the remedy
   */
  public static MeshDocument read(Path file, Progress progress) throws MeshFileException {
    return read(file, false, progress);
  }

  /** The same, the digest of the file's bytes included. */
  public static MeshDocument readWithDigest(Path file, Progress progress) throws MeshFileException {
    return read(file, true, progress);
  }

  private static MeshDocument read(Path file, boolean digest, Progress progress)
      throws MeshFileException {
    Refusal refusal = new Refusal(file);
    try (FileChannel channel = open(file, refusal)) {
      ByteSource source = new ByteSource.Opened(channel, size(channel, refusal));
      MeshDocument document = read(source, refusal, progress.between(0, digest ? 0.8 : 1));
      if (channel.size() != source.length()) {
        throw changed(refusal);
      }
      return digest ? document.withSha256(Digest.sha256(source)) : document;
    } catch (EOFException shorter) {
      throw changed(refusal);
    } catch (IOException unreadable) {
      throw unreadable(refusal, unreadable);
    } catch (OutOfMemoryError tooLarge) {
      throw new MeshFileException(
          file,
          "",
          "the mesh needs more memory than the program may use",
          "Reduce the mesh, or start Java with more memory (for example -Xmx8g).",
          tooLarge);
    }
  }

  private static MeshDocument read(ByteSource source, Refusal refusal, Progress progress)
      throws MeshFileException, IOException {
    if (GzipFile.is(source.head(3))) {
      requireHeld(source, refusal);
      byte[] content = GzipFile.unpack(source.all(), refusal, progress.between(0, 0.3));
      return unpacked(
          new ByteSource.Memory(content),
          new Refusal(refusal.file(), source.length()),
          ", gzip",
          progress.between(0.3, 1));
    }
    return unpacked(source, refusal, "", progress);
  }

  private static void requireHeld(ByteSource source, Refusal refusal) throws MeshFileException {
    if (source.length() > MOST_BYTES) {
      throw refusal.at(
          "", "the file is larger than 2 GiB", "Reduce the mesh, or save it as binary STL.");
    }
  }

  private static MeshDocument unpacked(
      ByteSource source, Refusal refusal, String packing, Progress progress)
      throws MeshFileException, IOException {
    List<Notice> notices = new ArrayList<>();
    Format format = Format.STL_BINARY;
    Weld weld;
    Optional<FileUnit> unit = Optional.empty();
    if (BinaryStlReader.fits(source)) {
      weld = BinaryStlReader.read(source, notices, refusal, progress.between(0, 0.9));
    } else {
      requireHeld(source, refusal);
      byte[] bytes = source.all();
      progress.at(0.1);
      format = Format.of(bytes, refusal);
      Format.Content content = format.read(bytes, refusal, progress.between(0.1, 0.9));
      weld = content.weld();
      notices.addAll(content.notices());
      unit = content.unit();
    }
    if (weld.mesh().faceCount() + weld.dropped() == 0) {
      throw refusal.noFaces();
    }
    requireArea(weld, refusal);
    if (weld.dropped() > 0) {
      notices.add(
          new Notice(
              "collapsed-triangles",
              weld.dropped(),
              Count.of(weld.dropped(), "face has", "faces have")
                  + " two corners at the same point and "
                  + (weld.dropped() == 1 ? "was" : "were")
                  + " left out."));
    }
    progress.at(1);
    String title = format.title() + packing;
    return new MeshDocument(weld.mesh(), weld.labels(), title, "", weld.dropped(), notices, unit);
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
        noArea(mesh.faceCount() + (long) weld.dropped()),
        "Check the model and its unit; the corners of every face lie in one line or point.");
  }

  private static String noArea(long faces) {
    return faces == 1
        ? "the only face has no area"
        : "none of the " + Count.of(faces, "face") + " has any area";
  }

  private static FileChannel open(Path file, Refusal refusal) throws MeshFileException {
    if (Files.isDirectory(file)) {
      throw refusal.at("", "this is a directory, not a mesh file", "Name a mesh file.");
    }
    if (!Files.exists(file)) {
      throw refusal.at("", "there is no such file", "Check the name and the directory.");
    }
    if (!Files.isRegularFile(file)) {
      throw refusal.at("", "this is not a regular file", "Copy the mesh into a file first.");
    }
    try {
      return FileChannel.open(file);
    } catch (IOException e) {
      throw unreadable(refusal, e);
    }
  }

  private static long size(FileChannel channel, Refusal refusal)
      throws MeshFileException, IOException {
    long size = channel.size();
    if (size == 0) {
      throw refusal.at("", "the file is empty", Refusal.EXPORT_AGAIN);
    }
    return size;
  }

  private static MeshFileException changed(Refusal refusal) {
    return refusal.at(
        "", "the file changed while it was being read", "Wait for the export to finish.");
  }

  private static MeshFileException unreadable(Refusal refusal, IOException cause) {
    return new MeshFileException(
        refusal.file(),
        "",
        "the file can't be read (" + IoReason.of(cause) + ")",
        "Check that you may open it and that its disk is attached.",
        cause);
  }
}
