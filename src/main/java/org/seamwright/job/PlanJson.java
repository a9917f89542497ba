package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.plating.PlatingPlan.SectionAmounts;
import org.seamwright.region.Treatment;
import org.seamwright.section.Junction;
import org.seamwright.section.Junctions;
import org.seamwright.section.RingClosing;
import org.seamwright.section.Seam;
import org.seamwright.section.Section;
import org.seamwright.section.SectionPlan;

/**
 * A plan as JSON, for scripts: all figures unrounded, units in the keys. The same job and mesh give
 * the same bytes; nothing of the time or place of planning is in it. {@code docs/plan-json.md}
 * describes every key.
 */
public final class PlanJson {
  /** Version of this form; raised when a key changes its meaning or goes. */
  private static final int VERSION = 1;

  private PlanJson() {}

  /** The plan as JSON text, for a file in UTF-8. */
  public static String text(PlannedJob planned) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("plan", VERSION);
    tree.put("piece", planned.job().piece());
    tree.put("job", String.valueOf(planned.jobFile().getFileName()));
    tree.put("mesh", mesh(planned));
    tree.put("limit", limit(planned));
    tree.put("settings", settings(planned));
    tree.put("totals", totals(planned));
    tree.put("sections", sections(planned));
    tree.put("seams", planned.sections().seams().stream().map(PlanJson::seam).toList());
    tree.put("activatedMm2", activated(planned.sections()));
    tree.put("junctions", junctions(planned.sections().junctions()));
    tree.put("rings", planned.sections().rings().stream().map(PlanJson::ring).toList());
    tree.put("masks", MaskJson.masks(planned));
    tree.put("tapes", MaskJson.tapes(planned));
    planned.masks().dipped().ifPresent(dipped -> tree.put("dip", MaskJson.dip(dipped)));
    planned.quote().ifPresent(quote -> tree.put("quote", QuoteJson.priced(quote)));
    tree.put("trace", planned.plating().trace().stream().map(PlanJson::trace).toList());
    tree.put("notices", MeasureJson.notices(planned.notices()));
    return JsonText.of(tree);
  }

  private static Map<String, Object> mesh(PlannedJob planned) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("file", planned.job().mesh().file());
    tree.put("unit", MeasureJson.unit(planned.job().mesh().scale(), planned.mmPerUnit()));
    tree.put("mmPerUnit", planned.mmPerUnit());
    tree.put("cleaning", MeasureJson.cleaning(planned.cleaning()));
    tree.putAll(MeasureJson.survey(planned.survey()));
    return tree;
  }

  private static Map<String, Object> limit(PlannedJob planned) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("limitMm2", planned.limitMm2());
    tree.put("from", planned.limitIsSet() ? "set in the job" : "wet window");
    tree.put("wetWindowSeconds", planned.job().sections().limit().windowSeconds());
    planned
        .wetLimit()
        .ifPresent(
            wet -> {
              tree.put("wetLimitMm2", wet.limitMm2());
              tree.put("governedBy", wet.governedBy());
              tree.put("leftSeconds", wet.leftSeconds());
              tree.put("secondsPerCm2", wet.secondsPerCm2());
              tree.put("explanation", wet.explanation());
            });
    return tree;
  }

  private static Map<String, Object> settings(PlannedJob planned) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("recipe", planned.settings().recipe().id());
    tree.put("deposit", planned.settings().deposit().id());
    tree.put("densityGCm3", planned.settings().deposit().densityGCm3());
    tree.put("flashUm", planned.settings().flashUm());
    tree.put("thicknessUm", planned.job().plating().thicknessUm());
    tree.put("lossShare", planned.settings().lossShare());
    tree.put("lossLow", planned.settings().loss().low());
    tree.put("lossHigh", planned.settings().loss().high());
    tree.put("solutionGPerL", planned.settings().solutionGPerL());
    tree.put("usableShare", planned.settings().usableShare());
    tree.put("secondsPerCm2PerUm", planned.settings().secondsPerCm2PerUm());
    tree.put("secondsPerCm2PerUmLow", planned.settings().pace().low());
    tree.put("secondsPerCm2PerUmHigh", planned.settings().pace().high());
    tree.put("efficiency", planned.settings().efficiency());
    tree.put("activationLapMm", planned.job().sections().activationLapMm());
    tree.put("flashLapMm", planned.job().sections().flashLapMm());
    return tree;
  }

  private static Map<String, Object> totals(PlannedJob planned) {
    PlatingPlan.Totals totals = planned.plating().totals();
    MaskTotals masks = MaskTotals.of(planned.masks());
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("sections", planned.sections().sections().size());
    tree.put("netMm2", totals.netMm2());
    tree.put("workedMm2", totals.workedMm2());
    tree.put("filledMm2", planned.filledMm2());
    tree.put("bareMm2", planned.map().areaMm2(Treatment.BARE));
    tree.put("outOfScopeMm2", planned.map().areaMm2(Treatment.OUT_OF_SCOPE));
    tree.put("goldG", totals.goldG());
    tree.put("solutionMl", totals.solutionMl());
    tree.put("chargeAh", totals.chargeAh());
    tree.put("seconds", totals.seconds());
    PlatingPlan.Bands bands = planned.plating().bands();
    tree.put("goldBandG", QuoteJson.band(bands.goldG()));
    tree.put("solutionBandMl", QuoteJson.band(bands.solutionMl()));
    tree.put("secondsBand", QuoteJson.band(bands.seconds()));
    planned.settings().tool().dips(totals.solutionMl()).ifPresent(d -> tree.put("dips", d));
    planned.steep().ifPresent(steep -> tree.put("steepMm2", steep.areaMm2()));
    tree.put("maskEdgeMm", masks.edgeMm());
    tree.put("tapeMm", masks.tapeMm());
    tree.put("lacquerMl", masks.lacquerMl());
    return tree;
  }

  private static List<Map<String, Object>> sections(PlannedJob planned) {
    Map<Integer, SectionAmounts> amounts = new LinkedHashMap<>();
    planned.plating().sections().forEach(a -> amounts.put(a.id(), a));
    return planned.sections().sections().stream()
        .map(s -> section(s, amounts.get(s.id()), planned))
        .toList();
  }

  private static Map<String, Object> section(
      Section section, SectionAmounts amounts, PlannedJob planned) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("id", section.id());
    tree.put("name", section.name());
    // Sections are numbered in working order, so a script may sort by either.
    tree.put("order", section.id());
    tree.put("netMm2", section.netMm2());
    tree.put("activationLapMm2", section.activationLapMm2());
    tree.put("flashLapMm2", section.flashLapMm2());
    tree.put("workedMm2", section.workedMm2());
    tree.put("limitMm2", planned.limitMm2());
    tree.put("flashG", amounts.flashG());
    tree.put("buildG", amounts.buildG());
    tree.put("lossG", amounts.lossG());
    tree.put("goldG", amounts.goldG());
    tree.put("solutionMl", amounts.solutionMl());
    tree.put("chargeAh", amounts.chargeAh());
    tree.put("seconds", amounts.seconds());
    planned.settings().tool().dips(amounts.solutionMl()).ifPresent(d -> tree.put("dips", d));
    planned
        .steep()
        .ifPresent(s -> tree.put("steepShare", s.shareOf().getOrDefault(section.id(), 0.0)));
    return tree;
  }

  private static Map<String, Object> seam(Seam seam) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("between", List.of(seam.earlier(), seam.later()));
    tree.put("lengthMm", seam.lengthMm());
    tree.put("flashLapMm2", seam.flashLapMm2());
    tree.put("activationLapMm2", seam.activationLapMm2());
    return tree;
  }

  private static Map<String, Object> activated(SectionPlan sections) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("once", sections.onceMm2());
    tree.put("twice", sections.twiceMm2());
    tree.put("more", sections.moreMm2());
    return tree;
  }

  private static Map<String, Object> junctions(Junctions junctions) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("count", junctions.places().size());
    if (!Double.isInfinite(junctions.nearestMm())) {
      tree.put("nearestMm", junctions.nearestMm());
    }
    tree.put("places", junctions.places().stream().map(PlanJson::junction).toList());
    tree.put("close", junctions.close().stream().map(PlanJson::close).toList());
    return tree;
  }

  private static Map<String, Object> junction(Junction junction) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("pointMm", List.of(junction.xMm(), junction.yMm(), junction.zMm()));
    tree.put("sections", junction.sections());
    return tree;
  }

  private static Map<String, Object> close(Junctions.Close close) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("places", List.of(close.first(), close.second()));
    tree.put("distanceMm", close.distanceMm());
    return tree;
  }

  private static Map<String, Object> ring(RingClosing ring) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("section", ring.section());
    tree.put("onto", ring.onto());
    return tree;
  }

  private static Map<String, Object> trace(PlatingPlan.Trace trace) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("figure", trace.figure());
    tree.put("formula", trace.formula());
    tree.put("inputs", trace.inputs());
    tree.put("source", trace.source());
    return tree;
  }
}
