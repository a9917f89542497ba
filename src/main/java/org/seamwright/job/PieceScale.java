package org.seamwright.job;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Notice;
import org.seamwright.mesh.Bounds;
import org.seamwright.meshfile.FileUnit;
import org.seamwright.meshfile.MeshDocument;
import org.seamwright.units.LengthUnit;

/**
 * How large a file's numbers are, and what is to be told of it: which unit was taken, and whether
 * the file says otherwise.
 *
 * @param mmPerUnit what one of the file's units is, mm
 * @param taken where that comes from, a clause
 * @param contradiction what the file says against it; empty if nothing
 * @param ofFile whether the file alone says so
 */
record PieceScale(double mmPerUnit, String taken, String contradiction, boolean ofFile) {
  /**
   * A length measured on the piece may be off by this share before the file's unit is held against
   * it (common practice, no source).
   */
  private static final double MEASURING = 0.02;

  private static final MathContext SHOWN = new MathContext(6);

  /** The scale of a document as a job or a command tells it. */
  static PieceScale of(MeshDocument document, String source, Job.Scale scale)
      throws InputException {
    Optional<FileUnit> own = document.unit();
    if (scale instanceof Job.Scale.Unit unit) {
      double mm = LengthUnit.mmPer(unit.unit());
      String against = own.filter(o -> o.mmPerUnit() != mm).map(PieceScale::says).orElse("");
      return new PieceScale(
          mm, "The file's numbers were taken to be in " + unit.unit(), against, false);
    }
    if (scale instanceof Job.Scale.KnownLength known) {
      double mm = factor(document.mesh().bounds(), source, known);
      String against =
          own.filter(o -> Math.abs(mm / o.mmPerUnit() - 1) > MEASURING)
              .map(PieceScale::says)
              .orElse("");
      return new PieceScale(
          mm,
          "One unit of the file was taken to be " + shown(mm) + " mm, from the known length",
          against,
          false);
    }
    FileUnit unit =
        own.orElseThrow(() -> new UnitUnknownException(source, LikelyUnits.of(document.mesh())));
    return new PieceScale(
        unit.mmPerUnit(),
        "The file's numbers were taken to be in " + unit.symbol() + ", since " + unit.source(),
        "",
        true);
  }

  private static String says(FileUnit unit) {
    return String.format(
        Locale.ROOT, "%s, which is 1 unit = %s mm", unit.source(), shown(unit.mmPerUnit()));
  }

  private static String shown(double mm) {
    return new BigDecimal(mm).round(SHOWN).stripTrailingZeros().toPlainString();
  }

  private static double factor(Bounds bounds, String source, Job.Scale.KnownLength known)
      throws PlanException {
    double extent =
        switch (known.along()) {
          case X -> bounds.sizeX();
          case Y -> bounds.sizeY();
          case Z -> bounds.sizeZ();
          case LONGEST -> Math.max(bounds.sizeX(), Math.max(bounds.sizeY(), bounds.sizeZ()));
        };
    double factor = known.lengthMm() / extent;
    if (!(extent > 0) || !(factor > 0) || Double.isInfinite(factor)) {
      throw new PlanException(
          source,
          "",
          "The piece has no extent along "
              + JobKeys.word(JobKeys.ALONGS, known.along())
              + ", so the known length cannot scale it",
          "Give the length along another axis, or the file's unit.");
    }
    return factor;
  }

  /** What was taken, with the size that comes of it, and the file's contradiction. */
  List<Notice> notices(Bounds scaled) {
    List<Notice> notices = new ArrayList<>();
    notices.add(
        new Notice(Piece.UNIT_TAKEN, 1, taken + ": the piece is " + Piece.size(scaled) + "."));
    if (!contradiction.isEmpty()) {
      notices.add(
          new Notice(
              "unit-contradicts-file",
              1,
              taken
                  + ", but "
                  + contradiction
                  + ". All areas hang on it: measure the piece and give that length."));
    }
    if (ofFile && !LikelyUnits.fitBench(scaled)) {
      notices.add(
          new Notice(
              "unit-unlikely",
              1,
              "In the file's own unit the longest extent is not 20 mm to 1.5 m, as pieces on a bench"
                  + " are (common practice, no source); some programs write another unit than they"
                  + " say. Measure the piece and give the unit or that length."));
    }
    return notices;
  }
}
