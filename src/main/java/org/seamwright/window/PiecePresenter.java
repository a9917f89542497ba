package org.seamwright.window;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.seamwright.desk.Watched;

/**
 * What is shown of an open piece: its look, what is under the pointer, which section is chosen.
 * Knows no toolkit; the view tells it rays and draws the colours it gives.
 */
public final class PiecePresenter implements Showing {
  /** Where the surface is turned away further a number would seem to belong to a neighbour. */
  private static final double LEAST_COSINE = 0.2;

  private final OpenedPiece piece;
  private final PieceColours palette;
  private final SectionTexts texts;
  private final Watched<PieceColours.Look> look = new Watched<>(PieceColours.Look.SECTIONS);
  private final Watched<Optional<Spot>> pointed = new Watched<>(Optional.empty());
  private final Watched<OptionalInt> hovered = new Watched<>(OptionalInt.empty());
  private final Watched<OptionalInt> selected = new Watched<>(OptionalInt.empty());
  private Runnable changed = () -> {};

  /** Presents a piece. */
  public PiecePresenter(OpenedPiece piece) {
    this.piece = piece;
    this.palette = PieceColours.of(piece.job().sections());
    this.texts = new SectionTexts(piece.job());
    look.watch(now -> changed.run());
    hovered.watch(now -> changed.run());
    selected.watch(now -> changed.run());
  }

  @Override
  public void onChange(Runnable listener) {
    changed = listener;
  }

  /** The piece. */
  public OpenedPiece piece() {
    return piece;
  }

  /** The colours that stand for sections and treatments. */
  public PieceColours palette() {
    return palette;
  }

  /** The figures as texts. */
  public SectionTexts texts() {
    return texts;
  }

  /** How plated faces are coloured. */
  public Watched<PieceColours.Look> look() {
    return look;
  }

  /** The place under the pointer, if the pointer is on the piece. */
  public Watched<Optional<Spot>> pointed() {
    return pointed;
  }

  /** The section that is lit because the pointer is on it, on the piece or in the list. */
  public Watched<OptionalInt> hovered() {
    return hovered;
  }

  /** The section chosen. */
  public Watched<OptionalInt> selected() {
    return selected;
  }

  /** The pointer is over the picture, at a ray. */
  public void pointAt(PickRay ray) {
    pointAt(Pick.under(piece.model(), ray));
  }

  @Override
  public void pointAt(Optional<Pick> pick) {
    Optional<Spot> spot = pick.flatMap(piece::spot);
    pointed.set(spot);
    hover(spot.map(Spot::section).orElse(0));
  }

  @Override
  public void click(Optional<Pick> pick) {
    pointAt(pick);
    select(pointed.get().map(Spot::section).orElse(0));
  }

  @Override
  public boolean escape() {
    boolean means = selected.get().isPresent();
    select(0);
    return means;
  }

  @Override
  public double shine() {
    return look.get() == PieceColours.Look.GOLD ? 0.5 : 0.16;
  }

  /** The pointer has left the picture. */
  public void pointAway() {
    pointed.set(Optional.empty());
    hover(0);
  }

  /** The pointer is over a section in the list; 0 for none. */
  public void hover(int section) {
    hovered.set(section > 0 ? OptionalInt.of(section) : OptionalInt.empty());
  }

  /** Chooses a section; 0 for none. */
  public void select(int section) {
    selected.set(section > 0 ? OptionalInt.of(section) : OptionalInt.empty());
  }

  /** The section whose figures are to be shown: the one under the pointer, else the chosen one. */
  public OptionalInt shown() {
    return hovered.get().isPresent() ? hovered.get() : selected.get();
  }

  @Override
  public int[] colours() {
    return palette.colours(look.get(), hovered.get(), selected.get());
  }

  /** Where to stand to see a section best: azimuth and elevation in degrees. */
  public SectionFacing.Direction facing(int section) {
    return SectionFacing.of(piece, section);
  }

  /**
   * Where the numbers of sections are to be written for a viewer: for each section the place in
   * sight that has most room around it as the viewer sees it, if any; none on a finished piece.
   */
  @Override
  public List<Optional<OrbitCamera.OnScreen>> numbers(OrbitCamera camera) {
    double[] eye = camera.eyeMm();
    if (look.get() == PieceColours.Look.GOLD) {
      return piece.job().sections().sections().stream()
          .map(s -> Optional.<OrbitCamera.OnScreen>empty())
          .toList();
    }
    return IntStream.rangeClosed(1, piece.job().sections().sections().size())
        .mapToObj(id -> roomiest(eye, id).map(p -> camera.project(p[0], p[1], p[2])))
        .toList();
  }

  private Optional<double[]> roomiest(double[] eye, int section) {
    SectionPlaces places = piece.places();
    Optional<double[]> best = Optional.empty();
    double most = 0;
    for (int i = 0; i < places.count(section); i++) {
      double[] p = places.place(section, i);
      double[] n = places.normal(section, i);
      double dx = eye[0] - p[0];
      double dy = eye[1] - p[1];
      double dz = eye[2] - p[2];
      double length = Math.sqrt(dx * dx + dy * dy + dz * dz);
      double cosine = (n[0] * dx + n[1] * dy + n[2] * dz) / length;
      double room = Math.min(places.inwardMm(section, i), piece.bounds().diagonal()) * cosine;
      if (cosine > LEAST_COSINE
          && room > most
          && piece.sees(p, dx / length, dy / length, dz / length)) {
        most = room;
        best = Optional.of(p);
      }
    }
    return best;
  }
}
