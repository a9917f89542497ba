package org.seamwright.sample;

import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.Mesh;

/**
 * The regatta cup: an invented turned trophy, 232 mm high, with a stepped foot, a knop on the stem
 * and two ring handles. One closed surface; the axis is z and the foot stands on z = 0.
 */
final class CupMaker {
  /** Radius of the foot, mm. */
  static final double FOOT_RADIUS_MM = 60;

  /** Height of the handle's upper and lower end, mm. */
  static final double HANDLE_TOP_MM = 215;

  static final double HANDLE_BOTTOM_MM = 165;

  /** Half thickness of the handle's rod, mm. */
  static final double HANDLE_ROD_MM = 5;

  private static final double STEP_MM = 2.2;
  private static final int AROUND = 180;
  private static final int BLOCK = 5;
  private static final int HANDLE_RINGS = 60;

  private CupMaker() {}

  /** Outline of the cup without handles, from the middle of the foot to the bottom of the bowl. */
  static Profile profile() {
    return aboveTheTable(Profile.from(0, 0).lineTo(FOOT_RADIUS_MM, 0));
  }

  /** Goes on from the foot's lower edge to the bottom of the bowl. */
  static Profile aboveTheTable(Profile start) {
    return start
        .lineTo(FOOT_RADIUS_MM, 10)
        .lineTo(50, 10)
        .lineTo(50, 20)
        .lineTo(40, 20)
        .lineTo(40, 28)
        .lineTo(32, 28)
        .arcTo(32, 52, -180)
        .lineTo(8, 70)
        .arcTo(8, 76, 90)
        .lineTo(8, 90)
        .arcTo(0, 150, 0)
        .lineTo(66, 230)
        .arcTo(64, 230, 90)
        .lineTo(60, 232)
        .lineTo(57.5, 152)
        .arcTo(0, 150, -90);
  }

  /** The cup without handles: its area has a closed formula, {@link Profile#areaMm2}. */
  static Mesh withoutHandles(double stepMm, int around) {
    MeshBuilder builder = new MeshBuilder();
    new Lathe(builder, profile().sample(stepMm), false, around).close();
    return builder.build();
  }

  /** The whole cup. */
  static Mesh cup() {
    MeshBuilder builder = new MeshBuilder();
    Lathe body = new Lathe(builder, profile().sample(STEP_MM), false, AROUND);
    addHandle(builder, body, 0);
    addHandle(builder, body, AROUND / 2);
    body.close();
    return builder.build();
  }

  /** Joins a ring handle to the bowl, centred on a column. */
  static void addHandle(MeshBuilder builder, Lathe body, int column) {
    double angle = 2 * Math.PI * column / AROUND;
    Vector3D out = Vector3D.of(Math.cos(angle), Math.sin(angle), 0);
    Vector3D side = Vector3D.of(-Math.sin(angle), Math.cos(angle), 0);
    int top = body.nearestPoint(65, HANDLE_TOP_MM);
    int bottom = body.nearestPoint(61.5, HANDLE_BOTTOM_MM);
    int[] from = body.open(top - BLOCK / 2, BLOCK, column - BLOCK / 2, BLOCK);
    int[] to = body.open(bottom - BLOCK / 2, BLOCK, column - BLOCK / 2, BLOCK);
    Vector3D start = middle(builder, from);
    Vector3D end = middle(builder, to);
    Vector3D centre =
        out.multiply((start.dot(out) + end.dot(out)) / 2)
            .add(Vector3D.of(0, 0, (start.getZ() + end.getZ()) / 2));
    double radius = (start.getZ() - end.getZ()) / 2;
    // The block spans whole columns from an even one, so its middle lies half a column aside.
    Vector3D aside = side.multiply((start.dot(side) + end.dot(side)) / 2);
    Tube.join(
        builder,
        from,
        to,
        Tube.halfCircle(centre.add(aside), Vector3D.of(0, 0, 1), out, radius),
        side,
        HANDLE_ROD_MM,
        HANDLE_ROD_MM,
        HANDLE_RINGS,
        0.12);
  }

  static Vector3D middle(MeshBuilder builder, int[] outline) {
    Vector3D sum = Vector3D.ZERO;
    for (int v : outline) {
      sum = sum.add(Vector3D.of(builder.at(v, 0), builder.at(v, 1), builder.at(v, 2)));
    }
    return sum.multiply(1.0 / outline.length);
  }
}
