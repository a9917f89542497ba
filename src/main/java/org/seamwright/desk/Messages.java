package org.seamwright.desk;

import java.text.MessageFormat;
import java.util.ResourceBundle;

/**
 * The window's texts, from {@code messages.properties}. Figures are put in as text that the units
 * package made, so that a text never rounds a figure.
 */
public final class Messages {
  private static final ResourceBundle BUNDLE =
      ResourceBundle.getBundle("org.seamwright.desk.messages");

  private Messages() {}

  /**
   * A text.
   *
   * @param key its name in the bundle
   * @param parts what stands at {0}, {1} …
   * @throws java.util.MissingResourceException if the bundle has no such text
   */
  public static String text(String key, String... parts) {
    return new MessageFormat(BUNDLE.getString(key), BUNDLE.getLocale()).format((Object) parts);
  }
}
