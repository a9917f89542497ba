package org.seamwright.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Where the numbers of regions go: inside the region, at the point farthest from its edge, where a
 * circle fits; else in a column at the side, on a leader. Leaders count as edges for the numbers
 * inside, so that no leader runs through a number. Cost: O(pixels) per round, few rounds.
 *
 * @param labels in the order of region numbers
 * @param unplaced visible regions the columns had no room for
 */
record LabelPlan(List<Label> labels, List<Integer> unplaced) {
  /** Smallest share of the wanted size that a number inside a region may shrink to. */
  private static final double SMALLEST = 0.62;

  /** Gap between a circle and what is around it, as a share of its radius. */
  private static final double GAP = 0.14;

  /** Gap between circles of a column, as a share of their radius. */
  private static final double COLUMN_GAP = 0.35;

  /** Gap between the piece and a column, as a share of the radius. */
  private static final double BESIDE = 0.9;

  /** A region with fewer pixels in view is not labelled: nobody would find it. */
  private static final int LEAST_PIXELS = 24;

  /** Copies the lists. */
  LabelPlan {
    labels = List.copyOf(labels);
    unplaced = List.copyOf(unplaced);
  }

  /**
   * A number in a circle.
   *
   * @param region its region
   * @param x middle of the circle, pixels
   * @param y middle of the circle, pixels
   * @param radius of the circle, pixels
   * @param anchorX end of its leader on the piece; the middle of the circle if there is none
   * @param anchorY end of its leader on the piece
   * @param leader whether it stands in a column
   */
  record Label(
      int region,
      double x,
      double y,
      double radius,
      double anchorX,
      double anchorY,
      boolean leader) {
    /** Where the leader meets the circle. */
    double portX() {
      return anchorX > x ? x + radius : x - radius;
    }
  }

  /**
   * Plans the numbers of all regions above 0.
   *
   * @param region number seen in each pixel
   * @param radius wanted radius of a circle, pixels
   */
  static LabelPlan of(int[] region, int width, int height, double radius) {
    Map<Integer, Integer> pixels = new TreeMap<>();
    for (int id : region) {
      if (id > 0) {
        pixels.merge(id, 1, Integer::sum);
      }
    }
    pixels.values().removeIf(n -> n < LEAST_PIXELS);
    boolean[] edge = edges(region, width, height);
    Map<Integer, Pole> first = poles(region, edge, width, height);
    List<Integer> outside = new ArrayList<>();
    for (int id : pixels.keySet()) {
      if (!fits(first.get(id), radius)) {
        outside.add(id);
      }
    }
    Leaders.Room room = room(region, width, height, radius);
    while (true) {
      List<Label> leaders = leaders(outside, first, room);
      boolean[] blocked = edge.clone();
      for (Label l : leaders) {
        trace(l, blocked, width, height);
      }
      Map<Integer, Pole> poles = leaders.isEmpty() ? first : poles(region, blocked, width, height);
      List<Label> inside = new ArrayList<>();
      boolean again = false;
      for (int id : pixels.keySet()) {
        if (outside.contains(id)) {
          continue;
        }
        Pole pole = poles.get(id);
        if (fits(pole, radius)) {
          double r = Math.min(radius, pole.distance / (1 + GAP));
          inside.add(new Label(id, pole.x, pole.y, r, pole.x, pole.y, false));
        } else {
          outside.add(id);
          again = true;
        }
      }
      if (!again) {
        return joined(inside, leaders, outside);
      }
    }
  }

  private static LabelPlan joined(List<Label> inside, List<Label> leaders, List<Integer> outside) {
    Map<Integer, Label> byRegion = new TreeMap<>();
    inside.forEach(l -> byRegion.put(l.region, l));
    leaders.forEach(l -> byRegion.put(l.region, l));
    List<Integer> unplaced = new ArrayList<>(outside);
    unplaced.removeAll(byRegion.keySet());
    return new LabelPlan(new ArrayList<>(byRegion.values()), unplaced.stream().sorted().toList());
  }

  /** Labels of given places, all on leaders. */
  static LabelPlan of(
      List<Leaders.Anchor> anchors, int[] region, int width, int height, double radius) {
    Map<Integer, Pole> poles = new LinkedHashMap<>();
    for (Leaders.Anchor a : anchors) {
      poles.put(a.id(), new Pole(a.x(), a.y(), 0));
    }
    List<Integer> ids = new ArrayList<>(poles.keySet());
    return joined(List.of(), leaders(ids, poles, room(region, width, height, radius)), ids);
  }

  private static boolean fits(Pole pole, double radius) {
    return pole != null && pole.distance >= radius * SMALLEST * (1 + GAP);
  }

  /** Columns close beside the piece, as far as the picture's border allows. */
  private static Leaders.Room room(int[] region, int width, int height, double radius) {
    int left = width;
    int right = 0;
    for (int i = 0; i < region.length; i++) {
      if (region[i] != Image.NOTHING) {
        left = Math.min(left, i % width);
        right = Math.max(right, i % width + 1);
      }
    }
    double border = radius * (1 + COLUMN_GAP);
    double beside = radius * BESIDE;
    return new Leaders.Room(
        Math.max(border + radius, left - beside),
        Math.min(width - border - radius, right + beside),
        border,
        height - border,
        radius * (2 + COLUMN_GAP));
  }

  private static List<Label> leaders(
      List<Integer> ids, Map<Integer, Pole> poles, Leaders.Room room) {
    List<Leaders.Anchor> anchors = new ArrayList<>();
    for (int id : ids) {
      Pole pole = poles.get(id);
      anchors.add(new Leaders.Anchor(id, pole.x, pole.y));
    }
    double radius = room.pitch() / (2 + COLUMN_GAP);
    List<Label> labels = new ArrayList<>();
    for (Leaders.Leader l : Leaders.place(anchors, room)) {
      double x = l.right() ? l.x() + radius : l.x() - radius;
      Leaders.Anchor a = l.anchor();
      labels.add(new Label(a.id(), x, l.y(), radius, a.x(), a.y(), true));
    }
    return labels;
  }

  private static void trace(Label l, boolean[] blocked, int width, int height) {
    double dx = l.portX() - l.anchorX;
    double dy = l.y - l.anchorY;
    int steps = (int) Math.ceil(Math.max(Math.abs(dx), Math.abs(dy))) + 1;
    for (int i = 0; i <= steps; i++) {
      int x = (int) (l.anchorX + dx * i / steps);
      int y = (int) (l.anchorY + dy * i / steps);
      if (x >= 0 && y >= 0 && x < width && y < height) {
        blocked[y * width + x] = true;
      }
    }
  }

  /** Pixels with a neighbour of another region, and those at the border of the picture. */
  private static boolean[] edges(int[] region, int width, int height) {
    boolean[] edge = new boolean[region.length];
    Arrays.fill(edge, false);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int i = y * width + x;
        edge[i] =
            x == 0
                || y == 0
                || x == width - 1
                || y == height - 1
                || region[i - 1] != region[i]
                || region[i + 1] != region[i]
                || region[i - width] != region[i]
                || region[i + width] != region[i];
      }
    }
    return edge;
  }

  private record Pole(double x, double y, double distance) {}

  private static Map<Integer, Pole> poles(int[] region, boolean[] blocked, int width, int height) {
    float[] squared = DistanceField.squared(blocked, width, height);
    Map<Integer, Integer> best = new TreeMap<>();
    for (int i = 0; i < region.length; i++) {
      if (region[i] > 0) {
        Integer before = best.get(region[i]);
        if (before == null || squared[i] > squared[before]) {
          best.put(region[i], i);
        }
      }
    }
    Map<Integer, Pole> poles = new TreeMap<>();
    best.forEach(
        (id, i) ->
            poles.put(id, new Pole(i % width + 0.5, i / width + 0.5, Math.sqrt(squared[i]))));
    return poles;
  }
}
