package org.seamwright.geodesic;

import java.util.Objects;
import java.util.function.IntPredicate;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Distance along the surface from points, edges and polylines, in mm per vertex.
 *
 * <p>A wavefront is marched outward as in fast marching, but each vertex keeps the direction in
 * which the front passed it, so that fronts are carried over a face as round or straight as they
 * are. In a plane the result is exact for point sources and straight ones. Where an obtuse angle
 * lets a vertex be reached before the edge that its shortest way crosses, it is taken up again once
 * that edge is settled, which does what the unfolding of R. Kimmel and J. A. Sethian ("Computing
 * geodesic paths on manifolds", 1998) does. Where needles of every direction make that go on and
 * on, the march starts anew over faces with flipped edges ({@link EdgeFlips}); on crumpled surfaces
 * it goes by straight hops between vertices instead, which are real ways and never too short.
 *
 * <p>Any soup will do; ways cross branching edges into every face there. Cost: O(m log m) for m
 * vertices reached, apart from the result array. See {@link EdgeCrossing} for the error of a step.
 */
public final class SurfaceDistance {
  private SurfaceDistance() {}

  /**
   * Distance from sources.
   *
   * @param topology of the mesh
   * @param fans of the mesh
   * @param sources where distance is 0
   * @param maxMm where to stop, mm; may be infinite
   * @return one entry per vertex, mm; infinite beyond {@code maxMm} and where no way leads
   * @throws IllegalArgumentException if {@code maxMm} is below 0 or not a number, or two
   *     neighbouring points of a path share no face
   */
  public static double[] from(
      Mesh mesh,
      Topology topology,
      VertexFans fans,
      Sources sources,
      double maxMm,
      Progress progress) {
    return from(mesh, topology, fans, sources, maxMm, f -> true, progress);
  }

  /**
   * Distance from sources by ways that keep to some faces.
   *
   * @param faces which faces a way may cross or run along the rim of
   * @see #from(Mesh, Topology, VertexFans, Sources, double, Progress)
   */
  public static double[] from(
      Mesh mesh,
      Topology topology,
      VertexFans fans,
      Sources sources,
      double maxMm,
      IntPredicate faces,
      Progress progress) {
    return march(mesh, topology, fans, sources, maxMm, faces, false, progress);
  }

  /**
   * The same, for cutting along the line at a distance: beyond {@code levelMm} the vertices of
   * faces that also have a nearer vertex keep their value, so that {@link FieldCut} can cut them.
   *
   * @param levelMm the largest distance to be cut at, mm
   * @see #from(Mesh, Topology, VertexFans, Sources, double, IntPredicate, Progress)
   */
  public static double[] toCutAt(
      Mesh mesh,
      Topology topology,
      VertexFans fans,
      Sources sources,
      double levelMm,
      IntPredicate faces,
      Progress progress) {
    return march(mesh, topology, fans, sources, levelMm, faces, true, progress);
  }

  private static double[] march(
      Mesh mesh,
      Topology topology,
      VertexFans fans,
      Sources sources,
      double maxMm,
      IntPredicate faces,
      boolean withRim,
      Progress progress) {
    Objects.requireNonNull(progress, "progress");
    if (!(maxMm >= 0)) {
      throw new IllegalArgumentException("Distance must not be below 0 mm: " + maxMm);
    }
    March march = new March(mesh, topology, fans, sources, maxMm, faces, withRim, progress);
    return march.run();
  }
}
