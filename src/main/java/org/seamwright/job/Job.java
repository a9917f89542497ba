package org.seamwright.job;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mask.MaskSettings;
import org.seamwright.mend.Repair;
import org.seamwright.plating.BenchPace;
import org.seamwright.plating.PlatingDefaults;
import org.seamwright.plating.QuoteRates;
import org.seamwright.plating.Recipe;
import org.seamwright.plating.Solution;
import org.seamwright.plating.Spread;
import org.seamwright.plating.Tool;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;
import org.seamwright.section.OrderPins;
import org.seamwright.section.SeamWeights;
import org.seamwright.section.SectionChoices;
import org.seamwright.units.UnitSystem;

/**
 * Everything the user decides; all else is computed from it and the mesh. Immutable: an edit gives
 * a new job, so undo is going back to the last one.
 *
 * @param piece what the piece is called, on every paper
 * @param note free text, such as the scenario of a sample; may be empty
 * @param mesh which file, and how large its unit is
 * @param cleaning what is done to the model before anything else, in order
 * @param ground treatment of every place that no mark covers
 * @param marks in order; a later one overrides an earlier one
 * @param sections limits and laps
 * @param plating recipe, thickness and rates
 * @param masking tape and lacquer
 * @param quote what the shop charges, if a price is wanted
 * @param display units to show figures in
 */
public record Job(
    String piece,
    String note,
    MeshSource mesh,
    List<Repair> cleaning,
    Treatment ground,
    List<Mark> marks,
    SectionRules sections,
    PlatingRules plating,
    MaskSettings masking,
    Optional<QuoteRates> quote,
    UnitSystem display) {
  /** Version of the job file that this program writes. */
  public static final int VERSION = 1;

  /** Copies the lists. */
  public Job {
    Objects.requireNonNull(piece, "piece");
    Objects.requireNonNull(note, "note");
    cleaning = List.copyOf(cleaning);
    marks = List.copyOf(marks);
  }

  /** A job whose model needs no cleaning. */
  public Job(
      String piece,
      String note,
      MeshSource mesh,
      Treatment ground,
      List<Mark> marks,
      SectionRules sections,
      PlatingRules plating,
      MaskSettings masking,
      UnitSystem display) {
    this(piece, note, mesh, List.of(), ground, marks, sections, plating, masking, display);
  }

  /** A job without a price. */
  public Job(
      String piece,
      String note,
      MeshSource mesh,
      List<Repair> cleaning,
      Treatment ground,
      List<Mark> marks,
      SectionRules sections,
      PlatingRules plating,
      MaskSettings masking,
      UnitSystem display) {
    this(
        piece,
        note,
        mesh,
        cleaning,
        ground,
        marks,
        sections,
        plating,
        masking,
        Optional.empty(),
        display);
  }

  /** The same job with other marks. */
  public Job withMarks(List<Mark> other) {
    return new Job(
        piece, note, mesh, cleaning, ground, other, sections, plating, masking, quote, display);
  }

  /** The same job with other rules for its sections. */
  public Job withSections(SectionRules other) {
    return new Job(
        piece, note, mesh, cleaning, ground, marks, other, plating, masking, quote, display);
  }

  /** The same job with other steps of cleaning. */
  public Job withCleaning(List<Repair> other) {
    return new Job(
        piece, note, mesh, other, ground, marks, sections, plating, masking, quote, display);
  }

  /** The same job on another mesh. */
  public Job withMesh(MeshSource other) {
    return new Job(
        piece, note, other, cleaning, ground, marks, sections, plating, masking, quote, display);
  }

  /** The same job with other plating choices. */
  public Job withPlating(PlatingRules other) {
    return new Job(
        piece, note, mesh, cleaning, ground, marks, sections, other, masking, quote, display);
  }

  /** The same job masked another way. */
  public Job withMasking(MaskSettings other) {
    return new Job(
        piece, note, mesh, cleaning, ground, marks, sections, plating, other, quote, display);
  }

  /** The same job with other prices. */
  public Job withQuote(Optional<QuoteRates> other) {
    return new Job(
        piece, note, mesh, cleaning, ground, marks, sections, plating, masking, other, display);
  }

  /** The same job with another treatment of what no mark covers. */
  public Job withGround(Treatment other) {
    return new Job(
        piece, note, mesh, cleaning, other, marks, sections, plating, masking, quote, display);
  }

  /**
   * The mesh file.
   *
   * @param file path relative to the job file, with forward slashes
   * @param sha256 digest of its content when the marks were made, in hex; empty if not recorded yet
   * @param surface what is remembered of its surface then, if anything
   * @param scale how large its unit is
   */
  public record MeshSource(
      String file, String sha256, Optional<SurfaceRecord> surface, Scale scale) {
    /** A mesh of whose surface nothing is remembered. */
    public MeshSource(String file, String sha256, Scale scale) {
      this(file, sha256, Optional.empty(), scale);
    }
  }

  /** How a file's numbers become mm. */
  public sealed interface Scale {
    /**
     * The file's numbers are in a unit.
     *
     * @param unit "mm", "cm", "m", "in" or "ft"
     */
    record Unit(String unit) implements Scale {}

    /**
     * A length on the piece is known: the extent along an axis of the file, or the longest extent.
     *
     * @param lengthMm the true length
     * @param along what was measured
     */
    record KnownLength(double lengthMm, Along along) implements Scale {}

    /** The unit that the file itself names, as glTF and 3MF do. */
    record OfFile() implements Scale {}
  }

  /** What a known length measures. */
  public enum Along {
    /** Extent along x. */
    X,
    /** Extent along y. */
    Y,
    /** Extent along z. */
    Z,
    /** The largest of the three extents. */
    LONGEST
  }

  /**
   * Limits and laps.
   *
   * @param limit area limit of a section
   * @param activationLapMm width of the activation lap
   * @param flashLapMm width of the flash lap
   * @param order what is asked of the order of work
   * @param seams where seams should lie
   * @param choices way, symmetry and edits of the sections
   */
  public record SectionRules(
      Limit limit,
      double activationLapMm,
      double flashLapMm,
      OrderPins order,
      SeamRules seams,
      SectionChoices choices) {
    /** Rules that leave the order free and weigh seams as usual. */
    public SectionRules(Limit limit, double activationLapMm, double flashLapMm) {
      this(limit, activationLapMm, flashLapMm, OrderPins.NONE);
    }

    /** Rules that leave the sections to be found. */
    public SectionRules(Limit limit, double activationLapMm, double flashLapMm, OrderPins order) {
      this(limit, activationLapMm, flashLapMm, order, SeamRules.USUAL, SectionChoices.NONE);
    }

    /** The same rules with other choices. */
    public SectionRules withChoices(SectionChoices other) {
      return new SectionRules(limit, activationLapMm, flashLapMm, order, seams, other);
    }
  }

  /**
   * Where seams should lie.
   *
   * @param weights what a seam costs per length, by place
   * @param showFaces names of marks whose places are show faces
   * @param rings whether sections may close on themselves
   */
  public record SeamRules(SeamWeights weights, List<String> showFaces, boolean rings) {
    /** The usual weights, no show faces, rings allowed. */
    public static final SeamRules USUAL = new SeamRules(SeamWeights.DEFAULT, List.of(), true);

    /** Copies the list. */
    public SeamRules {
      showFaces = List.copyOf(showFaces);
    }
  }

  /** Where the area limit comes from. */
  public sealed interface Limit {
    /** How long a wetted place stays wet, s: it sets the limit, or is compared with it. */
    double windowSeconds();

    /**
     * Set directly.
     *
     * @param mm2 worked area, mm²
     * @param windowSeconds how long a wetted place stays wet, s
     */
    record Area(double mm2, double windowSeconds) implements Limit {
      /** A limit beside the usual wet window. */
      public Area(double mm2) {
        this(mm2, PlatingDefaults.WET_WINDOW_SECONDS);
      }
    }

    /**
     * From the wet window and the recipe's speeds.
     *
     * @param windowSeconds how long a wetted place stays wet, s
     */
    record Wet(double windowSeconds) implements Limit {}
  }

  /**
   * How the piece is held while it is plated. Liquid solution runs off places whose outward normal
   * leans further than an angle from straight up: there a gel serves.
   *
   * @param up what points up, in the piece's coordinates
   * @param steeperDegrees the angle, degrees, up to 180
   */
  public record Hold(Vector3D up, double steeperDegrees) {}

  /**
   * Plating choices; amounts as in {@link org.seamwright.plating.PlatingSettings}.
   *
   * @param recipe id of a recipe; for one of the job's own, the id that it carries
   * @param own the job's own recipe in place of a known one
   * @param deposit id of a deposit
   * @param flashUm flash thickness, µm
   * @param thicknessUm flash and build together, µm; at least {@code flashUm}
   * @param loss share of area added for loss
   * @param solutionGPerL metal in the solution, g/l
   * @param usableShare share of that metal that can be laid down
   * @param pace plating rate, s per cm² and µm
   * @param efficiency current efficiency
   * @param tool what is known of the tool
   * @param hold how the piece is held, if steep places are to be told
   * @param bench how fast the wet steps are worked, where that differs from the recipe
   * @param sheet what the sheet of the solution says
   */
  public record PlatingRules(
      String recipe,
      Optional<Recipe> own,
      String deposit,
      double flashUm,
      double thicknessUm,
      Spread loss,
      double solutionGPerL,
      double usableShare,
      Spread pace,
      double efficiency,
      Tool tool,
      Optional<Hold> hold,
      BenchPace bench,
      Solution sheet) {
    /** With a known recipe, loss and rate known to a point, and nothing known of the tool. */
    public PlatingRules(
        String recipe,
        String deposit,
        double flashUm,
        double thicknessUm,
        double lossShare,
        double solutionGPerL,
        double usableShare,
        double secondsPerCm2PerUm,
        double efficiency) {
      this(
          recipe,
          Optional.empty(),
          deposit,
          flashUm,
          thicknessUm,
          Spread.point(lossShare),
          solutionGPerL,
          usableShare,
          Spread.point(secondsPerCm2PerUm),
          efficiency,
          Tool.UNKNOWN,
          Optional.empty(),
          BenchPace.AS_IN_RECIPE,
          Solution.UNKNOWN);
    }

    /** The likely loss. */
    public double lossShare() {
      return loss.likely();
    }

    /** The likely rate, s per cm² and µm. */
    public double secondsPerCm2PerUm() {
      return pace.likely();
    }

    /** The same with another loss and rate. */
    public PlatingRules with(Spread otherLoss, Spread otherPace) {
      return new PlatingRules(
          recipe,
          own,
          deposit,
          flashUm,
          thicknessUm,
          otherLoss,
          solutionGPerL,
          usableShare,
          otherPace,
          efficiency,
          tool,
          hold,
          bench,
          sheet);
    }

    /** The same with another solution. */
    public PlatingRules with(
        String itsDeposit,
        double itsGPerL,
        double itsUsableShare,
        OptionalDouble itsMostAhPerL,
        Solution itsSheet) {
      return new PlatingRules(
          recipe,
          own,
          itsDeposit,
          flashUm,
          thicknessUm,
          loss,
          itsGPerL,
          itsUsableShare,
          pace,
          efficiency,
          new Tool(tool.dipMl(), tool.contactMm2(), tool.amperesPerCm2(), itsMostAhPerL),
          hold,
          bench,
          itsSheet);
    }
  }
}
