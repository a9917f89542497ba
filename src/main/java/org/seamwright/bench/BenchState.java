package org.seamwright.bench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import org.seamwright.plating.Cautions;

/**
 * How a run stands: what its events add up to. Immutable; two runs of the same events are equal.
 *
 * @param cautions which general cautions were ticked; the last is the rule that goes before all
 * @param masks which masks are on
 * @param sections how each section stands, in working order
 * @param at what is being worked on
 * @param wet the wet window
 * @param entries dips and figures, in order
 * @param mishaps sections that dried out, in order
 * @param away times at which the program was not running
 * @param ended whether the run is over
 * @param booked sections that are in the shop book, 0 for the whole piece
 * @param startedMs time of the first event, ms since 1970; 0 before it
 * @param lastMs time of the last event
 */
public record BenchState(
    List<Boolean> cautions,
    List<Boolean> masks,
    List<SectionState> sections,
    Position at,
    Wet wet,
    List<Entry> entries,
    List<Mishap> mishaps,
    List<Away> away,
    boolean ended,
    List<Integer> booked,
    long startedMs,
    long lastMs) {
  /** How far a section is. */
  public enum Status {
    /** Not covered yet. */
    WAITING,
    /** Covered by its flash; build and finish are left. */
    FLASHED,
    /** Through all steps. */
    DONE
  }

  /** What the run is about at the moment. */
  public enum Phase {
    /** General cautions are read. */
    CAUTIONS,
    /** Masks are put on. */
    MASKS,
    /** Sections are worked. */
    WORK,
    /** All sections are through. */
    THROUGH,
    /** The run is over. */
    ENDED
  }

  /**
   * One section.
   *
   * @param status how far it is
   * @param resume step that it goes on with
   * @param spentMs time in each step, ms
   * @param gaps whether time at which the program was not running fell into flash or build
   */
  public record SectionState(Status status, int resume, List<Long> spentMs, boolean gaps) {
    /** Copies the list. */
    public SectionState {
      spentMs = List.copyOf(spentMs);
    }
  }

  /**
   * Where the work is.
   *
   * @param section number in the list of sections, from 0; -1 before the first
   * @param step number of the step; {@link BenchEvent#READY} before it begins
   * @param sinceMs since when
   * @param awayMs how long the program was not running within it
   * @param backSection section that the last key finished, -1 if none
   * @param backStep step that the last key finished
   */
  public record Position(
      int section, int step, long sinceMs, long awayMs, int backSection, int backStep) {
    /** Whether a step is being done. */
    public boolean isWorking() {
      return section >= 0 && step >= 0;
    }
  }

  /**
   * The wet window.
   *
   * @param sinceMs when every place was last known to be wet; -1 where nothing must stay wet
   * @param atBegin the same at the begin of each step done so far
   * @param asked whether it must be said first whether the section has dried
   */
  public record Wet(long sinceMs, List<Long> atBegin, boolean asked) {
    static final Wet NONE = new Wet(-1, List.of(), false);

    /** Copies the list. */
    public Wet {
      atBegin = List.copyOf(atBegin);
    }
  }

  /**
   * A dip or a figure.
   *
   * @param section number of the section; 0 for the whole piece
   * @param step step at which it was told
   * @param what which
   * @param value the figure
   * @param resolution step in which it was told
   */
  public record Entry(
      int section, int step, BenchEvent.What what, double value, double resolution) {}

  /**
   * A section that dried out.
   *
   * @param section its number
   * @param step step at which it did
   * @param atMs when
   */
  public record Mishap(int section, int step, long atMs) {}

  /**
   * A time at which the program was not running.
   *
   * @param fromMs time of the last event before
   * @param toMs time at which it ran again
   */
  public record Away(long fromMs, long toMs) {}

  /** Copies the lists. */
  public BenchState {
    cautions = List.copyOf(cautions);
    masks = List.copyOf(masks);
    sections = List.copyOf(sections);
    entries = List.copyOf(entries);
    mishaps = List.copyOf(mishaps);
    away = List.copyOf(away);
    booked = List.copyOf(booked);
  }

  /** Before the first event. */
  public static BenchState start(BenchPlan plan) {
    List<SectionState> sections = new ArrayList<>();
    List<Long> none = Collections.nCopies(plan.steps().size(), 0L);
    plan.sections().forEach(t -> sections.add(new SectionState(Status.WAITING, 0, none, false)));
    return new BenchState(
        Collections.nCopies(Cautions.all().size() + 1, false),
        Collections.nCopies(plan.masks().size(), false),
        sections,
        new Position(-1, BenchEvent.READY, 0, 0, -1, -1),
        Wet.NONE,
        List.of(),
        List.of(),
        List.of(),
        false,
        List.of(),
        0,
        0);
  }

  /** What the run is about. */
  public Phase phase() {
    if (ended) {
      return Phase.ENDED;
    }
    if (cautions.contains(false)) {
      return Phase.CAUTIONS;
    }
    if (at.section() < 0) {
      return Phase.MASKS;
    }
    boolean through = sections.stream().allMatch(s -> s.status() == Status.DONE);
    return through ? Phase.THROUGH : Phase.WORK;
  }

  /** Number of the section that is worked on, as the plan has it; 0 before the first. */
  public int sectionId() {
    return at.section() + 1;
  }

  /** The first of a list that is not ticked. */
  static OptionalInt unticked(List<Boolean> list) {
    int i = list.indexOf(false);
    return i < 0 ? OptionalInt.empty() : OptionalInt.of(i);
  }

  /** Dips of a section; 0 for all. */
  public long dips(int section) {
    return entries.stream()
        .filter(e -> e.what() == BenchEvent.What.DIP && (section == 0 || e.section() == section))
        .count();
  }

  /** Figures of one kind that were told of a section, in order. */
  public List<Entry> told(int section, BenchEvent.What what) {
    return entries.stream().filter(e -> e.what() == what && e.section() == section).toList();
  }
}
