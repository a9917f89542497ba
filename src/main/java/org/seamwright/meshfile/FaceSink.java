package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seamwright.basis.Notice;

/** Gathers the points and triangles of placed bodies; shared by formats that hold scenes. */
final class FaceSink {
  /** Bytes that a point takes while the mesh is built. */
  static final long POINT_BYTES = 24;

  /** Bytes that a triangle takes: three corners and a label. */
  static final long TRIANGLE_BYTES = 16;

  /** Characters of a name that are kept. */
  private static final int LONGEST_NAME = 100;

  /** Bytes that a name takes beside its letters. */
  private static final long NAME_BYTES = 100;

  private static final String COPIES = "the bodies with their copies";
  private static final String REMEDY = "Export the piece as one body, as STL or PLY.";

  private final Refusal refusal;
  private final Growth growth;
  private final Growing.Doubles xyz = new Growing.Doubles();
  private final Growing.Ints corner = new Growing.Ints();
  private final Growing.Ints label = new Growing.Ints();
  private final Map<String, Integer> names = new LinkedHashMap<>();

  FaceSink(Refusal refusal, Growth growth) {
    this.refusal = refusal;
    this.growth = growth;
    names.put("", 0);
  }

  /** Makes sure that so much fits, before it is added. */
  void reserve(long points, long triangles, String place) throws MeshFileException {
    growth.take(POINT_BYTES * points + TRIANGLE_BYTES * triangles, place, COPIES, REMEDY);
  }

  int points() {
    return xyz.size() / 3;
  }

  int triangles() {
    return label.size();
  }

  /** Number of a name that consists of the parts that are not empty. */
  int name(String place, String... parts) throws MeshFileException {
    StringBuilder name = new StringBuilder();
    String last = "";
    for (String part : parts) {
      String plain = part.strip();
      plain = plain.length() <= LONGEST_NAME ? plain : plain.substring(0, LONGEST_NAME);
      if (!plain.isEmpty() && !plain.equals(last)) {
        name.append(name.isEmpty() ? "" : " / ").append(plain);
        last = plain;
      }
    }
    Integer known = names.get(name.toString());
    if (known != null) {
      return known;
    }
    growth.take(NAME_BYTES + 2L * name.length(), place, COPIES, REMEDY);
    names.put(name.toString(), names.size());
    return names.size() - 1;
  }

  /** Adds a point at its place; says which one it is if it lies out of all bounds. */
  void point(Affine at, double x, double y, double z, String body, int number)
      throws MeshFileException {
    double px = at.x(x, y, z);
    double py = at.y(x, y, z);
    double pz = at.z(x, y, z);
    if (!(Math.abs(px) <= Float.MAX_VALUE
        && Math.abs(py) <= Float.MAX_VALUE
        && Math.abs(pz) <= Float.MAX_VALUE)) {
      double bad = Math.abs(px) <= Float.MAX_VALUE ? Math.abs(py) <= Float.MAX_VALUE ? pz : py : px;
      String place = body + ", vertex " + number;
      throw Double.isFinite(bad)
          ? refusal.tooLarge(place, Double.toString(bad))
          : refusal.notFinite(place, Double.toString(bad));
    }
    xyz.add(px);
    xyz.add(py);
    xyz.add(pz);
  }

  /** Adds a triangle, turned about if the body is mirrored. */
  void triangle(int a, int b, int c, boolean turned, int name) {
    corner.add(a);
    corner.add(turned ? c : b);
    corner.add(turned ? b : c);
    label.add(name);
  }

  /** All that was gathered. */
  RawFaces faces(List<Notice> notices, FileUnit unit) throws MeshFileException {
    if (corner.size() == 0) {
      throw refusal.noFaces();
    }
    List<String> list = new ArrayList<>(names.keySet());
    return new RawFaces(
        new RawFaces.Points.Wide(xyz.toArray()),
        corner.toArray(),
        list.size() > 1 ? label.toArray() : new int[0],
        list,
        notices,
        Optional.of(unit));
  }
}
