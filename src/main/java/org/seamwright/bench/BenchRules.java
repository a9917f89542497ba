package org.seamwright.bench;

import java.util.ArrayList;
import java.util.List;
import org.seamwright.bench.BenchState.Away;
import org.seamwright.bench.BenchState.Entry;
import org.seamwright.bench.BenchState.Mishap;
import org.seamwright.bench.BenchState.Position;
import org.seamwright.bench.BenchState.SectionState;
import org.seamwright.bench.BenchState.Status;
import org.seamwright.bench.BenchState.Wet;
import org.seamwright.plating.Step;

/**
 * What an event makes of a run. Every event is allowed in every state: one that means nothing there
 * changes nothing but the time, so that a file of events can always be read to its end.
 */
final class BenchRules {
  private final BenchPlan plan;
  private final int flash;

  BenchRules(BenchPlan plan) {
    this.plan = plan;
    this.flash = plan.flash();
  }

  BenchState replay(List<BenchEvent> events) {
    BenchState state = BenchState.start(plan);
    for (BenchEvent event : events) {
      state = apply(state, event);
    }
    return state;
  }

  BenchState apply(BenchState before, BenchEvent event) {
    // A clock that was set back must not make a time negative.
    long now = Math.max(before.lastMs(), event.atMs());
    Change change = new Change(before, now);
    boolean here = event.section() == before.sectionId() && event.step() == before.at().step();
    if (!before.ended() || event.what() == BenchEvent.What.BOOKED) {
      switch (event.what()) {
        case CAUTION_SEEN -> tick(change.cautions, event.step(), true);
        case MASK_TICKED -> tick(change.masks, event.step(), true);
        case MASK_CLEARED -> tick(change.masks, event.step(), false);
        case NEXT -> {
          if (here) {
            next(change);
          }
        }
        case BACK -> {
          if (here) {
            back(change);
          }
        }
        case DRIED_OUT -> driedOut(change, event.section());
        case STILL_WET -> stillWet(change, event.section());
        case CHOSEN -> choose(change, event.section() - 1);
        case DIP, SOLUTION_ML, VOLTS, AMPERES, CHARGE_AH, BEFORE_G, AFTER_G, READING_UM ->
            enter(change, event);
        case UNDONE -> {
          if (!change.entries.isEmpty()) {
            change.entries.remove(change.entries.size() - 1);
          }
        }
        case REOPENED -> reopen(change);
        case ENDED -> end(change);
        case BOOKED -> {
          if (before.ended() && !change.booked.contains(event.section())) {
            change.booked.add(event.section());
          }
        }
      }
    }
    if (change.at.section() < 0
        && !change.cautions.contains(false)
        && !change.masks.contains(false)
        && !plan.sections().isEmpty()) {
      change.at = ready(0, now, -1, -1);
    }
    return change.made();
  }

  private static void tick(List<Boolean> list, int index, boolean on) {
    if (index >= 0 && index < list.size()) {
      list.set(index, on);
    }
  }

  private static Position ready(int section, long now, int backSection, int backStep) {
    return new Position(section, BenchEvent.READY, now, 0, backSection, backStep);
  }

  private void next(Change change) {
    int section = change.at.section();
    if (section < 0 || change.wet.asked()) {
      return;
    }
    SectionState of = change.sections.get(section);
    if (!change.at.isWorking()) {
      if (of.status() == Status.DONE) {
        change.at = ready(following(change, section), change.now, -1, -1);
      } else {
        begin(change, of.resume(), Wet.NONE);
      }
      return;
    }
    int step = change.at.step();
    change.spend();
    Step.Kind kind = plan.steps().get(step).kind();
    long wetSince =
        kind == Step.Kind.WET ? change.now : kind == Step.Kind.FLASH ? -1 : change.wet.sinceMs();
    boolean last = step == plan.steps().size() - 1;
    if (!last && step != flash) {
      begin(change, step + 1, new Wet(wetSince, change.wet.atBegin(), false));
      return;
    }
    change.put(section, last ? Status.DONE : Status.FLASHED, last ? 0 : step + 1);
    change.at = ready(following(change, section), change.now, section, step);
    // What was wet when is kept, so that a key too many can be taken back.
    change.wet = new Wet(-1, change.wet.atBegin(), false);
  }

  /** Takes up a step; what was wet at its begin is remembered, for going back to it. */
  private static void begin(Change change, int step, Wet wet) {
    List<Long> atBegin = new ArrayList<>(wet.atBegin());
    while (atBegin.size() > step) {
      atBegin.remove(atBegin.size() - 1);
    }
    while (atBegin.size() < step) {
      atBegin.add(-1L);
    }
    atBegin.add(wet.sinceMs());
    change.at = new Position(change.at.section(), step, change.now, 0, -1, -1);
    change.wet = new Wet(wet.sinceMs(), atBegin, false);
  }

  /** The section after one: the next that is not covered, else the first that is not through. */
  private static int following(Change change, int section) {
    int n = change.sections.size();
    for (Status wanted : new Status[] {Status.WAITING, Status.FLASHED}) {
      for (int i = 1; i <= n; i++) {
        // Building begins with the first section again; flashing goes on behind this one.
        int at = wanted == Status.WAITING ? (section + i) % n : i - 1;
        if (change.sections.get(at).status() == wanted) {
          return at;
        }
      }
    }
    return section;
  }

  private void back(Change change) {
    Position at = change.at;
    if (change.wet.asked()) {
      return;
    }
    if (!at.isWorking()) {
      if (at.backSection() >= 0) {
        change.at = new Position(at.backSection(), at.backStep(), change.now, 0, -1, -1);
        boolean first = at.backStep() <= flash;
        change.put(
            at.backSection(), first ? Status.WAITING : Status.FLASHED, first ? 0 : flash + 1);
        restoreWet(change, at.backStep());
      }
      return;
    }
    change.spend();
    int begin = change.sections.get(at.section()).status() == Status.WAITING ? 0 : flash + 1;
    if (at.step() > begin) {
      change.at = new Position(at.section(), at.step() - 1, change.now, 0, -1, -1);
      restoreWet(change, at.step() - 1);
    } else {
      change.at = ready(at.section(), change.now, -1, -1);
      change.wet = Wet.NONE;
    }
  }

  /** The earlier time counts: a step that was not done has wetted nothing for certain. */
  private static void restoreWet(Change change, int step) {
    List<Long> atBegin = change.wet.atBegin();
    long since = step < atBegin.size() ? atBegin.get(step) : -1;
    change.wet = new Wet(since, atBegin.subList(0, Math.min(step + 1, atBegin.size())), false);
  }

  private void driedOut(Change change, int section) {
    boolean possible =
        change.at.isWorking()
            && change.at.section() == section - 1
            && change.sections.get(section - 1).status() == Status.WAITING;
    if (possible) {
      change.spend();
      change.mishaps.add(new Mishap(section, change.at.step(), change.now));
      begin(change, 0, Wet.NONE);
    }
  }

  private static void stillWet(Change change, int section) {
    if (change.wet.sinceMs() >= 0 && change.at.section() == section - 1) {
      change.wet = new Wet(change.now, change.wet.atBegin(), false);
    }
  }

  private void choose(Change change, int section) {
    if (change.at.section() < 0 || section < 0 || section >= change.sections.size()) {
      return;
    }
    Position at = change.at;
    if (at.isWorking()) {
      change.spend();
      SectionState left = change.sections.get(at.section());
      // What may dry is gone on with; a wet chain that was left begins again.
      boolean mayDry = plan.steps().get(at.step()).kind() == Step.Kind.DRY_PREPARATION;
      boolean covered = left.status() != Status.WAITING;
      change.put(at.section(), left.status(), covered || mayDry ? at.step() : 0);
    }
    change.at = ready(section, change.now, -1, -1);
    change.wet = Wet.NONE;
  }

  private void enter(Change change, BenchEvent event) {
    boolean known = event.section() >= 0 && event.section() <= plan.sections().size();
    if (change.at.section() >= 0 && known && Double.isFinite(event.value())) {
      change.entries.add(
          new Entry(
              event.section(), event.step(), event.what(), event.value(), event.resolution()));
    }
  }

  private void reopen(Change change) {
    if (change.startedMs == 0) {
      return;
    }
    change.away.add(new Away(change.lastMs, change.now));
    if (!change.at.isWorking()) {
      return;
    }
    Position at = change.at;
    change.at =
        new Position(
            at.section(),
            at.step(),
            at.sinceMs(),
            at.awayMs() + change.now - change.lastMs,
            at.backSection(),
            at.backStep());
    Step.Kind kind = plan.steps().get(at.step()).kind();
    if (kind == Step.Kind.FLASH || kind == Step.Kind.BUILD) {
      SectionState of = change.sections.get(at.section());
      change.sections.set(
          at.section(), new SectionState(of.status(), of.resume(), of.spentMs(), true));
    }
    // What was wet then has been drying all the while, program or no program.
    if (change.wet.sinceMs() >= 0) {
      change.wet = new Wet(change.wet.sinceMs(), change.wet.atBegin(), true);
    }
  }

  private static void end(Change change) {
    if (change.at.section() >= 0) {
      if (change.at.isWorking()) {
        change.spend();
      }
      change.at = ready(change.at.section(), change.now, -1, -1);
      change.wet = Wet.NONE;
      change.ended = true;
    }
  }

  /** A state while it changes. */
  private static final class Change {
    private final List<Boolean> cautions;
    private final List<Boolean> masks;
    private final List<SectionState> sections;
    private final List<Entry> entries;
    private final List<Mishap> mishaps;
    private final List<Away> away;
    private final List<Integer> booked;
    private final long startedMs;
    private final long lastMs;
    private final long now;
    private Position at;
    private Wet wet;
    private boolean ended;

    Change(BenchState from, long now) {
      cautions = new ArrayList<>(from.cautions());
      masks = new ArrayList<>(from.masks());
      sections = new ArrayList<>(from.sections());
      entries = new ArrayList<>(from.entries());
      mishaps = new ArrayList<>(from.mishaps());
      away = new ArrayList<>(from.away());
      booked = new ArrayList<>(from.booked());
      startedMs = from.startedMs();
      lastMs = from.lastMs();
      at = from.at();
      wet = from.wet();
      ended = from.ended();
      this.now = now;
    }

    /** Adds the time in the step to what was spent on it. */
    void spend() {
      SectionState of = sections.get(at.section());
      List<Long> spent = new ArrayList<>(of.spentMs());
      spent.set(at.step(), spent.get(at.step()) + now - at.sinceMs() - at.awayMs());
      sections.set(at.section(), new SectionState(of.status(), of.resume(), spent, of.gaps()));
    }

    void put(int section, Status status, int resume) {
      SectionState of = sections.get(section);
      sections.set(section, new SectionState(status, resume, of.spentMs(), of.gaps()));
    }

    BenchState made() {
      return new BenchState(
          cautions,
          masks,
          sections,
          at,
          wet,
          entries,
          mishaps,
          away,
          ended,
          booked,
          startedMs == 0 ? now : startedMs,
          now);
    }
  }
}
