package org.seamwright.section;

import java.util.List;

/**
 * A section with which the work comes back to where a ring of sections was begun: it laps onto gold
 * at both ends, and the older of the two is the edge that has waited longest.
 *
 * @param section the section that closes the ring
 * @param onto the sections it laps onto at its ends, ascending: the edge of the first has waited
 *     longest
 */
public record RingClosing(int section, List<Integer> onto) {
  /** Copies the list. */
  public RingClosing {
    onto = List.copyOf(onto);
  }
}
