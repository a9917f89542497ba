package org.seamwright.basis;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** Says in plain words why a file could not be read or written. */
public final class IoReason {
  private IoReason() {}

  /** A few words, such as "access denied", without the names of Java's classes. */
  public static String of(IOException e) {
    if (e instanceof AccessDeniedException) {
      return "access denied";
    }
    if (e instanceof NoSuchFileException) {
      return "no file can be there";
    }
    if (e instanceof FileSystemException f && f.getReason() != null) {
      return f.getReason();
    }
    String message = e.getMessage();
    return message == null || message.isBlank() ? "the system gives no reason" : message;
  }
}
