package org.seamwright.picture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Places labels in two columns at the sides of a picture and joins each by a straight line to its
 * place, such that no two lines cross and no line runs through a label.
 *
 * <p>Places go to the nearer column as far as it holds them, split by a vertical line, so lines of
 * the two columns can't meet. Within a column labels start in the order of their places; crossing
 * pairs then swap, which shortens the lines every time and so comes to an end.
 *
 * <p>Reference: M. Bekos et al., "Boundary labeling: models and efficient algorithms for
 * rectangular maps", Computational Geometry 36 (2007).
 */
final class Leaders {
  private Leaders() {}

  /** A place to be labelled: id, pixels. */
  record Anchor(int id, double x, double y) {}

  /**
   * A line from a place to its label.
   *
   * @param anchor the place
   * @param x where the line meets the label
   * @param y where the line meets the label
   * @param right whether it goes to the right column
   */
  record Leader(Anchor anchor, double x, double y, boolean right) {}

  /**
   * The room for labels.
   *
   * @param leftX where lines of the left column end
   * @param rightX where lines of the right column end
   * @param top highest middle of a label
   * @param bottom lowest middle of a label
   * @param pitch least distance of two labels in a column
   */
  record Room(double leftX, double rightX, double top, double bottom, double pitch) {
    /** Labels a column holds. */
    int perColumn() {
      return Math.max(0, (int) Math.floor((bottom - top) / pitch) + 1);
    }
  }

  /**
   * Joins places to labels, as many as the columns hold: the first ones in the list.
   *
   * @return in the order of the places
   */
  static List<Leader> place(List<Anchor> anchors, Room room) {
    int column = room.perColumn();
    List<Anchor> kept = anchors.subList(0, Math.min(anchors.size(), 2 * column));
    List<Anchor> byX = new ArrayList<>(kept);
    byX.sort(
        Comparator.comparingDouble(Anchor::x)
            .thenComparingDouble(Anchor::y)
            .thenComparingInt(Anchor::id));
    double middle = (room.leftX() + room.rightX()) / 2;
    int left = 0;
    while (left < byX.size() && byX.get(left).x() < middle) {
      left++;
    }
    left = Math.max(byX.size() - column, Math.min(column, left));
    List<Leader> leaders = new ArrayList<>();
    leaders.addAll(column(byX.subList(0, left), room, false));
    leaders.addAll(column(byX.subList(left, byX.size()), room, true));
    leaders.sort(Comparator.comparingInt(l -> kept.indexOf(l.anchor())));
    return leaders;
  }

  private static List<Leader> column(List<Anchor> anchors, Room room, boolean right) {
    List<Anchor> order = new ArrayList<>(anchors);
    order.sort(Comparator.comparingDouble(Anchor::y).thenComparingInt(Anchor::id));
    double[] y = spread(order, room);
    double x = right ? room.rightX() : room.leftX();
    boolean crossing = true;
    while (crossing) {
      crossing = false;
      for (int i = 0; i < order.size(); i++) {
        for (int j = i + 1; j < order.size(); j++) {
          Anchor a = order.get(i);
          Anchor b = order.get(j);
          if (cross(a.x(), a.y(), x, y[i], b.x(), b.y(), x, y[j])) {
            order.set(i, b);
            order.set(j, a);
            crossing = true;
          }
        }
      }
    }
    List<Leader> leaders = new ArrayList<>();
    for (int i = 0; i < order.size(); i++) {
      leaders.add(new Leader(order.get(i), x, y[i], right));
    }
    return leaders;
  }

  /** Heights of labels near those of their places, a pitch apart, within the room. */
  private static double[] spread(List<Anchor> order, Room room) {
    double[] y = new double[order.size()];
    for (int i = 0; i < y.length; i++) {
      double least = i == 0 ? room.top() : y[i - 1] + room.pitch();
      y[i] = Math.max(least, order.get(i).y());
    }
    for (int i = y.length - 1; i >= 0; i--) {
      double most = i == y.length - 1 ? room.bottom() : y[i + 1] - room.pitch();
      y[i] = Math.min(most, y[i]);
    }
    return y;
  }

  /** Whether two segments properly cross. */
  static boolean cross(
      double ax, double ay, double bx, double by, double cx, double cy, double dx, double dy) {
    double c = side(ax, ay, bx, by, cx, cy);
    double d = side(ax, ay, bx, by, dx, dy);
    double a = side(cx, cy, dx, dy, ax, ay);
    double b = side(cx, cy, dx, dy, bx, by);
    return c * d < 0 && a * b < 0;
  }

  private static double side(double ax, double ay, double bx, double by, double px, double py) {
    return (bx - ax) * (py - ay) - (by - ay) * (px - ax);
  }
}
