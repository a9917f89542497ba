package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.mask.MaskPlan;
import org.seamwright.mask.MaskSettings;

/** Masks and tapes as they stand in plan.json. */
final class MaskJson {
  private MaskJson() {}

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
    tree.put("beside", beside);
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
