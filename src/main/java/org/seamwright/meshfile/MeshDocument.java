package org.seamwright.meshfile;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.seamwright.basis.Notice;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;

/**
 * A mesh file as read: welded, in the file's own unit.
 *
 * @param mesh the faces, equal corners welded; scale it before measuring
 * @param labels group and material names of the faces
 * @param format as people call it: "STL binary", "OBJ", "3MF, gzip"
 * @param sha256 digest of the file's bytes, in hex; empty unless it was asked for
 * @param droppedFaces faces left out because two of their corners are the same point
 * @param notices what was assumed while reading
 * @param unit the unit that the file says its numbers are in; most formats say none
 */
public record MeshDocument(
    Mesh mesh,
    Labels labels,
    String format,
    String sha256,
    int droppedFaces,
    List<Notice> notices,
    Optional<FileUnit> unit) {
  /** Copies the list. */
  public MeshDocument {
    Objects.requireNonNull(mesh, "mesh");
    Objects.requireNonNull(labels, "labels");
    Objects.requireNonNull(unit, "unit");
    notices = List.copyOf(notices);
  }

  /** The same with the digest. */
  MeshDocument withSha256(String digest) {
    return new MeshDocument(mesh, labels, format, digest, droppedFaces, notices, unit);
  }
}
