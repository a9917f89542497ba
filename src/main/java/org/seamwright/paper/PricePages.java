package org.seamwright.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seamwright.plating.Quote;

/**
 * The price line by line, and what other thicknesses would cost; for the shop, not the customer.
 */
final class PricePages {
  private PricePages() {}

  static void write(Sheet sheet, Brief brief) throws IOException {
    if (brief.planned.quote().isEmpty()) {
      return;
    }
    Quote quote = brief.planned.quote().get();
    sheet.part("Price, in " + quote.currency(), 160);
    Table lines =
        new Table(
            sheet,
            Style.BODY,
            new Table.Column("For", 1.4, false),
            new Table.Column("How", 2.6, false),
            new Table.Column("Amount", 1, true));
    List<List<String>> rows = new ArrayList<>();
    for (Quote.Line line : quote.lines()) {
      rows.add(List.of(line.what(), line.how(), line.amount().toPlainString()));
    }
    rows.add(List.of("Tax", "", quote.tax().toPlainString()));
    rows.add(
        List.of(
            "Total",
            brief.range(quote.range(), m -> String.format(Locale.ROOT, "%.2f", m)),
            quote.total().toPlainString()));
    lines.rows(rows);
    sheet.gap(10);
    sheet.subheading("At other thicknesses", 120);
    Table others =
        new Table(
            sheet,
            Style.BODY,
            new Table.Column("Thickness", 1.2, false),
            new Table.Column("Metal", 1, true),
            new Table.Column("Work", 1.4, true),
            new Table.Column("Total", 1, true));
    List<List<String>> other = new ArrayList<>();
    double own = brief.thicknessUm();
    for (Quote.AtThickness at : quote.byThickness()) {
      other.add(
          List.of(
              brief.format.thickness(at.thicknessUm())
                  + (at.thicknessUm() == own ? " (this job)" : ""),
              brief.format.mass(at.metalG()),
              brief.format.time(at.seconds()),
              at.total().toPlainString()));
    }
    others.rows(other);
    sheet.gap(4);
    sheet.paragraph(
        "Thicknesses of the classes of published standards, as information; prices from the rates in"
            + " the job file.",
        Style.SMALL);
  }
}
