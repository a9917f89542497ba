package org.seamwright.sample;

import java.util.Random;
import java.util.function.IntPredicate;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * The regatta cup as a phone would scan it: rough, with two holes, with a patch of the table grown
 * onto the foot, somewhere in space and in no stated unit (here the file's unit is 1 inch).
 */
final class ScanMaker {
  /** Seed of the roughness, so that the model is the same every time. */
  private static final long SEED = 20260107;

  /** Root mean square of the roughness, mm. */
  static final double NOISE_MM = 0.08;

  private static final double TABLE_RADIUS_MM = 85;
  private static final int AROUND = 180;

  private ScanMaker() {}

  /** The scan, coordinates in inches. */
  static Mesh scan() {
    MeshBuilder builder = new MeshBuilder();
    Profile onTable =
        CupMaker.aboveTheTable(Profile.from(TABLE_RADIUS_MM, 0).lineTo(CupMaker.FOOT_RADIUS_MM, 0));
    Lathe body = new Lathe(builder, onTable.sample(2.2), false, AROUND);
    CupMaker.addHandle(builder, body, 0);
    CupMaker.addHandle(builder, body, AROUND / 2);
    body.close();
    return placed(holed(roughened(builder.build())));
  }

  /** Moves each vertex along its normal by a normal deviate, a little smoothed over neighbours. */
  private static Mesh roughened(Mesh mesh) {
    VertexFans fans = VertexFans.of(mesh);
    Random random = new Random(SEED);
    int vertices = mesh.vertexCount();
    double[] white = new double[vertices];
    for (int v = 0; v < vertices; v++) {
      white[v] = random.nextGaussian() * NOISE_MM;
    }
    double[] xyz = mesh.xyz().clone();
    double[] n = new double[3];
    for (int v = 0; v < vertices; v++) {
      double[] sum = new double[3];
      double move = white[v];
      int count = fans.begin(v + 1) - fans.begin(v);
      for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
        int h = fans.halfEdge(i);
        Faces.normal(mesh, h / 3, n);
        double weight = Faces.area(mesh, h / 3);
        for (int axis = 0; axis < 3; axis++) {
          sum[axis] += weight * n[axis];
        }
        move += 0.5 * white[mesh.corner()[Topology.next(h)]] / count;
      }
      double length = Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1] + sum[2] * sum[2]);
      for (int axis = 0; axis < 3 && length > 0; axis++) {
        xyz[3 * v + axis] += move * sum[axis] / length;
      }
    }
    return Mesh.of(xyz, mesh.corner().clone());
  }

  /** Leaves out the faces around two places, as a scanner does where it saw nothing. */
  private static Mesh holed(Mesh mesh) {
    Vector3D inBowl = Vector3D.of(10, 12, 101);
    Vector3D onWall = Vector3D.of(0, -67, 185);
    double[] c = new double[3];
    IntPredicate seen =
        f -> {
          Faces.centroid(mesh, f, c);
          Vector3D at = Vector3D.of(c[0], c[1], c[2]);
          return at.distance(inBowl) > 8.5 && at.distance(onWall) > 7.5;
        };
    MeshBuilder builder = new MeshBuilder();
    for (int v = 0; v < mesh.vertexCount(); v++) {
      builder.vertex(mesh.x(v), mesh.y(v), mesh.z(v));
    }
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (seen.test(f)) {
        int[] corner = mesh.corner();
        builder.face(corner[3 * f], corner[3 * f + 1], corner[3 * f + 2]);
      }
    }
    return builder.build();
  }

  /** Turns the piece about the axis, moves it aside and writes it in inches. */
  private static Mesh placed(Mesh mesh) {
    double turn = Math.toRadians(37);
    double[] xyz = new double[3 * mesh.vertexCount()];
    for (int v = 0; v < mesh.vertexCount(); v++) {
      double x = mesh.x(v) * Math.cos(turn) - mesh.y(v) * Math.sin(turn);
      double y = mesh.x(v) * Math.sin(turn) + mesh.y(v) * Math.cos(turn);
      xyz[3 * v] = (x + 412) / 25.4;
      xyz[3 * v + 1] = (y - 187) / 25.4;
      xyz[3 * v + 2] = (mesh.z(v) + 733) / 25.4;
    }
    return Mesh.of(xyz, mesh.corner().clone());
  }
}
