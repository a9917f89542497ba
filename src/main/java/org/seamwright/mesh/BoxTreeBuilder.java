package org.seamwright.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.RecursiveTask;
import java.util.stream.IntStream;

/**
 * Builds a {@link BoxTree}: boxes are split where the expected cost of a query is least.
 *
 * <p>The cost of a split is the sum over its sides of box surface times number of faces, tried at a
 * fixed number of places along the box's longest side. Where all faces fall to one side the median
 * of their middles splits them, so that equal and nested faces make no long chain. O(n log n); 28
 * bytes a face while building. Large parts are built side by side; the tree is the same on any
 * number of cores, since which parts these are depends on their number of faces alone.
 *
 * <p>Source: I. Wald, "On fast construction of SAH-based bounding volume hierarchies", IEEE
 * Symposium on Interactive Ray Tracing (2007).
 */
final class BoxTreeBuilder {
  /** Faces of a leaf at most. */
  static final int LEAF = 4;

  /** Nodes above a face from which on faces are halved by number, to bound the depth. */
  static final int SURFACE_DEPTH = 24;

  /** Nodes above a face at most: halving ends after 30 more halvings, two a node. */
  static final int DEEPEST = SURFACE_DEPTH + 16;

  /** Faces of a part that one thread builds alone. */
  private static final int PART = 1 << 14;

  /** Faces of a block in loops over all faces. */
  private static final int BLOCK = 1 << 14;

  /** Numbers of a node's boxes. */
  private static final int NODE = BoxTree.CHILDREN * BoxTree.BOX;

  /** Box of a missing child. */
  private static final float[] MISSING = {
    0, 0, 0, Float.NEGATIVE_INFINITY, Float.NEGATIVE_INFINITY, Float.NEGATIVE_INFINITY
  };

  private final Mesh mesh;
  private final int faces;
  private final int[] face;

  /** Box of the face at each place: lower, then upper corner. */
  private final float[] box;

  private BoxTreeBuilder(Mesh mesh) {
    this.mesh = mesh;
    faces = mesh.faceCount();
    face = new int[faces];
    box = new float[BoxTree.BOX * faces];
  }

  /** Builds the tree of a mesh. */
  static BoxTree of(Mesh mesh) {
    BoxTreeBuilder builder = new BoxTreeBuilder(mesh);
    return mesh.faceCount() == 0
        ? new BoxTree(new int[0], new int[0], BoxTree.NONE, new double[3], 1, 0)
        : builder.build();
  }

  private BoxTree build() {
    double[] bounds = bounds();
    double[] middle = new double[3];
    double half = 0;
    double far = 0;
    for (int axis = 0; axis < 3; axis++) {
      middle[axis] = bounds[axis] / 2 + bounds[axis + 3] / 2;
      half = Math.max(half, bounds[axis + 3] - middle[axis]);
      far = Math.max(far, Math.max(-bounds[axis], bounds[axis + 3]));
    }
    // One more than the exponent, so that nothing is above 1. A point is left as it is.
    double scale = half > 0 ? Math.scalb(1.0, -1 - Math.getExponent(half)) : 1;
    double noise = BoxTree.FINE_ROUNDING * (1 + far * scale);
    fillBoxes(middle, scale, noise + BoxTree.ROUNDING);
    Part root = new Task(new Run(0, faces, boundsOf(0, faces)), 0).invoke();
    int nodes = root.size();
    int[] all = new int[BoxTree.NODE * nodes];
    int reference = root.store(all, new int[1]);
    int[] leaf = new int[4 * faces];
    inBlocks((from, to) -> fillLeaves(leaf, from, to));
    return new BoxTree(all, leaf, reference, middle, scale, noise);
  }

  private interface Range {
    void over(int from, int to);
  }

  private void inBlocks(Range action) {
    int blocks = (faces + BLOCK - 1) / BLOCK;
    IntStream all = IntStream.range(0, blocks);
    (blocks > 1 ? all.parallel() : all)
        .forEach(b -> action.over(b * BLOCK, (int) Math.min((b + 1L) * BLOCK, faces)));
  }

  /** Lower and upper corner of all faces, mm. */
  private double[] bounds() {
    int blocks = (faces + BLOCK - 1) / BLOCK;
    double[][] parts = new double[blocks][];
    inBlocks((from, to) -> parts[from / BLOCK] = bounds(from, to));
    double[] all = parts[0];
    for (double[] part : parts) {
      for (int axis = 0; axis < 3; axis++) {
        all[axis] = Math.min(all[axis], part[axis]);
        all[axis + 3] = Math.max(all[axis + 3], part[axis + 3]);
      }
    }
    return all;
  }

  private double[] bounds(int from, int to) {
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    int first = 3 * corner[3 * from];
    double x0 = p[first];
    double y0 = p[first + 1];
    double z0 = p[first + 2];
    double x1 = x0;
    double y1 = y0;
    double z1 = z0;
    for (int h = 3 * from; h < 3 * to; h++) {
      int v = 3 * corner[h];
      x0 = Math.min(x0, p[v]);
      x1 = Math.max(x1, p[v]);
      y0 = Math.min(y0, p[v + 1]);
      y1 = Math.max(y1, p[v + 1]);
      z0 = Math.min(z0, p[v + 2]);
      z1 = Math.max(z1, p[v + 2]);
    }
    return new double[] {x0, y0, z0, x1, y1, z1};
  }

  private void fillBoxes(double[] middle, double scale, double pad) {
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    inBlocks(
        (from, to) -> {
          for (int f = from; f < to; f++) {
            face[f] = f;
            int a = 3 * corner[3 * f];
            int b = 3 * corner[3 * f + 1];
            int c = 3 * corner[3 * f + 2];
            for (int axis = 0; axis < 3; axis++) {
              double lo = Math.min(p[a + axis], Math.min(p[b + axis], p[c + axis]));
              double hi = Math.max(p[a + axis], Math.max(p[b + axis], p[c + axis]));
              box[BoxTree.BOX * f + axis] = (float) ((lo - middle[axis]) * scale - pad);
              box[BoxTree.BOX * f + axis + 3] = (float) ((hi - middle[axis]) * scale + pad);
            }
          }
        });
  }

  private void fillLeaves(int[] leaf, int from, int to) {
    int[] corner = mesh.corner();
    for (int i = from; i < to; i++) {
      int f = face[i] < 0 ? ~face[i] : face[i];
      leaf[4 * i] = corner[3 * f];
      leaf[4 * i + 1] = corner[3 * f + 1];
      leaf[4 * i + 2] = corner[3 * f + 2];
      leaf[4 * i + 3] = face[i];
    }
  }

  /** Places of a run of faces, and the box of them all. */
  record Run(int from, int to, float[] bounds) {
    int faces() {
      return to - from;
    }

    /** Half the surface of the box. */
    double surface() {
      return Splitter.surface(bounds);
    }
  }

  /** A finished part of the tree: many nodes with references inside, or one node over parts. */
  private record Part(float[] node, int[] child, int root, Part[] parts) {
    /** Number of nodes. */
    int size() {
      return node.length / NODE + Arrays.stream(parts).mapToInt(Part::size).sum();
    }

    /** Packs the part into its place in the whole, and gives the reference to it. */
    int store(int[] nodes, int[] used) {
      int first = used[0];
      int count = node.length / NODE;
      used[0] += BoxTree.NODE * count;
      for (int n = 0; n < count; n++) {
        int at = first + BoxTree.NODE * n;
        PackedBoxes.write(node, NODE * n, nodes, at);
        for (int k = 0; k < BoxTree.CHILDREN; k++) {
          nodes[at + BoxTree.REFERENCES + k] =
              parts.length > 0
                  ? parts[k].store(nodes, used)
                  : moved(child[BoxTree.CHILDREN * n + k], first);
        }
      }
      return moved(root, first);
    }

    private static int moved(int reference, int first) {
      return reference < 0 ? reference : first + BoxTree.NODE * reference;
    }
  }

  /** Builds the tree over a run. */
  private final class Task extends RecursiveTask<Part> {
    private static final long serialVersionUID = 1;
    private final transient Run run;
    private final int depth;

    Task(Run run, int depth) {
      this.run = run;
      this.depth = depth;
    }

    @Override
    protected Part compute() {
      if (run.faces() <= PART) {
        Alone alone = new Alone(run.faces());
        int root = alone.build(run, depth);
        return alone.part(root);
      }
      Run[] halves = split(run);
      ForkJoinTask<Run[]> second = ForkJoinTask.adapt(() -> split(halves[1])).fork();
      Run[] first = split(halves[0]);
      Run[] runs = {first[0], first[1], second.join()[0], second.join()[1]};
      float[] node = new float[NODE];
      List<Task> tasks = new ArrayList<>();
      for (int k = 0; k < runs.length; k++) {
        write(runs[k].bounds(), node, BoxTree.BOX * k);
        tasks.add(new Task(runs[k], depth + 1));
      }
      Part[] parts = invokeAll(tasks).stream().map(Task::join).toArray(Part[]::new);
      return new Part(node, new int[0], 0, parts);
    }

    private Run[] split(Run whole) {
      return new Splitter(face, box).split(whole, depth >= SURFACE_DEPTH);
    }
  }

  /** Builds a part on one thread. */
  private final class Alone {
    private final Splitter splitter = new Splitter(face, box);
    private final float[] node;
    private final int[] child;
    private int used;

    Alone(int faces) {
      // Every node but the root has two faces or more for itself alone.
      int most = (faces + 1) / 2;
      node = new float[NODE * most];
      child = new int[BoxTree.CHILDREN * most];
    }

    Part part(int root) {
      return new Part(
          Arrays.copyOf(node, NODE * used),
          Arrays.copyOf(child, BoxTree.CHILDREN * used),
          root,
          new Part[0]);
    }

    int build(Run run, int depth) {
      if (run.faces() <= LEAF) {
        face[run.to() - 1] = ~face[run.to() - 1];
        return ~(4 * run.from());
      }
      int at = used++;
      Run[] runs = new Run[BoxTree.CHILDREN];
      runs[0] = run;
      int count = 1;
      boolean halve = depth >= SURFACE_DEPTH;
      while (count < runs.length) {
        int k = next(runs, count, halve);
        if (k < 0) {
          break;
        }
        Run[] two = splitter.split(runs[k], halve);
        runs[k] = two[0];
        runs[count++] = two[1];
      }
      for (int k = 0; k < runs.length; k++) {
        write(k < count ? runs[k].bounds() : MISSING, node, NODE * at + BoxTree.BOX * k);
        child[BoxTree.CHILDREN * at + k] = k < count ? build(runs[k], depth + 1) : BoxTree.NONE;
      }
      return at;
    }

    /** The run to split next, of the first so many: the largest; -1 if all are leaves. */
    private int next(Run[] runs, int count, boolean halve) {
      int next = -1;
      double largest = -1;
      for (int k = 0; k < count; k++) {
        double size = halve ? runs[k].faces() : runs[k].surface();
        if (runs[k].faces() > LEAF && size > largest) {
          largest = size;
          next = k;
        }
      }
      return next;
    }
  }

  private static void write(float[] bounds, float[] node, int at) {
    if (bounds == MISSING) {
      System.arraycopy(bounds, 0, node, at, BoxTree.BOX);
      return;
    }
    for (int axis = 0; axis < 3; axis++) {
      node[at + axis] = (bounds[axis] + bounds[axis + 3]) / 2;
      // The room takes up the roundings of the middle and of the half.
      node[at + axis + 3] = (bounds[axis + 3] - bounds[axis]) / 2 + (float) BoxTree.ROUNDING;
    }
  }

  private float[] boundsOf(int from, int to) {
    float[] all = Splitter.none();
    for (int i = from; i < to; i++) {
      Splitter.grow(all, 0, box, BoxTree.BOX * i);
    }
    return all;
  }
}
