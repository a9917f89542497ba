package org.seamwright.bench;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.seamwright.bench.BenchEvent.What;
import org.seamwright.bench.BenchState.Phase;
import org.seamwright.desk.Watched;

/**
 * What keys and big buttons mean at the bench, and which panel lies open over the step.
 *
 * <p>The one key is the shop's to choose; it goes before any letter. All else has a letter, so that
 * a keyboard suffices. A key that is held down counts once.
 */
public final class BenchKeys {
  /** What can be typed, in the order of the pad. */
  public static final List<What> QUANTITIES =
      List.of(
          What.SOLUTION_ML,
          What.VOLTS,
          What.AMPERES,
          What.CHARGE_AH,
          What.BEFORE_G,
          What.AFTER_G,
          What.READING_UM);

  private final BenchDesk bench;
  private final Watched<Panel> panel = new Watched<>(Panel.NONE);
  private final Watched<NumberPad> pad = new Watched<>(NumberPad.EMPTY);
  private final Watched<What> quantity = new Watched<>(What.SOLUTION_ML);
  private final Watched<Boolean> whole = new Watched<>(false);
  private final Watched<Boolean> open = new Watched<>(false);
  private final Set<String> held = new HashSet<>();

  /** What lies over the step. */
  public enum Panel {
    /** Nothing. */
    NONE,
    /** The number pad. */
    PAD,
    /** The sections to choose from. */
    SECTIONS,
    /** The masks. */
    MASKS,
    /** The one key is chosen: the next key pressed is it. */
    KEY,
    /** Whether the run is to end. */
    END
  }

  /** What a button or its letter does. */
  public enum Deed {
    /** One step back. */
    BACK("B"),
    /** A dip. */
    DIP("D"),
    /** The section has dried. */
    DRIED_OUT("X"),
    /** The section is wet all over. */
    STILL_WET("W"),
    /** The number pad. */
    FIGURES("N"),
    /** The last entry is taken back. */
    UNDO("U"),
    /** The sections. */
    SECTIONS("L"),
    /** The masks. */
    MASKS("M"),
    /** Sound on or off. */
    SOUND("S"),
    /** Choosing the one key. */
    KEY("K"),
    /** The end of the run. */
    END("E"),
    /** Back to the path. */
    LEAVE("Q");

    private final String letter;

    Deed(String letter) {
      this.letter = letter;
    }

    /** Its key on the keyboard. */
    public String letter() {
      return letter;
    }
  }

  /** Keys of a bench. */
  public BenchKeys(BenchDesk bench) {
    this.bench = bench;
  }

  /** Whether the window is at the bench. */
  public Watched<Boolean> open() {
    return open;
  }

  /** Goes to the bench; it says what is missing, if anything is. */
  public void enter() {
    close();
    open.set(true);
    bench.enter();
  }

  /** Goes back from the bench; the run stays as it is. */
  public void leave() {
    close();
    held.clear();
    open.set(false);
    bench.leave();
  }

  /** What lies over the step. */
  public Watched<Panel> panel() {
    return panel;
  }

  /** What is being typed. */
  public Watched<NumberPad> pad() {
    return pad;
  }

  /** Of what it is the figure. */
  public Watched<What> quantity() {
    return quantity;
  }

  /** Whether it is of the whole piece, not of the section in hand. */
  public Watched<Boolean> whole() {
    return whole;
  }

  /** Number of the section that a figure is told of; 0 for the whole piece. */
  public int subject() {
    return whole.get() ? 0 : bench.run().get().map(r -> r.state().sectionId()).orElse(0);
  }

  /**
   * A key went down.
   *
   * @param code the toolkit's name of the key: "SPACE", "PAGE_DOWN", "A", "DIGIT1", "NUMPAD1"
   * @param text what it types; may be empty
   * @return whether it means something here
   */
  public boolean pressed(String code, String text) {
    boolean again = !held.add(code);
    if (panel.get() == Panel.KEY) {
      if (!again && !code.equals("ESCAPE")) {
        bench.chooseKey(code);
      }
      close();
      return true;
    }
    if (code.equals("ESCAPE")) {
      boolean open = panel.get() != Panel.NONE;
      close();
      return open;
    }
    if (panel.get() == Panel.PAD) {
      return type(code, text, again);
    }
    if (code.equals(bench.settings().get().key())) {
      if (!again) {
        mainKey();
      }
      return true;
    }
    return letter(code, again);
  }

  private boolean letter(String code, boolean again) {
    for (Deed deed : Deed.values()) {
      if (deed.letter().equals(code)) {
        if (!again && can(deed)) {
          act(deed);
        }
        return true;
      }
    }
    return false;
  }

  /** A key went up. */
  public void released(String code) {
    held.remove(code);
  }

  /** The one key, or its button. */
  public void mainKey() {
    Optional<Phase> phase = bench.run().get().map(r -> r.state().phase());
    if (panel.get() == Panel.END) {
      end();
    } else if (panel.get() != Panel.NONE) {
      close();
    } else if (phase.equals(Optional.of(Phase.THROUGH))) {
      panel.set(Panel.END);
    } else if (phase.isPresent()) {
      bench.key();
    }
  }

  /** Does what a button says. */
  public void act(Deed deed) {
    switch (deed) {
      case BACK -> bench.back();
      case DIP -> bench.dip();
      case DRIED_OUT -> bench.driedOut();
      case STILL_WET -> bench.stillWet();
      case FIGURES -> openPad();
      case UNDO -> bench.undo();
      case SECTIONS -> open(Panel.SECTIONS);
      case MASKS -> open(Panel.MASKS);
      case SOUND -> bench.mute(!bench.settings().get().muted());
      case KEY -> panel.set(Panel.KEY);
      case END -> open(Panel.END);
      case LEAVE -> leave();
    }
  }

  /** Whether a button means something now. */
  public boolean can(Deed deed) {
    Optional<BenchState> state = bench.run().get().map(BenchDesk.Run::state);
    Optional<Phase> phase = state.map(BenchState::phase);
    boolean begun =
        phase.equals(Optional.of(Phase.WORK)) || phase.equals(Optional.of(Phase.THROUGH));
    return switch (deed) {
      case DIP, FIGURES, SECTIONS, END -> begun;
      case BACK ->
          begun
              && !state.get().wet().asked()
              && (state.get().at().isWorking() || state.get().at().backSection() >= 0);
      case DRIED_OUT ->
          begun
              && state.get().at().isWorking()
              && state.get().sections().get(state.get().at().section()).status()
                  == BenchState.Status.WAITING;
      case STILL_WET -> begun && state.get().wet().sinceMs() >= 0;
      case UNDO -> begun && !state.get().entries().isEmpty();
      case MASKS -> begun && !state.get().masks().isEmpty();
      case SOUND, KEY, LEAVE -> true;
    };
  }

  private void open(Panel which) {
    boolean allowed =
        switch (which) {
          case SECTIONS -> can(Deed.SECTIONS);
          case MASKS -> can(Deed.MASKS);
          case END -> can(Deed.END);
          case PAD -> can(Deed.FIGURES);
          case KEY, NONE -> true;
        };
    if (allowed) {
      panel.set(panel.get() == which ? Panel.NONE : which);
    }
  }

  /** Shuts what lies over the step. */
  public void close() {
    panel.set(Panel.NONE);
    pad.set(NumberPad.EMPTY);
  }

  private void openPad() {
    pad.set(NumberPad.EMPTY);
    whole.set(false);
    open(Panel.PAD);
  }

  private boolean type(String code, String text, boolean again) {
    switch (code) {
      case "ENTER" -> {
        if (!again) {
          confirm();
        }
      }
      case "BACK_SPACE" -> erase();
      case "UP" -> other(-1);
      case "DOWN" -> other(1);
      case "P" -> whole.set(!whole.get());
      default -> {
        if (text.length() == 1) {
          type(text.charAt(0));
        }
        // Tab and the like go on to the buttons; nothing else acts behind an open pad.
        return !code.equals("TAB") && !code.equals("LEFT") && !code.equals("RIGHT");
      }
    }
    return true;
  }

  private void other(int by) {
    int n = QUANTITIES.size();
    choose(QUANTITIES.get((QUANTITIES.indexOf(quantity.get()) + by + n) % n));
  }

  /** Chooses what is typed. */
  public void choose(What what) {
    quantity.set(what);
    pad.set(NumberPad.EMPTY);
  }

  /** A key of the pad. */
  public void type(char key) {
    pad.set(pad.get().type(key));
  }

  /** Takes the last key of the pad back. */
  public void erase() {
    pad.set(pad.get().erase());
  }

  /** Whether what is typed is a figure that can be noted: the shop book takes none of 0. */
  public boolean canConfirm() {
    return pad.get().value().orElse(0) > 0;
  }

  /** Notes the figure and shuts the pad; nothing happens while there is none. */
  public void confirm() {
    if (canConfirm()) {
      bench.note(subject(), quantity.get(), pad.get());
      close();
    }
  }

  /** Goes over to a section of the list. */
  public void choose(int section) {
    bench.choose(section);
    close();
  }

  /** Ends the run. */
  public void end() {
    bench.end();
    close();
  }
}
