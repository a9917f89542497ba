package org.seamwright.desk;

import java.util.Optional;

/**
 * The one line that says how the job stands: what is missing or wrong, what is being worked out, or
 * that all is there; with the place to go to, or the deed that mends it.
 *
 * @param tone how it is to be taken
 * @param text one sentence
 * @param more what to do about it, a sentence; may be empty
 * @param goTo the place where it is done, unless the deed does it
 * @param deed what a button beside the line does at once
 */
public record NextStep(
    Tone tone, String text, String more, Optional<Place> goTo, Optional<Deed> deed) {
  /** How a line is to be taken. */
  public enum Tone {
    /** All is well. */
    DONE,
    /** Something is still to be said. */
    MISSING,
    /** Something is being worked out. */
    BUSY,
    /** Something is wrong. */
    WRONG
  }

  /** What a button beside the line does. */
  public enum Deed {
    /** Chooses a file to open. */
    OPEN,
    /** Chooses where to save. */
    SAVE_AS,
    /** Says that the marks fit the changed mesh. */
    ACCEPT_MESH,
    /** Saves over another program's change. */
    SAVE_OVER,
    /** Breaks off what is being worked out. */
    CANCEL,
    /** Tries again. */
    AGAIN
  }

  /**
   * How the job stands.
   *
   * @param papersMade whether papers of the job as it is have been made
   */
  public static NextStep of(DeskState state, boolean papersMade) {
    if (state.trouble().isPresent()) {
      return trouble(state.trouble().get());
    }
    if (state.work().filter(w -> w.task() == DeskState.Task.READING).isPresent()) {
      return busy(state.work().get());
    }
    if (state.document().isEmpty()) {
      return missing("next.open", Place.PIECE, Deed.OPEN);
    }
    if (state.job().isEmpty()) {
      return new NextStep(
          Tone.MISSING, Messages.text("next.unit"), "", Optional.of(Place.PIECE), Optional.empty());
    }
    Optional<NextStep> saving = saving(state.saving());
    if (saving.isPresent()) {
      return saving.get();
    }
    if (state.work().isPresent()) {
      return busy(state.work().get());
    }
    if (!state.isPlanned()) {
      return new NextStep(
          Tone.MISSING,
          Messages.text("next.cancelled"),
          "",
          Optional.empty(),
          Optional.of(Deed.AGAIN));
    }
    if (state.plan().orElseThrow().breaksLimit()) {
      return new NextStep(
          Tone.WRONG,
          Messages.text("next.over"),
          "",
          Optional.of(Place.SECTIONS),
          Optional.empty());
    }
    if (!papersMade) {
      return new NextStep(
          Tone.MISSING,
          Messages.text("next.papers"),
          "",
          Optional.of(Place.PAPERS),
          Optional.empty());
    }
    return new NextStep(
        Tone.DONE, Messages.text("next.done"), "", Optional.empty(), Optional.empty());
  }

  private static NextStep trouble(Trouble trouble) {
    Optional<Deed> deed =
        trouble.meshChanged()
            ? Optional.of(Deed.ACCEPT_MESH)
            : trouble.fault().isPresent() ? Optional.of(Deed.AGAIN) : Optional.empty();
    Optional<Place> goTo = deed.isPresent() ? Optional.empty() : Optional.of(trouble.at());
    return new NextStep(Tone.WRONG, trouble.problem(), trouble.remedy(), goTo, deed);
  }

  private static Optional<NextStep> saving(DeskState.Saving saving) {
    if (saving instanceof DeskState.Saving.Nowhere) {
      return Optional.of(missing("next.save", Place.PIECE, Deed.SAVE_AS));
    }
    if (saving instanceof DeskState.Saving.Elsewhere) {
      return Optional.of(wrong("next.elsewhere", Deed.SAVE_AS));
    }
    if (saving instanceof DeskState.Saving.Changed) {
      return Optional.of(wrong("next.changed", Deed.SAVE_OVER));
    }
    if (saving instanceof DeskState.Saving.Failed failed) {
      return Optional.of(
          new NextStep(
              Tone.WRONG,
              Messages.text("next.unsaved"),
              failed.why(),
              Optional.empty(),
              Optional.of(Deed.SAVE_AS)));
    }
    return Optional.empty();
  }

  private static NextStep missing(String key, Place at, Deed deed) {
    return new NextStep(Tone.MISSING, Messages.text(key), "", Optional.of(at), Optional.of(deed));
  }

  private static NextStep wrong(String key, Deed deed) {
    return new NextStep(Tone.WRONG, Messages.text(key), "", Optional.empty(), Optional.of(deed));
  }

  private static NextStep busy(DeskState.Work work) {
    String task = work.task().name().toLowerCase(java.util.Locale.ROOT);
    return new NextStep(
        Tone.BUSY, Messages.text("busy." + task), "", Optional.empty(), Optional.of(Deed.CANCEL));
  }
}
