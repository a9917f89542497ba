package org.seamwright.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mask.Dip;
import org.seamwright.mask.MaskPace;
import org.seamwright.mask.MaskSettings;
import org.seamwright.mask.TapeKind;
import org.seamwright.mend.Repair;
import org.seamwright.plating.BenchPace;
import org.seamwright.plating.QuoteRates;
import org.seamwright.plating.Recipe;
import org.seamwright.plating.Solution;
import org.seamwright.plating.Spread;
import org.seamwright.plating.Step;
import org.seamwright.plating.Tool;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;
import org.seamwright.section.OrderPins;
import org.seamwright.section.SeamWeights;
import org.seamwright.section.SectionAxis;
import org.seamwright.section.SectionChoices;
import org.seamwright.section.SectionEdit;
import org.seamwright.section.SectionSymmetry;
import org.seamwright.section.SectionWay;
import org.seamwright.units.UnitSystem;

/** Jobs drawn at random: every kind of mark, every choice, amounts with all their bits. */
final class JobSamples {
  private static final String[] NAMES = {
    "", "rim", "Ä \"quoted\" \\ µ", "line\nbreak", "\u0001", "🏆"
  };

  private JobSamples() {}

  static Job random(long seed) {
    Random random = new Random(seed);
    UnitSystem display = pick(random, UnitSystem.values());
    List<Mark> marks = new ArrayList<>();
    for (int i = random.nextInt(12); i > 0; i--) {
      Mark mark = mark(random);
      marks.add(random.nextInt(4) == 0 ? new Mark.Off(mark) : mark);
    }
    double overlap = amount(random);
    return new Job(
        pick(random, NAMES),
        pick(random, NAMES),
        new Job.MeshSource(
            "models/a b.stl",
            random.nextBoolean() ? "" : "0123456789abcdef".repeat(4),
            random.nextBoolean() ? Optional.empty() : Optional.of(surface(random)),
            switch (random.nextInt(3)) {
              case 0 -> new Job.Scale.OfFile();
              case 1 ->
                  new Job.Scale.Unit(
                      pick(random, new String[] {"um", "mm", "cm", "m", "in", "ft"}));
              default ->
                  new Job.Scale.KnownLength(amount(random), pick(random, Job.Along.values()));
            }),
        Stream.generate(() -> repair(random)).limit(random.nextInt(8)).toList(),
        pick(random, Treatment.values()),
        marks,
        new Job.SectionRules(
            random.nextBoolean()
                ? new Job.Limit.Area(amount(random), amount(random))
                : new Job.Limit.Wet(amount(random)),
            random.nextBoolean() ? 0 : amount(random),
            amount(random),
            new OrderPins(
                points(random),
                points(random),
                Stream.generate(() -> new OrderPins.Before(point(random), point(random)))
                    .limit(random.nextInt(3))
                    .toList()),
            new Job.SeamRules(
                new SeamWeights(
                    1 - random.nextDouble(),
                    1 - random.nextDouble(),
                    1 - random.nextDouble(),
                    1 + random.nextDouble()),
                Stream.generate(() -> pick(random, NAMES)).limit(random.nextInt(3)).toList(),
                random.nextBoolean()),
            choices(random)),
        plating(random),
        new MaskSettings(
            amount(random),
            overlap,
            overlap + Math.max(overlap, amount(random)),
            amount(random),
            1 - random.nextDouble(),
            amount(random),
            random.nextInt(21),
            random.nextDouble(),
            random.nextBoolean()
                ? List.of()
                : List.of(tape("a", overlap, random), tape("b", overlap, random)),
            new MaskPace(
                random.nextInt(500), random.nextInt(50), random.nextInt(3), random.nextInt(60)),
            random.nextBoolean() ? Optional.empty() : Optional.of(dip(random))),
        random.nextBoolean() ? Optional.empty() : Optional.of(quote(random)),
        display);
  }

  private static Dip dip(Random random) {
    return new Dip(
        Vector3D.of(random.nextDouble(), -random.nextDouble(), random.nextDouble()),
        random.nextBoolean() ? Double.POSITIVE_INFINITY : amount(random),
        amount(random),
        random.nextDouble(),
        random.nextBoolean() ? 1 : random.nextDouble(),
        random.nextInt(500),
        random.nextInt(5));
  }

  private static TapeKind tape(String name, double overlap, Random random) {
    return new TapeKind(
        name,
        amount(random),
        random.nextBoolean() ? 0 : amount(random),
        overlap + Math.max(overlap, amount(random)),
        random.nextInt(20),
        random.nextDouble(),
        pick(random, NAMES));
  }

  private static Job.PlatingRules plating(Random random) {
    double flash = amount(random);
    Optional<Recipe> own = random.nextBoolean() ? Optional.empty() : Optional.of(recipe(random));
    return new Job.PlatingRules(
        own.map(Recipe::id).orElse("brass"),
        own,
        "gold-hard",
        flash,
        flash + amount(random),
        spread(random, 1),
        amount(random),
        1 - random.nextDouble(),
        spread(random, 100),
        1 - random.nextDouble(),
        new Tool(maybe(random), maybe(random), maybe(random), maybe(random)),
        random.nextBoolean()
            ? Optional.empty()
            : Optional.of(
                new Job.Hold(
                    point(random).add(Vector3D.of(0, 0, 1e4)), 180 * (1 - random.nextDouble()))),
        pace(random, own),
        sheet(random));
  }

  private static Solution sheet(Random random) {
    if (random.nextBoolean()) {
      return Solution.UNKNOWN;
    }
    OptionalDouble from = maybe(random);
    OptionalDouble to =
        from.isPresent()
            ? OptionalDouble.of(from.getAsDouble() + random.nextDouble())
            : OptionalDouble.empty();
    return new Solution(
        pick(random, NAMES),
        random.nextBoolean() ? Solution.Form.GEL : Solution.Form.LIQUID,
        from,
        to,
        pick(random, NAMES),
        pick(random, NAMES));
  }

  private static List<Vector3D> points(Random random) {
    return Stream.generate(() -> point(random)).limit(random.nextInt(3)).toList();
  }

  private static BenchPace pace(Random random, Optional<Recipe> own) {
    List<BenchPace.OfStep> steps = new ArrayList<>();
    if (random.nextBoolean()) {
      List<String> names =
          own.isPresent() ? BenchPace.wetSteps(own.get()) : List.of("Nickel", "Gold flash");
      steps.add(
          new BenchPace.OfStep(names.get(0), maybe(random), maybe(random), OptionalInt.empty()));
      steps.add(
          new BenchPace.OfStep(
              names.get(1), maybe(random), OptionalDouble.empty(), OptionalInt.of(3)));
    }
    return new BenchPace(
        maybe(random),
        maybe(random),
        maybe(random),
        maybe(random),
        random.nextBoolean() ? OptionalInt.empty() : OptionalInt.of(1 + random.nextInt(20)),
        steps);
  }

  private static OptionalDouble maybe(Random random) {
    return random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(amount(random));
  }

  private static Spread spread(Random random, double scale) {
    double low = scale * (1 - random.nextDouble());
    double likely = low + random.nextInt(2) * scale * random.nextDouble();
    return new Spread(low, likely, likely + random.nextInt(2) * scale * random.nextDouble());
  }

  private static Recipe recipe(Random random) {
    List<Step> steps = new ArrayList<>();
    for (Step.Kind kind : Step.Kind.values()) {
      steps.add(
          new Step(
              kind + " " + random.nextInt(9),
              pick(random, NAMES),
              kind,
              pick(random, NAMES),
              random.nextBoolean() ? Step.DIRECT : "",
              random.nextBoolean() ? 0 : amount(random),
              1 + random.nextInt(9),
              random.nextInt(30),
              pick(random, NAMES),
              pick(random, NAMES),
              pick(random, NAMES),
              pick(random, NAMES)));
    }
    return new Recipe("own", "Gun metal", random.nextBoolean(), steps, List.of("Ask first."));
  }

  private static QuoteRates quote(Random random) {
    return new QuoteRates(
        pick(random, NAMES),
        amount(random),
        random.nextInt(9),
        amount(random),
        amount(random),
        amount(random),
        random.nextInt(50),
        random.nextDouble(),
        random.nextDouble(),
        random.nextInt(500),
        random.nextDouble(),
        random.nextInt(90),
        random.nextBoolean());
  }

  private static SectionChoices choices(Random random) {
    boolean ownWay = random.nextBoolean();
    return new SectionChoices(
        ownWay ? Optional.of(way(random)) : Optional.empty(),
        ownWay || random.nextBoolean()
            ? Optional.empty()
            : Optional.of(new SectionSymmetry(axis(random), random.nextInt(2) * 5)),
        Stream.generate(() -> edit(random)).limit(random.nextInt(6)).toList());
  }

  private static SectionAxis axis(Random random) {
    return new SectionAxis(
        random.nextBoolean() ? Optional.empty() : Optional.of(point(random)),
        random.nextBoolean()
            ? Optional.empty()
            : Optional.of(point(random).add(Vector3D.of(0, 0, 1e4))),
        random.nextBoolean()
            ? Optional.empty()
            : Optional.of(point(random).add(Vector3D.of(1e4, 0, 0))));
  }

  private static SectionAxis axisWithoutZero(Random random) {
    SectionAxis axis = axis(random);
    return new SectionAxis(axis.point(), axis.direction(), Optional.empty());
  }

  private static SectionWay.Rings rings(Random random, SectionAxis axis) {
    double first = coordinate(random) + 0.0;
    boolean given = random.nextBoolean();
    return new SectionWay.Rings(
        axis,
        pick(random, SectionWay.By.values()),
        given ? 0 : random.nextInt(9),
        given ? List.of(first, first + amount(random) + 1e-3) : List.of());
  }

  private static SectionWay way(Random random) {
    return switch (random.nextInt(5)) {
      case 0 -> rings(random, axisWithoutZero(random));
      case 1 -> new SectionWay.Sectors(axis(random), 2 + random.nextInt(9));
      case 2 -> new SectionWay.RingsAndSectors(rings(random, axis(random)), 7);
      case 3 -> new SectionWay.Strips(point(random).add(Vector3D.of(0, 0, 1e4)), random.nextInt(5));
      default -> new SectionWay.NaturalFaces(180 * (1 - random.nextDouble()));
    };
  }

  private static SectionEdit edit(Random random) {
    List<Vector3D> path =
        Stream.generate(() -> point(random)).limit(2 + random.nextInt(4)).toList();
    return switch (random.nextInt(7)) {
      case 0 -> new SectionEdit.Merge(point(random), point(random));
      case 1 -> new SectionEdit.SplitAlong(point(random), path);
      case 2 -> new SectionEdit.SplitEvenly(point(random), 2 + random.nextInt(5));
      case 3 -> new SectionEdit.MoveSeam(point(random), point(random), path);
      case 4 -> new SectionEdit.Pin(path);
      case 5 -> new SectionEdit.Rename(point(random), pick(random, NAMES));
      default -> new SectionEdit.Renumber(point(random), 1 + random.nextInt(40));
    };
  }

  private static SurfaceRecord surface(Random random) {
    return new SurfaceRecord(
        amount(random),
        Stream.generate(() -> rounded(random)).limit(16 + random.nextInt(9)).toList());
  }

  private static Vector3D rounded(Random random) {
    return Vector3D.of(
        random.nextInt(1_000_000) / 1e3, random.nextInt(10) - 5, -random.nextInt(1_000_000) / 1e8);
  }

  private static Repair repair(Random random) {
    OptionalDouble length =
        random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(amount(random));
    return switch (random.nextInt(12)) {
      case 0 ->
          new Repair.KeepParts(
              Stream.generate(() -> point(random)).limit(1 + random.nextInt(4)).toList());
      case 1 -> new Repair.KeepLargest(1 + random.nextInt(9));
      case 2 -> new Repair.KeepAbove(1 - random.nextDouble());
      case 3 ->
          new Repair.CutTable(
              random.nextBoolean() ? Optional.empty() : Optional.of(point(random)), length);
      case 4 -> new Repair.CutBelow(point(random), point(random).add(Vector3D.of(0, 0, 1e4)));
      case 5 -> new Repair.DropFaulty();
      case 6 -> new Repair.TurnOutward();
      case 7 -> new Repair.FillHoles(amount(random));
      case 8 -> new Repair.DropInner();
      case 9 -> new Repair.DropHidden();
      case 10 -> new Repair.Weld(length);
      default -> new Repair.SplitEdges(length);
    };
  }

  private static Mark mark(Random random) {
    String name = pick(random, NAMES);
    Treatment treatment = pick(random, Treatment.values());
    return switch (random.nextInt(9)) {
      case 0 ->
          new Mark.HalfSpace(
              name, treatment, point(random), point(random).add(Vector3D.of(0, 0, 1e4)));
      case 1 ->
          new Mark.Near(
              name,
              treatment,
              Stream.generate(() -> point(random)).limit(1 + random.nextInt(40)).toList(),
              amount(random));
      case 2 ->
          new Mark.CreaseFill(name, treatment, point(random), 180 * (1 - random.nextDouble()));
      case 3 -> new Mark.WholePart(name, treatment, point(random));
      case 4 -> sector(random, name, treatment);
      case 5 -> new Mark.OutOfReach(name, treatment, amount(random));
      case 6 -> new Mark.InnerShells(name, treatment);
      case 7 ->
          new Mark.Inside(
              name,
              treatment,
              new Mark.Body(
                  "bodies/plug.stl",
                  random.nextBoolean() ? "" : "in",
                  random.nextBoolean() ? "" : "0a".repeat(32),
                  Vector3D.of(0, 0.25, 1 + random.nextDouble()),
                  720 * random.nextDouble() - 360,
                  point(random)));
      default -> {
        Vector3D low = point(random);
        yield new Mark.InBox(
            name, treatment, low, low.add(Vector3D.of(1, 1, 1 + 100 * random.nextDouble())));
      }
    };
  }

  private static Mark sector(Random random, String name, Treatment treatment) {
    double from = 720 * random.nextDouble() - 360;
    return new Mark.Sector(
        name,
        treatment,
        point(random),
        Vector3D.of(0, 0.25, 1 + random.nextDouble()),
        Vector3D.of(random.nextDouble(), 1, -0.0),
        from,
        from + 1 + 358 * random.nextDouble());
  }

  private static Vector3D point(Random random) {
    return Vector3D.of(coordinate(random), coordinate(random), coordinate(random));
  }

  private static double coordinate(Random random) {
    return switch (random.nextInt(4)) {
      case 0 -> random.nextInt(200) - 100.5;
      case 1 -> -0.0;
      default -> 1000 * random.nextGaussian();
    };
  }

  /** Positive: round figures of both systems, and figures with all bits used. */
  private static double amount(Random random) {
    return switch (random.nextInt(4)) {
      case 0 -> 1 + random.nextInt(50);
      case 1 -> 0.5 * 25.4 * (1 + random.nextInt(20));
      case 2 -> Math.exp(40 * random.nextDouble() - 20);
      default -> 1 + 99 * random.nextDouble();
    };
  }

  private static <T> T pick(Random random, T[] from) {
    return from[random.nextInt(from.length)];
  }
}
