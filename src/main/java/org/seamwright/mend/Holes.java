package org.seamwright.mend;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.seamwright.basis.Count;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Closes holes that are at most so long around. The faces that close them are marked as such: what
 * was there nobody knows, and the fill is as flat as the hole's edge allows, so over a hole in a
 * curved wall it is a little smaller than the wall was.
 *
 * <p>Loops of up to {@link #FINE} edges are closed by {@link LoopFill}, longer ones by {@link
 * EarCut}, up to {@link #LONGEST}. Not holes, and left alone: gaps without area, where faces meet
 * without sharing corners (welding or splitting edges closes those), and the rim of a sheet.
 */
final class Holes {
  /** Loops of more edges take the quick way: the fine one costs their cube. */
  static final int FINE = 240;

  /** More edges than this around one hole are a cut-off surface rather than a hole. */
  static final int LONGEST = 20_000;

  /** A fill larger than this share of its part would make a second side for an open sheet. */
  private static final double SHEET = 0.6;

  /** Area over squared way around below which a loop is a gap: a rectangle 1 by 10,000. */
  private static final double GAP = 2.5e-5;

  private final Mesh mesh;
  private final VertexFans fans;
  private final Parts parts;
  private final double[] partArea;

  private Holes(Mesh mesh, Topology topology) {
    this.mesh = mesh;
    this.fans = VertexFans.of(mesh);
    this.parts = Parts.of(mesh, topology);
    this.partArea = PartChoice.areas(mesh, parts);
  }

  static Change fill(Mesh mesh, Topology topology, double aroundMm, Progress progress) {
    List<HoleLoops> loops =
        HoleLoops.of(mesh, topology).stream().filter(l -> l.lengthMm() <= aroundMm).toList();
    Holes holes = new Holes(mesh, topology);
    List<int[]> fills = new ArrayList<>();
    int left = 0;
    int faces = 0;
    for (int i = 0; i < loops.size(); i++) {
      progress.at((double) i / loops.size());
      int[] corners = holes.close(loops.get(i));
      left += corners.length == 0 ? 1 : 0;
      if (corners.length > 0) {
        fills.add(corners);
        faces += corners.length / 3;
      }
    }
    String text =
        String.format(
            Locale.ROOT,
            "%s at most %.4g mm around closed with %s whose place is invented",
            Count.of(fills.size(), "hole"),
            aroundMm,
            Count.of(faces, "face"));
    if (left > 0) {
      text +=
          "; "
              + Count.of(left, "loop")
              + " of open edges left, being gaps without area or rims of open sheets";
    }
    return fills.isEmpty() ? Change.none(mesh, text) : holes.with(fills, faces, text);
  }

  /** The holes that could be closed, whatever their size. */
  static List<HoleLoops> closable(Mesh mesh, Topology topology) {
    if (topology.openEdges() == 0) {
      return List.of();
    }
    Holes holes = new Holes(mesh, topology);
    return HoleLoops.of(mesh, topology).stream()
        .filter(l -> l.vertices().length <= FINE && holes.close(l).length > 0)
        .toList();
  }

  private int[] close(HoleLoops loop) {
    int n = loop.vertices().length;
    if (n > LONGEST) {
      return new int[0];
    }
    int[] corners = n <= FINE ? LoopFill.fill(mesh, loop, taken(loop)) : EarCut.fill(mesh, loop);
    double area = EarCut.area(mesh, corners);
    boolean gap = !(area > GAP * loop.lengthMm() * loop.lengthMm());
    boolean sheet = area > SHEET * partArea[parts.of()[loop.faces()[0]]];
    return gap || sheet ? new int[0] : corners;
  }

  /** Chords of a loop that are edges of the mesh already. */
  private BitSet taken(HoleLoops loop) {
    int n = loop.vertices().length;
    Map<Integer, Integer> place = new HashMap<>();
    for (int i = 0; i < n; i++) {
      place.put(loop.vertices()[i], i);
    }
    BitSet taken = new BitSet(n * n);
    for (int i = 0; i < n; i++) {
      int v = loop.vertices()[i];
      for (int j = fans.begin(v); j < fans.begin(v + 1); j++) {
        int h = fans.halfEdge(j);
        mark(taken, n, i, place.get(mesh.corner()[Topology.next(h)]));
        mark(taken, n, i, place.get(mesh.corner()[Topology.prev(h)]));
      }
    }
    return taken;
  }

  private static void mark(BitSet taken, int n, int i, Integer k) {
    if (k != null) {
      taken.set(Math.min(i, k) * n + Math.max(i, k));
    }
  }

  private Change with(List<int[]> fills, int faces, String text) {
    int old = mesh.faceCount();
    int[] corner = Arrays.copyOf(mesh.corner(), 3 * (old + faces));
    int[] parent = new int[old + faces];
    Arrays.setAll(parent, f -> f < old ? f : Mended.FILLED);
    int at = 3 * old;
    for (int[] fill : fills) {
      System.arraycopy(fill, 0, corner, at, fill.length);
      at += fill.length;
    }
    return new Change(Mesh.of(mesh.xyz(), corner), parent, fills.size(), text);
  }
}
