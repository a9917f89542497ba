package org.seamwright.geodesic;

import java.io.PrintStream;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;
import org.seamwright.testsupport.Shapes;

/**
 * Prints the table of errors of distances along the surface in docs/accuracy.md, measured anew:
 * against the plain distance in a plane, that of the unrolled side on cylinder and cone (Euclid's
 * law of cosines), the great circle on a sphere.
 */
final class DistanceTable {
  private static final int FACES = 80_000;

  /** Distances shorter than so many mean edges are left out. */
  private static final double EDGES = 5;

  private static final String[] KINDS = {
    "even", "shifted, random diagonals", "stretched 20:1", "stretched 1:20", "needles, shifted 20:1"
  };

  private static final Map<String, Double> AREAS =
      Map.of(
          "plane", 1.0,
          "cylinder", 4 * Math.PI * Math.PI,
          "cone", Math.PI * 0.25 * (1.3 * 1.3 - 0.3 * 0.3),
          "sphere", 4 * Math.PI,
          "sphere without poles", 2 * Math.PI * 1.9);

  private final PrintStream out;

  private DistanceTable(PrintStream out) {
    this.out = out;
  }

  public static void main(String[] args) {
    new DistanceTable(System.out).print();
  }

  /** Exact distance of a vertex from the source. */
  private interface Exact {
    double at(Mesh mesh, int vertex, double[] source);
  }

  private void print() {
    out.println("| surface | mesh | its area | source | largest error | mean error |");
    out.println("|---|---|---|---|---|---|");
    List<Mesh> planes = kinds(false, (u, v) -> new double[] {u, v, 0});
    rows("plane", planes, new double[] {0.513, 0.479, 0}, DistanceTable::flat);
    Grids.Map cylinder =
        (u, v) -> new double[] {Math.cos(turn(u)), Math.sin(turn(u)), 2 * Math.PI * (v - 0.5)};
    rows("cylinder", kinds(true, cylinder), point(0.3, 1, 0.21), this::unrolled);
    double sine = 0.25;
    double cosine = Math.sqrt(1 - sine * sine);
    Grids.Map cone =
        (u, v) -> {
          double s = 0.3 + v;
          return new double[] {
            s * sine * Math.cos(turn(u)), s * sine * Math.sin(turn(u)), s * cosine
          };
        };
    double[] onCone = point(0.3, 0.8 * sine, 0.8 * cosine);
    rows("cone", kinds(true, cone), onCone, (m, v, q) -> onCone(m, v, q, sine));
    double[] onSphere = {0.3, 0.4, Math.sqrt(0.75)};
    row("sphere", Shapes.icosphere(1, 6), "even", onSphere, DistanceTable::greatCircle);
    row("sphere", Shapes.sphere(1, 200, 200), "by parallels", onSphere, DistanceTable::greatCircle);
    Grids.Map band =
        (u, v) -> {
          double z = 1.9 * (v - 0.5);
          double r = Math.sqrt(1 - z * z);
          return new double[] {r * Math.cos(turn(u)), r * Math.sin(turn(u)), z};
        };
    double[] low = {0.8, 0.6 * 0.8, 0.6 * 0.6};
    List<Mesh> bands = kinds(true, band);
    row("sphere without poles", bands.get(1), KINDS[1], low, DistanceTable::onBand);
  }

  /** Shifts of up to a quarter cell each way: more would turn faces over. */
  private static List<Mesh> kinds(boolean closed, Grids.Map map) {
    return List.of(
        Grids.of(FACES, 1, closed, 0, false, map),
        Grids.of(FACES, 1, closed, 0.5, true, map),
        Grids.of(FACES, 20, closed, 0, false, map),
        Grids.of(FACES, 1 / 20.0, closed, 0, true, map),
        Grids.of(FACES, 20, closed, 0.5, true, map));
  }

  private static double turn(double u) {
    return 2 * Math.PI * u;
  }

  private static double[] point(double angle, double radius, double z) {
    return new double[] {radius * Math.cos(angle), radius * Math.sin(angle), z};
  }

  private static double flat(Mesh mesh, int v, double[] q) {
    return Math.hypot(mesh.x(v) - q[0], mesh.y(v) - q[1]);
  }

  private static double angle(Mesh mesh, int v, double[] q) {
    double turn = Math.abs(Math.atan2(mesh.y(v), mesh.x(v)) - Math.atan2(q[1], q[0]));
    return Math.min(turn, 2 * Math.PI - turn);
  }

  private double unrolled(Mesh mesh, int v, double[] q) {
    return Math.hypot(angle(mesh, v, q), mesh.z(v) - q[2]);
  }

  private static double onCone(Mesh mesh, int v, double[] q, double sine) {
    double cosine = Math.sqrt(1 - sine * sine);
    double a = mesh.z(v) / cosine;
    double b = q[2] / cosine;
    double between = angle(mesh, v, q) * sine;
    return Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(between));
  }

  private static double area(Mesh mesh) {
    return Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
  }

  /** The great circle where it stays on the band; none where it would cut across a missing pole. */
  private static double onBand(Mesh mesh, int v, double[] q) {
    double whole = greatCircle(mesh, v, q);
    for (int i = 0; i <= 64; i++) {
      double share = i / 64.0;
      double a = Math.sin((1 - share) * whole);
      double b = Math.sin(share * whole);
      if (Math.abs(a * q[2] + b * mesh.z(v)) > 0.94 * Math.sin(whole)) {
        return 0;
      }
    }
    return whole;
  }

  private static double greatCircle(Mesh mesh, int v, double[] q) {
    double[] p = {mesh.x(v), mesh.y(v), mesh.z(v)};
    double[] c = {p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]};
    return Math.atan2(
        Math.sqrt(c[0] * c[0] + c[1] * c[1] + c[2] * c[2]),
        p[0] * q[0] + p[1] * q[1] + p[2] * q[2]);
  }

  private void rows(String surface, List<Mesh> meshes, double[] near, Exact exact) {
    for (int i = 0; i < meshes.size(); i++) {
      row(surface, meshes.get(i), KINDS[i], near, exact);
    }
  }

  private void row(String surface, Mesh mesh, String kind, double[] near, Exact exact) {
    SurfacePoint inside = FaceTree.of(mesh).nearest(near[0], near[1], near[2]).orElseThrow();
    int f = inside.face();
    SurfacePoint onEdge = new SurfacePoint(f, 0.37, 0.63, 0);
    int vertex = mesh.corner()[3 * f];
    double[] place = new double[3];
    for (String source : new String[] {"in a face", "on an edge", "a vertex"}) {
      Sources from;
      if (source.equals("a vertex")) {
        place = new double[] {mesh.x(vertex), mesh.y(vertex), mesh.z(vertex)};
        from = Sources.vertices(vertex);
      } else {
        SurfacePoint at = source.equals("in a face") ? inside : onEdge;
        place = new double[] {at.at(mesh, 0), at.at(mesh, 1), at.at(mesh, 2)};
        from = Sources.point(at);
      }
      double[] q = place;
      line(surface, mesh, kind, source, from, v -> exact.at(mesh, v, q));
    }
  }

  private void line(
      String surface,
      Mesh mesh,
      String kind,
      String source,
      Sources from,
      IntToDoubleFunction exact) {
    double[] d =
        SurfaceDistance.from(
            mesh,
            Topology.of(mesh),
            VertexFans.of(mesh),
            from,
            Double.POSITIVE_INFINITY,
            Progress.NONE);
    double least = EDGES * Grids.meanEdge(mesh);
    double[] errors = new double[d.length];
    int count = 0;
    for (int v = 0; v < d.length; v++) {
      double e = exact.applyAsDouble(v);
      if (e > least) {
        errors[count++] = Math.abs(d[v] - e) / e;
      }
    }
    double[] kept = Arrays.copyOf(errors, count);
    out.printf(
        Locale.ROOT,
        "| %s, %,d faces | %s | %+.3f%% | %s | %.3f%% | %.3f%% |%n",
        surface,
        mesh.faceCount(),
        kind,
        100 * (area(mesh) / AREAS.get(surface) - 1),
        source,
        100 * Arrays.stream(kept).max().orElse(0),
        100 * Arrays.stream(kept).average().orElse(0));
  }
}
