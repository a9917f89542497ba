package org.seamwright.paper;

import java.io.IOException;
import org.seamwright.picture.Image;
import org.seamwright.picture.Letterhead;

/** The shop's name, address and logo at the top of a paper. */
final class ShopHead {
  private static final double LOGO_WIDTH = 170;
  private static final Style NAME = Style.SUBHEADING;

  private ShopHead() {}

  /**
   * Sets it, if there is any.
   *
   * @param height largest height of the logo, points
   */
  static void set(Sheet sheet, Letterhead head, double height) throws IOException {
    if (head.isEmpty()) {
      return;
    }
    double top = sheet.y;
    double logoHeight = 0;
    if (head.logo().isPresent()) {
      Image logo = head.logo().get();
      double scale = Math.min(LOGO_WIDTH / logo.width(), height / logo.height());
      double width = logo.width() * scale;
      logoHeight = logo.height() * scale;
      String shows = head.name().isEmpty() ? "Logo of the shop" : "Logo of " + head.name();
      sheet.picture(logo, shows, sheet.right() - width, top, width, logoHeight);
    }
    double room = sheet.width() - LOGO_WIDTH - 20;
    double y = top;
    y += sheet.block(head.name(), NAME, sheet.left(), y, room, 2);
    for (String line : head.address()) {
      y += sheet.block(line, Style.LABEL, sheet.left(), y, room, 2);
    }
    sheet.y = Math.max(y, top + logoHeight) + 8;
    sheet.rule(sheet.left(), sheet.y, sheet.width(), 0.6, Style.HAIRLINE);
    sheet.gap(12);
  }
}
