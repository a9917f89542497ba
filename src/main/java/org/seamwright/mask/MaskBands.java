package org.seamwright.mask;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.LabelCut;
import org.seamwright.geodesic.Refinement;
import org.seamwright.geodesic.Sources;
import org.seamwright.geodesic.SurfaceDistance;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;

/**
 * Where each strip of tape lies on the piece, its laps over the strip before it, and where lacquer
 * goes: faces cut along the edges of tape, for pictures. A band is what lies between two distances
 * from the edge and two places along it; neighbouring bands meet where they have it equally far to
 * either. Amounts come from {@link Masking}, never from here: the faces are small enough for eyes.
 *
 * @param mesh the piece, cut
 * @param parentFace one entry per face: its face in the map
 * @param cover one entry per face
 * @param band one entry per face: a number of its own for each strip, piece and lap, 0 elsewhere
 * @param bands how many such numbers, from 1
 * @param strip one entry per face: its strip's place in the list from 1, 0 for none
 * @param strips strips of all masks in order
 */
public record MaskBands(
    Mesh mesh,
    int[] parentFace,
    Cover[] cover,
    int[] band,
    int bands,
    int[] strip,
    List<Strip> strips) {
  /** Faces are made so much smaller than the tape is wide. */
  private static final double FACES_PER_TAPE = 4;

  /** No finer than the piece's diagonal by this: pictures have no more places across. */
  private static final double FINEST = 500;

  private static final double COARSEST = 60;

  /** Far from any edge: finite, so that scores can be subtracted. */
  private static final double FAR_MM = 1e7;

  /** What lies on a face. */
  public enum Cover {
    /** It is plated. */
    PLATED,
    /** It is no part of the work. */
    OUT_OF_SCOPE,
    /** Nothing, though it stays bare. */
    NOTHING,
    /** Lacquer. */
    LACQUER,
    /** Tape along the line. */
    TAPE,
    /** Two strips of tape, one over the other. */
    LAP,
    /** Tape behind the one along the line. */
    TAPE_BEHIND
  }

  /**
   * A strip, or the pieces of a row behind one.
   *
   * @param mask its mask's number
   * @param number its own in the mask, from 1
   * @param tape what is cut
   * @param points places on it, mm
   */
  public record Strip(int mask, int number, MaskPlan.TapeStrip tape, List<Vector3D> points) {
    /** Copies the list. */
    public Strip {
      points = List.copyOf(points);
    }

    /** How it is called: "1.2". */
    public String id() {
      return mask + "." + number;
    }
  }

  /** A rectangle of places along an edge and distances from it. */
  private record Zone(
      Cover cover, int band, int strip, int edge, double from, double to, double low, double high) {
    double score(double at, double distance, double length, boolean closed) {
      double middle = (from + to) / 2;
      double off = at - middle;
      if (closed) {
        off -= length * Math.rint(off / length);
      }
      boolean whole = to - from >= length * (1 - 1e-9);
      double along = whole ? Double.POSITIVE_INFINITY : (to - from) / 2 - Math.abs(off);
      return Math.min(along, Math.min(distance - low, high - distance));
    }
  }

  /**
   * Lays the bands out.
   *
   * @param map the piece
   * @param plan its masks
   * @param settings what they were planned with
   */
  public static MaskBands of(
      SurfaceMap map, MaskPlan plan, MaskSettings settings, Progress progress) {
    return new Maker(map, plan, settings).make(progress);
  }

  private static final class Maker {
    private final SurfaceMap map;
    private final MaskPlan plan;
    private final MaskSettings settings;
    private final List<MaskEdge> edges = new ArrayList<>();
    private final List<Zone> zones = new ArrayList<>();
    private final List<Strip> strips = new ArrayList<>();
    private int bands;
    private double widest;

    /** One list per edge: its zones. */
    private final List<List<Integer>> zonesOf = new ArrayList<>();

    Maker(SurfaceMap map, MaskPlan plan, MaskSettings settings) {
      this.map = map;
      this.plan = plan;
      this.settings = settings;
    }

    MaskBands make(Progress progress) {
      for (MaskPlan.Mask mask : plan.masks()) {
        lay(mask);
      }
      widest = Math.max(widest, settings.tapeWidthMm());
      double reach = reachMm();
      double near = 1.2 * Math.min(Math.max(reach, widest), map.mesh().bounds().diagonal());
      CutMesh fine = refined(near, progress);
      Mesh mesh = fine.mesh();
      int[] treatment = carried(fine);
      double[] distance = distances(mesh, treatment, near, progress);
      AlongEdges along = AlongEdges.of(mesh, edges, distance);
      int none = zones.size() + 1;
      int[] label = new int[mesh.vertexCount()];
      for (int v = 0; v < label.length; v++) {
        label[v] = best(v, along, distance, reach);
      }
      LabelCut.Result cut =
          LabelCut.cut(
              mesh,
              label,
              (v, z) -> score(z, v, along, distance, reach),
              f -> treatment[f] == Treatment.BARE.code() && hasAny(mesh, f, label, none));
      progress.at(1);
      return result(fine, cut, treatment, none);
    }

    private double reachMm() {
      boolean all = settings.dip().isPresent() && settings.dip().get().isWhole();
      return all ? FAR_MM / 2 : Math.max(settings.splashMm(), settings.tapeWidthMm());
    }

    private void lay(MaskPlan.Mask mask) {
      int first = edges.size();
      edges.addAll(mask.edges());
      for (int i = 0; i < mask.edges().size(); i++) {
        zonesOf.add(new ArrayList<>());
      }
      List<MaskPlan.TapeStrip> tape = mask.tape();
      for (int i = 0; i < tape.size(); i++) {
        MaskPlan.TapeStrip t = tape.get(i);
        int strip = strips.size();
        strips.add(new Strip(mask.id(), i + 1, t, List.of()));
        if (t.row() > 0) {
          behind(t, strip, first + t.edge(), front(tape, i));
        } else {
          front(tape, t, strip, first + t.edge());
        }
      }
    }

    /** Width of the strip that a row lies behind. */
    private static double front(List<MaskPlan.TapeStrip> tape, int row) {
      for (int i = row - 1; i >= 0; i--) {
        if (tape.get(i).row() == 0) {
          return tape.get(i).widthMm();
        }
      }
      return 0;
    }

    private void front(List<MaskPlan.TapeStrip> tape, MaskPlan.TapeStrip t, int strip, int edge) {
      double over = 0;
      for (MaskPlan.TapeStrip next : tape) {
        double gap = next.fromMm() - t.toMm();
        double length = edges.get(edge).lengthMm();
        gap -= edges.get(edge).closed() ? length * Math.rint(gap / length) : 0;
        if (next.row() == 0 && next.edge() == t.edge() && Math.abs(gap) < 1e-6 * length) {
          over = Math.max(over, next.lapMm());
        }
      }
      over = Math.min(over, 0.9 * (t.toMm() - t.fromMm()));
      double end = t.toMm() - over;
      add(new Zone(Cover.TAPE, ++bands, strip, edge, t.fromMm(), end, -FAR_MM, t.widthMm()));
      if (over > 0) {
        add(new Zone(Cover.LAP, ++bands, strip, edge, end, t.toMm(), -FAR_MM, t.widthMm()));
      }
      widest = Math.max(widest, t.widthMm());
    }

    private void behind(MaskPlan.TapeStrip t, int strip, int edge, double front) {
      double low = front + (t.row() - 1) * t.widthMm();
      double each = (t.toMm() - t.fromMm()) / t.pieces();
      for (int i = 0; i < t.pieces(); i++) {
        double from = t.fromMm() + i * each;
        add(
            new Zone(
                Cover.TAPE_BEHIND,
                ++bands,
                strip,
                edge,
                from,
                from + each,
                low,
                low + t.widthMm()));
      }
      widest = Math.max(widest, low + t.widthMm());
    }

    private void add(Zone zone) {
      zonesOf.get(zone.edge()).add(zones.size());
      zones.add(zone);
    }

    private CutMesh refined(double near, Progress progress) {
      double diagonal = map.mesh().bounds().diagonal();
      int bare = Treatment.BARE.code();
      CutMesh coarse =
          Refinement.edges(
              map.mesh(),
              Math.max(settings.tapeWidthMm(), diagonal / COARSEST),
              f -> map.treatment()[f] == bare);
      int[] treatment = carried(coarse);
      double[] distance = distances(coarse.mesh(), treatment, near, progress);
      double step = Math.max(settings.tapeWidthMm() / FACES_PER_TAPE, diagonal / FINEST);
      int[] corner = coarse.mesh().corner();
      return coarse.then(
          Refinement.edges(
              coarse.mesh(),
              step,
              f ->
                  treatment[f] == bare
                      && Math.min(
                              distance[corner[3 * f]],
                              Math.min(distance[corner[3 * f + 1]], distance[corner[3 * f + 2]]))
                          < 1.5 * widest));
    }

    private int[] carried(CutMesh cut) {
      int[] treatment = new int[cut.mesh().faceCount()];
      for (int f = 0; f < treatment.length; f++) {
        treatment[f] = map.treatment()[cut.parentFace()[f]];
      }
      return treatment;
    }

    private static double[] distances(Mesh mesh, int[] treatment, double near, Progress progress) {
      Topology topology = Topology.of(mesh);
      int[] ring = EdgeRings.of(mesh, topology).toArray();
      int[] borders = new int[ring.length];
      int count = 0;
      for (int h = 0; h < ring.length; h++) {
        boolean border = false;
        for (int g = ring[h]; g != h && treatment[h / 3] == Treatment.BARE.code(); g = ring[g]) {
          border |= treatment[g / 3] == Treatment.PLATE.code();
        }
        if (border) {
          borders[count++] = h;
        }
      }
      if (count == 0) {
        double[] far = new double[mesh.vertexCount()];
        Arrays.fill(far, Double.POSITIVE_INFINITY);
        return far;
      }
      return SurfaceDistance.from(
          mesh,
          topology,
          VertexFans.of(mesh),
          Sources.edges(Arrays.copyOf(borders, count)),
          near,
          f -> treatment[f] == Treatment.BARE.code(),
          progress);
    }

    /** The label with the highest score; zones first, then lacquer, then nothing. */
    private int best(int v, AlongEdges along, double[] distance, double reach) {
      int best = zones.size();
      double most = score(best, v, along, distance, reach);
      double other = score(zones.size() + 1, v, along, distance, reach);
      if (other > most) {
        best = zones.size() + 1;
        most = other;
      }
      if (along.edge[v] != AlongEdges.NONE) {
        for (int z : zonesOf.get(along.edge[v])) {
          double score = score(z, v, along, distance, reach);
          if (score > most) {
            best = z;
            most = score;
          }
        }
      }
      return best;
    }

    private double score(int label, int v, AlongEdges along, double[] distance, double reach) {
      double d = Math.min(FAR_MM, distance[v]);
      if (label == zones.size() + 1) {
        return d - reach;
      }
      int e = along.edge[v];
      if (label < zones.size()) {
        Zone zone = zones.get(label);
        return zone.edge() == e
            ? zone.score(along.at[v], d, along.lengthMm(e), edges.get(e).closed())
            : Double.NEGATIVE_INFINITY;
      }
      // Lacquer: wherever no tape is, as far as the splash goes.
      double tape = -FAR_MM;
      for (int z : e == AlongEdges.NONE ? List.<Integer>of() : zonesOf.get(e)) {
        tape = Math.max(tape, score(z, v, along, distance, reach));
      }
      return Math.min(reach - d, -tape);
    }

    private static boolean hasAny(Mesh mesh, int f, int[] label, int none) {
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        if (label[mesh.corner()[h]] != none) {
          return true;
        }
      }
      return false;
    }

    private MaskBands result(CutMesh fine, LabelCut.Result cut, int[] treatment, int none) {
      Mesh mesh = cut.cut().mesh();
      int faces = mesh.faceCount();
      int[] parent = new int[faces];
      Cover[] cover = new Cover[faces];
      int[] band = new int[faces];
      int[] strip = new int[faces];
      List<List<Vector3D>> points = new ArrayList<>();
      strips.forEach(s -> points.add(new ArrayList<>()));
      for (int f = 0; f < faces; f++) {
        int before = cut.cut().parentFace()[f];
        parent[f] = fine.parentFace()[before];
        int z = cut.faceLabel()[f];
        if (treatment[before] != Treatment.BARE.code()) {
          cover[f] =
              treatment[before] == Treatment.PLATE.code() ? Cover.PLATED : Cover.OUT_OF_SCOPE;
        } else if (z < 0 || z == none) {
          cover[f] = Cover.NOTHING;
        } else if (z == zones.size()) {
          cover[f] = Cover.LACQUER;
        } else {
          cover[f] = zones.get(z).cover();
          band[f] = zones.get(z).band();
          strip[f] = zones.get(z).strip() + 1;
          points.get(zones.get(z).strip()).add(middle(mesh, f));
        }
      }
      List<Strip> placed = new ArrayList<>();
      for (int i = 0; i < strips.size(); i++) {
        Strip s = strips.get(i);
        placed.add(new Strip(s.mask(), s.number(), s.tape(), points.get(i)));
      }
      return new MaskBands(mesh, parent, cover, band, bands, strip, List.copyOf(placed));
    }

    private static Vector3D middle(Mesh mesh, int f) {
      double[] at = new double[3];
      Faces.centroid(mesh, f, at);
      return Vector3D.of(at);
    }
  }
}
