package org.seamwright.paper;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamwright.job.PlannedJob;
import org.seamwright.picture.Background;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Scene;
import org.seamwright.picture.View;
import org.seamwright.plating.Notes;
import org.seamwright.plating.Quote;
import org.seamwright.plating.QuoteRates;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;

/** The paper for the customer: before and after, where gold goes, how thick, and a line to sign. */
public final class CustomerSheet {
  private static final double CAPTION_HEIGHT = 24;
  private static final int PIXELS_WIDE = 900;

  private CustomerSheet() {}

  /**
   * Writes the sheet as PDF: one or two pages.
   *
   * @param planned the job
   * @param file replaced if it exists
   * @param paper size of the pages
   * @param date shown on each page
   * @throws IOException if the file can't be written
   */
  public static void write(PlannedJob planned, Path file, PaperSize paper, LocalDate date)
      throws IOException {
    write(new Brief(planned, date), file, paper);
  }

  static void write(Brief brief, Path file, PaperSize paper) throws IOException {
    String title = Words.capital(brief.laid()) + " plating, for your approval";
    try (Sheet sheet = new Sheet(paper, title, brief.piece(), brief.dateText())) {
      ShopHead.set(sheet, brief.shop, 52);
      sheet.y += sheet.block(title, Style.LABEL.sized(12), sheet.left(), sheet.y, sheet.width());
      sheet.y += sheet.block(brief.piece(), Style.TITLE, sheet.left(), sheet.y, sheet.width(), 2);
      sheet.gap(8);
      pictures(sheet, brief);
      gold(sheet, brief);
      where(sheet, brief);
      price(sheet, brief);
      signature(sheet);
      sheet.save(file);
    }
  }

  private static void pictures(Sheet sheet, Brief brief) throws IOException {
    Scene before = Pictures.beforeScene(brief.planned.map(), brief.metal());
    Scene after = Pictures.customerScene(brief.planned.map(), brief.look(), brief.metal());
    double width = (sheet.width() - 14) / 2;
    double height = (sheet.bottom() - sheet.y) / 2 - CAPTION_HEIGHT;
    int high = (int) (PIXELS_WIDE * height / width);
    double[] x = {sheet.left(), sheet.left() + width + 14};
    for (View view : brief.portraits()) {
      sheet.need(height + CAPTION_HEIGHT);
      sheet.picture(
          Pictures.photograph(before, view, PIXELS_WIDE, high, Background.SOFT),
          "Before, seen from: " + view.name(),
          x[0],
          sheet.y,
          width,
          height);
      sheet.picture(
          Pictures.photograph(after, view, PIXELS_WIDE, high, Background.SOFT),
          "After, seen from: " + view.name(),
          x[1],
          sheet.y,
          width,
          height);
      double caption = sheet.y + height + 3;
      sheet.block("Before, seen from: " + view.name(), Style.LABEL, x[0], caption, width, 1);
      sheet.block("After", Style.LABEL, x[1], caption, width, 1);
      sheet.y += height + CAPTION_HEIGHT;
    }
  }

  private static void gold(Sheet sheet, Brief brief) throws IOException {
    double um = brief.thicknessUm();
    sheet.heading("The " + brief.laid(), 120);
    double height =
        Figure.row(
            sheet,
            List.of(
                new Figure("Thickness", brief.format.thickness(um), "planned, on average"),
                new Figure(
                    Words.capital(brief.laid()) + " goes on",
                    brief.format.area(brief.areaMm2(Treatment.PLATE)),
                    ""),
                new Figure("Stays as it is", brief.format.area(brief.areaMm2(Treatment.BARE)), "")),
            Style.LARGE_FIGURE,
            sheet.left(),
            sheet.y,
            sheet.width());
    sheet.y += height + 6;
    sheet.paragraph(
        "Metal: "
            + brief.planned.settings().deposit().name()
            + ", on "
            + StepPages.lowerFirst(brief.planned.settings().recipe().base())
            + ".",
        Style.BODY);
    sheet.paragraph(
        brief.planned.settings().deposit().isGold()
            ? Words.wear(um) + " " + Notes.wear().get(1) + " " + Notes.colour().get(0)
            : Words.wears(brief.laid()),
        Style.BODY);
    sheet.gap(2);
    sheet.paragraph(
        "What a thickness is good for is common practice, not a standard or a warranty. "
            + (brief.planned.settings().deposit().isGold() ? Words.classes(um) : ""),
        Style.SMALL);
    sheet.gap(10);
  }

  /** The price, if the job has prices and means them to be shown. */
  private static void price(Sheet sheet, Brief brief) throws IOException {
    Optional<QuoteRates> rates = brief.planned.job().quote().filter(QuoteRates::onSheet);
    if (rates.isEmpty() || brief.planned.quote().isEmpty()) {
      return;
    }
    Quote quote = brief.planned.quote().get();
    sheet.heading("Price", 90);
    String tax =
        quote.tax().signum() > 0
            ? "of which tax "
                + quote.tax().toPlainString()
                + " ("
                + TotalPages.number(100 * rates.get().tax())
                + " %)"
            : "";
    double height =
        Figure.row(
            sheet,
            List.of(
                new Figure(
                    "For the work described here",
                    quote.total().toPlainString() + " " + quote.currency(),
                    tax)),
            Style.LARGE_FIGURE,
            sheet.left(),
            sheet.y,
            sheet.width());
    sheet.y += height + 4;
    if (rates.get().validDays() > 0) {
      sheet.paragraph(
          "Holds until " + brief.date.plusDays(rates.get().validDays()) + ".", Style.BODY);
    }
    sheet.gap(10);
  }

  private static void where(Sheet sheet, Brief brief) throws IOException {
    sheet.heading("Where it goes", 60);
    Treatment ground = brief.planned.job().ground();
    sheet.paragraph("Everywhere not named below: " + words(ground, brief.laid()) + ".", Style.BODY);
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < brief.planned.job().marks().size(); i++) {
      Mark mark = brief.planned.job().marks().get(i);
      if (!mark.name().isBlank() && mark instanceof Mark.Place place) {
        rows.add(mark.name() + ": " + words(place.treatment(), brief.laid()));
      }
    }
    for (String row : rows) {
      sheet.need(Style.BODY.leading() + 2);
      sheet.disc(sheet.left() + 4, sheet.y + Style.BODY.rise() - 4, 2, Style.INK);
      sheet.paragraph(row, Style.BODY, sheet.left() + 14, sheet.width() - 14);
    }
    sheet.gap(2);
    sheet.paragraph(
        "The pictures are drawn from the model of the piece: colours and shine are only like those"
            + " of the real thing. Dents, scratches and worn places show through plating.",
        Style.SMALL);
    sheet.gap(10);
  }

  private static String words(Treatment treatment, String metal) {
    return switch (treatment) {
      case PLATE -> metal;
      case BARE -> "stays as it is";
      case OUT_OF_SCOPE -> "not part of the work";
    };
  }

  private static void signature(Sheet sheet) throws IOException {
    sheet.need(64);
    sheet.gap(14);
    sheet.paragraph("I agree to the work as shown.", Style.STRONG);
    sheet.gap(26);
    double half = (sheet.width() - 24) / 2;
    sheet.blank("Name and signature", sheet.left(), sheet.y, half * 1.4);
    sheet.blank("Date", sheet.left() + half * 1.4 + 24, sheet.y, half * 0.6);
    sheet.gap(8);
  }
}
