package org.seamwright.paper;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.seamwright.job.PlannedJob;
import org.seamwright.mask.MaskPlan;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.section.Junction;
import org.seamwright.section.Seam;
import org.seamwright.section.Section;

/**
 * Figures for spreadsheets, as RFC 4180 has them: commas, CRLF, a head line with units in the
 * names, a point in decimals whatever the country. Values are rounded to a millionth of their unit.
 */
public final class Csv {
  private static final int DECIMALS = 6;
  private static final String END = "\r\n";

  private Csv() {}

  /**
   * Writes one line per section.
   *
   * @throws IOException if the file can't be written
   */
  public static void sections(PlannedJob planned, Path file) throws IOException {
    Brief brief = new Brief(planned, LocalDate.EPOCH);
    List<String> lines = new ArrayList<>();
    lines.add(
        "section,net_mm2,activation_lap_mm2,flash_lap_mm2,worked_mm2,limit_mm2,flash_g,build_g,"
            + "loss_g,gold_g,solution_ml,charge_ah,time_s");
    for (Section s : planned.sections().sections()) {
      PlatingPlan.SectionAmounts a = brief.amounts(s.id());
      lines.add(
          row(
              s.id(),
              s.netMm2(),
              s.activationLapMm2(),
              s.flashLapMm2(),
              s.workedMm2(),
              planned.limitMm2(),
              a.flashG(),
              a.buildG(),
              a.lossG(),
              a.goldG(),
              a.solutionMl(),
              a.chargeAh(),
              a.seconds()));
    }
    write(lines, file);
  }

  /**
   * Writes one line per seam.
   *
   * @throws IOException if the file can't be written
   */
  public static void seams(PlannedJob planned, Path file) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add("earlier_section,later_section,length_mm,activation_lap_mm2,flash_lap_mm2");
    for (Seam s : planned.sections().seams()) {
      lines.add(
          s.earlier() + "," + row(s.later(), s.lengthMm(), s.activationLapMm2(), s.flashLapMm2()));
    }
    write(lines, file);
  }

  /**
   * Writes one line per place where three sections or more meet; sections are parted by blanks.
   *
   * @throws IOException if the file can't be written
   */
  public static void junctions(PlannedJob planned, Path file) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add("place,x_mm,y_mm,z_mm,sections");
    for (Junction j : planned.sections().junctions().places()) {
      String sections = j.sections().stream().map(String::valueOf).collect(Collectors.joining(" "));
      lines.add(row(lines.size(), j.xMm(), j.yMm(), j.zMm()) + "," + sections);
    }
    write(lines, file);
  }

  /**
   * Writes one line per mask.
   *
   * @throws IOException if the file can't be written
   */
  public static void masks(PlannedJob planned, Path file) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add("mask,edge_mm,tape_mm,tape_area_mm2,lacquer_area_mm2,lacquer_ml,bare_area_mm2");
    for (MaskPlan.Mask m : planned.masks().masks()) {
      double tape = 0;
      for (MaskPlan.TapeStrip strip : m.tape()) {
        tape += strip.totalMm();
      }
      lines.add(
          row(m.id(), m.edgeMm(), tape, m.tapeMm2(), m.lacquerMm2(), m.lacquerMl(), m.areaMm2()));
    }
    write(lines, file);
  }

  private static String row(int id, double... values) {
    StringBuilder line = new StringBuilder().append(id);
    for (double value : values) {
      line.append(',').append(number(value));
    }
    return line.toString();
  }

  private static String number(double value) {
    BigDecimal rounded =
        BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_UP).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }

  private static void write(List<String> lines, Path file) throws IOException {
    String text = String.join(END, lines) + END;
    Files.write(file, text.getBytes(StandardCharsets.UTF_8));
  }
}
