package org.seamwright.mask;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamwright.basis.Notice;

/**
 * What it takes to cover what stays bare.
 *
 * @param masks one per connected bare region that borders on plating, largest edge first
 * @param dipped what dipping takes, where lacquer is laid so and there is anything to mask
 * @param notices what was assumed
 */
public record MaskPlan(List<Mask> masks, Optional<Dipped> dipped, List<Notice> notices) {
  /** Copies the lists. */
  public MaskPlan {
    masks = List.copyOf(masks);
    notices = List.copyOf(notices);
  }

  /** Lacquer used up by all masks and the dip, ml. */
  public double lacquerMl() {
    return masks.stream().mapToDouble(Mask::lacquerMl).sum()
        + dipped.map(Dipped::usedMl).orElse(0.0);
  }

  /** Work at all masks and the dip, drying not counted, s. */
  public double workSeconds(MaskSettings settings) {
    double work = 0;
    for (Mask mask : masks) {
      work += settings.pace().workSeconds(mask, settings.lacquerCoats());
    }
    return dipped.isPresent() && settings.dip().isPresent()
        ? work + dipped.get().workSeconds(settings, settings.dip().get())
        : work;
  }

  /**
   * The masking of one connected bare region.
   *
   * @param id 1, 2, 3 …: the number on the papers, written M1, M2 …
   * @param edges its lines towards plating
   * @param edgeMm their length together
   * @param tape strips along them
   * @param tapeMm2 bare area under the tape
   * @param lacquerMm2 bare area beyond the tape within the splash distance that lacquer is brushed
   *     on: all of it, or what is above the bath where the piece is dipped
   * @param lacquerMl lacquer to brush, all coats, loss included
   * @param areaMm2 area of the bare region
   * @param middleMm middle of the edge, for finding it on the piece: x, y, z
   * @param bends what the edges ask of tape
   */
  public record Mask(
      int id,
      List<MaskEdge> edges,
      double edgeMm,
      List<TapeStrip> tape,
      double tapeMm2,
      double lacquerMm2,
      double lacquerMl,
      double areaMm2,
      double[] middleMm,
      Bends bends) {
    /** A mask whose bends were not looked at. */
    public Mask(
        int id,
        List<MaskEdge> edges,
        double edgeMm,
        List<TapeStrip> tape,
        double tapeMm2,
        double lacquerMm2,
        double lacquerMl,
        double areaMm2,
        double[] middleMm) {
      this(id, edges, edgeMm, tape, tapeMm2, lacquerMm2, lacquerMl, areaMm2, middleMm, Bends.NONE);
    }

    Mask withId(int other) {
      return new Mask(
          other, edges, edgeMm, tape, tapeMm2, lacquerMm2, lacquerMl, areaMm2, middleMm, bends);
    }
  }

  /**
   * What the edges of a mask ask of tape.
   *
   * @param tightestMm radius of the tightest sideways bend between corners, mm; infinite where all
   *     is straight
   * @param corners corners, for which tape is cut
   * @param wrapMm length of edge beside which a sharp corner of the piece runs through the tape
   * @param byHandMm length of edge that no tape of the list follows: lacquer is brushed up to it
   */
  public record Bends(double tightestMm, int corners, double wrapMm, double byHandMm) {
    static final Bends NONE = new Bends(Double.POSITIVE_INFINITY, 0, 0, 0);
  }

  /**
   * Tape along one stretch of an edge, in one piece or, behind a narrow one, in several.
   *
   * @param name what the shop calls it; empty where the shop has one tape only
   * @param widthMm width of the tape
   * @param lengthMm length to cut for one piece, overlap included
   * @param pieces number of pieces
   * @param edge number of the edge in the mask's list, from 0
   * @param row 0 along the line, 1 and up behind it
   * @param fromMm where along the edge its first piece begins, from the edge's first point; where
   *     it goes over that point, up to twice the edge's length
   * @param toMm where its last piece ends
   * @param lapMm how far it lies over the strip before it, which ends at {@code fromMm}
   */
  public record TapeStrip(
      String name,
      double widthMm,
      double lengthMm,
      int pieces,
      int edge,
      int row,
      double fromMm,
      double toMm,
      double lapMm) {
    /** One piece along the first edge of the only tape, from end to end. */
    public TapeStrip(double widthMm, double lengthMm) {
      this("", widthMm, lengthMm, 1, 0, 0, 0, lengthMm, 0);
    }

    /** Length of all pieces, mm. */
    public double totalMm() {
      return pieces * lengthMm;
    }
  }

  /**
   * What is used of one tape for all masks.
   *
   * @param tape the tape
   * @param lengthMm length of all pieces
   * @param rolls rolls that hold them, each piece from one roll
   */
  public record TapeUse(TapeKind tape, double lengthMm, int rolls) {
    /** Price of the rolls, in the currency of the list. */
    public double price() {
      return rolls * tape.pricePerRoll();
    }
  }

  /** What is used of each tape of a list, in its order; tapes not used are left out. */
  public List<TapeUse> tapes(List<TapeKind> kinds) {
    List<TapeUse> uses = new ArrayList<>();
    for (TapeKind kind : kinds) {
      List<TapeStrip> own = new ArrayList<>();
      for (Mask mask : masks) {
        mask.tape().stream().filter(s -> s.name().equals(kind.name())).forEach(own::add);
      }
      if (!own.isEmpty()) {
        double length = own.stream().mapToDouble(TapeStrip::totalMm).sum();
        uses.add(new TapeUse(kind, length, Rolls.count(own, kind.rollMm())));
      }
    }
    return List.copyOf(uses);
  }
}
