package org.seamwright.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Surveys many meshings of surfaces of known area. Run {@code main} for the full campaign; the
 * tests take the small sizes.
 */
final class SmoothCampaign {
  /** Facet sums that err by less are good enough as they are. */
  private static final double WORTH = 1e-3;

  private SmoothCampaign() {}

  /** One mesh and what was found. */
  record Case(int facets, long seed, double facetError, double smoothError, boolean inBar) {
    boolean counts() {
      return facetError > WORTH;
    }

    double ratio() {
      return smoothError / facetError;
    }
  }

  static List<Case> run(KnownSurface surface, Meshing meshing, int[] sizes, long seeds) {
    List<Case> cases = new ArrayList<>();
    for (int size : sizes) {
      for (long seed = 1; seed <= seeds; seed++) {
        Mesh mesh = meshing.lay(surface, size, new Random(seed));
        Survey survey = Surveyor.survey(mesh, Topology.of(mesh), 0, Progress.NONE);
        double exact = surface.areaMm2();
        Survey.SmoothArea smooth = survey.smooth();
        cases.add(
            new Case(
                mesh.faceCount(),
                seed,
                Math.abs(survey.areaMm2() / exact - 1),
                Math.abs(smooth.areaMm2() / exact - 1),
                smooth.lowMm2() <= exact && exact <= smooth.highMm2()));
      }
    }
    return cases;
  }

  /** Prints the table of the accuracy page; the argument is the largest number of facets. */
  public static void main(String[] args) {
    int largest = args.length > 0 ? Integer.parseInt(args[0]) : 500_000;
    int[] sizes =
        java.util.stream.IntStream.of(50, 200, 1000, 5000, 20_000, 100_000, 500_000)
            .filter(n -> n <= largest)
            .toArray();
    long all = 0;
    long held = 0;
    for (KnownSurface surface : KnownSurface.all()) {
      for (Meshing meshing : Meshing.values()) {
        List<Case> cases =
            run(
                surface,
                meshing,
                sizes,
                meshing == Meshing.JITTERED || meshing == Meshing.UNEVEN ? 3 : 1);
        Case worst = cases.get(0);
        double ratio = 0;
        List<Double> ratios = new ArrayList<>();
        int in = 0;
        for (Case one : cases) {
          in += one.inBar() ? 1 : 0;
          if (one.counts()) {
            ratios.add(one.ratio());
            if (one.ratio() > ratio) {
              ratio = one.ratio();
              worst = one;
            }
          }
        }
        all += cases.size();
        held += in;
        ratios.sort(null);
        System.out.printf(
            Locale.ROOT,
            "| %s | %s | %.3f | %.3f at %d | %d of %d |%n",
            surface.name(),
            meshing.name().toLowerCase(Locale.ROOT),
            ratios.isEmpty() ? 0 : ratios.get(ratios.size() / 2),
            ratio,
            worst.facets(),
            in,
            cases.size());
      }
    }
    System.out.printf(Locale.ROOT, "held %d of %d%n", held, all);
  }
}
