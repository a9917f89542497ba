package org.seamwright.section;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * For every section the distance from its seams with sections worked earlier, as far as its laps
 * reach. Sections whose laps lie apart share one field, so a handful of fields holds them all: one
 * double and one int per vertex and field.
 */
final class Bands {
  /** Owner of a vertex that no lap of the field reaches. */
  static final int NONE = 0;

  /** Per field and vertex: distance, mm; infinite where no lap of the field reaches. */
  private final double[][] distance;

  /** Per field and vertex: the section whose distance it is. */
  private final int[][] owner;

  private Bands(double[][] distance, int[][] owner) {
    this.distance = distance;
    this.owner = owner;
  }

  /**
   * Measures.
   *
   * @param from distances over the plated faces
   * @param seams seams between section ids in working order
   * @param sections number of sections
   * @param widthMm how far laps reach
   */
  static Bands of(
      SeamDistance from, SeamLines seams, int sections, double widthMm, Progress progress) {
    List<double[]> distances = new ArrayList<>();
    List<int[]> owners = new ArrayList<>();
    int[][] edges = edgesOfLater(seams, sections);
    if (widthMm > 0) {
      int vertices = from.mesh().vertexCount();
      from.each(
          edges, widthMm, (near, id) -> pack(near, id, vertices, distances, owners), progress);
    }
    return new Bands(distances.toArray(new double[0][]), owners.toArray(new int[0][]));
  }

  /** Half-edges of the seams of each section with earlier ones, by id of the later section. */
  private static int[][] edgesOfLater(SeamLines seams, int sections) {
    int[] count = new int[sections + 1];
    for (int pair : seams.pair()) {
      count[seams.pairs().high()[pair]]++;
    }
    int[][] edges = new int[sections + 1][];
    for (int id = 0; id <= sections; id++) {
      edges[id] = new int[count[id]];
    }
    for (int i = seams.pair().length - 1; i >= 0; i--) {
      int id = seams.pairs().high()[seams.pair()[i]];
      edges[id][--count[id]] = seams.halfEdge()[i];
    }
    return edges;
  }

  /** Puts a band into the first field where its vertices are free. */
  private static void pack(
      SeamDistance.Near near, int id, int vertices, List<double[]> distances, List<int[]> owners) {
    double[] band = near.distanceMm();
    int[] reached = new int[band.length];
    int count = 0;
    for (int v = 0; v < band.length; v++) {
      if (band[v] < Double.POSITIVE_INFINITY) {
        reached[count++] = near.sub().vertices()[v];
      }
    }
    reached = Arrays.copyOf(reached, count);
    int field = 0;
    while (field < owners.size() && !free(owners.get(field), reached)) {
      field++;
    }
    if (field == owners.size()) {
      owners.add(new int[vertices]);
      distances.add(new double[vertices]);
      Arrays.fill(distances.get(field), Double.POSITIVE_INFINITY);
    }
    for (int v = 0; v < band.length; v++) {
      if (band[v] < Double.POSITIVE_INFINITY) {
        owners.get(field)[near.sub().vertices()[v]] = id;
        distances.get(field)[near.sub().vertices()[v]] = band[v];
      }
    }
  }

  private static boolean free(int[] owner, int[] vertices) {
    for (int v : vertices) {
      if (owner[v] != NONE) {
        return false;
      }
    }
    return true;
  }

  /** Whether at least two corners of a face have a distance in one field: a lap may cut it. */
  boolean mayCut(Mesh mesh, int face) {
    int[] corner = mesh.corner();
    for (double[] d : distance) {
      int known = 0;
      for (int h = 3 * face; h < 3 * face + 3; h++) {
        known += d[corner[h]] < Double.POSITIVE_INFINITY ? 1 : 0;
      }
      if (known >= 2) {
        return true;
      }
    }
    return false;
  }

  /**
   * The same bands on some of the faces.
   *
   * @param vertices one entry per vertex of theirs: its number in the whole
   */
  Bands on(int[] vertices) {
    double[][] distances = new double[fields()][vertices.length];
    int[][] owners = new int[fields()][vertices.length];
    for (int field = 0; field < fields(); field++) {
      for (int v = 0; v < vertices.length; v++) {
        distances[field][v] = distance[field][vertices[v]];
        owners[field][v] = owner[field][vertices[v]];
      }
    }
    return new Bands(distances, owners);
  }

  /** Number of fields. */
  int fields() {
    return distance.length;
  }

  /** Distances of a field, one entry per vertex. */
  double[] distance(int field) {
    return distance[field];
  }

  /**
   * The section whose band of a field crosses or covers a face; {@link #NONE} if none does.
   *
   * @param widthMm width of the lap
   */
  int ownerNear(Mesh mesh, int face, int field, double widthMm) {
    double[] d = distance[field];
    int nearest = mesh.corner()[3 * face];
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner()[3 * face + k];
      // Beside the reach of a band faces have corners without a distance: they lie outside of it.
      if (!(d[v] < Double.POSITIVE_INFINITY)) {
        return NONE;
      }
      nearest = d[v] < d[nearest] ? v : nearest;
    }
    return d[nearest] < widthMm ? owner[field][nearest] : NONE;
  }

  /** Whether a face that the edge of the lap doesn't cross lies inside of it. */
  boolean covers(Mesh mesh, int face, int field, double widthMm) {
    double[] d = distance[field];
    int[] corner = mesh.corner();
    double above =
        (d[corner[3 * face]] - widthMm)
            + (d[corner[3 * face + 1]] - widthMm)
            + (d[corner[3 * face + 2]] - widthMm);
    return above < 0;
  }

  /**
   * Lap area of each section, by id, as a cut along the edges of the laps would give it.
   *
   * @param section one entry per face: id, 0 for none
   * @param widthMm width of the lap
   */
  double[] lapMm2(Mesh mesh, int[] section, int sections, double widthMm) {
    Sum[] sums = new Sum[sections + 1];
    Arrays.setAll(sums, i -> new Sum());
    for (int field = 0; field < fields(); field++) {
      for (int f = 0; f < section.length; f++) {
        if (section[f] > 0) {
          int id = ownerNear(mesh, f, field, widthMm);
          if (id > section[f]) {
            double share = Clip.shareBelow(mesh, f, distance[field], widthMm);
            sums[id].add(share * Faces.area(mesh, f));
          }
        }
      }
    }
    double[] area = new double[sections + 1];
    Arrays.setAll(area, i -> sums[i].value());
    return area;
  }

  /** The same bands on a mesh after a cut. */
  Bands carried(CutMesh cut) {
    int[][] owners = new int[fields()][];
    double[][] distances = new double[fields()][];
    for (int field = 0; field < fields(); field++) {
      distances[field] = cut.carry(distance[field]);
      owners[field] = Arrays.copyOf(owner[field], cut.mesh().vertexCount());
      for (int i = 0; i < cut.edgeFrom().length; i++) {
        // Where the ends belong to different bands the vertex lies outside of both.
        owners[field][cut.oldVertexCount() + i] = owners[field][cut.edgeFrom()[i]];
      }
    }
    return new Bands(distances, owners);
  }
}
