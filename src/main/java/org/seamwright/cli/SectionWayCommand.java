package org.seamwright.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seamwright.job.Job;
import org.seamwright.job.SectionWords;
import org.seamwright.section.SectionChoices;
import org.seamwright.section.SectionWay;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Says which way sections are made; each way is a command of its own. */
@Command(
    name = "way",
    description = "Says which way sections are made.",
    mixinStandardHelpOptions = true,
    synopsisSubcommandLabel = "KIND",
    commandListHeading = "%nWays:%n",
    footer = {
      "",
      "docs/sections.md shows what each way does; --help after one its options.",
      "",
      "Examples:",
      "  seamwright section rim.json way rings --axis found --count 4",
      "  seamwright section rim.json way automatic"
    })
final class SectionWayCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new CommandLine.ParameterException(
        spec.commandLine(), "Name a way: " + String.join(", ", spec.subcommands().keySet()) + ".");
  }

  /** The command with one subcommand for each way. */
  static CommandLine line() {
    CommandLine line = new CommandLine(new SectionWayCommand());
    line.addSubcommand("automatic", new Automatic());
    SectionWords.ways().forEach((kind, keys) -> line.addSubcommand(kind, Kind.make(kind, keys)));
    return line;
  }

  /** The automatic way. */
  @Command(
      name = "automatic",
      description = "Sections are found: the automatic way.",
      mixinStandardHelpOptions = true,
      footer = {"", "Example:", "  seamwright section rim.json way automatic"})
  static final class Automatic extends SectionChange {
    @Override
    SectionChoices change(Job job) {
      SectionChoices choices = job.sections().choices();
      return new SectionChoices(Optional.empty(), choices.symmetry(), choices.edits());
    }

    @Override
    String told() {
      return "make sections the automatic way";
    }
  }

  /** A way of one kind. */
  @Command(mixinStandardHelpOptions = true)
  static final class Kind extends SectionChange {
    private final String kind;
    private final List<String> keys;

    private Kind(String kind, List<String> keys) {
      this.kind = kind;
      this.keys = keys;
    }

    static CommandSpec make(String kind, List<String> keys) {
      List<String> own = keys.stream().filter(key -> !key.equals("kind")).toList();
      CommandSpec spec = CommandSpec.forAnnotatedObject(new Kind(kind, own)).name(kind);
      MarkKeys.add(spec, SectionWayCommand.labels(own), "");
      spec.usageMessage()
          .description(does(kind))
          .footer("", "Example:", "  seamwright section rim.json way " + kind + example(kind));
      return spec;
    }

    @Override
    SectionChoices change(Job job) {
      Map<String, String> typed = MarkKeys.typed(spec(), keys);
      SectionWay way = read(() -> SectionWords.way(kind, typed));
      return new SectionChoices(
          Optional.of(way), Optional.empty(), job.sections().choices().edits());
    }

    @Override
    String told() {
      return "make sections by " + kind;
    }
  }

  /** What help calls the values of keys. */
  static Map<String, String> labels(List<String> keys) {
    Map<String, String> labels = new LinkedHashMap<>();
    for (String key : keys) {
      labels.put(
          key,
          switch (key) {
            case "point", "zero", "direction" -> "X,Y,Z";
            case "axis" -> "X,Y,Z|found";
            case "by" -> "height|radius";
            case "at" -> "\"LENGTH; LENGTH ...\"";
            case "angle" -> "DEGREES";
            default -> "N";
          });
    }
    return labels;
  }

  private static String does(String kind) {
    return switch (kind) {
      case "rings" -> "Rings about an axis.";
      case "sectors" -> "Slices of equal angle about an axis.";
      case "ringsAndSectors" -> "Rings about an axis, each parted in sectors.";
      case "strips" -> "Strips side by side along a direction.";
      default -> "The faces that creases bound.";
    };
  }

  private static String example(String kind) {
    return switch (kind) {
      case "rings" -> " --axis found --count 4";
      case "sectors" -> " --axis 0,0,1 --point 0,0,0 --count 10";
      case "ringsAndSectors" -> " --axis found --at \"20 mm; 2 in\" --sectors 6";
      case "strips" -> " --direction 1,0,0 --count 5";
      default -> " --angle 40";
    };
  }
}
