package org.seamwright.section;

import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What the user asks of the order of work. A section is named by a point in it, so that the wish
 * outlives sections that move: the one meant is the section nearest to the point.
 *
 * @param first points in the sections to be worked first, in this order, mm
 * @param last points in the sections to be worked last, in this order, mm
 * @param before pairs of sections, in which one is to be worked before the other
 */
public record OrderPins(List<Vector3D> first, List<Vector3D> last, List<Before> before) {
  /** Nothing is asked. */
  public static final OrderPins NONE = new OrderPins(List.of(), List.of(), List.of());

  /**
   * One section before another; others may come between.
   *
   * @param section a point in the section to be worked earlier, mm
   * @param before a point in the section to be worked later, mm
   */
  public record Before(Vector3D section, Vector3D before) {}

  /** Copies the lists. */
  public OrderPins {
    first = List.copyOf(first);
    last = List.copyOf(last);
    before = List.copyOf(before);
  }

  /** Whether nothing is asked. */
  public boolean isEmpty() {
    return first.isEmpty() && last.isEmpty() && before.isEmpty();
  }
}
