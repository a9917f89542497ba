package org.seamwright.cli;

import java.io.PrintWriter;
import org.seamwright.job.Job;
import org.seamwright.job.LikelyUnits;
import org.seamwright.job.Piece;
import org.seamwright.job.UnitUnknownException;
import org.seamwright.units.AmountException;
import org.seamwright.units.Amounts;
import org.seamwright.units.LengthUnit;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** How large the numbers of a mesh file are: shared by the commands that read one. */
final class ScaleOptions {
  /** What a mesh file can be, for help texts. */
  static final String MESH_FILE =
      "Mesh file: STL, OBJ, PLY, GLB, glTF with embedded data, or 3MF; each also in gzip.";

  @Option(
      names = "--unit",
      paramLabel = "UNIT",
      converter = UnitConverter.class,
      description =
          "Unit of the file's numbers: um, mm, cm, m, in or ft. Left out, it is the one that a GLB,"
              + " glTF or 3MF file names itself; STL, OBJ and PLY name none.")
  private LengthUnit unit;

  @Option(
      names = "--known-length",
      paramLabel = "LENGTH",
      converter = LengthConverter.class,
      description = "In place of --unit: a length measured on the piece, such as \"17 in\".")
  private Double knownLengthMm;

  @Option(
      names = "--along",
      paramLabel = "AXIS",
      description =
          "What --known-length measures: the extent along x, y or z, or the longest of the three"
              + " (so if left out).")
  private Job.Along along;

  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  /** The scale as told; the file's own if nothing was. */
  Job.Scale scale() {
    if (unit != null && knownLengthMm != null) {
      throw wrong("--unit and --known-length exclude each other; give one of them.");
    }
    if (along != null && knownLengthMm == null) {
      throw wrong("--along goes with --known-length; give the length too.");
    }
    if (unit != null) {
      return new Job.Scale.Unit(unit.symbol());
    }
    if (knownLengthMm != null) {
      return new Job.Scale.KnownLength(knownLengthMm, along == null ? Job.Along.LONGEST : along);
    }
    return new Job.Scale.OfFile();
  }

  /**
   * Shows how large a piece would be in each likely unit, and no area.
   *
   * @return the exit code
   */
  static int askForUnit(UnitUnknownException unknown, PrintWriter err) {
    err.println(
        "seamwright: The unit of " + unknown.source() + " is not known. If its numbers are in");
    for (LikelyUnits.Candidate candidate : unknown.candidates()) {
      err.printf(
          "  %-2s the piece is %s%s%n",
          candidate.unit().symbol(),
          Piece.size(candidate.sizeMm()),
          candidate.fitsBench() ? "" : ", which fits no bench");
    }
    err.println(LikelyUnits.RULE);
    err.println("Give --unit, or --known-length with a length measured on the piece.");
    err.flush();
    return ExitCode.USAGE;
  }

  /** The refusal of a command line. */
  CommandLine.ParameterException wrong(String message) {
    return new CommandLine.ParameterException(spec.commandLine(), message);
  }

  /** Reads a unit. */
  static final class UnitConverter implements CommandLine.ITypeConverter<LengthUnit> {
    @Override
    public LengthUnit convert(String text) {
      try {
        return LengthUnit.of(text);
      } catch (AmountException e) {
        throw new CommandLine.TypeConversionException(e.getMessage());
      }
    }
  }

  /** Reads a length above 0, in mm. */
  static final class LengthConverter implements CommandLine.ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      try {
        double mm = Amounts.lengthMm(text);
        if (mm > 0) {
          return mm;
        }
        throw new CommandLine.TypeConversionException("\"" + text + "\": it must be above 0.");
      } catch (AmountException e) {
        throw new CommandLine.TypeConversionException(e.getMessage());
      }
    }
  }
}
