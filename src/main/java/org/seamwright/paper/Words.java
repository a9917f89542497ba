package org.seamwright.paper;

import java.util.List;
import java.util.stream.Collectors;
import org.seamwright.plating.ThicknessClasses;

/** Sentences that more than one paper needs. */
final class Words {
  private Words() {}

  /** "1", "1 and 2", "1, 2 and 3". */
  static String list(List<String> items) {
    int n = items.size();
    if (n <= 1) {
      return String.join("", items);
    }
    return String.join(", ", items.subList(0, n - 1)) + " and " + items.get(n - 1);
  }

  /** What a thickness of gold means for wear: common practice, no source. */
  static String wear(double thicknessUm) {
    String use;
    if (thicknessUm < 0.175) {
      use = "A flash: colour, with little to wear. For pieces that are looked at, not handled.";
    } else if (thicknessUm < 0.5) {
      use = "Thin plate: for display and rare handling.";
    } else if (thicknessUm < 2.5) {
      use = "Plate of medium thickness: for display and handling now and then.";
    } else {
      use = "Thick plate: for pieces that are handled often.";
    }
    return use + " " + wears("gold");
  }

  /** What wears a metal: common practice, no source. */
  static String wears(String metal) {
    return capital(metal)
        + " wears first where hands and cloths rub: rims, edges, raised letters. How long it"
        + " lasts depends on use and cannot be promised from the thickness alone.";
  }

  /** A text with a capital first letter. */
  static String capital(String text) {
    return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }

  /** Names of standards that a thickness reaches, or an empty text. */
  static String classes(double thicknessUm) {
    List<ThicknessClasses.ThicknessClass> reached = ThicknessClasses.reachedBy(thicknessUm);
    if (reached.isEmpty()) {
      return "";
    }
    return "Reaches, where it is even: "
        + reached.stream()
            .map(ThicknessClasses.ThicknessClass::name)
            .collect(Collectors.joining("; "))
        + ". Sources: "
        + reached.stream()
            .map(ThicknessClasses.ThicknessClass::source)
            .distinct()
            .collect(Collectors.joining("; "))
        + ".";
  }

  static String count(long n, String one, String many) {
    return n + " " + (n == 1 ? one : many);
  }
}
