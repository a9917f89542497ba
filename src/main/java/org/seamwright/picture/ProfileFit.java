package org.seamwright.picture;

import java.util.ArrayList;
import java.util.List;

/**
 * The profiles of a turned piece: cuts through the axis, taken where they explain most of the
 * surface, the turned body first (at least half of the turn is filled), then what stands on it all
 * round, as spokes do. Deterministic; cost O(faces × angles tried), a second for 300 000 faces.
 */
final class ProfileFit {
  /** Angles tried: spokes and the gaps between them are wider than a fortieth of a turn. */
  private static final int ANGLES = 40;

  /** Keeps cuts off round angles, where edges of drawn models lie. */
  private static final double OFF_ROUND = 0.37;

  /** Distance from the profile over the piece's diagonal, up to which a place lies on it. */
  private static final double TOLERANCE = 5e-3;

  /** Sine of the largest angle between a normal and the plane through the axis. */
  private static final double TURNED = Math.sin(Math.toRadians(40));

  /** Share of the turn that must be filled where a profile is first taken, and later. */
  private static final double[] FILLED = {0.5, 0.12, 0.12};

  /** Share of all area that another cut must add. */
  private static final double WORTH = 0.01;

  /** Gaps up to this share of a chain are bridged: holes and joints. */
  private static final double GAP = 0.1;

  private static final int SAMPLES = 30_000;

  final double toleranceMm;
  private final Turned turned;
  private final float[] face;
  private final boolean[] open;
  private final List<Profile.Chain> chains = new ArrayList<>();
  private double allMm2;

  ProfileFit(Turned turned) {
    this.turned = turned;
    int faces = turned.mesh.faceCount();
    face = new float[6 * faces];
    open = new boolean[faces];
    double[] one = new double[6];
    for (int f = 0; f < faces; f++) {
      turned.face(f, one);
      for (int k = 0; k < 6; k++) {
        face[6 * f + k] = (float) one[k];
      }
      allMm2 += one[5];
      open[f] = one[5] > 0 && Math.abs(one[4]) <= TURNED;
    }
    toleranceMm = TOLERANCE * turned.mesh.bounds().diagonal();
    for (double filled : FILLED) {
      if (!take(filled)) {
        break;
      }
    }
  }

  /** The profiles found; none if little of the piece is turned. */
  List<Profile.Chain> chains() {
    return chains;
  }

  /** The profile's segment that a face lies on, in an index of {@link #chains}; −1 if none. */
  int segment(int f, ProfileIndex index) {
    if (!(face[6 * f + 5] > 0) || Math.abs(face[6 * f + 4]) > TURNED) {
      return -1;
    }
    return index.find(face[6 * f], face[6 * f + 1], face[6 * f + 2], face[6 * f + 3]);
  }

  double allMm2() {
    return allMm2;
  }

  private boolean take(double least) {
    double best = WORTH * allMm2;
    List<Profile.Chain> pick = List.of();
    for (int k = 0; k < ANGLES; k++) {
      List<Profile.Chain> cut = Profile.at(turned, 2 * Math.PI * (k + OFF_ROUND) / ANGLES);
      if (cut.isEmpty()) {
        continue;
      }
      double[] filled = filled(cut, new ProfileIndex(cut, toleranceMm), true);
      double score = 0;
      int segment = 0;
      for (Profile.Chain chain : cut) {
        for (int i = 0; i + 1 < chain.points(); i++, segment++) {
          score += filled[segment] >= least * chain.sweptMm2(i) ? filled[segment] : 0;
        }
      }
      if (score > best) {
        best = score;
        pick = cut;
      }
    }
    if (pick.isEmpty()) {
      return false;
    }
    ProfileIndex index = new ProfileIndex(pick, toleranceMm);
    double[] filled = filled(pick, index, false);
    List<Profile.Chain> kept = new ArrayList<>();
    int first = 0;
    for (Profile.Chain chain : pick) {
      keep(chain, filled, first, least, kept);
      first += chain.points() - 1;
    }
    if (kept.isEmpty()) {
      return false;
    }
    chains.addAll(kept);
    ProfileIndex taken = new ProfileIndex(kept, toleranceMm);
    for (int f = 0; f < open.length; f++) {
      open[f] &= segment(f, taken) < 0;
    }
    return true;
  }

  /** Area per segment of those faces on it that lie on no profile yet, mm². */
  private double[] filled(List<Profile.Chain> cut, ProfileIndex index, boolean sampled) {
    double[] filled = new double[index.segments()];
    long every = sampled ? Math.max(1, open.length / SAMPLES) : 1;
    for (int f = 0; f < open.length; f++) {
      // Scattered, since drawn models repeat themselves column by column.
      if (open[f] && (every == 1 || scattered(f) % every == 0)) {
        int segment = segment(f, index);
        if (segment >= 0) {
          spread(cut.get(index.chainOf(segment)), index, segment, f, filled, every);
        }
      }
    }
    return filled;
  }

  /** A face longer than its segment counts for the neighbours that it reaches over, too. */
  private void spread(
      Profile.Chain chain, ProfileIndex index, int segment, int f, double[] filled, long times) {
    double area = times * (double) face[6 * f + 5];
    double reach = reach(f) / 2;
    int i = index.inChain(segment);
    int from = i;
    int to = i;
    double middle = (chain.along()[i] + chain.along()[i + 1]) / 2;
    while (from > 0 && chain.along()[from] > middle - reach) {
      from--;
    }
    while (to + 2 < chain.points() && chain.along()[to + 1] < middle + reach) {
      to++;
    }
    double swept = 0;
    for (int k = from; k <= to; k++) {
      swept += chain.sweptMm2(k);
    }
    for (int k = from; k <= to; k++) {
      filled[segment - i + k] += swept > 0 ? area * chain.sweptMm2(k) / swept : 0;
    }
  }

  /** Extent of a face in radius and height, mm. */
  double reach(int f) {
    double[] r = new double[3];
    double[] z = new double[3];
    for (int k = 0; k < 3; k++) {
      int v = turned.mesh.corner()[3 * f + k];
      r[k] = Math.hypot(turned.across[v], turned.aside[v]);
      z[k] = turned.height[v];
    }
    return Math.hypot(extent(r), extent(z));
  }

  private static double extent(double[] t) {
    return Math.max(t[0], Math.max(t[1], t[2])) - Math.min(t[0], Math.min(t[1], t[2]));
  }

  /** Mixes the bits of a number: the finalizer of MurmurHash3 (A. Appleby, public domain). */
  private static long scattered(long n) {
    long h = n;
    h = (h ^ (h >>> 33)) * 0xff51afd7ed558ccdL;
    h = (h ^ (h >>> 33)) * 0xc4ceb9fe1a85ec53L;
    return (h ^ (h >>> 33)) >>> 1;
  }

  /** Keeps those stretches of a chain that are filled. */
  private static void keep(
      Profile.Chain chain, double[] filled, int first, double least, List<Profile.Chain> kept) {
    int n = chain.points() - 1;
    double gap = GAP * chain.lengthMm();
    int from = -1;
    int last = -1;
    for (int i = 0; i < n; i++) {
      if (filled[first + i] < least * chain.sweptMm2(i) || chain.sweptMm2(i) == 0) {
        continue;
      }
      if (from >= 0 && chain.along()[i] - chain.along()[last + 1] > gap) {
        kept.add(stretch(chain, from, last + 1));
        from = -1;
      }
      from = from < 0 ? i : from;
      last = i;
    }
    if (from < 0) {
      return;
    }
    boolean whole = chain.along()[from] + chain.lengthMm() - chain.along()[last + 1] <= gap;
    kept.add(whole ? chain : stretch(chain, from, last + 1));
  }

  private static Profile.Chain stretch(Profile.Chain chain, int from, int to) {
    double[] at = java.util.Arrays.copyOfRange(chain.at(), 2 * from, 2 * to + 2);
    double[] along = java.util.Arrays.copyOfRange(chain.along(), from, to + 1);
    for (int i = along.length - 1; i >= 0; i--) {
      along[i] -= along[0];
    }
    return new Profile.Chain(at, along, false);
  }
}
