package org.seamwright.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * The parts of a mesh with their boxes, and which closed ones might touch which part. Closed parts
 * are kept in order of their least x, so that only those that begin left of a part's end are looked
 * at.
 */
public final class PartBoxes {
  private final Mesh mesh;
  private final List<int[]> faces = new ArrayList<>();
  private final List<Bounds> boxes = new ArrayList<>();
  private final Integer[] closed;
  private final Solid[] solid;

  /** Lists the parts. */
  public PartBoxes(Mesh mesh, Topology topology, Parts parts) {
    this.mesh = mesh;
    list(parts);
    faces.forEach(f -> boxes.add(box(mesh, f)));
    boolean[] isClosed = Solid.closed(mesh, topology, parts);
    List<Integer> list = new ArrayList<>();
    for (int p = 0; p < parts.count(); p++) {
      if (isClosed[p]) {
        list.add(p);
      }
    }
    closed = list.toArray(Integer[]::new);
    Arrays.sort(closed, (p, q) -> Double.compare(boxes.get(p).minX(), boxes.get(q).minX()));
    solid = new Solid[parts.count()];
  }

  private void list(Parts parts) {
    int[] size = new int[parts.count()];
    for (int p : parts.of()) {
      size[p]++;
    }
    for (int s : size) {
      faces.add(new int[s]);
    }
    Arrays.fill(size, 0);
    for (int f = 0; f < parts.of().length; f++) {
      int p = parts.of()[f];
      faces.get(p)[size[p]++] = f;
    }
  }

  private static Bounds box(Mesh mesh, int[] faces) {
    double[] lo = {Double.MAX_VALUE, Double.MAX_VALUE, Double.MAX_VALUE};
    double[] hi = {-Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
    for (int f : faces) {
      for (int k = 0; k < 9; k++) {
        double value = mesh.xyz()[3 * mesh.corner()[3 * f + k / 3] + k % 3];
        lo[k % 3] = Math.min(lo[k % 3], value);
        hi[k % 3] = Math.max(hi[k % 3], value);
      }
    }
    return new Bounds(lo[0], lo[1], lo[2], hi[0], hi[1], hi[2]);
  }

  /** Number of parts. */
  public int count() {
    return faces.size();
  }

  /** Faces of a part, ascending. */
  public int[] faces(int part) {
    return faces.get(part);
  }

  /** Box of a part, mm. */
  public Bounds box(int part) {
    return boxes.get(part);
  }

  /** Diagonal of the smallest box of a part, mm. */
  public double diagonal() {
    return boxes.stream().mapToDouble(Bounds::diagonal).min().orElse(0);
  }

  /** A closed part made ready to be asked about places. */
  public Solid solid(int part) {
    if (solid[part] == null) {
      solid[part] = Solid.of(mesh, faces.get(part));
    }
    return solid[part];
  }

  /** Closed parts other than this one whose boxes meet its box, ascending. */
  public int[] meeting(int part) {
    Bounds box = boxes.get(part);
    List<Integer> found = new ArrayList<>();
    for (int q : closed) {
      Bounds other = boxes.get(q);
      if (other.minX() > box.maxX()) {
        break;
      }
      if (q != part
          && other.maxX() >= box.minX()
          && other.maxY() >= box.minY()
          && other.minY() <= box.maxY()
          && other.maxZ() >= box.minZ()
          && other.minZ() <= box.maxZ()) {
        found.add(q);
      }
    }
    return found.stream().mapToInt(Integer::intValue).sorted().toArray();
  }
}
