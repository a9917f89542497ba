package org.seamwright.sample;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;

/**
 * The regatta plaque: an invented name plate of 220 × 140 mm with rounded corners, a raised frame
 * and raised lettering, as a drawing program would write it: few, long triangles, all of them level
 * or upright. It lies on z = 0 with its face towards +z.
 *
 * <p>Its area has a closed formula: twice the outline's area, and each outline's length times the
 * height of the wall that stands on it.
 */
final class PlaqueMaker {
  /** Height of the field over the back, mm. */
  static final double FIELD_MM = 6;

  /** Height of frame and letters over the back, mm. */
  static final double TOP_MM = 7.5;

  private static final double WIDTH_MM = 220;
  private static final double HEIGHT_MM = 140;
  private static final double FRAME_MM = 7;
  private static final double CORNER_MM = 12;
  private static final int CORNER_PARTS = 16;

  private final MeshBuilder builder = new MeshBuilder();
  private final List<double[]> points = new ArrayList<>();
  private final List<Integer> label = new ArrayList<>();
  private double[][] point;
  private double areaMm2;

  /** Vertex for a point (upper half of the key) at a height (its float bits). */
  private final Map<Long, Integer> lifts = new HashMap<>();

  private PlaqueMaker() {}

  /**
   * The plaque.
   *
   * @param mesh its faces
   * @param labels "back", "side", "frame", "field" or "letters" for each
   * @param areaMm2 its area by the closed formula
   */
  record Plaque(Mesh mesh, Labels labels, double areaMm2) {}

  /** Makes the plaque. */
  static Plaque plaque() {
    return new PlaqueMaker().make();
  }

  private Plaque make() {
    final int[] outer = rounded(0);
    final int[] inner = rounded(FRAME_MM);
    List<int[]> loops = new ArrayList<>();
    addLine(loops, "HARBOUR TOWN", 17, 28);
    addLine(loops, "SUMMER REGATTA", 14, 0);
    addLine(loops, "FIRST PLACE", 20, -39);
    point = points.toArray(double[][]::new);

    level(outer, List.of(), 0, true, 1);
    wall(outer, 0, TOP_MM, false, 2);
    level(outer, List.of(reversed(inner)), TOP_MM, false, 3);
    wall(inner, FIELD_MM, TOP_MM, true, 3);
    List<int[]> letters = new ArrayList<>();
    for (int[] loop : loops) {
      if (depth(loop, loops) % 2 == 0) {
        letters.add(counterClockwise(loop));
      }
    }
    level(inner, letters.stream().map(PlaqueMaker::reversed).toList(), FIELD_MM, false, 4);
    for (int[] letter : letters) {
      addLetter(letter, loops);
    }
    areaMm2 += 2 * Polygon.area2(point, outer) / 2;
    return new Plaque(
        builder.build(),
        new Labels(
            List.of("", "back", "side", "frame", "field", "letters"),
            label.stream().mapToInt(Integer::intValue).toArray()),
        areaMm2);
  }

  private void addLetter(int[] letter, List<int[]> loops) {
    List<int[]> counters = new ArrayList<>();
    for (int[] loop : loops) {
      double[] p = point[loop[0]];
      if (depth(loop, loops) % 2 == 1 && Polygon.inside(point, letter, p[0], p[1])) {
        counters.add(counterClockwise(loop));
      }
    }
    level(letter, counters.stream().map(PlaqueMaker::reversed).toList(), TOP_MM, false, 5);
    wall(letter, FIELD_MM, TOP_MM, false, 5);
    for (int[] counter : counters) {
      wall(counter, FIELD_MM, TOP_MM, true, 5);
      level(counter, List.of(), FIELD_MM, false, 4);
    }
  }

  private void addLine(List<int[]> loops, String text, double capHeightMm, double baselineY) {
    for (List<double[]> outline : Lettering.outlines(text, capHeightMm, 0, baselineY)) {
      int first = points.size();
      points.addAll(outline);
      int[] loop = new int[outline.size()];
      Arrays.setAll(loop, i -> first + i);
      loops.add(loop);
    }
  }

  /** Outline of the plate, drawn in by so much. */
  private int[] rounded(double inset) {
    int first = points.size();
    double radius = CORNER_MM - inset;
    double x = WIDTH_MM / 2 - CORNER_MM;
    double y = HEIGHT_MM / 2 - CORNER_MM;
    double[][] centre = {{x, y}, {-x, y}, {-x, -y}, {x, -y}};
    for (int c = 0; c < 4; c++) {
      for (int i = 0; i <= CORNER_PARTS; i++) {
        double angle = Math.PI / 2 * (c + (double) i / CORNER_PARTS);
        points.add(
            new double[] {
              centre[c][0] + radius * Math.cos(angle), centre[c][1] + radius * Math.sin(angle)
            });
      }
    }
    int[] loop = new int[points.size() - first];
    Arrays.setAll(loop, i -> first + i);
    return loop;
  }

  private int depth(int[] loop, List<int[]> loops) {
    double[] p = point[loop[0]];
    int depth = 0;
    for (int[] other : loops) {
      if (other != loop && Polygon.inside(point, other, p[0], p[1])) {
        depth++;
      }
    }
    return depth;
  }

  private int[] counterClockwise(int[] loop) {
    return Polygon.area2(point, loop) > 0 ? loop : reversed(loop);
  }

  private static int[] reversed(int[] loop) {
    int[] back = new int[loop.length];
    for (int i = 0; i < loop.length; i++) {
      back[i] = loop[loop.length - 1 - i];
    }
    return back;
  }

  /** A level face at a height, looking up or down. */
  private void level(int[] outer, List<int[]> holes, double z, boolean down, int name) {
    for (int[] t : Polygon.triangles(point, outer, holes)) {
      int a = lifted(t[0], z);
      int b = lifted(t[1], z);
      int c = lifted(t[2], z);
      builder.face(a, down ? c : b, down ? b : c);
      label.add(name);
    }
  }

  /** An upright wall on a counter-clockwise loop, looking outwards or inwards. */
  private void wall(int[] loop, double low, double high, boolean inwards, int name) {
    for (int i = 0; i < loop.length; i++) {
      int p = loop[i];
      int q = loop[(i + 1) % loop.length];
      int from = inwards ? q : p;
      int to = inwards ? p : q;
      builder.face(lifted(from, low), lifted(to, low), lifted(to, high));
      builder.face(lifted(from, low), lifted(to, high), lifted(from, high));
      label.add(name);
      label.add(name);
    }
    areaMm2 += Polygon.perimeter(point, loop) * (high - low);
  }

  private int lifted(int p, double z) {
    return lifts.computeIfAbsent(
        ((long) p << 32) | Float.floatToIntBits((float) z),
        k -> builder.vertex(point[p][0], point[p][1], z));
  }
}
