package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;

/**
 * Reads text STL, the words in any case and any layout, one or more solids. A solid's name becomes
 * the label of its faces. Normals are skipped: corners tell the side.
 *
 * <p>Large texts are read in runs side by side, each of which begins with a facet. If one meets
 * trouble the text is read again from its beginning, for the right place in the message.
 */
final class TextStlReader {
  private static final int STRIDE = 1 << 12;

  /** Bytes of a facet as programs write them: only a first guess at how many there are. */
  private static final int FACET_BYTES = 200;

  /** Label of the facets before a run's first solid: that of the run before. */
  private static final int CARRIED = 0;

  private final TextCursor cursor;
  private final int from;
  private final int length;
  private final boolean first;
  private final boolean last;
  private final Refusal refusal;
  private final WeldBlock block;
  private final Growing.Ints label = new Growing.Ints();

  /** Names of this run's solids in order; label k + 1 is the k-th. */
  private final List<String> names = new ArrayList<>();

  private int facet;

  private TextStlReader(
      byte[] bytes, int from, int to, boolean first, boolean last, Refusal refusal) {
    this.cursor = new TextCursor(bytes, from, to);
    this.from = from;
    this.length = to - from;
    this.first = first;
    this.last = last;
    this.refusal = refusal;
    this.block = WeldBlock.ofAbout(3L * length / FACET_BYTES);
  }

  /** Reads and welds all solids of a text that begins at a byte. */
  static Weld read(byte[] bytes, int from, Refusal refusal, Progress progress)
      throws MeshFileException {
    return read(bytes, TextRuns.of(bytes, from, at -> isFacet(bytes, at)), refusal, progress);
  }

  /** The same in given runs. */
  static Weld read(byte[] bytes, int[] begin, Refusal refusal, Progress progress)
      throws MeshFileException {
    TextStlReader[] runs = new TextStlReader[begin.length - 1];
    boolean[] sound = new boolean[runs.length];
    Parallel.each(
        runs.length,
        r -> {
          boolean last = r == runs.length - 1;
          runs[r] = new TextStlReader(bytes, begin[r], begin[r + 1], r == 0, last, refusal);
          try {
            runs[r].solids(r == 0 ? progress : Progress.NONE);
            sound[r] = true;
          } catch (MeshFileException trouble) {
            sound[r] = false;
          }
        });
    for (boolean s : sound) {
      if (!s) {
        return inOneRun(bytes, begin[0], refusal, progress);
      }
    }
    return join(runs);
  }

  private static Weld inOneRun(byte[] bytes, int from, Refusal refusal, Progress progress)
      throws MeshFileException {
    TextStlReader whole = new TextStlReader(bytes, from, bytes.length, true, true, refusal);
    whole.solids(progress);
    return join(new TextStlReader[] {whole});
  }

  private static boolean isFacet(byte[] bytes, int at) {
    TextCursor cursor = new TextCursor(bytes, at);
    return cursor.nextWordOnLine() && cursor.is("facet");
  }

  private static Weld join(TextStlReader[] runs) {
    Map<String, Integer> names = new LinkedHashMap<>();
    names.put("", 0);
    Growing.Ints label = new Growing.Ints();
    int carried = 0;
    for (TextStlReader run : runs) {
      int[] number = new int[run.names.size() + 1];
      number[CARRIED] = carried;
      for (int k = 1; k < number.length; k++) {
        number[k] = names.computeIfAbsent(run.names.get(k - 1), key -> names.size());
      }
      for (int f = 0; f < run.label.size(); f++) {
        label.add(number[run.label.get(f)]);
      }
      carried = number[number.length - 1];
    }
    WeldBlock[] blocks = Arrays.stream(runs).map(run -> run.block).toArray(WeldBlock[]::new);
    List<String> list = new ArrayList<>(names.keySet());
    return Weld.of(WeldBlock.join(blocks), list.size() > 1 ? label.toArray() : new int[0], list);
  }

  private void solids(Progress progress) throws MeshFileException {
    boolean inSolid = !first;
    while (cursor.nextWord()) {
      if (!inSolid) {
        if (!cursor.is("solid")) {
          throw unexpected("solid");
        }
        names.add(cursor.restOfLine());
        inSolid = true;
      } else if (cursor.is("endsolid")) {
        cursor.restOfLine();
        inSolid = false;
      } else if (cursor.is("facet")) {
        facet(progress);
        label.add(names.size());
      } else {
        throw unexpected("facet or endsolid");
      }
    }
    if (inSolid == last) {
      throw cutOff("facet or endsolid");
    }
    block.close();
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
      double x = coordinate();
      double y = coordinate();
      double z = coordinate();
      block.put(x, y, z);
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
      progress.at((double) (cursor.position() - from) / length);
    }
  }

  private double coordinate() throws MeshFileException {
    next("a coordinate");
    double value = cursor.number();
    if (!(Math.abs(value) <= Float.MAX_VALUE)) {
      throw refusal.number(place(), cursor.word());
    }
    return value;
  }

  private void expect(String word) throws MeshFileException {
    next(word);
    if (!cursor.is(word)) {
      throw unexpected(word);
    }
  }

  private void next(String wanted) throws MeshFileException {
    if (!cursor.nextWord()) {
      throw cutOff(wanted);
    }
  }

  private MeshFileException cutOff(String wanted) {
    return refusal.at(
        place(),
        "the STL is cut off: the text ends where " + wanted + " is due",
        "Copy or download the file again, or export it again.");
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
