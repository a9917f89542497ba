package org.seamwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** What {@code docs/marks.md} says of each kind of mark. */
final class MarkPage {
  static final Path FILE = Path.of("docs", "marks.md");
  static final Path IMAGES = Path.of("docs", "images");

  private static final Pattern SECTION =
      Pattern.compile("^## `(\\w+)`\\n(.*?)(?=^## |\\z)", Pattern.MULTILINE | Pattern.DOTALL);
  private static final Pattern COMMAND =
      Pattern.compile("^    seamwright mark ([\\w-]+)\\.json (add .*)$", Pattern.MULTILINE);

  /**
   * An example.
   *
   * @param piece name of a sample piece
   * @param commands words after the job, as a shell splits them
   * @param image the picture shown
   */
  record Example(String piece, List<List<String>> commands, Path image) {}

  private MarkPage() {}

  /** The example of each kind, in the order of the page. */
  static Map<String, Example> examples() throws IOException {
    Map<String, Example> examples = new LinkedHashMap<>();
    for (MatchResult section : SECTION.matcher(Files.readString(FILE)).results().toList()) {
      String kind = section.group(1);
      List<MatchResult> commands = COMMAND.matcher(section.group(2)).results().toList();
      String image = "mark-" + kind + ".png";
      if (commands.isEmpty() || !section.group(2).contains("(images/" + image + ")")) {
        throw new IllegalStateException("No example or picture of " + kind + " in " + FILE);
      }
      examples.put(
          kind,
          new Example(
              commands.get(0).group(1),
              commands.stream().map(c -> split(c.group(2))).toList(),
              IMAGES.resolve(image)));
    }
    return examples;
  }

  /** As a shell splits words: at blanks outside double quotes. */
  static List<String> split(String words) {
    return Pattern.compile("(?:[^\\s\"]|\"[^\"]*\")+")
        .matcher(words)
        .results()
        .map(m -> m.group().replace("\"", ""))
        .toList();
  }
}
