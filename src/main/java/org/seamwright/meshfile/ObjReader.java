package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToIntFunction;
import org.seamwright.basis.Count;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;

/**
 * Reads the polygons of an OBJ file: {@code v} and {@code f}, with {@code o}, {@code g} and {@code
 * usemtl} as labels, and colours of points as far as {@link Palette} says. Texture, normals and
 * weights are skipped, lines and points told as a notice; free-form surfaces are refused, since
 * their area would be missing.
 *
 * <p>The lines are read in runs side by side, first the points of all, then the faces; so a face
 * may name points that come after it.
 */
final class ObjReader {
  private final ObjRun[] runs;
  private final PolygonSplitter splitter = new PolygonSplitter(new Growing.Ints());
  private final Refusal refusal;
  private final Growth growth;
  private final Palette palette = new Palette();
  private long withoutArea;
  private long unread;
  private int unreadLine;

  private ObjReader(byte[] bytes, int[] begin, Refusal refusal) {
    this.refusal = refusal;
    growth = Growth.holding(bytes.length, refusal);
    runs = new ObjRun[begin.length - 1];
    for (int r = 0; r < runs.length; r++) {
      runs[r] = new ObjRun(bytes, begin[r], begin[r + 1], growth, refusal);
    }
  }

  /** Reads a text that begins at a byte. */
  static RawFaces read(byte[] bytes, int from, Refusal refusal, Progress progress)
      throws MeshFileException {
    return read(
        bytes, TextRuns.of(bytes, from, at -> ObjRun.mayBegin(bytes, at)), refusal, progress);
  }

  /** The same in given runs. */
  static RawFaces read(byte[] bytes, int[] begin, Refusal refusal, Progress progress)
      throws MeshFileException {
    return new ObjReader(bytes, begin, refusal).faces(progress);
  }

  private RawFaces faces(Progress progress) throws MeshFileException {
    eachRun((run, share) -> run.readPoints(share), progress.between(0, 0.5));
    double[] points = points();
    handColours(points.length / 3);
    eachRun((run, share) -> run.readFaces(share), progress.between(0.5, 1));
    growth.requireHeld(points.length / 3, total(runs, run -> run.label().size()), "");
    Map<String, Integer> names = new LinkedHashMap<>();
    names.put("", 0);
    int[] corner = new int[total(runs, run -> run.corner().size())];
    int[] label = new int[corner.length / 3];
    int at = 0;
    ObjRun.Name name = new ObjRun.Name("", "", "");
    for (ObjRun run : runs) {
      int[] number = numbers(run, name, names);
      name = run.lastName().after(name);
      run.corner().copyTo(corner, 3 * at);
      for (int f = 0; f < run.label().size(); f++) {
        label[at + f] = number[run.label().get(f)];
      }
      addColours(run, label, at, names);
      at += run.label().size();
      splitter.absorb(run.splitter());
      withoutArea += run.withoutArea();
      unreadLine = unread == 0 ? run.unreadLine() : unreadLine;
      unread += run.unread();
    }
    splitter.requireSplittable(() -> "", refusal);
    List<String> list = new ArrayList<>(names.keySet());
    return new RawFaces(
        new RawFaces.Points.Wide(points),
        corner,
        list.size() > 1 ? label : new int[0],
        list,
        notices());
  }

  /** Work on one run. */
  private interface Work {
    void on(ObjRun run, Progress progress) throws MeshFileException;
  }

  private void eachRun(Work work, Progress progress) throws MeshFileException {
    MeshFileException[] trouble = new MeshFileException[runs.length];
    Parallel.each(
        runs.length,
        r -> {
          try {
            work.on(runs[r], r == 0 ? progress : Progress.NONE);
          } catch (MeshFileException e) {
            trouble[r] = e;
          }
        });
    for (MeshFileException e : trouble) {
      if (e != null) {
        throw e;
      }
    }
  }

  private double[] points() {
    double[] all = new double[3 * total(runs, ObjRun::pointCount)];
    int before = 0;
    for (ObjRun run : runs) {
      run.handPoints(all, before);
      before += run.pointCount();
    }
    return all;
  }

  private void handColours(int points) {
    int[][] number = new int[runs.length][];
    for (int r = 0; r < runs.length; r++) {
      number[r] = palette.absorb(runs[r].palette());
    }
    if (palette.names()) {
      byte[] all = new byte[points];
      int before = 0;
      for (int r = 0; r < runs.length; r++) {
        runs[r].handColours(all, before, number[r]);
        before += runs[r].pointCount();
      }
    }
  }

  /** Makes the colours of a run's faces the last part of their names. */
  private void addColours(ObjRun run, int[] label, int at, Map<String, Integer> names) {
    if (run.colour().size() == 0) {
      return;
    }
    List<String> list = new ArrayList<>(names.keySet());
    Map<Long, Integer> known = new HashMap<>();
    for (int f = 0; f < run.colour().size(); f++) {
      int plain = label[at + f];
      int colour = run.colour().get(f);
      if (colour != Palette.NONE) {
        label[at + f] =
            known.computeIfAbsent(
                (long) plain << Byte.SIZE | colour,
                key -> {
                  String before = list.get(plain);
                  String name = before.isEmpty() ? "" : before + " / ";
                  return names.computeIfAbsent(name + palette.name(colour), k -> names.size());
                });
      }
    }
  }

  private static int total(ObjRun[] runs, ToIntFunction<ObjRun> count) {
    int total = 0;
    for (ObjRun run : runs) {
      total = Math.addExact(total, count.applyAsInt(run));
    }
    return total;
  }

  /** Numbers among all names for a run's names, which continue those before it. */
  private static int[] numbers(ObjRun run, ObjRun.Name before, Map<String, Integer> names) {
    List<ObjRun.Name> own = run.names();
    int[] number = new int[own.size()];
    for (int i = 0; i < number.length; i++) {
      String text = own.get(i).after(before).text();
      number[i] = names.computeIfAbsent(text, key -> names.size());
    }
    return number;
  }

  private List<Notice> notices() {
    List<Notice> notices = new ArrayList<>(palette.notices("vertex", "vertices"));
    notices.addAll(PolygonNotices.of(splitter));
    if (withoutArea > 0) {
      notices.add(PolygonNotices.withoutArea(withoutArea));
    }
    if (unread > 0) {
      notices.add(
          new Notice(
              "lines-not-understood",
              unread,
              Count.of(unread, "line begins", "lines begin")
                  + " with an unknown word and "
                  + (unread == 1 ? "was skipped: line " : "were skipped, the first of them line ")
                  + unreadLine
                  + ". If faces were meant there, area is missing."));
    }
    return notices;
  }
}
