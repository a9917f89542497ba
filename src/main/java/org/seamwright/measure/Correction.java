package org.seamwright.measure;

import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * What the surface behind the facets has more than they, summed over all facets for one idea of
 * what a crease is.
 *
 * <p>Where normals do not fit the chords they are fitted once, and the blocks of facets that this
 * touches are summed again. The same digits on any number of cores.
 */
final class Correction {
  /** Facets summed in one go: fixed, so that the digits don't depend on the number of threads. */
  private static final int BLOCK = 1 << 12;

  private final Mesh mesh;
  private final Topology topology;
  private final CornerNormals normals;
  private final double creaseDegrees;
  private final EdgeTangents.Borders borders;

  private final Sum correction = new Sum();
  private final Sum doubt = new Sum();
  private final Sum roughness = new Sum();
  private int folded;
  private final Sum foldedArea = new Sum();
  private final Sum foldedExcess = new Sum();
  private boolean doubtful;

  private Correction(Mesh mesh, Topology topology, CornerNormals normals, double creaseDegrees) {
    this.mesh = mesh;
    this.topology = topology;
    this.normals = normals;
    this.creaseDegrees = creaseDegrees;
    this.borders = EdgeTangents.Borders.of(mesh, topology);
  }

  static Correction of(
      Mesh mesh,
      Topology topology,
      CornerNormals normals,
      double creaseDegrees,
      Progress progress) {
    Correction result = new Correction(mesh, topology, normals, creaseDegrees);
    result.sum(progress);
    return result;
  }

  private void sum(Progress progress) {
    int blocks = (mesh.faceCount() + BLOCK - 1) / BLOCK;
    FacetBlock[] parts = new FacetBlock[blocks];
    byte[] marks = new byte[mesh.vertexCount()];
    Blocks.run(blocks, progress.between(0, 0.4), b -> parts[b] = block(b, marks));
    boolean misfits = false;
    for (FacetBlock part : parts) {
      misfits |= part.misfits;
    }
    if (misfits && normals.fit(marks, progress.between(0.4, 0.6))) {
      Blocks.run(
          blocks,
          progress.between(0.6, 1),
          b -> parts[b] = isTurned(b, marks) ? block(b, new byte[0]) : parts[b]);
    }
    for (FacetBlock part : parts) {
      correction.add(part.correction);
      doubt.add(part.doubt);
      roughness.add(part.roughness);
      folded += part.folded;
      foldedArea.add(part.foldedArea);
      foldedExcess.add(part.foldedExcess);
      doubtful |= part.doubtful;
    }
    doubtful |= normals.metDoubtful();
  }

  private FacetBlock block(int b, byte[] marks) {
    FacetBlock part = new FacetBlock(mesh, topology, normals, borders, creaseDegrees, marks);
    part.run(b * BLOCK, Math.min(mesh.faceCount(), (b + 1) * BLOCK));
    return part;
  }

  private boolean isTurned(int b, byte[] marks) {
    int[] corner = mesh.corner();
    int to = Math.min(mesh.faceCount(), (b + 1) * BLOCK);
    for (int h = 3 * b * BLOCK; h < 3 * to; h++) {
      if (marks[corner[h]] == CornerNormals.TURNED) {
        return true;
      }
    }
    return false;
  }

  /** Area of the patches less that of their facets, mm². */
  double correction() {
    return correction.value();
  }

  /** The same with every facet's difference taken as positive, mm². */
  double doubt() {
    return doubt.value();
  }

  /** What roughness is taken to add to the area, mm². */
  double roughness() {
    return roughness.value();
  }

  Folds folds() {
    return new Folds(folded, foldedArea.value(), foldedExcess.value());
  }

  /** Whether some edge turns so far that it may or may not be a crease. */
  boolean metDoubtful() {
    return doubtful;
  }
}
