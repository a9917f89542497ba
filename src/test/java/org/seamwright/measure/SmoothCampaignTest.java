package org.seamwright.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The small sizes of the campaign: evenly and badly laid facets on surfaces of known area. The full
 * one is {@link SmoothCampaign#main}; its table is in docs/accuracy.md.
 */
class SmoothCampaignTest {
  private static final int[] SIZES = {5000, 20_000};

  @Test
  void ellipsoidsHaveTheirPublishedAreas() {
    assertThat(KnownSurface.ellipsoid(1, 2, 3).areaMm2()).isCloseTo(48.882146302582, within(1e-11));
    assertThat(KnownSurface.ellipsoid(1.1, 1.2, 4.7).areaMm2())
        .isCloseTo(54.69012409982, within(1e-10));
    assertThat(KnownSurface.helicoid(1, 1).areaMm2()).isCloseTo(7.211799724207, within(1e-11));
  }

  @ParameterizedTest
  @EnumSource(Meshing.class)
  void trueAreaLiesInTheBar(Meshing meshing) {
    int all = 0;
    int held = 0;
    for (KnownSurface surface : KnownSurface.all()) {
      for (SmoothCampaign.Case one : SmoothCampaign.run(surface, meshing, SIZES, 2)) {
        all++;
        held += one.inBar() ? 1 : 0;
      }
    }
    assertThat(held).as("of %d, seeds 1 and 2", all).isGreaterThanOrEqualTo((95 * all + 99) / 100);
  }

  @ParameterizedTest
  @EnumSource(
      value = Meshing.class,
      names = {"EVEN", "UNEVEN"})
  void estimateErrsByATenthOfTheFacets(Meshing meshing) {
    for (KnownSurface surface :
        List.of(
            KnownSurface.sphere(10),
            KnownSurface.torus(3, 1),
            KnownSurface.ellipsoid(1, 2, 3),
            KnownSurface.ellipsoid(1.1, 1.2, 4.7),
            KnownSurface.capsule(1, 2),
            KnownSurface.frustum(5, 3, 4),
            KnownSurface.doubleCap(10, 60))) {
      for (SmoothCampaign.Case one : SmoothCampaign.run(surface, meshing, SIZES, 2)) {
        if (one.counts()) {
          assertThat(one.ratio()).as("%s %s %s", surface.name(), meshing, one).isLessThan(0.1);
        }
      }
    }
  }
}
