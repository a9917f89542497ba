package org.seamwright;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Draws {@code docs/images/architecture.svg} from the imports of the sources: a box for each
 * package, each above all that it imports, and a line to those that no other of its imports leads
 * to already.
 */
final class ArchitecturePicture {
  static final Path FILE = Path.of("docs", "images", "architecture.svg");

  private static final Path SOURCES = Path.of("src", "main", "java", "org", "seamwright");
  private static final Pattern IMPORT =
      Pattern.compile("^import (?:static )?org\\.seamwright\\.(\\w+)\\.", Pattern.MULTILINE);

  /** Between the ends in the name of a place where a line passes a row. */
  private static final String PASSING = ">";

  private static final int WIDTH = 1080;
  private static final int BOX_WIDTH = 92;
  private static final int BOX_HEIGHT = 36;
  private static final int ROW = 88;

  private ArchitecturePicture() {}

  /** Draws the picture anew. */
  public static void main(String[] args) throws IOException {
    Files.writeString(FILE, svg(imports()));
  }

  /** What each package imports of the project. */
  static Map<String, Set<String>> imports() throws IOException {
    Map<String, Set<String>> imports = new TreeMap<>();
    try (Stream<Path> files = Files.walk(SOURCES)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
        String from = SOURCES.relativize(file).getName(0).toString();
        Set<String> to = imports.computeIfAbsent(from, p -> new TreeSet<>());
        IMPORT.matcher(Files.readString(file)).results().map(m -> m.group(1)).forEach(to::add);
        to.remove(from);
      }
    }
    return imports;
  }

  static String svg(Map<String, Set<String>> imports) {
    Map<String, Integer> row = new TreeMap<>();
    imports.keySet().forEach(p -> row(p, imports, row));
    int rows = 1 + row.values().stream().mapToInt(Integer::intValue).max().orElse(0);
    List<List<String>> lines = lines(imports, row);
    Map<String, int[]> middle = places(lines, row, rows);
    StringBuilder svg = new StringBuilder();
    svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ").append(WIDTH);
    svg.append(' ').append(rows * ROW).append("\" font-family=\"sans-serif\" font-size=\"15\">\n");
    svg.append("<title>Packages of Seamwright: each stands above all that it imports</title>\n");
    svg.append("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n");
    svg.append("<g stroke=\"#7a8794\" stroke-width=\"1.2\" fill=\"none\">\n");
    lines.forEach(line -> line(line, middle, svg));
    svg.append("</g>\n");
    imports.keySet().forEach(name -> box(name, middle.get(name), svg));
    return svg.append("</svg>\n").toString();
  }

  /** Row from the top: right below the lowest package that imports it. */
  private static int row(String of, Map<String, Set<String>> imports, Map<String, Integer> known) {
    Integer found = known.get(of);
    if (found == null) {
      found = 0;
      for (Map.Entry<String, Set<String>> by : imports.entrySet()) {
        if (by.getValue().contains(of)) {
          found = Math.max(found, 1 + row(by.getKey(), imports, known));
        }
      }
      known.put(of, found);
    }
    return found;
  }

  /**
   * Each line as the names that it goes through; where it passes a row it has a place of its own
   * there, as in the layered drawings of Sugiyama, Tagawa and Toda (1981), so that it runs behind
   * no box.
   */
  private static List<List<String>> lines(
      Map<String, Set<String>> imports, Map<String, Integer> row) {
    List<List<String>> lines = new ArrayList<>();
    for (String from : imports.keySet()) {
      for (String to : direct(imports.get(from), imports)) {
        List<String> line = new ArrayList<>(List.of(from));
        for (int r = row.get(from) + 1; r < row.get(to); r++) {
          line.add(from + PASSING + to + PASSING + r);
          row.put(line.get(line.size() - 1), r);
        }
        line.add(to);
        lines.add(line);
      }
    }
    return lines;
  }

  /** Each row in the order of the mean place of what leads to it, so that few lines cross. */
  private static Map<String, int[]> places(
      List<List<String>> lines, Map<String, Integer> row, int rows) {
    Map<String, int[]> places = new TreeMap<>();
    for (int r = 0; r < rows; r++) {
      int level = r;
      List<String> names =
          new ArrayList<>(row.keySet().stream().filter(p -> row.get(p) == level).toList());
      names.sort(Comparator.comparingDouble(p -> meanAbove(p, lines, places)));
      double all = names.stream().mapToDouble(ArchitecturePicture::share).sum();
      double before = 0;
      for (String name : names) {
        double x = (before + share(name) / 2) / all * WIDTH;
        places.put(name, new int[] {(int) Math.round(x), r * ROW + ROW / 2});
        before += share(name);
      }
    }
    return places;
  }

  /** Width that a name takes in its row, as a share of a box. */
  private static double share(String name) {
    return name.contains(PASSING) ? 0.3 : 1;
  }

  private static double meanAbove(String of, List<List<String>> lines, Map<String, int[]> places) {
    return lines.stream()
        .filter(line -> line.indexOf(of) > 0)
        .mapToInt(line -> places.get(line.get(line.indexOf(of) - 1))[0])
        .average()
        .orElse(WIDTH / 2.0);
  }

  /** Imports that no other import leads to. */
  private static List<String> direct(Set<String> all, Map<String, Set<String>> imports) {
    return all.stream()
        .filter(to -> all.stream().noneMatch(by -> reaches(by, to, imports)))
        .toList();
  }

  private static boolean reaches(String from, String to, Map<String, Set<String>> imports) {
    return imports.get(from).stream().anyMatch(n -> n.equals(to) || reaches(n, to, imports));
  }

  private static void line(List<String> line, Map<String, int[]> middle, StringBuilder svg) {
    svg.append("<polyline points=\"");
    for (String name : line) {
      int[] at = middle.get(name);
      boolean passing = name.contains(PASSING);
      if (!name.equals(line.get(0))) {
        svg.append(' ').append(at[0]).append(',').append(at[1] - BOX_HEIGHT / 2);
      }
      if (passing || name.equals(line.get(0))) {
        svg.append(' ').append(at[0]).append(',').append(at[1] + BOX_HEIGHT / 2);
      }
    }
    svg.append("\"/>\n");
  }

  private static void box(String name, int[] at, StringBuilder svg) {
    svg.append("<rect x=\"").append(at[0] - BOX_WIDTH / 2).append("\" y=\"");
    svg.append(at[1] - BOX_HEIGHT / 2).append("\" width=\"").append(BOX_WIDTH);
    svg.append("\" height=\"").append(BOX_HEIGHT);
    svg.append("\" rx=\"5\" fill=\"#eef2f6\" stroke=\"#34495e\"/>\n<text x=\"").append(at[0]);
    svg.append("\" y=\"").append(at[1] + 5).append("\" text-anchor=\"middle\">").append(name);
    svg.append("</text>\n");
  }
}
