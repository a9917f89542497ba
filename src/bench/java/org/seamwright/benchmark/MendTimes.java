package org.seamwright.benchmark;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.mend.MendException;
import org.seamwright.mend.Mender;
import org.seamwright.mend.Repair;
import org.seamwright.mesh.Mesh;

/**
 * Times each step of cleaning on the rippled torus with 250,000 and a million faces, made faulty as
 * scans are: holes, faces turned over and repeated, corners written twice, a second torus inside or
 * pushed through, a table. Best of three, in one process:
 *
 * <pre>java -cp target/classes:target/test-classes:target/lib/* org.seamwright.benchmark.MendTimes</pre>
 */
final class MendTimes {
  private static final int RUNS = 3;

  private MendTimes() {}

  /** Prints the table. */
  public static void main(String[] args) throws MendException {
    System.out.println("| step | 250,000 faces | 1,000,000 faces | growth |");
    System.out.println("|---|---|---|---|");
    Map<String, Double> few = times(500, 250);
    Map<String, Double> many = times(1000, 500);
    many.forEach(
        (step, ms) ->
            System.out.printf(
                "| `%s` | %.0f ms | %.0f ms | %.1f |%n", step, few.get(step), ms, ms / few.get(step)));
  }

  private static Map<String, Double> times(int nu, int nv) throws MendException {
    Mesh torus = Torus.of(nu, nv);
    Mesh faulty = faulty(torus);
    Mesh half = Torus.of(nu, nv / 2);
    Mesh two = joined(half, half, 0.5, 0);
    Mesh through = joined(half, half, 1, 150);
    Map<Repair, Mesh> steps = new LinkedHashMap<>();
    steps.put(new Repair.Weld(OptionalDouble.empty()), faulty);
    steps.put(new Repair.SplitEdges(OptionalDouble.empty()), faulty);
    steps.put(new Repair.DropFaulty(), faulty);
    steps.put(new Repair.TurnOutward(), faulty);
    steps.put(new Repair.FillHoles(50), faulty);
    steps.put(new Repair.KeepLargest(1), two);
    steps.put(new Repair.KeepAbove(0.3), two);
    steps.put(new Repair.KeepParts(List.of(Vector3D.of(240, 0, 0))), two);
    steps.put(new Repair.CutBelow(Vector3D.of(0, 0, 1), Vector3D.of(0.1, 0, 1)), torus);
    steps.put(new Repair.CutTable(Optional.empty(), OptionalDouble.empty()), onTable(nu, nv));
    steps.put(new Repair.DropInner(), two);
    steps.put(new Repair.DropHidden(), through);
    Map<String, Double> times = new LinkedHashMap<>();
    for (Map.Entry<Repair, Mesh> step : steps.entrySet()) {
      double best = Double.MAX_VALUE;
      for (int run = 0; run < RUNS; run++) {
        long start = System.nanoTime();
        Mender.mend(step.getValue(), List.of(step.getKey()), Progress.NONE);
        best = Math.min(best, (System.nanoTime() - start) / 1e6);
      }
      times.put(step.getKey().kind(), best);
    }
    return times;
  }

  /** Every 1,000th face left out, every 777th turned, every 913th twice, every 501st torn off. */
  private static Mesh faulty(Mesh mesh) {
    int faces = mesh.faceCount();
    double[] xyz = java.util.Arrays.copyOf(mesh.xyz(), mesh.xyz().length + 9 * faces / 501 + 9);
    int[] corner = new int[6 * faces];
    int n = 0;
    int v = mesh.vertexCount();
    for (int f = 0; f < faces; f++) {
      if (f % 1000 == 17) {
        continue;
      }
      for (int copies = f % 913 == 5 ? 2 : 1; copies > 0; copies--) {
        boolean turned = f % 777 == 9;
        corner[n++] = mesh.corner()[3 * f];
        corner[n++] = mesh.corner()[3 * f + (turned ? 2 : 1)];
        corner[n++] = mesh.corner()[3 * f + (turned ? 1 : 2)];
      }
      for (int k = 1; k <= 3 && f % 501 == 3; k++) {
        int from = 3 * corner[n - k];
        for (int axis = 0; axis < 3; axis++) {
          xyz[3 * v + axis] = xyz[from + axis] + 1e-5;
        }
        corner[n - k] = v++;
      }
    }
    return Mesh.of(java.util.Arrays.copyOf(xyz, 3 * v), java.util.Arrays.copyOf(corner, n));
  }

  /** A mesh and another, smaller by a factor about the tube's middle line or moved along x. */
  private static Mesh joined(Mesh a, Mesh b, double tube, double moved) {
    double[] xyz = java.util.Arrays.copyOf(a.xyz(), a.xyz().length + b.xyz().length);
    for (int v = 0; v < b.vertexCount(); v++) {
      double r = Math.hypot(b.x(v), b.y(v));
      double to = (200 + tube * (r - 200)) / r;
      int at = a.xyz().length + 3 * v;
      xyz[at] = to * b.x(v) + moved;
      xyz[at + 1] = to * b.y(v);
      xyz[at + 2] = tube * b.z(v);
    }
    int[] corner = java.util.Arrays.copyOf(a.corner(), a.corner().length + b.corner().length);
    for (int h = 0; h < b.corner().length; h++) {
      corner[a.corner().length + h] = b.corner()[h] + a.vertexCount();
    }
    return Mesh.of(xyz, corner);
  }

  /** The torus, half as fine, over a flat table of as many faces. */
  private static Mesh onTable(int nu, int nv) {
    int n = (int) Math.sqrt(nu * (double) nv / 2);
    Mesh torus = Torus.of(nu, nv / 2);
    double[] xyz = java.util.Arrays.copyOf(torus.xyz(), torus.xyz().length + 3 * (n + 1) * (n + 1));
    int[] corner = java.util.Arrays.copyOf(torus.corner(), torus.corner().length + 6 * n * n);
    int at = torus.corner().length;
    for (int j = 0; j <= n; j++) {
      for (int i = 0; i <= n; i++) {
        int v = torus.vertexCount() + j * (n + 1) + i;
        xyz[3 * v] = -300 + 600.0 * i / n;
        xyz[3 * v + 1] = -300 + 600.0 * j / n;
        xyz[3 * v + 2] = -42;
        if (i < n && j < n) {
          int[] two = {v, v + 1, v + n + 2, v, v + n + 2, v + n + 1};
          System.arraycopy(two, 0, corner, at, 6);
          at += 6;
        }
      }
    }
    return Mesh.of(xyz, corner);
  }
}
