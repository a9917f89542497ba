package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Measures {@link Coverage}: for each seam the band on both sides, and for each face the seams
 * whose bands lie over it. Where edges of bands cross a face, bands over it are taken to lie inside
 * one another: the order of work doesn't hang on so little.
 */
final class SeamPatches {
  private final SeamDistance from;
  private final int[] section;
  private final double widthMm;

  /** Faces that have a corner in the band of a seam, with the share that it covers. */
  private int[] face = new int[1024];

  private int[] seam = new int[1024];
  private float[] share = new float[1024];
  private int count;

  private SeamPatches(SeamDistance from, double widthMm) {
    this.from = from;
    this.section = from.section();
    this.widthMm = widthMm;
  }

  /**
   * Measures coverage.
   *
   * @param from distances over the plated faces, with sections numbered from 0
   * @param seams the seams between them
   * @param sections number of sections
   * @param widthsMm widths of laps, one coverage for each
   */
  static Coverage[] of(
      SeamDistance from, SeamLines seams, int sections, double[] widthsMm, Progress progress) {
    SeamPatches[] patches = new SeamPatches[widthsMm.length];
    Arrays.setAll(patches, i -> new SeamPatches(from, widthsMm[i]));
    double widest = Arrays.stream(widthsMm).max().orElse(0);
    int[][] edges = edgesOfPairs(seams);
    if (widest > 0) {
      from.each(
          edges,
          widest,
          (near, s) -> {
            for (SeamPatches patch : patches) {
              patch.add(s, near);
            }
          },
          progress);
    }
    Coverage[] result = new Coverage[widthsMm.length];
    Arrays.setAll(result, i -> patches[i].build(seams.pairs(), sections));
    return result;
  }

  private static int[][] edgesOfPairs(SeamLines seams) {
    int[] count = new int[seams.pairs().count()];
    for (int pair : seams.pair()) {
      count[pair]++;
    }
    int[][] edges = new int[count.length][];
    Arrays.setAll(edges, s -> new int[count[s]]);
    for (int i = seams.pair().length - 1; i >= 0; i--) {
      int pair = seams.pair()[i];
      edges[pair][--count[pair]] = seams.halfEdge()[i];
    }
    return edges;
  }

  private void add(int s, SeamDistance.Near near) {
    Mesh mesh = near.sub().mesh();
    double[] band = near.distanceMm();
    int[] corner = mesh.corner();
    for (int f = 0; f < mesh.faceCount(); f++) {
      double nearest =
          Math.min(band[corner[3 * f]], Math.min(band[corner[3 * f + 1]], band[corner[3 * f + 2]]));
      if (nearest < widthMm) {
        append(near.sub().faces()[f], s, (float) Clip.shareBelow(mesh, f, band, widthMm));
      }
    }
  }

  private void append(int f, int s, float shareBelow) {
    if (count == face.length) {
      face = Arrays.copyOf(face, 2 * count);
      seam = Arrays.copyOf(seam, 2 * count);
      share = Arrays.copyOf(share, 2 * count);
    }
    face[count] = f;
    seam[count] = s;
    share[count++] = shareBelow;
  }

  private Coverage build(Borders pairs, int sections) {
    int[] begin = new int[from.mesh().faceCount() + 1];
    for (int i = 0; i < count; i++) {
      begin[face[i] + 1]++;
    }
    for (int f = 1; f < begin.length; f++) {
      begin[f] += begin[f - 1];
    }
    int[] entry = new int[count];
    int[] fill = begin.clone();
    for (int i = 0; i < count; i++) {
      entry[fill[face[i]]++] = i;
    }
    Coverage.Builder builder = new Coverage.Builder(sections);
    for (int f = 0; f + 1 < begin.length; f++) {
      addFace(builder, f, Arrays.copyOfRange(entry, begin[f], begin[f + 1]));
    }
    return builder.build(pairs);
  }

  /** Splits a face in nested parts: under all its bands, under all but the narrowest, … */
  private void addFace(Coverage.Builder builder, int f, int[] entries) {
    double area = Faces.area(from.mesh(), f);
    int own = section[f];
    double done = 0;
    for (int left = entries.length; left > 0; left--) {
      int narrowest = 0;
      for (int i = 1; i < left; i++) {
        narrowest = share[entries[i]] < share[entries[narrowest]] ? i : narrowest;
      }
      double here = share[entries[narrowest]] - done;
      if (here > 0) {
        int[] over = new int[left];
        for (int i = 0; i < left; i++) {
          over[i] = seam[entries[i]];
        }
        builder.add(own, over, here * area);
        done += here;
      }
      System.arraycopy(entries, narrowest + 1, entries, narrowest, left - 1 - narrowest);
    }
  }
}
