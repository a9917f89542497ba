package org.seamwright.measure;

import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.seamwright.basis.Parallel;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Mesh;

/**
 * By which part of a full turn a piece with an axis repeats: its spokes, lobes or flutes.
 *
 * <p>Samples spread over the area are turned, and a sample agrees if the surface lies within {@link
 * #WITHIN} of the piece's largest radius of where it went. Only samples that most turns bring well
 * off the surface have a say: on a plain turned body every turn fits, and there is no count. The
 * highest count at which {@link #ENOUGH} of them agree is given, so a few bolt holes don't undo ten
 * spokes; confidence tells how many agree.
 *
 * @param count how many times the piece repeats in a full turn, 2 to 64
 * @param confidence share of the telling samples that agree, 0 to 1
 */
public record TurnSymmetry(int count, double confidence) {
  /** Distance off the surface, in largest radii, that still counts as agreeing. */
  public static final double WITHIN = 0.001;

  /**
   * Distance off the surface, in largest radii, from which a sample has a say. Above {@link
   * #WITHIN}, or a neighbouring count would agree where the features are shallow.
   */
  private static final double APART = 0.004;

  /** Confidence from which a count is told of. */
  public static final double ENOUGH = 0.85;

  private static final int MOST = 64;
  private static final int SAMPLES = 2000;

  /** Turns that no count up to {@link #MOST} shares: steps of the golden angle. */
  private static final int ODD_TURNS = 12;

  private static final double GOLDEN_TURN = 0.3819660112501051;

  /** Share of samples that must have a say. */
  private static final double LEAST_TELLING = 0.005;

  /**
   * Looks for repeats about an axis.
   *
   * @param meshMm any triangle soup, mm
   * @return empty if no count fits, or if any turn does
   */
  public static Optional<TurnSymmetry> about(Revolution axis, Mesh meshMm) {
    if (axis.kind() != Revolution.Kind.AXIS) {
      return Optional.empty();
    }
    Oriented samples = Oriented.spread(meshMm, SAMPLES);
    FaceTree tree = FaceTree.of(meshMm);
    double radius = largestRadius(axis, samples);
    int[] missed = new int[SAMPLES];
    for (int turn = 1; turn <= ODD_TURNS; turn++) {
      boolean[] agrees = agreeing(axis, samples, tree, turn * GOLDEN_TURN, APART * radius);
      for (int i = 0; i < SAMPLES; i++) {
        missed[i] += agrees[i] ? 0 : 1;
      }
    }
    int telling = 0;
    for (int times : missed) {
      telling += 2 * times > ODD_TURNS ? 1 : 0;
    }
    if (telling < LEAST_TELLING * SAMPLES) {
      return Optional.empty();
    }
    for (int count = MOST; count >= 2; count--) {
      boolean[] agrees = agreeing(axis, samples, tree, 1.0 / count, WITHIN * radius);
      int agreeing = 0;
      for (int i = 0; i < SAMPLES; i++) {
        agreeing += agrees[i] && 2 * missed[i] > ODD_TURNS ? 1 : 0;
      }
      if (agreeing >= ENOUGH * telling) {
        return Optional.of(new TurnSymmetry(count, (double) agreeing / telling));
      }
    }
    return Optional.empty();
  }

  private static double largestRadius(Revolution axis, Oriented samples) {
    double largest = 0;
    for (int i = 0; i < samples.count(); i++) {
      Vector3D from = at(samples, i).subtract(axis.point());
      largest = Math.max(largest, from.cross(axis.direction()).norm());
    }
    return largest;
  }

  private static boolean[] agreeing(
      Revolution axis, Oriented samples, FaceTree tree, double turns, double withinMm) {
    QuaternionRotation turn =
        QuaternionRotation.fromAxisAngle(axis.direction(), 2 * Math.PI * turns);
    boolean[] agrees = new boolean[samples.count()];
    Parallel.split(
        agrees.length,
        Parallel.ranges(agrees.length, 256),
        (from, to) -> {
          for (int i = from; i < to; i++) {
            Vector3D p = axis.point().add(turn.apply(at(samples, i).subtract(axis.point())));
            agrees[i] = tree.nearest(p.getX(), p.getY(), p.getZ(), withinMm).isPresent();
          }
        });
    return agrees;
  }

  private static Vector3D at(Oriented samples, int i) {
    double[] p = samples.xyz();
    return Vector3D.of(p[3 * i], p[3 * i + 1], p[3 * i + 2]);
  }
}
