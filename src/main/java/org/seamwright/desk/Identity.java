package org.seamwright.desk;

import java.util.Optional;

/**
 * Whether two references are one object. Meshes, maps and plans are never changed once made, and so
 * large that comparing what is in them would cost as much as working on them.
 */
public final class Identity {
  private Identity() {}

  /** Whether both are one object, or both are missing. */
  public static boolean same(Object a, Object b) {
    return a == b;
  }

  /** Whether both hold one object, or both are empty. */
  public static boolean same(Optional<?> a, Optional<?> b) {
    return same(a.orElse(null), b.orElse(null));
  }
}
