package org.seamwright.paper;

import java.io.IOException;
import org.seamwright.plating.Cautions;

/** What must be read before anything is done. */
final class CautionPages {
  private static final Style TEXT = Style.BODY.sized(11);

  private CautionPages() {}

  static void write(Sheet sheet) throws IOException {
    sheet.heading("Read first", 60);
    sheet.paragraph(Cautions.rule(), Style.STRONG);
    sheet.gap(8);
    for (Cautions.Caution caution : Cautions.all()) {
      double x = sheet.left() + 14;
      double width = sheet.width() - 14;
      String source =
          (caution.limits().isEmpty() ? "" : caution.limits() + ". ")
              + "Source: "
              + caution.source()
              + ".";
      double height =
          Style.SUBHEADING.leading()
              + sheet.height(caution.text(), TEXT, width)
              + sheet.height(source, Style.SMALL, width)
              + 8;
      sheet.need(height);
      sheet.fill(sheet.left(), sheet.y + 2, 3.5, height - 10, Style.ALARM);
      double y = sheet.y;
      y += sheet.block(caution.title(), Style.SUBHEADING.sized(12.5), x, y, width, 1);
      y += sheet.block(caution.text(), TEXT, x, y, width);
      y += 1;
      sheet.block(source, Style.SMALL, x, y, width);
      sheet.y += height;
    }
  }
}
