package org.seamwright.section;

import org.seamwright.basis.Progress;

/**
 * The order in which sections are worked: least {@link OrderCost} among the orders that keep to
 * what is pinned, and among equals the order that comes first by section number.
 *
 * <p>Up to {@value #EXACT} sections the best order is proved ({@link ExactOrder}); beyond, it is
 * searched for ({@link OrderSearch}).
 */
final class WorkingOrder {
  /** Most sections for which the order is proved to be the best. */
  static final int EXACT = 10;

  private final Tally activation;
  private final Tally flash;
  private final double[] centre;
  private final int n;

  /**
   * Prepares a search.
   *
   * @param activation coverage by activation laps
   * @param flash coverage by flash laps
   * @param centreMm three entries per section: its centre of area
   * @param thriceStepMm2 areas activated three times that differ by less are equal
   * @param lapStepMm2 areas of laps that differ by less are equal
   */
  WorkingOrder(
      Coverage activation,
      Coverage flash,
      double[] centreMm,
      double thriceStepMm2,
      double lapStepMm2) {
    n = activation.sections();
    // Once with its own section, so two laps make three times.
    this.activation = new Tally(activation, thriceStepMm2, laps -> laps >= 2 ? 1 : 0);
    this.flash = new Tally(flash, lapStepMm2, laps -> laps);
    this.centre = centreMm;
  }

  int sections() {
    return n;
  }

  Tally activation() {
    return activation;
  }

  Tally flash() {
    return flash;
  }

  /** What an order costs; entry i is the section worked as the i-th. */
  OrderCost cost(int[] order) {
    int[] position = new int[n];
    for (int i = 0; i < n; i++) {
      position[order[i]] = i;
    }
    activation.countAll(position);
    flash.countAll(position);
    return new OrderCost(activation.steps(), flash.steps(), travel(order));
  }

  /** Way of the hand between centres, in an order. */
  double travel(int[] order) {
    double travel = 0;
    for (int i = 1; i < n; i++) {
      travel += between(order[i - 1], order[i]);
    }
    return travel;
  }

  /** Way between two sections, from centre to centre. */
  double between(int a, int b) {
    double dx = centre[3 * a] - centre[3 * b];
    double dy = centre[3 * a + 1] - centre[3 * b + 1];
    double dz = centre[3 * a + 2] - centre[3 * b + 2];
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  /** The best order found; entry i is the section worked as the i-th. */
  int[] best(Precedence pins, Progress progress) {
    int[] found = searched(pins, progress.between(0, 0.9));
    if (n <= EXACT) {
      found = new ExactOrder(this, pins).best(found);
    }
    progress.at(1);
    return found;
  }

  /** The best order that the search for many sections finds. */
  int[] searched(Precedence pins, Progress progress) {
    return new OrderSearch(this, pins).best(progress);
  }
}
