package org.seamwright.window;

import java.nio.file.Path;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.VBox;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Identity;
import org.seamwright.desk.Messages;
import org.seamwright.desk.PapersDesk;
import org.seamwright.job.PlannedJob;

/** Papers: made into a folder, all or none; and what there is to say of the plan. */
final class PapersPlaceView extends VBox {
  private final Session session;
  private final Button make;
  private final Button cancel;
  private final Button show;
  private final Button here;
  private final ProgressBar bar = new ProgressBar(0);
  private final Label status = PartsView.text("");
  private final VBox notices = new VBox();
  private Optional<PlannedJob> noticed = Optional.empty();

  PapersPlaceView(Session session) {
    this.session = session;
    setId("place-papers");
    getStyleClass().add("place");
    here =
        PartsView.button(
            "make-papers",
            Messages.text("papers.make"),
            () -> session.papers().offered().ifPresent(session.papers()::make));
    here.setDefaultButton(false);
    here.getStyleClass().add("accent");
    make =
        PartsView.button(
            "make-papers-in",
            Messages.text("papers.make-in"),
            () ->
                session
                    .papers()
                    .offered()
                    .flatMap(session.choices()::folder)
                    .ifPresent(session.papers()::make));
    cancel =
        PartsView.button("cancel-papers", Messages.text("button.cancel"), session.papers()::cancel);
    show = PartsView.button("show-papers", Messages.text("papers.show"), this::showFolder);
    for (Button button : new Button[] {cancel, show}) {
      button.managedProperty().bind(button.visibleProperty());
    }
    bar.setId("papers-progress");
    bar.setMaxWidth(Double.MAX_VALUE);
    bar.setAccessibleText(Messages.text("papers.making"));
    bar.managedProperty().bind(bar.visibleProperty());
    status.setId("papers-status");
    getChildren()
        .addAll(
            PartsView.heading("papers.heading"),
            PartsView.muted(Messages.text("papers.help")),
            here,
            make,
            bar,
            cancel,
            status,
            show,
            notices);
    session.papers().status().watch(now -> show(now));
    session
        .desk()
        .state()
        .watch(
            state -> {
              show(session.papers().status().get());
              showNotices(state);
            });
  }

  private void showFolder() {
    if (session.papers().status().get() instanceof PapersDesk.Status.Made made) {
      session.choices().show(made.folder());
    }
  }

  private void show(PapersDesk.Status now) {
    boolean making = now instanceof PapersDesk.Status.Making;
    here.setDisable(!session.papers().canMake());
    make.setDisable(!session.papers().canMake());
    bar.setVisible(making);
    cancel.setVisible(making);
    show.setVisible(now instanceof PapersDesk.Status.Made);
    if (now instanceof PapersDesk.Status.Making progress) {
      bar.setProgress(progress.fraction());
      status.setText(Messages.text("papers.making"));
    } else if (now instanceof PapersDesk.Status.Made made) {
      status.setText(
          Messages.text(
                  session.papers().areMade() ? "papers.made" : "papers.stale",
                  made.folder().toString())
              + "\n"
              + String.join("\n", made.files()));
    } else if (now instanceof PapersDesk.Status.Failed failed) {
      status.setText(failed.why());
    } else {
      status.setText(
          session
              .papers()
              .offered()
              .map(Path::toString)
              .map(folder -> Messages.text("papers.offered", folder))
              .orElse(""));
    }
  }

  private void showNotices(DeskState state) {
    Optional<PlannedJob> plan = state.plan().filter(p -> state.isPlanned());
    if (!Identity.same(noticed, plan)) {
      noticed = plan;
      notices.getChildren().clear();
      plan.ifPresent(p -> notices.getChildren().add(new NoticesView(p.notices())));
    }
  }
}
