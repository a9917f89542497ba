package org.seamwright.window;

import java.nio.file.Path;
import java.util.Optional;

/** What the window asks of the desktop: files to choose, a folder to show. */
interface Choices {
  /** A job or a model to open. */
  Optional<Path> open();

  /** Where to save a job. */
  Optional<Path> save(Path offered);

  /** A folder for papers. */
  Optional<Path> folder(Path offered);

  /** Shows a folder in the desktop's own way. */
  void show(Path folder);
}
