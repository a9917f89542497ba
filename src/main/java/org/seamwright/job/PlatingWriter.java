package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.plating.Solution;
import org.seamwright.plating.Spread;
import org.seamwright.plating.Tool;
import org.seamwright.units.UnitSystem;

/**
 * Spells out {@code plating}. What is not known of the tool, a holding or pace not given, is left
 * out.
 */
final class PlatingWriter {
  private PlatingWriter() {}

  static Map<String, Object> tree(Job.PlatingRules rules, UnitSystem display) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("recipe", rules.own().<Object>map(RecipeJson::tree).orElse(rules.recipe()));
    tree.put("deposit", rules.deposit());
    tree.put("flash", AmountKind.THICKNESS.write(rules.flashUm(), display));
    tree.put("thickness", AmountKind.THICKNESS.write(rules.thicknessUm(), display));
    tree.put("loss", spread(rules.loss()));
    tree.put("solution", AmountKind.CONCENTRATION.write(rules.solutionGPerL(), display));
    tree.put("usable", rules.usableShare());
    tree.put("secondsPerCm2PerUm", spread(rules.pace()));
    tree.put("efficiency", rules.efficiency());
    Map<String, Object> tool = tool(rules.tool(), display);
    if (!tool.isEmpty()) {
      tree.put("tool", tool);
    }
    rules
        .hold()
        .ifPresent(
            hold -> {
              Map<String, Object> held = new LinkedHashMap<>();
              held.put("up", List.of(hold.up().getX(), hold.up().getY(), hold.up().getZ()));
              held.put("steeper", hold.steeperDegrees());
              tree.put("hold", held);
            });
    Map<String, Object> bench = BenchReader.tree(rules.bench(), display);
    if (!bench.isEmpty()) {
      tree.put("bench", bench);
    }
    if (!rules.sheet().equals(Solution.UNKNOWN)) {
      tree.put("sheet", sheet(rules.sheet()));
    }
    return tree;
  }

  private static Map<String, Object> sheet(Solution sheet) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("name", sheet.name());
    tree.put("form", JobKeys.word(PlatingReader.FORMS, sheet.form()));
    sheet.fromVolts().ifPresent(v -> tree.put("fromVolts", v));
    sheet.toVolts().ifPresent(v -> tree.put("toVolts", v));
    tree.put("anode", sheet.anode());
    tree.put("keep", sheet.keep());
    tree.values().removeIf(""::equals);
    return tree;
  }

  private static Object spread(Spread spread) {
    if (spread.isPoint()) {
      return spread.likely();
    }
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("low", spread.low());
    tree.put("likely", spread.likely());
    tree.put("high", spread.high());
    return tree;
  }

  private static Map<String, Object> tool(Tool tool, UnitSystem display) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tool.dipMl().ifPresent(ml -> tree.put("dip", AmountKind.VOLUME.write(ml, display)));
    tool.contactMm2().ifPresent(mm2 -> tree.put("contact", AmountKind.AREA.write(mm2, display)));
    tool.amperesPerCm2().ifPresent(a -> tree.put("amperesPerCm2", a));
    tool.mostAhPerL().ifPresent(a -> tree.put("ampHoursPerLitre", a));
    return tree;
  }
}
