package org.seamwright.window;

import javafx.application.Application;
import org.seamwright.basis.InputException;
import org.seamwright.desk.Messages;

/**
 * Starts the window. Not an {@code Application} itself: the launcher of Java refuses to start one
 * from the class path, where the graphics library lies here.
 */
public final class Launch {
  private Launch() {}

  /**
   * Opens the window and returns when it is closed.
   *
   * @param args the job file; none to choose one in the window
   * @throws InputException if there is no display to open it on
   */
  public static void main(String[] args) throws InputException {
    GraphicsDefaults.set();
    try {
      Application.launch(WindowApp.class, args);
    } catch (UnsupportedOperationException e) {
      // So the library says that it cannot reach a display; a fault within the window would come
      // wrapped in another exception.
      throw new InputException(
          Messages.text("display.source"),
          "",
          Messages.text("display.problem"),
          Messages.text("display.remedy"),
          e);
    }
  }
}
