package org.seamwright.region;

import java.util.Objects;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** What every kind of mark demands of its values. */
final class MarkChecks {
  private MarkChecks() {}

  static void check(String name, Treatment treatment) {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(treatment, "treatment");
  }

  static void requireDirection(Vector3D direction, String what) {
    if (!(direction.norm() > 0) || !direction.isFinite()) {
      throw new IllegalArgumentException("A direction must not be zero: " + what);
    }
  }

  static void requirePositive(double value, String what) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(what + " must be above 0: " + value);
    }
  }
}
