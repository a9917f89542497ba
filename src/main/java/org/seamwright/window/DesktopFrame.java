package org.seamwright.window;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;
import javafx.stage.Stage;
import org.seamwright.desk.Messages;

/** The desktop's own dialogues for files and folders. */
final class DesktopFrame implements Choices {
  private static final String[] MODELS = {
    "*.stl", "*.obj", "*.ply", "*.glb", "*.gltf", "*.3mf", "*.gz", "*.STL", "*.OBJ", "*.PLY",
    "*.GLB", "*.3MF"
  };
  private static final String[] JOBS = {"*.seamwright", "*.json"};

  private final Stage stage;
  private final Consumer<String> showDocument;

  /**
   * Dialogues over a window.
   *
   * @param showDocument shows an address in the desktop's own way
   */
  DesktopFrame(Stage stage, Consumer<String> showDocument) {
    this.stage = stage;
    this.showDocument = showDocument;
  }

  @Override
  public Optional<Path> open() {
    FileChooser chooser = new FileChooser();
    chooser.setTitle(Messages.text("choose.title"));
    String[] all = Stream.of(MODELS, JOBS).flatMap(Stream::of).toArray(String[]::new);
    chooser
        .getExtensionFilters()
        .addAll(
            new FileChooser.ExtensionFilter(Messages.text("choose.all"), all),
            new FileChooser.ExtensionFilter(Messages.text("choose.jobs"), JOBS));
    return path(chooser.showOpenDialog(stage));
  }

  @Override
  public Optional<Path> save(Path offered) {
    FileChooser chooser = new FileChooser();
    chooser.setTitle(Messages.text("choose.save"));
    chooser
        .getExtensionFilters()
        .add(new FileChooser.ExtensionFilter(Messages.text("choose.jobs"), JOBS));
    Path whole = offered.toAbsolutePath();
    if (whole.getParent() != null && Files.isDirectory(whole.getParent())) {
      chooser.setInitialDirectory(whole.getParent().toFile());
    }
    chooser.setInitialFileName(String.valueOf(whole.getFileName()));
    return path(chooser.showSaveDialog(stage))
        .map(p -> p.toString().matches(".*\\.(json|seamwright)") ? p : Path.of(p + ".json"));
  }

  @Override
  public Optional<Path> folder(Path offered) {
    DirectoryChooser chooser = new DirectoryChooser();
    chooser.setTitle(Messages.text("choose.folder"));
    Path home = offered.toAbsolutePath().getParent();
    if (home != null && Files.isDirectory(home)) {
      chooser.setInitialDirectory(home.toFile());
    }
    return path(chooser.showDialog(stage));
  }

  private static Optional<Path> path(File chosen) {
    return Optional.ofNullable(chosen).map(File::toPath);
  }

  @Override
  public void show(Path folder) {
    showDocument.accept(folder.toUri().toString());
  }
}
