package org.seamwright.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.seamwright.basis.Notice;
import org.seamwright.job.Job;
import org.seamwright.job.PlannedJob;
import org.seamwright.measure.Survey;
import org.seamwright.picture.Background;
import org.seamwright.picture.Exposure;
import org.seamwright.picture.Pictures;
import org.seamwright.region.Treatment;

/** The piece: what was measured, what was assumed, and where each section lies. */
final class PiecePages {
  /** What a heading with legend, and a caption with its gap, take on a page of pictures. */
  private static final double HEADING_HEIGHT = 110;

  private static final double CAPTION_HEIGHT = 28;
  private static final int PICTURE_PIXELS_WIDE = 1400;

  /** Below this numbers on a picture are hard to read, points. */
  private static final double LEAST_PICTURE_HEIGHT = 190;

  private PiecePages() {}

  static void write(Sheet sheet, Brief brief) throws IOException {
    sheet.part("The piece", 320);
    measured(sheet, brief);
    notices(sheet, brief);
  }

  private static void measured(Sheet sheet, Brief brief) throws IOException {
    Survey survey = brief.planned.survey();
    var box = survey.bounds();
    double half = sheet.width() * 0.42;
    double pictureTop = sheet.y;
    double pictureHeight = 236;
    sheet.picture(
        Pictures.photograph(
            Pictures.customerScene(brief.planned.map(), brief.look(), brief.metal()),
            brief.portraits().get(0),
            900,
            (int) (900 * pictureHeight / half),
            Background.WHITE),
        "The finished piece, seen from: " + brief.portraits().get(0).name(),
        sheet.left(),
        pictureTop,
        half,
        pictureHeight);
    List<String[]> rows = new ArrayList<>();
    rows.add(
        new String[] {
          "Size",
          brief.format.length(box.sizeX())
              + " × "
              + brief.format.length(box.sizeY())
              + " × "
              + brief.format.length(box.sizeZ()),
          "x × y × z of the model, z up"
        });
    rows.add(new String[] {"Unit of the file", unit(brief), ""});
    rows.add(
        new String[] {
          "Area of all facets",
          brief.format.area(survey.areaMm2()),
          Words.count(survey.triangles(), "facet", "facets")
        });
    rows.add(
        new String[] {
          "Smooth surface behind them",
          brief.format.area(survey.smooth().areaMm2()),
          "likely between "
              + brief.format.area(survey.smooth().lowMm2())
              + " and "
              + brief.format.area(survey.smooth().highMm2())
        });
    rows.add(new String[] {"To be plated", brief.format.area(brief.areaMm2(Treatment.PLATE)), ""});
    rows.add(new String[] {"Stays bare", brief.format.area(brief.areaMm2(Treatment.BARE)), ""});
    double out = brief.areaMm2(Treatment.OUT_OF_SCOPE);
    if (out > 0) {
      rows.add(new String[] {"Not part of the work", brief.format.area(out), ""});
    }
    double x = sheet.left() + half + 22;
    double width = sheet.right() - x;
    double y = sheet.y;
    for (String[] row : rows) {
      y += sheet.block(row[0], Style.LABEL, x, y, width, 1);
      y += sheet.block(row[1], Style.SUBHEADING, x, y, width, 2);
      y += sheet.block(row[2], Style.SMALL, x, y, width, 2);
      y += 6;
    }
    sheet.y = Math.max(y, pictureTop + pictureHeight) + 14;
  }

  private static String unit(Brief brief) {
    if (brief.planned.job().mesh().scale() instanceof Job.Scale.Unit unit) {
      return unit.unit() + " (as told)";
    }
    String unit = "1 unit = " + brief.format.length(brief.planned.mmPerUnit());
    boolean ofFile = brief.planned.job().mesh().scale() instanceof Job.Scale.OfFile;
    return unit + (ofFile ? ", as the file says" : ", from a known length");
  }

  private static void notices(Sheet sheet, Brief brief) throws IOException {
    sheet.subheading("What to know before trusting the figures", 40);
    if (brief.planned.notices().isEmpty()) {
      sheet.paragraph("Nothing was repaired, assumed or left out.", Style.BODY);
    }
    Flow flow = new Flow(sheet);
    for (Notice notice : brief.planned.notices()) {
      Style style = PlannedJob.tellsOfBreach(notice) ? Style.WARNING : Style.BODY;
      StepPages.bullet(flow, sheet, notice.text(), style);
    }
    flow.set();
  }

  /** Pictures of the numbered sections from few sides. */
  static void sectionPictures(Sheet sheet, Brief brief) throws IOException {
    if (brief.sections().isEmpty()) {
      return;
    }
    // Two to a page, smaller on one that notices have begun.
    if (pictureHeight(sheet) < LEAST_PICTURE_HEIGHT) {
      sheet.newPage();
    }
    double height = pictureHeight(sheet);
    sheet.part("Sections, numbered in working order", 200);
    legend(sheet);
    Exposure exposure = brief.exposure();
    int high = (int) (PICTURE_PIXELS_WIDE * height / sheet.width());
    for (int view : brief.views()) {
      sheet.need(height + CAPTION_HEIGHT);
      Pictures.Labelled picture = brief.sectionPicture(view, PICTURE_PIXELS_WIDE, high);
      sheet.picture(
          picture.image(),
          "Numbered sections, seen from: " + exposure.views().get(view).name(),
          sheet.left(),
          sheet.y,
          sheet.width(),
          height);
      sheet.y += height + 2;
      String caption = "Seen from: " + exposure.views().get(view).name();
      if (!picture.unlabelled().isEmpty()) {
        caption +=
            ". In view without a number: "
                + Words.list(picture.unlabelled().stream().map(String::valueOf).toList());
      }
      sheet.paragraph(caption, Style.LABEL.in(Style.INK));
      sheet.gap(10);
    }
    List<String> hidden = new ArrayList<>();
    brief.sections().stream()
        .filter(s -> !brief.canBeSeen(s.id()))
        .forEach(s -> hidden.add(String.valueOf(s.id())));
    if (!hidden.isEmpty()) {
      sheet.paragraph(
          "Hidden from every side that pictures are taken from: " + Words.list(hidden) + ".",
          Style.WARNING);
    }
  }

  private static double pictureHeight(Sheet sheet) {
    return (sheet.roomLeft() - HEADING_HEIGHT) / 2 - CAPTION_HEIGHT;
  }

  private static void legend(Sheet sheet) throws IOException {
    sheet.paragraph(
        "Heavy line: seam, or edge of the mask. Darker bands along seams are laps: the darkest is"
            + " activated three times or more, the middle twice, the lightest flashed twice.",
        Style.LABEL);
    sheet.gap(8);
  }
}
