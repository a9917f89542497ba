package org.seamwright.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.job.SectionWords;
import org.seamwright.section.SectionChoices;
import org.seamwright.section.SectionEdit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The commands that add an edit of sections to a job. */
final class SectionEditCommands {
  private static final String WHICH = "Number of the section as listed, or a point on it, [x,y,z].";

  private SectionEditCommands() {}

  /** Adds an edit. */
  abstract static class Edit extends SectionChange {
    /** Word of the edit's kind in the job file. */
    abstract String kind();

    /** Its keys, as typed. */
    abstract Map<String, String> keys(Job job) throws InputException;

    @Override
    final SectionChoices change(Job job) throws InputException {
      Map<String, String> keys = keys(job);
      SectionEdit edit = read(() -> SectionWords.edit(kind(), keys));
      List<SectionEdit> edits = new ArrayList<>(job.sections().choices().edits());
      edits.add(edit);
      return job.sections().choices().withEdits(edits);
    }
  }

  /** Merges two sections. */
  @Command(
      name = "merge",
      description = "Makes two sections that meet one.",
      mixinStandardHelpOptions = true,
      footer = {"", "Example:", "  seamwright section rim.json merge 3 4"})
  static final class Merge extends Edit {
    @Parameters(index = "0", paramLabel = "SECTION", description = WHICH)
    private String a;

    @Parameters(index = "1", paramLabel = "SECTION", description = "The other.")
    private String b;

    @Override
    String kind() {
      return "merge";
    }

    @Override
    Map<String, String> keys(Job job) throws InputException {
      return Map.of("points", point(job, a) + "; " + point(job, b));
    }

    @Override
    String told() {
      return "merge " + a + " and " + b;
    }
  }

  /** Splits a section. */
  @Command(
      name = "split",
      description = "Parts a section along a line, or evenly.",
      mixinStandardHelpOptions = true,
      footer = {
        "",
        "Examples:",
        "  seamwright section rim.json split 5 --parts 2",
        "  seamwright section rim.json split 5 --path \"40,0,10; 90,0,10\""
      })
  static final class Split extends Edit {
    @Parameters(paramLabel = "SECTION", description = WHICH)
    private String which;

    @Option(
        names = "--path",
        paramLabel = "\"X,Y,Z; ...\"",
        description = "Points of the line, from edge to edge of the section.")
    private String path;

    @Option(names = "--parts", paramLabel = "N", description = "Number of parts of equal area.")
    private String parts;

    @Override
    String kind() {
      return "split";
    }

    @Override
    Map<String, String> keys(Job job) throws InputException {
      if ((path == null) == (parts == null)) {
        throw wrong("Give either --path or --parts.");
      }
      Map<String, String> keys = new LinkedHashMap<>();
      keys.put("point", point(job, which));
      keys.put(path == null ? "parts" : "path", path == null ? parts : path);
      return keys;
    }

    @Override
    String told() {
      return "split " + which;
    }
  }

  /** Moves a seam. */
  @Command(
      name = "move",
      description = "Draws the seam between two sections anew, or a stretch of it.",
      mixinStandardHelpOptions = true,
      footer = {
        "",
        "A line that begins and ends at the old seam moves the stretch between.",
        "",
        "Example:",
        "  seamwright section rim.json move 3 4 --path \"40,0,10; 60,5,10; 90,0,10\""
      })
  static final class Move extends Edit {
    @Parameters(index = "0", paramLabel = "SECTION", description = WHICH)
    private String a;

    @Parameters(index = "1", paramLabel = "SECTION", description = "The other.")
    private String b;

    @Option(
        names = "--path",
        required = true,
        paramLabel = "\"X,Y,Z; ...\"",
        description = "Where the seam is to run.")
    private String path;

    @Override
    String kind() {
      return "moveSeam";
    }

    @Override
    Map<String, String> keys(Job job) throws InputException {
      return Map.of("between", point(job, a) + "; " + point(job, b), "path", path);
    }

    @Override
    String told() {
      return "move the seam between " + a + " and " + b;
    }
  }

  /** Pins a seam. */
  @Command(
      name = "pin",
      description = "Keeps the seam between two sections, or a line, when sections are found anew.",
      mixinStandardHelpOptions = true,
      footer = {
        "",
        "Examples:",
        "  seamwright section rim.json pin 3 4",
        "  seamwright section rim.json pin --path \"40,0,10; 90,0,10\""
      })
  static final class Pin extends Edit {
    @Parameters(
        arity = "0..2",
        paramLabel = "SECTION",
        description = "Numbers of the two sections.")
    private List<String> both = List.of();

    @Option(
        names = "--path",
        paramLabel = "\"X,Y,Z; ...\"",
        description = "The line, in place of the sections.")
    private String path;

    @Override
    String kind() {
      return "pin";
    }

    @Override
    Map<String, String> keys(Job job) throws InputException {
      if (path == null ? both.size() != 2 : !both.isEmpty()) {
        throw wrong("Give either two sections or --path.");
      }
      return Map.of("path", path == null ? seam(job, both.get(0), both.get(1)) : path);
    }

    @Override
    String told() {
      return path == null ? "pin the seam between " + String.join(" and ", both) : "pin a line";
    }
  }

  /** Names a section. */
  @Command(
      name = "rename",
      description = "Names a section.",
      mixinStandardHelpOptions = true,
      footer = {"", "Example:", "  seamwright section rim.json rename 3 \"show side\""})
  static final class Rename extends Edit {
    @Parameters(index = "0", paramLabel = "SECTION", description = WHICH)
    private String which;

    @Parameters(index = "1", paramLabel = "NAME", description = "Its name; \"\" for none.")
    private String name;

    @Override
    String kind() {
      return "rename";
    }

    @Override
    Map<String, String> keys(Job job) throws InputException {
      return Map.of("point", point(job, which), "name", name);
    }

    @Override
    String told() {
      return "name " + which + " \"" + name + "\"";
    }
  }

  /** Moves a section in the working order. */
  @Command(
      name = "renumber",
      description = "Moves a section to another place in the working order.",
      mixinStandardHelpOptions = true,
      footer = {"", "Example:", "  seamwright section rim.json renumber 3 1"})
  static final class Renumber extends Edit {
    @Parameters(index = "0", paramLabel = "SECTION", description = WHICH)
    private String which;

    @Parameters(index = "1", paramLabel = "NUMBER", description = "Its place, from 1.")
    private String number;

    @Override
    String kind() {
      return "renumber";
    }

    @Override
    Map<String, String> keys(Job job) throws InputException {
      return Map.of("point", point(job, which), "number", number);
    }

    @Override
    String told() {
      return "move " + which + " to place " + number;
    }
  }
}
