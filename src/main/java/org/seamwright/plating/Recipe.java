package org.seamwright.plating;

import java.util.List;

/**
 * The steps for one base metal, in order.
 *
 * @param id stable name used in job files, for example {@code brass}
 * @param base the base metal, for people
 * @param steps in order; exactly one {@link Step.Kind#FLASH}
 * @param notes what to ask or know before starting
 */
public record Recipe(String id, String base, List<Step> steps, List<String> notes) {
  /** Copies the lists and checks that there is one flash. */
  public Recipe {
    steps = List.copyOf(steps);
    notes = List.copyOf(notes);
    if (steps.stream().filter(s -> s.kind() == Step.Kind.FLASH).count() != 1) {
      throw new IllegalArgumentException("A recipe needs exactly one flash: " + id);
    }
  }
}
