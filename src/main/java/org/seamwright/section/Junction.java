package org.seamwright.section;

import java.util.List;

/**
 * A place where three sections or more meet: laps cross there, so it is activated most often.
 *
 * @param xMm where it lies
 * @param yMm where it lies
 * @param zMm where it lies
 * @param sections the sections that meet, ascending
 */
public record Junction(double xMm, double yMm, double zMm, List<Integer> sections) {
  /** Copies the list. */
  public Junction {
    sections = List.copyOf(sections);
  }
}
