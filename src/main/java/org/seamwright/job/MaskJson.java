package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.mask.Dipped;
import org.seamwright.mask.MaskPlan;
import org.seamwright.mask.MaskSettings;

/** Masks and tapes as they stand in plan.json. */
public final class MaskJson {
  private MaskJson() {}

  /** What masking alone takes, as JSON. */
  public static String text(MaskPlan plan, MaskSettings settings) {
    MaskTotals totals = MaskTotals.of(plan);
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("edgeMm", totals.edgeMm());
    tree.put("tapeMm", totals.tapeMm());
    tree.put("lacquerMl", totals.lacquerMl());
    tree.put("workSeconds", plan.workSeconds(settings));
    tree.put(
        "drySeconds",
        totals.lacquerMl() > 0
            ? 60 * settings.pace().dryMinutesPerCoat() * settings.lacquerCoats()
            : 0.0);
    tree.put("masks", plan.masks().stream().map(m -> mask(m, List.of(), settings)).toList());
    plan.dipped().ifPresent(dipped -> tree.put("dip", dip(dipped)));
    tree.put("notices", MeasureJson.notices(plan.notices()));
    return JsonText.of(tree);
  }

  static List<Map<String, Object>> masks(PlannedJob planned) {
    MaskOrder order = MaskOrder.of(planned.masks(), planned.sections());
    MaskSettings settings = planned.job().masking();
    return planned.masks().masks().stream()
        .map(mask -> mask(mask, order.beside(mask.id()), settings))
        .toList();
  }

  private static Map<String, Object> mask(
      MaskPlan.Mask mask, List<Integer> beside, MaskSettings settings) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("id", mask.id());
    tree.put("edgeMm", mask.edgeMm());
    tree.put("edges", mask.edges().size());
    // A straight line has no bend, and JSON no infinity.
    if (Double.isFinite(mask.bends().tightestMm())) {
      tree.put("tightestBendMm", mask.bends().tightestMm());
    }
    tree.put("corners", mask.bends().corners());
    tree.put("wrapMm", mask.bends().wrapMm());
    tree.put("byHandMm", mask.bends().byHandMm());
    tree.put("tape", mask.tape().stream().map(MaskJson::strip).toList());
    tree.put("tapeMm2", mask.tapeMm2());
    tree.put("lacquerMm2", mask.lacquerMm2());
    tree.put("lacquerMl", mask.lacquerMl());
    tree.put("areaMm2", mask.areaMm2());
    if (!beside.isEmpty()) {
      tree.put("beside", beside);
    }
    tree.put("workSeconds", settings.pace().workSeconds(mask, settings.lacquerCoats()));
    return tree;
  }

  private static Map<String, Object> strip(MaskPlan.TapeStrip strip) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("name", strip.name());
    tree.put("widthMm", strip.widthMm());
    tree.put("lengthMm", strip.totalMm());
    tree.put("pieces", strip.pieces());
    tree.put("edge", strip.edge() + 1);
    tree.put("row", strip.row());
    tree.put("fromMm", strip.fromMm());
    tree.put("toMm", strip.toMm());
    tree.put("lapMm", strip.lapMm());
    return tree;
  }

  /** What dipping takes. */
  static Map<String, Object> dip(Dipped dipped) {
    Map<String, Object> tree = new LinkedHashMap<>();
    // The whole piece has no line, and JSON no infinity.
    if (Double.isFinite(dipped.heightMm())) {
      tree.put("heightMm", dipped.heightMm());
    }
    tree.put("wettedMm2", dipped.wettedMm2());
    tree.put("peelMm2", dipped.plateMm2());
    tree.put("displacedMl", dipped.displacedMl());
    tree.put("filmMl", dipped.filmMl());
    tree.put("drainedMl", dipped.drainedMl());
    tree.put("leftMl", dipped.leftMl());
    tree.put("lostMl", dipped.lostMl());
    tree.put("usedMl", dipped.usedMl());
    tree.put("bathMl", dipped.bathMl());
    return tree;
  }

  static List<Map<String, Object>> tapes(PlannedJob planned) {
    return planned.masks().tapes(planned.job().masking().kinds()).stream()
        .map(
            use -> {
              Map<String, Object> tree = new LinkedHashMap<>();
              tree.put("name", use.tape().name());
              tree.put("widthMm", use.tape().widthMm());
              tree.put("lengthMm", use.lengthMm());
              tree.put("rolls", use.rolls());
              tree.put("price", use.price());
              return tree;
            })
        .toList();
  }
}
