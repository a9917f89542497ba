package org.seamwright.bench;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.zip.CRC32;
import org.seamwright.job.PlanFile;
import org.seamwright.job.PlannedJob;
import org.seamwright.mask.MaskPlan;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.plating.Step;
import org.seamwright.section.Section;
import org.seamwright.units.UnitFormat;
import org.seamwright.units.UnitSystem;

/**
 * What a run is worked by: the sections in working order and the steps that each goes through.
 *
 * <p>A section is worked in two goes. The first runs from its first step to the flash that covers
 * it; the second, build and finish, follows when all sections are flashed. A build of no thickness
 * is left out, as the plan leaves it out.
 *
 * @param figures what measured thickness is compared with
 * @param display units to show
 * @param steps steps of the recipe, with the shop's pace
 * @param sections in working order; their numbers are 1, 2, 3 …
 * @param masks what is to be covered before, one line each
 * @param windowSeconds how long a wetted place stays wet, s
 * @param gPerL metal in the solution, g/l
 * @param usableShare share of it that can be laid down
 * @param dipMl solution taken up in one dip, ml, if the shop knows it
 */
public record BenchPlan(
    PlanFile figures,
    UnitSystem display,
    List<Step> steps,
    List<Task> sections,
    List<String> masks,
    double windowSeconds,
    double gPerL,
    double usableShare,
    OptionalDouble dipMl) {
  private static final double MM2_PER_CM2 = 100;

  /**
   * One section.
   *
   * @param id its number
   * @param netMm2 plated area, mm²
   * @param wetMm2 area that must stay wet: net and activation lap, mm²
   * @param flashMm2 area of its flash: net and flash lap, mm²
   * @param seconds planned time of each step, handling included, s
   * @param solutionMl solution to have ready, ml
   * @param chargeAh planned charge, A·h
   */
  public record Task(
      int id,
      double netMm2,
      double wetMm2,
      double flashMm2,
      List<Double> seconds,
      double solutionMl,
      double chargeAh) {
    /** Copies the list. */
    public Task {
      seconds = List.copyOf(seconds);
    }
  }

  /** Copies the lists and checks that there is one flash. */
  public BenchPlan {
    steps = List.copyOf(steps);
    sections = List.copyOf(sections);
    masks = List.copyOf(masks);
    if (steps.stream().filter(s -> s.kind() == Step.Kind.FLASH).count() != 1) {
      throw new IllegalArgumentException("A run needs exactly one flash");
    }
  }

  /** From a planned job. */
  public static BenchPlan of(PlannedJob planned) {
    List<Step> all = planned.settings().recipe().steps();
    boolean build = planned.settings().buildUm() > 0;
    List<Integer> kept = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      if (build || all.get(i).kind() != Step.Kind.BUILD) {
        kept.add(i);
      }
    }
    List<Task> tasks = new ArrayList<>();
    for (Section section : planned.sections().sections()) {
      PlatingPlan.SectionAmounts amounts = planned.plating().sections().get(section.id() - 1);
      tasks.add(
          new Task(
              section.id(),
              section.netMm2(),
              section.netMm2() + section.activationLapMm2(),
              section.netMm2() + section.flashLapMm2(),
              kept.stream().map(amounts.steps()::get).toList(),
              amounts.solutionMl(),
              amounts.chargeAh()));
    }
    return new BenchPlan(
        PlanFile.of(planned),
        planned.job().display(),
        kept.stream().map(all::get).toList(),
        tasks,
        masks(planned),
        planned.job().sections().limit().windowSeconds(),
        planned.settings().solutionGPerL(),
        planned.settings().usableShare(),
        planned.settings().tool().dipMl());
  }

  private static List<String> masks(PlannedJob planned) {
    UnitFormat in = new UnitFormat(planned.job().display(), Locale.ENGLISH);
    List<String> lines = new ArrayList<>();
    for (MaskPlan.Mask mask : planned.masks().masks()) {
      double tapeMm = mask.tape().stream().mapToDouble(MaskPlan.TapeStrip::totalMm).sum();
      lines.add(
          BenchTexts.mask(
              mask.id(),
              in.length(mask.edgeMm()),
              tapeMm > 0 ? in.length(tapeMm) : "",
              mask.lacquerMl() > 0 ? in.volume(mask.lacquerMl()) : ""));
    }
    return lines;
  }

  /** Number of the flash among the steps. */
  public int flash() {
    int i = 0;
    while (steps.get(i).kind() != Step.Kind.FLASH) {
      i++;
    }
    return i;
  }

  /**
   * Time of one pass over a section, handling left out, s.
   *
   * @param section number in the list, from 0
   * @param step number of a step, from 0
   */
  public double passSeconds(int section, int step) {
    Step of = steps.get(step);
    Task task = sections.get(section);
    if (of.kind() == Step.Kind.WET) {
      return of.secondsPerCm2() * task.wetMm2() / MM2_PER_CM2;
    }
    return Math.max(0, task.seconds().get(step) - of.handlingSeconds()) / of.passes();
  }

  /**
   * A text that changes when the events of a run would mean something else: sections, their areas
   * to three digits, steps, masks, metal.
   */
  public String fingerprint() {
    StringBuilder all = new StringBuilder(figures.deposit().id());
    steps.forEach(s -> all.append('|').append(s.kind()).append(' ').append(s.name()));
    sections.forEach(
        t ->
            all.append('|').append(t.id()).append(String.format(Locale.ROOT, " %.3g", t.netMm2())));
    all.append('|').append(masks.size());
    CRC32 crc = new CRC32();
    crc.update(all.toString().getBytes(StandardCharsets.UTF_8));
    return String.format(Locale.ROOT, "%08x-%d-%d", crc.getValue(), sections.size(), steps.size());
  }
}
