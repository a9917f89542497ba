package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.basis.Progress;

/**
 * Reads text STL, the words in any case and any layout, one or more solids. A solid's name becomes
 * the label of its faces. Normals are skipped: corners tell the side.
 */
final class TextStlReader {
  private static final int STRIDE = 1 << 12;

  private final TextCursor cursor;
  private final int length;
  private final Refusal refusal;
  private final Growing.Doubles xyz = new Growing.Doubles();
  private final Growing.Ints label = new Growing.Ints();
  private final Map<String, Integer> names = new LinkedHashMap<>();
  private int facet;

  private TextStlReader(byte[] bytes, int from, Refusal refusal) {
    this.cursor = new TextCursor(bytes, from);
    this.length = bytes.length;
    this.refusal = refusal;
    names.put("", 0);
  }

  /** Reads all solids of a text that begins at a byte. */
  static RawFaces read(byte[] bytes, int from, Refusal refusal, Progress progress)
      throws MeshFileException {
    return new TextStlReader(bytes, from, refusal).solids(progress);
  }

  private RawFaces solids(Progress progress) throws MeshFileException {
    while (cursor.nextWord()) {
      if (!cursor.is("solid")) {
        throw unexpected("solid");
      }
      int name = names.computeIfAbsent(cursor.restOfLine(), key -> names.size());
      while (!wordIs("endsolid")) {
        if (!cursor.is("facet")) {
          throw unexpected("facet or endsolid");
        }
        facet(progress);
        label.add(name);
      }
      cursor.restOfLine();
    }
    List<String> list = new ArrayList<>(names.keySet());
    return new RawFaces(
        new RawFaces.Points.Wide(xyz.toArray()),
        new int[0],
        list.size() > 1 ? label.toArray() : new int[0],
        list,
        List.of());
  }

  /** Reads one facet after its opening word. */
  private void facet(Progress progress) throws MeshFileException {
    facet++;
    expect("normal");
    for (int k = 0; k < 3; k++) {
      next("a number of the normal");
    }
    expect("outer");
    expect("loop");
    for (int k = 0; k < 3; k++) {
      expect("vertex");
      for (int axis = 0; axis < 3; axis++) {
        next("a coordinate");
        double value = cursor.number();
        if (!(Math.abs(value) <= Float.MAX_VALUE)) {
          throw refusal.number(place(), cursor.word());
        }
        xyz.add(value);
      }
    }
    next("endloop");
    if (cursor.is("vertex")) {
      throw refusal.at(
          place(), "the facet has more than three corners", "Export the model again as triangles.");
    }
    if (!cursor.is("endloop")) {
      throw unexpected("endloop");
    }
    expect("endfacet");
    if ((facet & (STRIDE - 1)) == 0) {
      progress.at((double) cursor.position() / length);
    }
  }

  private boolean wordIs(String word) throws MeshFileException {
    next("facet or endsolid");
    return cursor.is(word);
  }

  private void expect(String word) throws MeshFileException {
    next(word);
    if (!cursor.is(word)) {
      throw unexpected(word);
    }
  }

  private void next(String wanted) throws MeshFileException {
    if (!cursor.nextWord()) {
      throw refusal.at(
          place(),
          "the STL is cut off: the text ends where " + wanted + " is due",
          "Copy or download the file again, or export it again.");
    }
  }

  private MeshFileException unexpected(String wanted) {
    return refusal.at(
        place(),
        "found '" + Refusal.shorten(cursor.word()) + "' where " + wanted + " is due",
        "Mend the line or export the model again.");
  }

  private String place() {
    return facet == 0 ? "line " + cursor.line() : "line " + cursor.line() + ", facet " + facet;
  }
}
