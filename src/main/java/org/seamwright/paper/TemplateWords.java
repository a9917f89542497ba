package org.seamwright.paper;

import java.util.Locale;
import org.seamwright.flatten.Template;

/**
 * What stands on every template.
 *
 * @param piece name of the piece
 * @param what what the film covers, such as "bare"
 */
public record TemplateWords(String piece, String what) {
  /** Said wherever a template is drawn: a printer that scales spoils the fit. */
  static final String CHECK = "50 mm: measure this bar before cutting";

  /** "Regatta cup, bare 1.3". */
  String title(Template t) {
    return piece + ", " + what + " " + t.id();
  }

  /** Area under the film and how far lengths are off. */
  String figures(Template t) {
    return String.format(
        Locale.ROOT,
        "%.2f cm2, lengths within %s",
        t.areaMm2() / 100,
        percent(t.layout().stretch().nearlyAll()));
  }

  /** A share as it is shown; small ones as "0.1%" at least. */
  static String percent(double share) {
    return share < 0.0005
        ? "0.1%"
        : String.format(Locale.ROOT, "%.1f%%", Math.ceil(share * 1000) / 10);
  }
}
