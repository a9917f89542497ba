package org.seamwright.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Choices of tape against trying all, and against sums worked by hand. Invented tapes. */
class TapeChoiceTest {
  private static final TapeKind NARROW = new TapeKind("narrow", 3, 5, 10_000, 6, 0, "");
  private static final TapeKind MIDDLE = new TapeKind("middle", 6, 30, 20_000, 5, 0, "");
  private static final TapeKind WIDE = new TapeKind("wide", 12, 150, 50_000, 4, 0, "");

  private static MaskSettings shop(TapeKind... tapes) {
    return new MaskSettings(
        12,
        5,
        33_000,
        50,
        0.25,
        25,
        2,
        0.15,
        List.of(tapes),
        MaskPace.USUAL,
        java.util.Optional.empty());
  }

  /** Every way of taping up to seven places, priced by the rules in words. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void nothingIsCheaperThanTheChoice(boolean closed) {
    long seed = closed ? 11 : 12;
    Random random = new Random(seed);
    for (int trial = 0; trial < 60; trial++) {
      double[] radius = new double[2 + random.nextInt(6)];
      Arrays.setAll(radius, i -> Math.exp(6 * random.nextDouble()));
      double step = Math.exp(8 * random.nextDouble() - 2);
      List<TapeKind> kinds = List.of(NARROW, MIDDLE, WIDE);
      TapeChoice choice = new TapeChoice(kinds, 12, 5);
      int[] chosen = new int[radius.length];
      for (TapeChoice.Run run : choice.along(radius, closed, step)) {
        Arrays.fill(chosen, run.from(), run.to(), run.kind());
      }
      double least = Double.POSITIVE_INFINITY;
      int ways = (int) Math.pow(4, radius.length);
      for (int way = 0; way < ways; way++) {
        int[] tried = new int[radius.length];
        for (int i = 0, rest = way; i < tried.length; i++, rest /= 4) {
          tried[i] = rest % 4 - 1;
        }
        least = Math.min(least, price(tried, radius, closed, step, kinds));
      }
      assertThat(price(chosen, radius, closed, step, kinds))
          .as("seed %d, trial %d", seed, trial)
          .isCloseTo(least, within(1e-9 * least));
    }
  }

  /** Tape, its backing up to 12 mm in pieces of a chord, and 55 mm of the dearer one a join. */
  private static double price(
      int[] way, double[] radius, boolean closed, double step, List<TapeKind> kinds) {
    double sum = 0;
    for (int i = 0; i < way.length; i++) {
      if (way[i] < 0) {
        sum += 1e6 * step;
      } else {
        TapeKind kind = kinds.get(way[i]);
        if (radius[i] < kind.bendMm()) {
          return Double.POSITIVE_INFINITY;
        }
        sum += step * kind.pricePerRoll() / kind.rollMm();
        double s = kind.widthMm() / 2;
        double chord = 2 * Math.sqrt(radius[i] * radius[i] - Math.pow(radius[i] - s, 2));
        // The wide one is the cheapest a millimetre and covers any rest.
        double backed = step * 4.0 / 50_000 * (1 + 5 / chord);
        sum += kind.widthMm() < 12 ? backed : 0;
      }
      int before = i > 0 ? way[i - 1] : closed ? way[way.length - 1] : way[i];
      if (before != way[i]) {
        sum += 55 * Math.max(mm(before, kinds), mm(way[i], kinds));
      }
    }
    return sum;
  }

  private static double mm(int kind, List<TapeKind> kinds) {
    return kind < 0 ? 0 : kinds.get(kind).pricePerRoll() / kinds.get(kind).rollMm();
  }

  private static MaskEdge circle(double r) {
    int n = 3000;
    double[] points = new double[3 * n];
    double[] normals = new double[3 * n];
    for (int i = 0; i < n; i++) {
      points[3 * i] = r * Math.cos(2 * Math.PI * i / n);
      points[3 * i + 1] = r * Math.sin(2 * Math.PI * i / n);
      normals[3 * i + 2] = 1;
    }
    return new MaskEdge(points, true, 2 * n * r * Math.sin(Math.PI / n), normals);
  }

  /** A wide circle takes the wide tape once round, 5 mm over its start. */
  @Test
  void wideCircleTakesWideTape() {
    Tape.Laid laid = Tape.along(circle(200), 0, shop(NARROW, MIDDLE, WIDE));
    assertThat(laid.strips()).hasSize(1);
    assertThat(laid.strips().get(0).name()).isEqualTo("wide");
    assertThat(laid.strips().get(0).lengthMm()).isCloseTo(2 * Math.PI * 200 + 5, within(0.01));
    assertThat(laid.byHandMm()).isZero();
  }

  /**
   * A circle of 40 mm is too tight for the wide tape: the middle one, 6 mm, is backed by straight
   * pieces of the wide, whose chord with a sagitta of 3 mm is 2 √(2·40·3 − 9) = 30.4 mm: 251.3 /
   * 30.4 makes 9.
   */
  @Test
  void tightCircleIsBackedByStraightPieces() {
    Tape.Laid laid = Tape.along(circle(40), 0, shop(NARROW, MIDDLE, WIDE));
    assertThat(laid.strips())
        .extracting(MaskPlan.TapeStrip::name)
        .containsExactly("middle", "wide");
    MaskPlan.TapeStrip backing = laid.strips().get(1);
    assertThat(backing.row()).isEqualTo(1);
    assertThat(backing.pieces()).isEqualTo(9);
    assertThat(backing.lengthMm()).isCloseTo(2 * Math.PI * 40 / 9 + 5, within(0.01));
  }

  @Test
  void whatNoTapeFollowsIsTold() {
    Tape.Laid laid = Tape.along(circle(4), 0, shop(NARROW));
    assertThat(laid.strips()).isEmpty();
    assertThat(laid.byHandMm()).isCloseTo(2 * Math.PI * 4, within(0.01));
  }

  /** Four sides of 50 mm; each strip runs on over the width of the one before it. */
  @Test
  void cornersAreCut() {
    double[] points = {0, 0, 0, 50, 0, 0, 50, 50, 0, 0, 50, 0};
    double[] normals = {0, 0, 1, 0, 0, 1, 0, 0, 1, 0, 0, 1};
    Tape.Laid laid = Tape.along(new MaskEdge(points, true, 200, normals), 0, shop(WIDE));
    assertThat(laid.strips()).hasSize(4);
    assertThat(laid.strips()).allSatisfy(s -> assertThat(s.lengthMm()).isCloseTo(62, within(1.0)));
  }

  /** Eleven pieces of 400 mm: two fit a roll of 1000, so six rolls. */
  @Test
  void rollsHoldWholePieces() {
    assertThat(
            Rolls.count(
                List.of(new MaskPlan.TapeStrip("wide", 12, 400, 11, 0, 0, 0, 4345, 5)), 1000))
        .isEqualTo(6);
  }

  /** A roll of 100 mm that stretches by a quarter covers 125 mm; three cover 314 + 3·5 mm. */
  @Test
  void stretchSavesTape() {
    TapeKind stretchy = new TapeKind("stretchy", 12, 0, 100, 1, 0.25, "");
    Tape.Laid laid = Tape.along(circle(50), 0, shop(stretchy));
    assertThat(laid.strips()).hasSize(3);
    assertThat(laid.strips().get(0).lengthMm())
        .isCloseTo((2 * Math.PI * 50 + 15) / 3 / 1.25, within(0.01));
  }
}
