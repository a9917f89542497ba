package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.measure.Revolution;
import org.seamwright.mesh.Mesh;

/**
 * Cuts a patch apart until every piece lies flat within the allowed stretch, in few pieces: first
 * along creases that go right through, then along lines that {@link CutChoice} picks; then
 * neighbours that lie flat together are joined again ({@link Merging}), and rings are slit open
 * smoothly ({@link SmoothSlit}). Faces are cut exactly, so a seam runs straight however the mesh
 * lies.
 *
 * <p>Ends where pieces get narrower than can be handled: such a piece keeps more stretch than was
 * allowed, or has no layout.
 */
final class Splitter {
  /** Each cut halves a piece, more or less: 2^10 pieces are too many to lay by hand. */
  private static final int DEEPEST = 10;

  /** What is foretold this many times too stretched is not laid out: it will not do. */
  static final double HOPELESS = 1.6;

  /** Turn of the surface at an edge from which film is better parted there than stretched. */
  private static final double CREASE_DEGREES = 30;

  /** Crumbs that creases part off below this area stay with a neighbour. */
  private static final double CRUMB_MM2 = 4;

  private final Parting parting;
  private final double allowed;
  private final double leastMm;
  private final SortedMap<Integer, Laid> done = new TreeMap<>();
  private Revolution axis;

  /**
   * A piece as it was laid out.
   *
   * @param piece its number
   * @param cuts how many cuts the patch had then
   * @param faces its faces then
   * @param layout none if none was found or none was tried
   */
  record Laid(int piece, int cuts, int[] faces, Optional<Layout> layout) {}

  private Splitter(Mesh mesh, double allowed, double leastMm) {
    this.parting = new Parting(mesh);
    this.allowed = allowed;
    this.leastMm = leastMm;
  }

  /**
   * The pieces of a patch.
   *
   * @param mesh the patch, cut
   * @param piece one entry per face: its piece
   * @param laid pieces in order
   */
  record Result(Mesh mesh, int[] piece, List<Laid> laid) {}

  /**
   * Cuts a patch.
   *
   * @param patch connected, each vertex one fan, faces turned alike
   * @param allowed stretch to keep to
   * @param leastMm how wide a piece must be somewhere to be cut any further, mm
   */
  static Result split(Mesh patch, double allowed, double leastMm, Progress progress) {
    Splitter splitter = new Splitter(patch, allowed, leastMm);
    splitter.run(patch, progress.between(0, 0.7));
    Merging.run(splitter.parting, splitter.done, allowed, leastMm, progress.between(0.7, 0.95));
    splitter.smoothSlits();
    return splitter.result();
  }

  /** Layouts go over to the faces that a later cut has split at their edge. */
  private Result result() {
    List<Laid> before = new ArrayList<>(done.values());
    Laid[] laid = new Laid[before.size()];
    Parallel.each(
        laid.length,
        i -> {
          Laid one = before.get(i);
          int[] faces = parting.facesOf(one.piece());
          laid[i] =
              new Laid(
                  one.piece(),
                  one.cuts(),
                  faces,
                  faces.length == one.faces().length
                      ? one.layout()
                      : one.layout()
                          .map(
                              l ->
                                  CarriedLayout.over(
                                      parting.mesh(), one, faces, parting.ancestors(one.cuts()))));
        });
    return new Result(parting.mesh(), parting.piece(), List.of(laid));
  }

  private void run(Mesh patch, Progress progress) {
    List<Integer> pending = tryAll(List.of(0), progress);
    if (pending.isEmpty()) {
      return;
    }
    axis = Revolution.of(patch);
    List<Integer> parts = parting.splitAtCreases(0, CREASE_DEGREES, CRUMB_MM2);
    pending = parts.size() == 1 ? parts : tryAll(parts, progress);
    for (int depth = 0; !pending.isEmpty(); depth++) {
      progress.at((double) done.size() / (done.size() + pending.size()));
      pending = tryAll(cut(pending, depth), progress);
    }
  }

  /** Lays pieces out; gives those that are still too stretched. */
  private List<Integer> tryAll(List<Integer> pieces, Progress progress) {
    Laid[] laid = new Laid[pieces.size()];
    Parallel.each(
        laid.length,
        i -> {
          Parting.Part part = parting.part(pieces.get(i));
          boolean hopeless = new ScaleField(part.sheet()).stretch() > HOPELESS * allowed;
          laid[i] =
              hopeless
                  ? new Laid(pieces.get(i), part.cuts(), part.faces(), Optional.empty())
                  : laid(pieces.get(i), part, allowed);
        });
    progress.at(0);
    List<Integer> left = new ArrayList<>();
    for (Laid one : laid) {
      if (isGood(one, allowed)) {
        done.put(one.piece(), one);
      } else {
        left.add(one.piece());
      }
    }
    return left;
  }

  static Laid laid(int piece, Parting.Part part, double allowed) {
    return new Laid(
        piece, part.cuts(), part.faces(), Layout.of(part.sheet(), allowed, Progress.NONE));
  }

  static boolean isGood(Laid one, double allowed) {
    return one.layout().isPresent() && one.layout().get().stretch().nearlyAll() <= allowed;
  }

  /** Cuts pieces; those that are cut no further are done. Gives the parts. */
  private List<Integer> cut(List<Integer> pieces, int depth) {
    List<Optional<double[]>> lines = new ArrayList<>();
    for (int piece : pieces) {
      Parting.Part part = parting.part(piece);
      boolean last = depth >= DEEPEST || new ScaleField(part.sheet()).widestMm() < leastMm;
      lines.add(
          last
              ? Optional.empty()
              : CutChoice.of(part, allowed, axis).map(field -> parting.spread(part, field)));
      if (lines.get(lines.size() - 1).isEmpty()) {
        done.put(piece, laid(piece, part, allowed));
      }
    }
    List<Integer> all = new ArrayList<>();
    CutMesh sofar = null;
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).isEmpty()) {
        continue;
      }
      double[] field = lines.get(i).get();
      List<Integer> parts = new ArrayList<>();
      CutMesh cut = parting.cut(pieces.get(i), sofar == null ? field : sofar.carry(field), parts);
      sofar = sofar == null ? cut : sofar.then(cut);
      all.addAll(parts);
    }
    return all;
  }

  /** Opens rings along smooth lines where they were slit along edges. */
  private void smoothSlits() {
    for (Laid one : List.copyOf(done.values())) {
      if (one.layout().isEmpty() || !hasSlit(one.layout().get())) {
        continue;
      }
      Parting.Part part = parting.part(one.piece());
      Optional<double[]> line = SmoothSlit.of(part).map(field -> parting.spread(part, field));
      if (line.isEmpty()) {
        continue;
      }
      List<Long> edges = parting.slit(one.piece(), line.get());
      Laid again = laid(one.piece(), parting.part(one.piece()), allowed);
      if (isGood(again, allowed)) {
        done.put(one.piece(), again);
      } else {
        parting.sew(edges);
      }
    }
  }

  private static boolean hasSlit(Layout layout) {
    for (boolean slit : layout.slit()) {
      if (slit) {
        return true;
      }
    }
    return false;
  }
}
