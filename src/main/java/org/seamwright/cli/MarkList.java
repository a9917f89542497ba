package org.seamwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.seamwright.job.JobFileException;
import org.seamwright.job.MarkWords;
import org.seamwright.region.Mark;
import picocli.CommandLine;

/** Marks as a command line names them: by number, counted from 1, or by name. */
final class MarkList {
  private final List<Mark> marks;
  private final Path jobFile;
  private final CommandLine line;

  MarkList(List<Mark> marks, Path jobFile, CommandLine line) {
    this.marks = marks;
    this.jobFile = jobFile;
    this.line = line;
  }

  /** Position, from 0, of the mark that a word names. */
  int index(String word) {
    if (word.matches("\\d+")) {
      return position(word, marks.size());
    }
    int[] found =
        IntStream.range(0, marks.size()).filter(i -> marks.get(i).name().equals(word)).toArray();
    if (found.length == 1) {
      return found[0];
    }
    if (found.length > 1) {
      throw wrong(
          "Several marks are called \""
              + word
              + "\": numbers "
              + String.join(", ", IntStream.of(found).mapToObj(i -> "" + (i + 1)).toList())
              + ". Name it by its number.");
    }
    throw wrong("No mark of " + jobFile + " is called \"" + word + "\". " + known());
  }

  /** A position among so many, from 0, written as a number from 1. */
  int position(String word, int most) {
    int number;
    try {
      number = Integer.parseInt(word);
    } catch (NumberFormatException e) {
      number = 0;
    }
    if (number < 1 || number > most) {
      throw wrong("\"" + word + "\" is no position: " + jobFile + " has " + range(most) + ".");
    }
    return number - 1;
  }

  private static String range(int most) {
    return switch (most) {
      case 0 -> "no marks";
      case 1 -> "one mark, number 1";
      default -> "positions 1 to " + most;
    };
  }

  private String known() {
    List<String> names =
        marks.stream().map(Mark::name).filter(n -> !n.isEmpty()).distinct().toList();
    return names.isEmpty()
        ? "None has a name: use its number."
        : "Known: \"" + String.join("\", \"", names) + "\".";
  }

  /** The marks with one replaced. */
  List<Mark> with(int index, Mark mark) {
    List<Mark> changed = new ArrayList<>(marks);
    changed.set(index, mark);
    return changed;
  }

  /** The marks with some keys of one of them replaced. */
  List<Mark> with(int index, Map<String, String> keys) {
    return with(index, read(() -> MarkWords.changed(marks.get(index), keys)));
  }

  /** How a mark is told of. */
  static String called(int index, Mark mark) {
    return "mark "
        + (index + 1)
        + (mark.name().isEmpty() ? "" : " \"" + mark.name() + "\"")
        + ", "
        + MarkWords.kindOf(mark);
  }

  /** Reads something typed. */
  @FunctionalInterface
  interface Reading<T> {
    T read() throws JobFileException;
  }

  /** What was typed, or a refusal of the command line. */
  <T> T read(Reading<T> reading) {
    try {
      return reading.read();
    } catch (JobFileException e) {
      String place = e.place().isEmpty() ? "" : e.place() + ": ";
      throw wrong(place + e.problem() + ". " + e.remedy());
    }
  }

  CommandLine.ParameterException wrong(String message) {
    return new CommandLine.ParameterException(line, message);
  }
}
