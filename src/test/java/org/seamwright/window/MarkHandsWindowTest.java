package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import javafx.geometry.Point2D;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.seamwright.desk.Place;
import org.seamwright.desk.Tour;
import org.seamwright.region.Mark;

/** Marks made in a box and changed after the fact with mouse and keyboard, on a display. */
class MarkHandsWindowTest extends WindowDriver {
  private List<Mark> marks() throws Exception {
    return state().job().orElseThrow().marks();
  }

  @Test
  void marksABoxAndChangesItsCornersAndAStrokesRadius() throws Exception {
    open("plaque.json", "plaque.obj");
    call(
        () -> {
          session.place().set(Place.MARKS);
          return true;
        });
    waitFor(() -> robot.lookup("#tool-box").tryQuery().isPresent());
    waitFor(() -> call(() -> session.marking().axis().isPresent()));
    robot.push(KeyCode.DIGIT5);
    settle();
    settle();
    robot.clickOn("#tool-box");
    Point2D from = at(0.35, 0.42);
    Point2D to = at(0.55, 0.56);
    robot.clickOn(from);
    robot.moveTo(to);
    waitFor(() -> call(() -> session.desk().preview().get().map().isPresent()));
    settle();
    shoot("box");
    robot.clickOn(to);
    waitFor(() -> marks().size() == 2);
    Mark.InBox made = (Mark.InBox) marks().get(1);
    waitFor(() -> state().isMarked());

    robot.clickOn("#mark-edit-2");
    assertThat(call(() -> session.marking().editing().handles()))
        .containsExactly(made.low(), made.high());
    settle();
    robot.push(KeyCode.N);
    robot.push(KeyCode.N);
    robot.push(KeyCode.RIGHT);
    robot.push(KeyCode.RIGHT);
    settle();
    shoot("handles");
    robot.push(KeyCode.ENTER);
    waitFor(() -> !marks().get(1).equals(made));
    assertThat(marks()).hasSize(2);
    assertThat(((Mark.InBox) marks().get(1)).low()).isEqualTo(made.low());

    robot.clickOn("#tool-stroke");
    Point2D spot = at(0.65, 0.45);
    robot.moveTo(spot);
    robot.press(MouseButton.PRIMARY);
    robot.moveTo(spot.add(30, 10));
    robot.release(MouseButton.PRIMARY);
    waitFor(() -> marks().size() == 3);
    waitFor(() -> state().isMarked());
    robot.clickOn("#mark-edit-3");
    waitFor(() -> robot.lookup("#mark-number-radius").tryQuery().isPresent());
    Vector3D end = call(() -> session.marking().editing().handles().get(0));
    Point2D handle = onScreen(end).orElseThrow();
    robot.moveTo(handle);
    waitFor(() -> call(() -> session.marking().editing().grabs()));
    robot.press(MouseButton.PRIMARY);
    robot.moveTo(handle.add(-20, 20));
    robot.moveTo(handle.add(-40, 40));
    robot.release(MouseButton.PRIMARY);
    waitFor(() -> !((Mark.Near) marks().get(2)).path().get(0).equals(end));
    call(
        () -> {
          TextField field = robot.lookup("#mark-number-radius").query();
          field.setText("9 mm");
          field.fireEvent(new javafx.event.ActionEvent());
          return true;
        });
    waitFor(() -> ((Mark.Near) marks().get(2)).radiusMm() == 9);
    waitFor(() -> state().isMarked());
    settle();
    shoot("handles-stroke");
    robot.push(KeyCode.CONTROL, KeyCode.Z);
    waitFor(() -> ((Mark.Near) marks().get(2)).radiusMm() != 9);
  }

  @Test
  void theTourShowsWhatToDoAndDoesIt() throws Exception {
    start();
    settle();
    robot.clickOn("#start-tour");
    waitFor(
        () ->
            call(() -> session.tour().step().get().equals(java.util.Optional.of(Tour.Step.OPEN))));
    waitFor(() -> state().document().isPresent());
    settle();
    robot.clickOn("#tour-act");
    waitFor(() -> call(() -> session.tour().done().get()));
    settle();
    shoot("tour");
    robot.clickOn("#tour-next");
    assertThat(call(() -> session.place().get())).isEqualTo(Place.MARKS);
    robot.clickOn("#tour-act");
    waitFor(() -> call(() -> session.tour().done().get()));
    robot.clickOn("#tour-leave");
    assertThat(call(() -> session.tour().step().get())).isEmpty();
    assertThat(marks()).hasSize(1);
  }
}
