package org.seamwright.window;

import java.util.List;
import java.util.Locale;
import org.seamwright.desk.Messages;
import org.seamwright.job.PlannedJob;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.region.Treatment;
import org.seamwright.section.Section;
import org.seamwright.units.UnitFormat;

/** The plan's figures as texts: of the whole, of each section, of the place under the pointer. */
public final class SectionTexts {
  private final PlannedJob job;
  private final UnitFormat figures;

  /**
   * One figure.
   *
   * @param name what it is
   * @param value with its unit
   */
  public record Line(String name, String value) {}

  /**
   * A section in the list.
   *
   * @param id its number in working order
   * @param worked area that must stay wet
   * @param gold metal to have ready
   * @param time all steps
   * @param overLimit whether it is larger than the limit
   */
  public record Row(int id, String worked, String gold, String time, boolean overLimit) {}

  /** Texts of a planned job. */
  public SectionTexts(PlannedJob job) {
    this.job = job;
    this.figures = new UnitFormat(job.job().display(), Locale.ENGLISH);
  }

  /** The sums over all sections. */
  public List<Line> totals() {
    PlatingPlan.Totals totals = job.plating().totals();
    return List.of(
        line("totals.sections", Integer.toString(job.sections().sections().size())),
        line("totals.area", figures.area(totals.netMm2())),
        line("totals.gold", figures.mass(totals.goldG())),
        line("totals.time", figures.time(totals.seconds())));
  }

  /** All sections, in working order. */
  public List<Row> rows() {
    return job.sections().sections().stream().map(this::row).toList();
  }

  private Row row(Section section) {
    PlatingPlan.SectionAmounts amounts = amounts(section.id());
    return new Row(
        section.id(),
        figures.area(section.workedMm2()),
        figures.mass(amounts.goldG()),
        figures.time(amounts.seconds()),
        overLimit(section));
  }

  /** The figures of a section. */
  public List<Line> figures(int id) {
    Section section = section(id);
    PlatingPlan.SectionAmounts amounts = amounts(id);
    return List.of(
        line("section.net", figures.area(section.netMm2())),
        line("section.flash-lap", figures.area(section.flashLapMm2())),
        line("section.activation-lap", figures.area(section.activationLapMm2())),
        line("section.worked", figures.area(section.workedMm2())),
        line("section.limit", figures.area(job.limitMm2())),
        line("section.gold", figures.mass(amounts.goldG())),
        line("section.time", figures.time(amounts.seconds())));
  }

  /** Worked area of a section as a share of the limit; above 1 if it breaks it. */
  public double shareOfLimit(int id) {
    return section(id).workedMm2() / job.limitMm2();
  }

  /** How the section stands to the limit, in a sentence. */
  public String limitSentence(int id) {
    Section section = section(id);
    return overLimit(section)
        ? Messages.text("section.over", figures.area(section.workedMm2() - job.limitMm2()))
        : Messages.text("section.within");
  }

  /** "Section 3 of 12". */
  public String title(int id) {
    return Messages.text(
        "section.title", Integer.toString(id), Integer.toString(job.sections().sections().size()));
  }

  /** One sentence on a place of the piece. */
  public String place(Spot spot) {
    if (spot.section() > 0) {
      return spot.inLap()
          ? Messages.text("place.lap", Integer.toString(spot.section()))
          : Messages.text("place.plated", Integer.toString(spot.section()));
    }
    return job.map().of(job.sections().parentFace()[spot.face()]) == Treatment.BARE
        ? Messages.text("place.bare")
        : Messages.text("place.out");
  }

  private boolean overLimit(Section section) {
    return section.workedMm2() > job.limitMm2();
  }

  private Section section(int id) {
    return job.sections().sections().get(id - 1);
  }

  private PlatingPlan.SectionAmounts amounts(int id) {
    return job.plating().sections().get(id - 1);
  }

  private static Line line(String key, String value) {
    return new Line(Messages.text(key), value);
  }
}
