package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamwright.basis.Progress;
import org.seamwright.measure.Crease;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Topology;

/**
 * Joins neighbouring pieces as long as what they make lies flat within the allowed stretch: those
 * first that share the largest part of the smaller one's rim. Greedy; a pair is laid out only if
 * {@link ScaleField} does not rule it out.
 */
final class Merging {
  /** A pair that shares less of the smaller one's rim hangs together by a neck that tears. */
  private static final double LEAST_SHARED = 0.12;

  /** Turn of the surface that film is folded over, not laid over. */
  private static final double SHARP_DEGREES = 60;

  private final Parting parting;
  private final SortedMap<Integer, Splitter.Laid> laid;
  private final double allowed;
  private final double leastMm;

  /** Pairs that don't go, as the pieces are now. */
  private final Set<Pair> refused = new HashSet<>();

  /** Two pieces, the lower number first. */
  private record Pair(int a, int b) {}

  private record Offer(Pair pair, double share) {}

  private Merging(
      Parting parting, SortedMap<Integer, Splitter.Laid> laid, double allowed, double leastMm) {
    this.parting = parting;
    this.laid = laid;
    this.allowed = allowed;
    this.leastMm = leastMm;
  }

  /**
   * Joins pieces; the map keeps those that are left.
   *
   * @param leastMm width below which a piece is not joined to another over a sharp edge: such a
   *     flap would not hold
   */
  static void run(
      Parting parting,
      SortedMap<Integer, Splitter.Laid> laid,
      double allowed,
      double leastMm,
      Progress progress) {
    Merging merging = new Merging(parting, laid, allowed, leastMm);
    int before = laid.size();
    while (merging.joinOne()) {
      progress.at(1 - (double) laid.size() / before);
    }
  }

  private boolean joinOne() {
    for (Offer offer : offers()) {
      Pair pair = offer.pair();
      Optional<Splitter.Laid> both = both(pair);
      if (both.isPresent()) {
        parting.join(pair.a(), pair.b());
        laid.put(pair.a(), both.get());
        laid.remove(pair.b());
        refused.removeIf(p -> p.a() == pair.a() || p.b() == pair.a());
        refused.removeIf(p -> p.a() == pair.b() || p.b() == pair.b());
        return true;
      }
      refused.add(pair);
    }
    return false;
  }

  private Optional<Splitter.Laid> both(Pair pair) {
    Parting.Part part = parting.both(pair.a(), pair.b());
    if (new ScaleField(part.sheet()).stretch() > Splitter.HOPELESS * allowed) {
      return Optional.empty();
    }
    Splitter.Laid one = Splitter.laid(pair.a(), part, allowed);
    return Splitter.isGood(one, allowed) ? Optional.of(one) : Optional.empty();
  }

  /** Pairs not refused yet, the largest share of the smaller one's rim first. */
  private List<Offer> offers() {
    Map<Pair, Double> shared =
        new TreeMap<>(
            (p, q) ->
                p.a() != q.a() ? Integer.compare(p.a(), q.a()) : Integer.compare(p.b(), q.b()));
    Map<Pair, Double> sharp = new HashMap<>();
    SortedMap<Integer, Double> rim = new TreeMap<>();
    SortedMap<Integer, Double> area = new TreeMap<>();
    int[] piece = parting.piece();
    Topology topology = parting.topology();
    for (int h = 0; h < 3 * piece.length; h++) {
      int g = topology.faceAcross(h);
      int a = piece[h / 3];
      if (h % 3 == 0) {
        area.merge(a, Faces.area(parting.mesh(), h / 3), Double::sum);
      }
      if (g >= 0 && piece[g] == a) {
        continue;
      }
      double length = parting.lengthMm(h);
      rim.merge(a, length, Double::sum);
      if (g >= 0 && a < piece[g]) {
        shared.merge(new Pair(a, piece[g]), length, Double::sum);
        if (Crease.degrees(parting.mesh(), topology, h) > SHARP_DEGREES) {
          sharp.merge(new Pair(a, piece[g]), length, Double::sum);
        }
      }
    }
    List<Offer> offers = new ArrayList<>();
    shared.forEach(
        (pair, length) -> {
          double share = length / Math.min(rim.get(pair.a()), rim.get(pair.b()));
          boolean narrow =
              Math.min(
                      2 * area.get(pair.a()) / rim.get(pair.a()),
                      2 * area.get(pair.b()) / rim.get(pair.b()))
                  < leastMm;
          boolean flap = narrow && sharp.getOrDefault(pair, 0.0) > length / 2;
          if (share >= LEAST_SHARED && !flap && !refused.contains(pair)) {
            offers.add(new Offer(pair, share));
          }
        });
    offers.sort((p, q) -> Double.compare(q.share(), p.share()));
    return offers;
  }
}
