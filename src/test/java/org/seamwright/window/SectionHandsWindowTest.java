package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Point2D;
import javafx.scene.control.TableView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import org.junit.jupiter.api.Test;
import org.seamwright.desk.Place;
import org.seamwright.desk.SeamCourse;
import org.seamwright.job.JobFile;
import org.seamwright.section.SectionEdit;

/** Sections changed by hand with mouse and keyboard, on a display. */
class SectionHandsWindowTest extends WindowDriver {
  private List<SectionEdit> edits() throws Exception {
    return state().job().orElseThrow().sections().choices().edits();
  }

  private void planned(int edits) throws Exception {
    waitFor(() -> edits().size() == edits);
    waitFor(() -> state().isPlanned() || state().trouble().isPresent());
    assertThat(state().trouble()).isEmpty();
    settle();
  }

  /** A seam in sight, longest first, with the place of it that is seen. */
  private Point2D seamInSight() throws Exception {
    List<SeamCourse> courses = call(() -> session.hands().courses());
    Optional<Point2D> best = Optional.empty();
    double longest = 0;
    for (SeamCourse course : courses) {
      Optional<Point2D> at = onScreen(course.middle());
      if (at.isPresent() && course.lengthMm() > longest) {
        longest = course.lengthMm();
        best = at;
      }
    }
    return best.orElseThrow();
  }

  @Test
  void dragsSplitsMergesNamesAndReorders() throws Exception {
    Path file = open("cup.json", "cup.stl");
    call(
        () -> {
          session.place().set(Place.SECTIONS);
          return true;
        });
    waitFor(() -> robot.lookup("#section-tool-seam").tryQuery().isPresent());
    settle();
    assertThat(text("#limit-sentence")).contains("cm²").contains("set by");
    robot.clickOn("#section-tool-seam");
    waitFor(() -> call(() -> session.hands().ready().get()));
    Point2D seam = seamInSight();
    robot.moveTo(seam);
    waitFor(() -> call(() -> session.hands().seam().get().isPresent()));
    robot.press(MouseButton.PRIMARY);
    robot.moveTo(seam.add(8, 8));
    robot.moveTo(seam.add(16, 16));
    waitFor(() -> call(() -> session.hands().draft().get().isPresent()));
    settle();
    shoot("seam-drag");
    robot.release(MouseButton.PRIMARY);
    planned(1);
    assertThat(edits().get(0)).isInstanceOf(SectionEdit.MoveSeam.class);
    assertThat(JobFile.read(file).sections().choices().edits()).isEqualTo(edits());

    // The next seam by keys alone.
    waitFor(() -> call(() -> session.hands().ready().get()));
    robot.push(KeyCode.N);
    robot.push(KeyCode.RIGHT);
    robot.push(KeyCode.SHIFT, KeyCode.RIGHT);
    waitFor(() -> call(() -> !session.hands().line().get().isEmpty()));
    robot.push(KeyCode.ESCAPE);
    assertThat(call(() -> session.hands().line().get())).isEmpty();
    assertThat(edits()).hasSize(1);

    int before = state().plan().orElseThrow().sections().sections().size();
    robot.clickOn("#section-tool-split");
    robot.clickOn(at(0.48, 0.35));
    planned(2);
    assertThat(state().plan().orElseThrow().sections().sections()).hasSize(before + 1);
    robot.push(KeyCode.CONTROL, KeyCode.Z);
    planned(1);
    robot.push(KeyCode.CONTROL, KeyCode.Y);
    planned(2);

    robot.clickOn("#section-tool-look");
    TableView<?> table = robot.lookup("#sections").query();
    call(
        () -> {
          table.getSelectionModel().select(1);
          table.requestFocus();
          return true;
        });
    robot.push(KeyCode.ALT, KeyCode.UP);
    planned(3);
    assertThat(edits().get(2)).isInstanceOf(SectionEdit.Renumber.class);
    robot.drag(robot.lookup(".table-row-cell").nth(3).<javafx.scene.Node>query());
    robot.dropTo(robot.lookup(".table-row-cell").nth(1).<javafx.scene.Node>query());
    planned(4);
    assertThat(edits().get(3)).isInstanceOf(SectionEdit.Renumber.class);
    robot.clickOn("#look-again");
    settle();
    shoot("again");
    call(
        () -> {
          session.dark().set(true);
          return true;
        });
    robot.clickOn("#look-sections");
    settle();
    shoot("sections-dark");
    shootTwice("sections-twice");
    call(
        () -> {
          session.dark().set(false);
          return true;
        });
  }
}
