package org.seamwright.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import org.junit.jupiter.api.Test;

/** The tour on the sample plaque, every step by its button. */
class TourTest {
  private final Deque<Runnable> todo = new ArrayDeque<>();
  private final Desk desk = new Desk(todo::add, todo::add, todo::add, todo::add);
  private final PapersDesk papers = new PapersDesk(desk, todo::add, todo::add);
  private final Watched<Place> place = new Watched<>(Place.PIECE);
  private final Tour tour = new Tour(desk, papers, place::set);

  private void work() {
    while (!todo.isEmpty()) {
      todo.poll().run();
    }
  }

  @Test
  void goesFromTheModelToPapersInACopy() throws Exception {
    byte[] sample = Files.readAllBytes(Path.of("models/plaque.json"));
    tour.start(Tour.samples().orElseThrow());
    work();
    double goldG = 0;
    for (Tour.Step step : Tour.Step.values()) {
      assertThat(tour.step().get()).contains(step);
      if (step == Tour.Step.PAPERS) {
        // Making them is what the test of the papers' presenter is about.
        assertThat(tour.done().get()).isFalse();
        break;
      }
      assertThat(tour.done().get()).as("%s before", step).isFalse();
      tour.act();
      work();
      assertThat(desk.state().get().trouble()).isEmpty();
      assertThat(tour.done().get()).as("%s", step).isTrue();
      double now = desk.state().get().plan().orElseThrow().plating().totals().goldG();
      if (step == Tour.Step.PLAN) {
        // Mass is area times thickness times density; laps, as thick as the flash, stay as they
        // are.
        assertThat(now / goldG).isBetween(1.9, 2.0);
      }
      goldG = now;
      tour.next();
      work();
    }
    assertThat(place.get()).isEqualTo(Place.PAPERS);
    Path folder = desk.state().get().jobFile().orElseThrow().getParent();
    assertThat(folder.getFileName().toString()).startsWith("seamwright-tour");
    assertThat(Files.readAllBytes(Path.of("models/plaque.json"))).isEqualTo(sample);
    tour.leave();
    assertThat(tour.step().get()).isEmpty();
    assertThat(desk.state().get().job()).isPresent();
  }

  @Test
  void canBeLeftAtOnce() {
    tour.start(Tour.samples().orElseThrow());
    work();
    tour.leave();
    tour.next();
    tour.act();
    work();
    assertThat(tour.step().get()).isEmpty();
    assertThat(desk.state().get().job()).isEmpty();
  }
}
