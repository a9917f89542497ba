package org.seamwright.mend;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.FieldCut;
import org.seamwright.geodesic.Refinement;
import org.seamwright.measure.Solid;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Cuts a surface along that of a solid and leaves what is outside.
 *
 * <p>The line is where the signed distance from the solid, known at the corners and taken to be
 * linear between them, is zero. Faces that may cross it (no corner is further off than the longest
 * edge) are first refined until their edges are {@link #FINENESS} of the common box's diagonal;
 * nowhere else is the mesh made finer. The line is exact where the solid is flat; elsewhere it is
 * off by h² ÷ (8 R) for edges h and a solid of radius R, at the solid's own edges by up to h ÷ 2
 * over a length of h. Walls thinner than h may be missed.
 *
 * <p>Cost: a distance query per corner near the solid, O(log n) each, on all cores; the result does
 * not depend on their number.
 */
final class SolidCut {
  private static final double FINENESS = 1.0 / 400;

  /** Surfaces nearer than this share of the solid's diagonal coincide. */
  private static final double COINCIDENT = 1e-6;

  /** Steps off a surface to see what is beside it, in distances at which surfaces coincide. */
  private static final double STEP = 20;

  private final Solid own;
  private final Solid solid;
  private final boolean keepsCoincident;
  private final double same;
  private Mesh mesh;
  private int[] parent;

  /** One entry per vertex: signed distance from the solid, or a lower bound of it far away, mm. */
  private double[] distance;

  private SolidCut(Mesh mesh, Solid own, Solid solid, boolean keepsCoincident) {
    this.mesh = mesh;
    this.own = own;
    this.solid = solid;
    this.keepsCoincident = keepsCoincident;
    this.same = COINCIDENT * solid.bounds().diagonal();
    this.parent = new int[mesh.faceCount()];
    Arrays.setAll(parent, f -> f);
    this.distance = new double[0];
    measure();
  }

  /**
   * What is left of a mesh outside a solid. Where the surfaces lie against each other nothing is.
   *
   * @param own the mesh as a solid, to know its outside; ignored if it is open
   * @param keepsCoincident whether faces that lie in the solid's surface and face its way stay
   * @return a change with count 0 if nothing lies inside
   */
  static Change outside(
      Mesh mesh, Solid own, Solid solid, boolean keepsCoincident, Progress progress) {
    Bounds common = common(mesh.bounds(), solid.bounds());
    double same = COINCIDENT * solid.bounds().diagonal();
    if (isLineOrPoint(common, 2 * same)) {
      return Change.none(mesh, "");
    }
    SolidCut cut = new SolidCut(mesh, own, solid, keepsCoincident);
    progress.at(0.3);
    cut.refine(Math.max(STEP * same, FINENESS * common.diagonal()));
    progress.at(0.7);
    return cut.cut(mesh);
  }

  /** Whether bodies can share no more than an edge or a corner, which hides no area. */
  private static boolean isLineOrPoint(Bounds common, double thin) {
    int across = common.sizeX() > thin ? 1 : 0;
    across += common.sizeY() > thin ? 1 : 0;
    across += common.sizeZ() > thin ? 1 : 0;
    return across < 2;
  }

  private static Bounds common(Bounds a, Bounds b) {
    return new Bounds(
        Math.max(a.minX(), b.minX()),
        Math.max(a.minY(), b.minY()),
        Math.max(a.minZ(), b.minZ()),
        Math.min(a.maxX(), b.maxX()),
        Math.min(a.maxY(), b.maxY()),
        Math.min(a.maxZ(), b.maxZ()));
  }

  /** Measures the distance of vertices that have none yet. */
  private void measure() {
    int known = distance.length;
    double[] all = Arrays.copyOf(distance, mesh.vertexCount());
    IntStream.range(known, all.length)
        .parallel()
        .forEach(v -> all[v] = distance(mesh.x(v), mesh.y(v), mesh.z(v)));
    distance = all;
  }

  private double distance(double x, double y, double z) {
    Bounds b = solid.bounds();
    double dx = Math.max(0, Math.max(b.minX() - x, x - b.maxX()));
    double dy = Math.max(0, Math.max(b.minY() - y, y - b.maxY()));
    double dz = Math.max(0, Math.max(b.minZ() - z, z - b.maxZ()));
    double fromBox = Math.sqrt(dx * dx + dy * dy + dz * dz);
    return fromBox > 0.1 * b.diagonal() ? fromBox : solid.signedDistance(x, y, z);
  }

  private double longest(int f) {
    int[] c = mesh.corner();
    double longest = 0;
    for (int h = 3 * f; h < 3 * f + 3; h++) {
      longest = Math.max(longest, Faces.length(mesh, c[h], c[Topology.next(h)]));
    }
    return longest;
  }

  /** Whether the line may pass through a face: distance changes no faster than the way walked. */
  private boolean mayCross(int f, double longest) {
    boolean flush = true;
    for (int k = 0; k < 3; k++) {
      double d = distance[mesh.corner()[3 * f + k]];
      if (Math.abs(d - same) > longest) {
        return false;
      }
      flush &= Math.abs(d) <= same / 2;
    }
    return !flush;
  }

  private void refine(double fine) {
    while (true) {
      double coarsest = 0;
      boolean[] chosen = new boolean[mesh.faceCount()];
      for (int f = 0; f < chosen.length; f++) {
        double longest = longest(f);
        chosen[f] = longest > fine && mayCross(f, longest);
        coarsest = chosen[f] ? Math.max(coarsest, longest) : coarsest;
      }
      if (!(coarsest > fine)) {
        return;
      }
      CutMesh cut = Refinement.edges(mesh, Math.max(fine, coarsest / 2), f -> chosen[f]);
      parent = cut.carryFaces(parent);
      mesh = cut.mesh();
      measure();
    }
  }

  private Change cut(Mesh before) {
    CutMesh cut = FieldCut.along(mesh, distance, same, f -> true);
    boolean[] inside = FieldCut.below(cut, distance, same);
    double[] carried = cut.carry(distance);
    for (int f = 0; f < inside.length && keepsCoincident; f++) {
      inside[f] &= !(isFlush(cut.mesh(), f, carried) && facesSolidsWay(cut.mesh(), f));
    }
    long count = 0;
    for (boolean in : inside) {
      count += in ? 1 : 0;
    }
    if (count == 0) {
      return Change.none(before, "");
    }
    Change split = new Change(cut.mesh(), cut.carryFaces(parent), 0, "");
    return split.then(Change.keeping(cut.mesh(), f -> !inside[f], count, ""));
  }

  private boolean isFlush(Mesh cut, int f, double[] carried) {
    boolean flush = true;
    for (int k = 0; k < 3; k++) {
      flush &= Math.abs(carried[cut.corner()[3 * f + k]]) <= 2 * same;
    }
    return flush;
  }

  /** Whether the outside of a face that lies in the solid's surface is outside the solid too. */
  private boolean facesSolidsWay(Mesh cut, int f) {
    double[] at = new double[3];
    double[] normal = new double[3];
    Faces.centroid(cut, f, at);
    Faces.normal(cut, f, normal);
    double step = STEP * same;
    boolean inwards =
        own.contains(at[0] + step * normal[0], at[1] + step * normal[1], at[2] + step * normal[2]);
    double out = inwards ? -step : step;
    return !solid.contains(
        at[0] + out * normal[0], at[1] + out * normal[1], at[2] + out * normal[2]);
  }
}
