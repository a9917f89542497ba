package org.seamwright.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.job.Job;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;
import org.seamwright.section.SectionEdit;
import org.seamwright.section.SectionPlan;
import org.seamwright.section.SectionPoints;

/**
 * A short tour on an invented piece, from a model to papers: each step is a real operation on a job
 * in a temporary folder, done by the user or by a button. It can be left at any time; the job then
 * stays open as it is.
 */
public final class Tour {
  private static final String SAMPLE = "plaque.obj";

  /** Underside of the plaque's upper half, mm: it is 7.5 mm high. */
  private static final Vector3D WAIST = Vector3D.of(0, 0, 3);

  private final Desk desk;
  private final PapersDesk papers;
  private final Consumer<Place> goTo;
  private final Watched<Optional<Step>> step = new Watched<>(Optional.empty());
  private final Watched<Boolean> done = new Watched<>(false);
  private Optional<Path> folder = Optional.empty();
  private double thicknessUm;

  /** The steps. */
  public enum Step {
    /** The model is opened and its unit told. */
    OPEN(Place.PIECE),
    /** The back stays bare. */
    MARK(Place.MARKS),
    /** A section is split by hand. */
    SECTION(Place.SECTIONS),
    /** More gold is laid. */
    PLAN(Place.PLATING),
    /** The papers are made. */
    PAPERS(Place.PAPERS),
    /** It is over. */
    END(Place.PAPERS);

    private final Place place;

    Step(Place place) {
      this.place = place;
    }

    /** Its number, from 1. */
    public int number() {
      return List.of(values()).indexOf(this) + 1;
    }

    /** What there is to do, one sentence or two. */
    public String text() {
      return Messages.text("tour." + name().toLowerCase(Locale.ROOT));
    }
  }

  /**
   * Makes a tour.
   *
   * @param goTo shows a place of the window
   */
  public Tour(Desk desk, PapersDesk papers, Consumer<Place> goTo) {
    this.desk = desk;
    this.papers = papers;
    this.goTo = goTo;
    desk.state().watch(state -> check());
    papers.status().watch(status -> check());
  }

  /** The step that is shown; empty without a tour. */
  public Watched<Optional<Step>> step() {
    return step;
  }

  /** Whether the step has been done, by whomever. */
  public Watched<Boolean> done() {
    return done;
  }

  /** Where the samples' models are; empty if they can't be found, and there is no tour. */
  public static Optional<Path> samples() {
    return SampleModels.find().stream()
        .map(job -> job.resolveSibling(SAMPLE))
        .filter(Files::exists)
        .findFirst();
  }

  /**
   * Begins, with a copy of a sample in a folder of its own.
   *
   * @param sample the sample's model
   */
  public void start(Path sample) {
    try {
      Path own = Files.createTempDirectory("seamwright-tour");
      Path mesh = own.resolve(SAMPLE);
      Files.copy(sample, mesh);
      folder = Optional.of(own);
      step.set(Optional.of(Step.OPEN));
      goTo.accept(Place.PIECE);
      desk.open(mesh);
    } catch (IOException e) {
      // Without room for a temporary copy there is no tour; everything else works.
      leave();
    }
  }

  /** Does what the step asks for. */
  public void act() {
    if (step.get().isEmpty() || done.get()) {
      return;
    }
    DeskState state = desk.state().get();
    goTo.accept(step.get().get().place);
    switch (step.get().get()) {
      case OPEN -> desk.chooseScale(new Job.Scale.Unit("mm"));
      case MARK ->
          desk.change(
              job ->
                  job.withMarks(
                      MarkEdits.added(
                          job.marks(),
                          new Mark.HalfSpace(
                              Messages.text("tour.mark.name"),
                              Treatment.BARE,
                              WAIST,
                              Vector3D.Unit.MINUS_Z))));
      case SECTION ->
          state.plan().filter(p -> state.isPlanned()).ifPresent(p -> split(p.sections()));
      case PLAN ->
          desk.change(
              job -> {
                Job.PlatingRules p = job.plating();
                return job.withPlating(PlatingForm.withThickness(p, 2 * p.thicknessUm()));
              });
      case PAPERS -> papers.make(folder.orElseThrow().resolve("papers"));
      case END -> leave();
    }
  }

  private void split(SectionPlan plan) {
    Vector3D at = Tidy.point(SectionPoints.inside(plan, 1), plan.mesh().bounds().diagonal());
    desk.change(
        job -> {
          List<SectionEdit> edits = new ArrayList<>(job.sections().choices().edits());
          edits.add(new SectionEdit.SplitEvenly(at, 2));
          return job.withSections(
              job.sections().withChoices(job.sections().choices().withEdits(edits)));
        });
  }

  /** Goes on to the next step. */
  public void next() {
    if (step.get().isEmpty() || step.get().get() == Step.END) {
      leave();
      return;
    }
    Step to = List.of(Step.values()).get(step.get().get().number());
    desk.state().get().job().ifPresent(job -> thicknessUm = job.plating().thicknessUm());
    step.set(Optional.of(to));
    goTo.accept(to.place);
    check();
  }

  /** Ends it; the job stays open as it is. */
  public void leave() {
    step.set(Optional.empty());
    done.set(false);
  }

  private void check() {
    if (step.get().isEmpty()) {
      return;
    }
    DeskState state = desk.state().get();
    if (step.get().get() == Step.OPEN
        && state.job().isPresent()
        && state.jobFile().isEmpty()
        && folder.isPresent()) {
      desk.saveAs(folder.get().resolve("plaque.json"));
      return;
    }
    done.set(isDone(state));
  }

  private boolean isDone(DeskState state) {
    return switch (step.get().orElseThrow()) {
      case OPEN -> state.isPlanned();
      case MARK -> state.isPlanned() && !state.job().orElseThrow().marks().isEmpty();
      case SECTION ->
          state.isPlanned() && !state.job().orElseThrow().sections().choices().edits().isEmpty();
      case PLAN ->
          state.isPlanned() && state.job().orElseThrow().plating().thicknessUm() != thicknessUm;
      case PAPERS -> papers.areMade();
      case END -> true;
    };
  }
}
