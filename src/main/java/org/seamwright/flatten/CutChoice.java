package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Parallel;
import org.seamwright.measure.Revolution;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Where to cut a piece that does not lie flat: the line after which fewest pieces are foretold.
 *
 * <p>Lines that are tried: round the axis of a turned piece and along it, levels of the harmonic
 * field between two rims of a ring, straight lines of the conformal layout, planes; through the
 * middle, through where the scale is most off, and so that a strip falls into equal ones. What is
 * left of the stretch on either side comes from {@link ScaleField}. A long narrow piece that curves
 * across is thus cut lengthwise, where cutting it across would take nothing away. One sparse solve
 * per line tried.
 */
final class CutChoice {
  private static final int DIRECTIONS = 6;

  /** What a cut as long as the piece is wide counts, in pieces: seams are work too. */
  private static final double SEAM = 0.25;

  /** What a piece not there yet counts beyond whole pieces, so that ties go to the flatter one. */
  private static final double REST = 0.2;

  /** A cut that leaves less than this share of the piece on one side takes a crumb off. */
  private static final double LEAST_SHARE = 0.04;

  /** Half of the 26 directions to the neighbours of a cube among cubes. */
  private static final int FIRST_PLANE = 14;

  private static final int PLANES_END = 27;

  private final Parting.Part part;
  private final Mesh sheet;
  private final ScaleField scaleField;
  private final double allowed;
  private final Revolution axis;
  private final List<double[]> lines = new ArrayList<>();

  private CutChoice(Parting.Part part, double allowed, Revolution axis) {
    this.part = part;
    this.sheet = part.sheet();
    this.scaleField = new ScaleField(sheet);
    this.allowed = allowed;
    this.axis = axis;
  }

  /**
   * Chooses a line.
   *
   * @param allowed stretch to get down to
   * @param axis of the patch
   * @return a field per vertex of the part that is 0 on the line; nothing if none parts it
   */
  static Optional<double[]> of(Parting.Part part, double allowed, Revolution axis) {
    return new CutChoice(part, allowed, axis).best();
  }

  private Optional<double[]> best() {
    double[] scale = scaleField.scale().orElseGet(() -> new double[sheet.vertexCount()]);
    int strips = strips(ScaleField.half(scale, v -> true));
    if (axis.isSure()) {
      roundTheAxis(scale, strips);
    }
    if (part.whole()) {
      betweenRims(scale, strips);
      straightLines(scale);
    }
    if (lines.isEmpty() || !part.whole()) {
      planes(scale);
    }
    double[] cost = new double[lines.size()];
    Parallel.each(cost.length, i -> cost[i] = cost(lines.get(i)));
    int best = -1;
    for (int i = 0; i < cost.length; i++) {
      // A hair's breadth, so that rounding does not choose between equals.
      if (cost[i] < (best < 0 ? Double.POSITIVE_INFINITY : cost[best] * (1 - 1e-9))) {
        best = i;
      }
    }
    return best < 0 ? Optional.empty() : Optional.of(lines.get(best));
  }

  /**
   * Strips that a long piece must be cut into: what they stretch goes with their width's square.
   */
  private int strips(double stretch) {
    double strips = Math.ceil(Math.sqrt(stretch / allowed) - 0.02);
    return (int) Math.max(2, Math.min(12, strips));
  }

  private void roundTheAxis(double[] scale, int strips) {
    Vector3D along = axis.direction();
    Vector3D across = along.orthogonal();
    Vector3D third = along.cross(across);
    int n = sheet.vertexCount();
    double[] height = new double[n];
    double[] radius = new double[n];
    double[] x = new double[n];
    double[] y = new double[n];
    for (int v = 0; v < n; v++) {
      Vector3D p = Vector3D.of(sheet.x(v), sheet.y(v), sheet.z(v)).subtract(axis.point());
      height[v] = p.dot(along);
      x[v] = p.dot(across);
      y[v] = p.dot(third);
      radius[v] = Math.hypot(x[v], y[v]);
    }
    levels(height, scale, strips);
    levels(radius, scale, strips);
    // Half planes about the axis would need a field with a jump: whole planes, halving sectors.
    double[] middle = {Areas.mean(sheet, x), Areas.mean(sheet, y)};
    double from = Math.atan2(middle[1], middle[0]) + Math.PI / 2;
    for (int i = 0; i < DIRECTIONS / 2; i++) {
      double angle = from + Math.PI * i / (DIRECTIONS / 2);
      double[] field = new double[n];
      for (int v = 0; v < n; v++) {
        field[v] = Math.cos(angle) * y[v] - Math.sin(angle) * x[v];
      }
      // Through the axis where it bisects; else it would cut a sector off-centre.
      lines.add(i == 0 ? turned(x, y, middle) : field);
    }
  }

  /** The plane through the axis and the middle of the piece. */
  private static double[] turned(double[] x, double[] y, double[] middle) {
    double length = Math.max(Math.hypot(middle[0], middle[1]), Double.MIN_NORMAL);
    double[] field = new double[x.length];
    for (int v = 0; v < x.length; v++) {
      field[v] = (middle[0] * y[v] - middle[1] * x[v]) / length;
    }
    return field;
  }

  private void betweenRims(double[] scale, int strips) {
    List<int[]> loops = Sheets.loops(sheet, Topology.of(sheet));
    if (loops.size() < 2) {
      return;
    }
    double[] given = new double[sheet.vertexCount()];
    Arrays.fill(given, Double.NaN);
    for (int i = 0; i < 2; i++) {
      for (int h : loops.get(i)) {
        given[sheet.corner()[h]] = i;
      }
    }
    scaleField.harmonic(v -> given[v]).ifPresent(field -> levels(field, scale, strips));
  }

  /**
   * Levels of a field: at half of the area, at equal strips' edges, where the scale is most off.
   */
  private void levels(double[] field, double[] scale, int strips) {
    double[] shares =
        strips > 2 ? new double[] {0.5, 1.0 / strips, 1 - 1.0 / strips} : new double[] {0.5};
    for (double share : shares) {
      lines.add(less(field, Areas.quantile(sheet, field, share)));
    }
    int most = 0;
    for (int v = 0; v < scale.length; v++) {
      most = Math.abs(scale[v]) > Math.abs(scale[most]) ? v : most;
    }
    if (scale[most] != 0) {
      lines.add(less(field, field[most]));
    }
  }

  private static double[] less(double[] field, double level) {
    double[] out = new double[field.length];
    for (int v = 0; v < out.length; v++) {
      out[v] = field[v] - level;
    }
    return out;
  }

  /** Straight lines of the conformal layout through where its scale is off. */
  private void straightLines(double[] scale) {
    Topology topology = Topology.of(sheet);
    List<int[]> loops = Sheets.loops(sheet, topology);
    if (loops.size() != 1 || Sheets.euler(sheet, topology) != 1) {
      return;
    }
    FirstLayout first = new FirstLayout(sheet, RestShapes.of(sheet), loops.get(0));
    first.keepingTheRim().ifPresent(uv -> straightLines(uv, scale));
  }

  private void straightLines(double[] uv, double[] scale) {
    double[] weight = Areas.ofVertices(sheet);
    double[] middle = new double[4];
    double total = 0;
    double off = 0;
    for (int v = 0; v < weight.length; v++) {
      double w = weight[v] * Math.abs(scale[v]);
      total += weight[v];
      off += w;
      for (int axisOfPlane = 0; axisOfPlane < 2; axisOfPlane++) {
        middle[axisOfPlane] += weight[v] * uv[2 * v + axisOfPlane];
        middle[2 + axisOfPlane] += w * uv[2 * v + axisOfPlane];
      }
    }
    boolean known = off > 0;
    double x = known ? middle[2] / off : middle[0] / total;
    double y = known ? middle[3] / off : middle[1] / total;
    for (int i = 0; i < DIRECTIONS; i++) {
      double angle = Math.PI * i / DIRECTIONS;
      double[] field = new double[weight.length];
      for (int v = 0; v < field.length; v++) {
        field[v] = (uv[2 * v] - x) * Math.cos(angle) + (uv[2 * v + 1] - y) * Math.sin(angle);
      }
      lines.add(field);
    }
  }

  private void planes(double[] scale) {
    double[] weight = Areas.ofVertices(sheet);
    double[] middle = new double[3];
    double total = 0;
    for (int v = 0; v < weight.length; v++) {
      double w = weight[v] * (1e-12 + Math.abs(scale[v]));
      total += w;
      for (int k = 0; k < 3; k++) {
        middle[k] += w * sheet.xyz()[3 * v + k];
      }
    }
    for (int code = FIRST_PLANE; code < PLANES_END; code++) {
      double[] normal = {code / 9 - 1, code / 3 % 3 - 1, code % 3 - 1};
      double[] field = new double[weight.length];
      for (int v = 0; v < field.length; v++) {
        for (int k = 0; k < 3; k++) {
          field[v] += (sheet.xyz()[3 * v + k] - middle[k] / total) * normal[k];
        }
      }
      lines.add(field);
    }
  }

  /** Pieces foretold after a cut, seams counted in. */
  private double cost(double[] field) {
    double below = 0;
    double above = 0;
    double length = 0;
    double[] ends = new double[6];
    boolean[] crossed = new boolean[field.length];
    for (int f = 0; f < sheet.faceCount(); f++) {
      int[] c = sheet.corner();
      double a = Faces.area(sheet, f);
      double sum = field[c[3 * f]] + field[c[3 * f + 1]] + field[c[3 * f + 2]];
      below += sum < 0 ? a : 0;
      above += sum < 0 ? 0 : a;
      length += chord(field, f, ends, crossed);
    }
    double area = below + above;
    if (!(Math.min(below, above) > LEAST_SHARE * area)) {
      return Double.POSITIVE_INFINITY;
    }
    Optional<double[]> scale = scaleField.scale(crossed);
    if (scale.isEmpty()) {
      return Double.POSITIVE_INFINITY;
    }
    double[] u = scale.get();
    double pieces = pieces(ScaleField.half(u, v -> field[v] < 0));
    pieces += pieces(ScaleField.half(u, v -> field[v] >= 0));
    int parts = parts(field);
    return pieces + Math.max(0, parts - 2) + SEAM * length / Math.sqrt(area);
  }

  private double pieces(double stretch) {
    double strips = Math.sqrt(stretch / allowed);
    return Math.max(1, Math.ceil(strips - 0.02)) + REST * strips;
  }

  /** Connected parts of the two sides, told by vertices. */
  private int parts(double[] field) {
    int[] root = new int[field.length];
    for (int v = 0; v < root.length; v++) {
      root[v] = v;
    }
    int parts = root.length;
    int[] c = sheet.corner();
    for (int h = 0; h < c.length; h++) {
      int a = c[h];
      int b = c[Topology.next(h)];
      if (field[a] < 0 == field[b] < 0) {
        int ra = find(root, a);
        int rb = find(root, b);
        if (ra != rb) {
          root[Math.max(ra, rb)] = Math.min(ra, rb);
          parts--;
        }
      }
    }
    return parts;
  }

  private static int find(int[] root, int v) {
    int top = v;
    while (root[top] != top) {
      root[top] = root[root[top]];
      top = root[top];
    }
    return top;
  }

  /** Length of the field's zero line in a face, mm; marks the vertices nearest to it. */
  private double chord(double[] field, int f, double[] ends, boolean[] crossed) {
    int count = 0;
    for (int k = 0; k < 3 && count < 2; k++) {
      int a = sheet.corner()[3 * f + k];
      int b = sheet.corner()[3 * f + (k + 1) % 3];
      if (field[a] < 0 != field[b] < 0) {
        double t = field[a] / (field[a] - field[b]);
        crossed[t < 0.5 ? a : b] = true;
        for (int d = 0; d < 3; d++) {
          double from = sheet.xyz()[3 * a + d];
          ends[3 * count + d] = from + t * (sheet.xyz()[3 * b + d] - from);
        }
        count++;
      }
    }
    return count < 2
        ? 0
        : Math.hypot(Math.hypot(ends[3] - ends[0], ends[4] - ends[1]), ends[5] - ends[2]);
  }
}
