package org.seamwright.job;

import java.util.List;
import java.util.stream.Collectors;
import org.seamwright.basis.InputException;

/** A mesh file that does not say its unit, when nobody else did either. */
public final class UnitUnknownException extends InputException {
  private static final long serialVersionUID = 1L;

  private final transient List<LikelyUnits.Candidate> candidates;

  /**
   * Makes a refusal.
   *
   * @param source the mesh file
   * @param candidates what it could be, the likeliest first
   */
  public UnitUnknownException(String source, List<LikelyUnits.Candidate> candidates) {
    super(
        source,
        "",
        "the file does not say the unit of its numbers: "
            + candidates.stream()
                .map(c -> "in " + c.unit().symbol() + " the piece is " + Piece.size(c.sizeMm()))
                .collect(Collectors.joining("; ")),
        "Give the unit, or a known length measured on the piece.");
    this.candidates = List.copyOf(candidates);
  }

  /** What it could be, the likeliest first. */
  public List<LikelyUnits.Candidate> candidates() {
    return candidates;
  }
}
