package org.seamwright.picture;

import java.util.ArrayList;
import java.util.List;

/**
 * One side of a turned piece: a profile chain from one end of the piece along its axis to the
 * other. Chains are parted where they turn back, at their highest and lowest places, so that the
 * outside and the inside of a cup or a rim come apart at the lip.
 *
 * @param chain the profile
 * @param number of the chain
 * @param fromMm where along the chain it begins
 * @param toMm where it ends; beyond the chain's length where it runs over the start of a closed one
 */
record Stretch(Profile.Chain chain, int number, double fromMm, double toMm) {
  /** Ends nearer to an open chain's end than this share of its length part nothing. */
  private static final double NEAR_END = 0.04;

  /** Height over the chain's extent within which the end of a piece counts as flat. */
  private static final double FLAT = 2e-3;

  static List<Stretch> of(Profile.Chain chain, int number) {
    List<Double> cuts = new ArrayList<>();
    addCut(chain, true, cuts);
    addCut(chain, false, cuts);
    cuts.sort(null);
    List<Stretch> all = new ArrayList<>();
    if (chain.closed() && cuts.size() == 2) {
      all.add(new Stretch(chain, number, cuts.get(0), cuts.get(1)));
      all.add(new Stretch(chain, number, cuts.get(1), cuts.get(0) + chain.lengthMm()));
      return all;
    }
    double from = 0;
    for (double cut : cuts) {
      all.add(new Stretch(chain, number, from, cut));
      from = cut;
    }
    all.add(new Stretch(chain, number, from, chain.lengthMm()));
    return all;
  }

  private static void addCut(Profile.Chain chain, boolean highest, List<Double> cuts) {
    int n = chain.points();
    int end = 0;
    double low = chain.height(0);
    double high = low;
    for (int i = 1; i < n; i++) {
      low = Math.min(low, chain.height(i));
      high = Math.max(high, chain.height(i));
      boolean further =
          highest ? chain.height(i) > chain.height(end) : chain.height(i) < chain.height(end);
      end = further ? i : end;
    }
    double flat = FLAT * (high - low);
    int from = end;
    int to = end;
    while (from > 0 && Math.abs(chain.height(from - 1) - chain.height(end)) <= flat) {
      from--;
    }
    while (to + 1 < n && Math.abs(chain.height(to + 1) - chain.height(end)) <= flat) {
      to++;
    }
    double near = NEAR_END * chain.lengthMm();
    boolean starts = !chain.closed() && chain.along()[from] <= near;
    boolean ends = !chain.closed() && chain.along()[to] >= chain.lengthMm() - near;
    // A flat end in the middle is halved; one that the chain begins or ends with stays whole.
    double cut =
        starts
            ? chain.along()[to]
            : ends ? chain.along()[from] : (chain.along()[from] + chain.along()[to]) / 2;
    boolean parts = chain.closed() || (cut > near && cut < chain.lengthMm() - near);
    if (parts) {
      cuts.add(cut);
    }
  }

  double lengthMm() {
    return toMm - fromMm;
  }

  /** How much further down than up it goes, weighed by area: above 0 for an outside. */
  double downMm2() {
    double sum = 0;
    for (int i = 0; i + 1 < chain.points(); i++) {
      if (holds((chain.along()[i] + chain.along()[i + 1]) / 2)) {
        double share = chain.along()[i + 1] - chain.along()[i];
        sum += share > 0 ? chain.sweptMm2(i) * (chain.height(i) - chain.height(i + 1)) / share : 0;
      }
    }
    return sum;
  }

  /** How much further out than in it goes, weighed by area: above 0 for a face that looks up. */
  double outMm2() {
    double sum = 0;
    for (int i = 0; i + 1 < chain.points(); i++) {
      if (holds((chain.along()[i] + chain.along()[i + 1]) / 2)) {
        double share = chain.along()[i + 1] - chain.along()[i];
        sum += share > 0 ? chain.sweptMm2(i) * (chain.radius(i + 1) - chain.radius(i)) / share : 0;
      }
    }
    return sum;
  }

  private boolean holds(double along) {
    return (along >= fromMm && along <= toMm)
        || (along + chain.lengthMm() >= fromMm && along + chain.lengthMm() <= toMm);
  }
}
