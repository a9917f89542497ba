package org.seamwright.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamwright.basis.Notice;
import org.seamwright.job.Job;
import org.seamwright.job.MarkWords;
import org.seamwright.job.MarkedJob;
import org.seamwright.region.Mark;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;
import org.seamwright.units.UnitFormat;

/** The marks of a job in columns, and what they add up to. */
final class MarkTable {
  private MarkTable() {}

  static void print(Job job, Optional<MarkedJob> done, PrintWriter out) {
    UnitFormat in = Figures.in(job.display());
    List<List<String>> rows = new ArrayList<>();
    rows.add(
        done.isPresent()
            ? List.of("No.", "Kind", "Treatment", "Covers", "Changes", "Name")
            : List.of("No.", "Kind", "Treatment", "Name"));
    for (int i = 0; i < job.marks().size(); i++) {
      Mark mark = job.marks().get(i);
      List<String> row = new ArrayList<>();
      row.add(Integer.toString(i + 1));
      row.add(MarkWords.kindOf(mark));
      row.add(treatment(mark));
      if (done.isPresent()) {
        SurfaceMap.Effect effect = done.get().map().effects().get(i);
        row.add(in.area(effect.coveredMm2()));
        row.add(in.area(effect.changedMm2()));
      }
      row.add(mark.name());
      rows.add(row);
    }
    if (rows.size() > 1) {
      print(rows, out);
    } else {
      out.println("No marks.");
    }
    MeasureCommand.row(out, "Elsewhere", MarkWords.word(job.ground()));
    done.ifPresent(marked -> totals(marked, in, out));
  }

  private static String treatment(Mark mark) {
    if (mark instanceof Mark.Off) {
      return "off";
    }
    return mark instanceof Mark.Place place ? MarkWords.word(place.treatment()) : "-";
  }

  static void print(List<List<String>> rows, PrintWriter out) {
    int columns = rows.get(0).size();
    int[] width = new int[columns];
    for (List<String> row : rows) {
      for (int i = 0; i < columns; i++) {
        width[i] = Math.max(width[i], row.get(i).length());
      }
    }
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder();
      for (int i = 0; i < columns; i++) {
        line.append(row.get(i)).append(" ".repeat(width[i] - row.get(i).length() + 2));
      }
      out.println(line.toString().stripTrailing());
    }
  }

  private static void totals(MarkedJob marked, UnitFormat in, PrintWriter out) {
    SurfaceMap map = marked.map();
    MeasureCommand.row(out, "To plate", in.area(map.areaMm2(Treatment.PLATE)));
    MeasureCommand.row(out, "Stays bare", in.area(map.areaMm2(Treatment.BARE)));
    MeasureCommand.row(out, "Out of scope", in.area(map.areaMm2(Treatment.OUT_OF_SCOPE)));
    for (Notice notice : marked.notices()) {
      MeasureCommand.row(out, "Note", notice.text());
    }
  }
}
