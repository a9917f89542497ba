package org.seamwright.paper;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.mask.MaskBands;
import org.seamwright.mask.MaskEdge;
import org.seamwright.mask.MaskPlan;
import org.seamwright.mask.MaskSettings;
import org.seamwright.picture.Finish;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Scene;
import org.seamwright.region.SurfaceMap;

/**
 * The piece dressed for masking: gold where it is plated, each strip of tape as a band of its own
 * with a line at its joins and its number, laps darker, lacquer hatched, and its own metal where
 * nothing covers it.
 *
 * @param scene for pictures
 * @param callouts numbers of strips, or of masks where strips are too many to number
 * @param numbered one entry per face: the callout it belongs to, 0 for none
 * @param numbersStrips whether they are of strips
 */
public record MaskScene(
    Scene scene, List<Pictures.Callout> callouts, int[] numbered, boolean numbersStrips) {
  /** More numbers than these can't be read round a picture. */
  private static final int MOST_NUMBERS = 24;

  /** Copies the list. */
  public MaskScene {
    callouts = List.copyOf(callouts);
  }

  /** Dresses a piece. */
  public static MaskScene of(SurfaceMap map, MaskPlan plan, MaskSettings settings) {
    MaskBands bands = MaskBands.of(map, plan, settings, Progress.NONE);
    int faces = bands.cover().length;
    byte[] finish = new byte[faces];
    byte[] lap = new byte[faces];
    int[] region = new int[faces];
    for (int f = 0; f < faces; f++) {
      MaskBands.Cover cover = bands.cover()[f];
      finish[f] =
          switch (cover) {
            case PLATED -> Finish.GOLD.code();
            case OUT_OF_SCOPE -> Finish.GHOST.code();
            case NOTHING -> Finish.BARE.code();
            case LACQUER -> Finish.COVERED.code();
            case TAPE, LAP, TAPE_BEHIND -> Finish.TAPE.code();
          };
      lap[f] =
          switch (cover) {
            case LAP -> 2;
            case TAPE_BEHIND -> 1;
            default -> 0;
          };
      region[f] =
          switch (cover) {
            case NOTHING, OUT_OF_SCOPE -> 0;
            case PLATED -> 1;
            case LACQUER -> 2;
            case TAPE, LAP, TAPE_BEHIND -> 2 + bands.band()[f];
          };
    }
    Scene scene = Scene.of(bands.mesh(), finish, region, lap, new int[3 + bands.bands()]);
    boolean strips = bands.strips().size() <= MOST_NUMBERS;
    int[] numbered = new int[faces];
    for (int f = 0; f < faces; f++) {
      int strip = bands.strip()[f];
      numbered[f] = strip == 0 || strips ? strip : bands.strips().get(strip - 1).mask();
    }
    return new MaskScene(scene, strips ? strips(bands, plan) : masks(plan), numbered, strips);
  }

  /** Sides to draw it from, and the numbers that stand in each. */
  NumberedViews views() {
    return new NumberedViews(scene.mesh(), numbered, callouts);
  }

  private static List<Pictures.Callout> strips(MaskBands bands, MaskPlan plan) {
    List<Pictures.Callout> callouts = new ArrayList<>();
    for (MaskBands.Strip strip : bands.strips()) {
      String name = name(plan.masks().get(strip.mask() - 1), strip.number());
      callouts.add(
          new Pictures.Callout(callouts.size() + 1, name, NumberedViews.some(strip.points())));
    }
    callouts.removeIf(c -> c.points().isEmpty());
    return callouts;
  }

  /** "M1" where a mask has one strip, else "1.2". */
  static String name(MaskPlan.Mask mask, int strip) {
    return mask.tape().size() == 1 ? "M" + mask.id() : mask.id() + "." + strip;
  }

  private static List<Pictures.Callout> masks(MaskPlan plan) {
    List<Pictures.Callout> callouts = new ArrayList<>();
    for (MaskPlan.Mask mask : plan.masks()) {
      List<Vector3D> points = new ArrayList<>();
      for (MaskEdge edge : mask.edges()) {
        double[] p = edge.points();
        for (int i = 0; i + 2 < p.length; i += 3) {
          points.add(Vector3D.of(p[i], p[i + 1], p[i + 2]));
        }
      }
      callouts.add(new Pictures.Callout(mask.id(), "M" + mask.id(), NumberedViews.some(points)));
    }
    return callouts;
  }
}
