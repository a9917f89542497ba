package org.seamwright.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ToolTest {
  private static final double IN2_MM2 = 645.16;

  /**
   * Worked example of the Surface Finishing Guidebook 2011–2012, "Selective plating processes": a
   * bore of 37.7 in², 0.002 in at 150 A·h/in³ takes 11.31 A·h; 6 in² of contact at 5 A/in² draw 30
   * A; that is 22.6 min, and at most 44.5 A·h per litre 0.25 l.
   */
  @Test
  void guidebooksExampleComesOut() {
    double chargeAh = BrushFactor.perIn3(150).chargeAh(37.7 * IN2_MM2, 0.002 * 25_400);
    Tool tool = tool(OptionalDouble.empty(), 6 * IN2_MM2, 5 / 6.4516, 44.5);
    assertThat(chargeAh).isCloseTo(11.31, within(0.005));
    assertThat(tool.amperes().orElseThrow()).isCloseTo(30.0, within(1e-9));
    assertThat(tool.seconds(chargeAh).orElseThrow() / 60).isCloseTo(22.6, within(0.05));
    assertThat(tool.solutionMl(chargeAh).orElseThrow()).isCloseTo(250, within(5.0));
  }

  @Test
  void dipsAreWhole() {
    Tool tool = new Tool(OptionalDouble.of(0.5), none(), none(), none());
    assertThat(tool.dips(2.4).orElseThrow()).isEqualTo(5);
    assertThat(tool.dips(2.5).orElseThrow()).isEqualTo(5);
    assertThat(tool.dips(2.6).orElseThrow()).isEqualTo(6);
    assertThat(Tool.UNKNOWN.dips(2.6)).isEmpty();
  }

  /**
   * 1 µm over 100 cm² of gold: 0.193 g, 26.3 mA·h by Faraday; 10 mA take 2.6 h, the rate 42 min.
   */
  @Test
  void supplyThatIsTooWeakIsTold() {
    assertThat(codes(tool(OptionalDouble.of(1), 1, 1, 1e9)))
        .containsExactly(PlatingNotices.SLOW_SUPPLY);
    assertThat(codes(tool(OptionalDouble.of(1), 1e6, 1, 1e9))).isEmpty();
    assertThat(codes(tool(OptionalDouble.of(1), 1e6, 1, 1e-3)))
        .containsExactly(PlatingNotices.SPENT_SOLUTION);
  }

  @Test
  void copperUnderGoldAndThickGoldAreTold() {
    Step flash = new Step("Flash", "", Step.Kind.FLASH, 1, 1, 0, "made up for the check");
    Step build = new Step("Build", "", Step.Kind.BUILD, 1, 1, 0, "made up for the check");
    Recipe bare = new Recipe("own", "Brass", true, List.of(flash, build), List.of());
    Step nickel = new Step("Nickel", "", Step.Kind.WET, 1, 1, 0, "made up for the check");
    Recipe barred = new Recipe("own", "Brass", true, List.of(nickel, flash, build), List.of());
    assertThat(codes(bare, 0.5)).containsExactly(PlatingNotices.NO_BARRIER);
    assertThat(codes(barred, 0.5)).isEmpty();
    assertThat(codes(barred, 500)).containsExactly(PlatingNotices.UNUSUAL_THICKNESS);
    assertThat(Recipes.all()).noneMatch(Recipe::lacksBarrier);
  }

  private static List<String> codes(Recipe recipe, double um) {
    PlatingSettings settings =
        new PlatingSettings(recipe, gold(), 0.1, um - 0.1, 0.3, 8, 0.8, 25, 0.72);
    return codes(settings);
  }

  private static List<String> codes(Tool tool) {
    Step flash = new Step("Flash", "", Step.Kind.FLASH, 1, 1, 0, "made up for the check");
    PlatingSettings settings =
        new PlatingSettings(
            new Recipe("test", "Nickel", List.of(flash), List.of()),
            gold(),
            1,
            0,
            Spread.point(0),
            8,
            0.8,
            Spread.point(25),
            1,
            tool);
    return codes(settings);
  }

  private static List<String> codes(PlatingSettings settings) {
    PlatingPlan plan = PlatingArithmetic.plan(List.of(new SectionArea(1, 10_000, 0, 0)), settings);
    return PlatingNotices.of(settings, plan).stream().map(n -> n.code()).toList();
  }

  private static Deposit gold() {
    return Deposits.all().get(0);
  }

  private static Tool tool(
      OptionalDouble dip, double contactMm2, double amperesPerCm2, double mostAhPerL) {
    return new Tool(
        dip,
        OptionalDouble.of(contactMm2),
        OptionalDouble.of(amperesPerCm2),
        OptionalDouble.of(mostAhPerL));
  }

  private static OptionalDouble none() {
    return OptionalDouble.empty();
  }
}
