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
   * @param name what the user calls it; may be empty
   */
  public record Row(
      int id, String worked, String gold, String time, boolean overLimit, String name) {}

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
    return rows(job.sections().sections(), job.plating());
  }

  /** Sections as an edit would leave them. */
  public List<Row> rows(List<Section> sections, PlatingPlan plating) {
    return sections.stream().map(s -> row(s, plating.sections().get(s.id() - 1))).toList();
  }

  private Row row(Section section, PlatingPlan.SectionAmounts amounts) {
    return new Row(
        section.id(),
        figures.area(section.workedMm2()),
        figures.mass(amounts.goldG()),
        figures.time(amounts.seconds()),
        overLimit(section),
        section.name());
  }

  /** The limit, what sets it, and how many sections break it. */
  public String limit() {
    String most = figures.area(job.limitMm2());
    String text =
        job.limitIsSet()
            ? job.wetLimit()
                .map(
                    wet ->
                        Messages.text(
                            "limit.set-beside",
                            most,
                            figures.area(wet.limitMm2()),
                            wet.governedBy()))
                .orElse(Messages.text("limit.set", most))
            : Messages.text("limit.wet", most, job.wetLimit().orElseThrow().governedBy());
    long over = job.sections().sections().stream().filter(this::overLimit).count();
    return over == 0 ? text : text + " " + Messages.text("limit.over", Long.toString(over));
  }

  /** Whether any section is larger than the limit. */
  public boolean isAnyOver() {
    return job.sections().sections().stream().anyMatch(this::overLimit);
  }

  /** How the figures of the limit come about; empty if that can't be told. */
  public String limitExplanation() {
    return job.wetLimit().map(wet -> wet.explanation()).orElse("");
  }

  /** The areas that are activated once, twice and more often, as a key to the heat layer. */
  public List<String> activated() {
    return List.of(
        Messages.text("again.once", figures.area(job.sections().onceMm2())),
        Messages.text("again.twice", figures.area(job.sections().twiceMm2())),
        Messages.text("again.more", figures.area(job.sections().moreMm2())));
  }

  /** What a section is called by the user; may be empty. */
  public String name(int id) {
    return section(id).name();
  }

  /** The figures of a section beyond those in the list. */
  public List<Line> laps(int id) {
    Section section = section(id);
    return List.of(
        line("section.net", figures.area(section.netMm2())),
        line("section.flash-lap", figures.area(section.flashLapMm2())),
        line("section.activation-lap", figures.area(section.activationLapMm2())));
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
