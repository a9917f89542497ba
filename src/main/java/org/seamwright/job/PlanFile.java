package org.seamwright.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.seamwright.basis.IoReason;
import org.seamwright.measure.Survey;
import org.seamwright.plating.Deposit;
import org.seamwright.plating.Deposits;
import org.seamwright.plating.PlatingException;
import org.seamwright.plating.Spread;

/**
 * What the bench checks its work against, read back from a plan.json.
 *
 * @param piece name of the piece
 * @param deposit the metal
 * @param thicknessUm flash and build together, µm
 * @param loss share added for loss
 * @param secondsPerCm2PerUm plating rate
 * @param efficiency current efficiency
 * @param areaBar relative standard uncertainty of areas, from the bar of the surveyed surface
 * @param netMm2 plated area of each section by its number, mm²
 */
public record PlanFile(
    String piece,
    Deposit deposit,
    double thicknessUm,
    Spread loss,
    double secondsPerCm2PerUm,
    double efficiency,
    double areaBar,
    Map<Integer, Double> netMm2) {
  /** Half-width of a bar over this is a standard uncertainty (JCGM 100:2008, 4.3.7). */
  private static final double RECTANGULAR = Math.sqrt(3);

  /** Copies the map, in the order of the plan. */
  public PlanFile {
    netMm2 = Collections.unmodifiableMap(new LinkedHashMap<>(netMm2));
  }

  /** What a plan that was just made tells, as its plan.json would. */
  public static PlanFile of(PlannedJob planned) {
    Survey.SmoothArea smooth = planned.survey().smooth();
    Map<Integer, Double> net = new LinkedHashMap<>();
    planned.sections().sections().forEach(s -> net.put(s.id(), s.netMm2()));
    return new PlanFile(
        planned.job().piece(),
        planned.settings().deposit(),
        planned.settings().thicknessUm(),
        planned.settings().loss(),
        planned.settings().secondsPerCm2PerUm(),
        planned.settings().efficiency(),
        areaBar(smooth.lowMm2(), smooth.areaMm2(), smooth.highMm2()),
        net);
  }

  private static double areaBar(double low, double area, double high) {
    return (high - low) / 2 / RECTANGULAR / area;
  }

  /** Plated area of all sections, mm². */
  public double netMm2All() {
    return netMm2.values().stream().mapToDouble(Double::doubleValue).sum();
  }

  /**
   * Reads a plan.
   *
   * @throws PlanException if it can't be read or is no plan
   */
  public static PlanFile read(Path file) throws PlanException {
    try {
      return of(JsonTree.parse(Files.readAllBytes(file), file.toString()), file.toString());
    } catch (IOException e) {
      PlanException refusal =
          new PlanException(
              file.toString(),
              "",
              "The plan cannot be read: " + IoReason.of(e),
              "Name the plan.json that the command \"plan\" wrote.");
      refusal.initCause(e);
      throw refusal;
    } catch (JobFileException | PlatingException e) {
      PlanException refusal =
          new PlanException(
              file.toString(),
              e.place(),
              e.problem(),
              "Plan the job again, and name the plan.json that it writes.");
      refusal.initCause(e);
      throw refusal;
    }
  }

  private static PlanFile of(JsonValue root, String source) throws PlanException, PlatingException {
    JsonValue settings = member(root, "settings", source);
    JsonValue mesh = member(root, "mesh", source);
    double low = number(mesh, "smoothLowMm2", source);
    double high = number(mesh, "smoothHighMm2", source);
    double area = number(mesh, "smoothAreaMm2", source);
    Map<Integer, Double> net = new LinkedHashMap<>();
    if (!(member(root, "sections", source) instanceof JsonValue.Items sections)) {
      throw noPlan(source, "sections");
    }
    for (JsonValue section : sections.values()) {
      net.put((int) number(section, "id", source), number(section, "netMm2", source));
    }
    return new PlanFile(
        text(root, "piece", source),
        Deposits.byId(text(settings, "deposit", source)),
        number(settings, "thicknessUm", source),
        new Spread(
            number(settings, "lossLow", source),
            number(settings, "lossShare", source),
            number(settings, "lossHigh", source)),
        number(settings, "secondsPerCm2PerUm", source),
        number(settings, "efficiency", source),
        areaBar(low, area, high),
        net);
  }

  private static JsonValue member(JsonValue of, String key, String source) throws PlanException {
    if (of instanceof JsonValue.Members members && members.values().containsKey(key)) {
      return members.values().get(key);
    }
    throw noPlan(source, key);
  }

  private static double number(JsonValue of, String key, String source) throws PlanException {
    if (member(of, key, source) instanceof JsonValue.Figure figure) {
      return figure.value();
    }
    throw noPlan(source, key);
  }

  private static String text(JsonValue of, String key, String source) throws PlanException {
    if (member(of, key, source) instanceof JsonValue.Text text) {
      return text.value();
    }
    throw noPlan(source, key);
  }

  private static PlanException noPlan(String source, String key) {
    return new PlanException(
        source,
        key,
        "This is no plan, or one of an earlier version: \"" + key + "\" is missing or no fit",
        "Plan the job again, and name the plan.json that it writes.");
  }
}
