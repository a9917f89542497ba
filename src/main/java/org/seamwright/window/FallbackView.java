package org.seamwright.window;

import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Messages;
import org.seamwright.job.PlannedJob;
import org.seamwright.picture.Background;
import org.seamwright.picture.Finish;
import org.seamwright.picture.Image;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Scene;
import org.seamwright.picture.View;

/**
 * The piece where the graphics system offers no 3D: still pictures by the program's own renderer,
 * from the standard sides. All that needs no pointer on the piece works as ever.
 */
final class FallbackView extends BorderPane {
  private static final int WIDTH = 1000;
  private static final int HEIGHT = 800;

  private final ImageView picture = new ImageView();
  private final Executor background;
  private final Executor userInterface;
  private View view = View.THREE_QUARTER;
  private DeskState state;
  private Optional<Object> shown = Optional.empty();

  FallbackView(Session session, Executor background, Executor userInterface) {
    this.background = background;
    this.userInterface = userInterface;
    state = session.desk().state().get();
    setId("fallback");
    getStyleClass().add("piece");
    picture.setPreserveRatio(true);
    picture.setAccessibleText(Messages.text("piece.accessible"));
    StackPane middle = new StackPane(picture);
    middle.setMinSize(0, 0);
    picture.fitWidthProperty().bind(middle.widthProperty());
    picture.fitHeightProperty().bind(middle.heightProperty());
    FlowPane sides = new FlowPane();
    sides.setAlignment(Pos.CENTER);
    sides.getStyleClass().add("views");
    for (View side : View.sides()) {
      Button button = PartsView.button("side-" + side.name(), side.name(), () -> look(side));
      button.getStyleClass().addAll("flat", "small");
      sides.getChildren().add(button);
    }
    VBox words =
        new VBox(PartsView.heading("depth.title"), PartsView.muted(Messages.text("depth.text")));
    words.getStyleClass().add("state");
    setTop(words);
    setCenter(middle);
    setBottom(sides);
    session
        .desk()
        .state()
        .watch(
            now -> {
              state = now;
              draw();
            });
  }

  private void look(View side) {
    view = side;
    draw();
  }

  private void draw() {
    DeskState of = state;
    View from = view;
    if (of.piece().isEmpty()) {
      return;
    }
    Object key = of.plan().filter(p -> of.isPlanned()).<Object>map(p -> p).orElse(of.piece().get());
    Object both = System.identityHashCode(key) + from.name();
    if (shown.equals(Optional.of(both))) {
      return;
    }
    shown = Optional.of(both);
    background.execute(
        () -> {
          Image image = render(of, from);
          userInterface.execute(() -> picture.setImage(image(image)));
        });
  }

  private static Image render(DeskState state, View from) {
    Optional<PlannedJob> plan = state.plan().filter(p -> state.isPlanned());
    if (plan.isPresent()) {
      return Pictures.sections(plan.get().sections(), plan.get().map(), from, WIDTH, HEIGHT)
          .image();
    }
    Scene scene = Scene.plain(state.piece().orElseThrow().mesh(), Finish.BARE);
    return Pictures.plain(scene, from, WIDTH, HEIGHT, Background.WHITE);
  }

  private static WritableImage image(Image from) {
    WritableImage image = new WritableImage(from.width(), from.height());
    image
        .getPixelWriter()
        .setPixels(
            0,
            0,
            from.width(),
            from.height(),
            PixelFormat.getIntArgbInstance(),
            from.argb(),
            0,
            from.width());
    return image;
  }
}
