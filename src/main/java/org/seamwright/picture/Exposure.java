package org.seamwright.picture;

import java.util.ArrayList;
import java.util.List;
import org.seamwright.mesh.Mesh;

/**
 * How much of each region is seen from which side: for a set of views, the area of the region's
 * shadow towards the eye (Σ area × cosine, where nothing is in front), by counting pixels of a
 * small orthographic picture.
 *
 * <p>Cost: one rendering without shading per view. Error: about a pixel along the region's outline.
 */
public final class Exposure {
  /** Longer side of the small pictures, pixels. */
  private static final int SIDE = 256;

  private final List<View> views;
  private final double[][] seenMm2;

  private Exposure(List<View> views, double[][] seenMm2) {
    this.views = views;
    this.seenMm2 = seenMm2;
  }

  /**
   * Looks at a piece from all sides.
   *
   * @param mesh the piece
   * @param region one entry per face, 0 or more
   * @param views sides to look from
   */
  public static Exposure of(Mesh mesh, int[] region, List<View> views) {
    int regions = 1;
    for (int id : region) {
      regions = Math.max(regions, id + 1);
    }
    double[][] seen = new double[views.size()][regions];
    for (int v = 0; v < views.size(); v++) {
      Camera camera = Camera.orthographic(views.get(v), mesh, SIDE, SIDE, Camera.Margins.all(1));
      FaceBuffer buffer = FaceBuffer.of(mesh, camera, 1);
      double pixelMm2 = 1 / (camera.pixelsPerMm() * camera.pixelsPerMm());
      for (int f : buffer.face) {
        if (f != FaceBuffer.NOTHING) {
          seen[v][region[f]] += pixelMm2;
        }
      }
    }
    return new Exposure(List.copyOf(views), seen);
  }

  /** The views looked from. */
  public List<View> views() {
    return views;
  }

  /** Area of a region's shadow towards the eye in a view, mm². */
  public double seenMm2(int view, int region) {
    return region < seenMm2[view].length ? seenMm2[view][region] : 0;
  }

  /** Number of the view that shows most of a region; of equals the first. */
  public int best(int region) {
    int best = 0;
    for (int v = 1; v < views.size(); v++) {
      if (seenMm2(v, region) > seenMm2(best, region)) {
        best = v;
      }
    }
    return best;
  }

  /**
   * The view that adds most to others: much of what is seen in it, and it looks from elsewhere.
   *
   * @param weight how much each region counts, by number
   * @param others sides already looked from
   * @return number of the view
   */
  public int furthest(double[] weight, List<View> others) {
    int best = 0;
    double bestScore = -1;
    for (int v = 0; v < views.size(); v++) {
      double seen = 0;
      for (int region = 0; region < weight.length; region++) {
        seen += weight[region] * seenMm2(v, region);
      }
      double away = 2; // 1 − cosine, which is at most 2
      for (View other : others) {
        View view = views.get(v);
        double along = view.x() * other.x() + view.y() * other.y() + view.z() * other.z();
        away = Math.min(away, 1 - along);
      }
      // What it shows counts for more than where it stands.
      double score = seen * seen * Math.sqrt(away);
      if (score > bestScore) {
        bestScore = score;
        best = v;
      }
    }
    return best;
  }

  /**
   * The fewest views, found greedily, in which each region is seen at least nearly as well as from
   * its best side.
   *
   * @param regions numbers to be seen
   * @param share how much of the best is enough, above 0 to 1
   * @param most views to return at most
   * @return numbers of views, the one that serves most regions first
   */
  public List<Integer> cover(List<Integer> regions, double share, int most) {
    List<Integer> open = new ArrayList<>();
    for (int region : regions) {
      if (seenMm2(best(region), region) > 0) {
        open.add(region);
      }
    }
    List<Integer> chosen = new ArrayList<>();
    while (!open.isEmpty() && chosen.size() < most) {
      int pick = -1;
      double pickScore = 0;
      for (int v = 0; v < views.size(); v++) {
        double score = 0;
        for (int region : open) {
          double part = seenMm2(v, region) / seenMm2(best(region), region);
          // A region seen well enough counts fully, so that few views are taken; the rest only
          // decides between equals.
          score += part >= share ? 1 + 0.1 * part : 0;
        }
        if (score > pickScore) {
          pick = v;
          pickScore = score;
        }
      }
      chosen.add(pick);
      int taken = pick;
      open.removeIf(r -> seenMm2(taken, r) >= share * seenMm2(best(r), r));
    }
    return chosen;
  }
}
