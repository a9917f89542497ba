package org.seamwright.sample;

import java.util.Arrays;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.Mesh;

/**
 * The show rim: an invented wheel rim, 17 in across the flanges and 190 mm wide, with a hub on ten
 * spokes, a bore and five bolt holes. One closed surface; the axis is z and the show side looks
 * towards +z.
 */
final class RimMaker {
  /** Number of spokes. */
  static final int SPOKES = 10;

  /** Number of bolt holes. */
  static final int BOLTS = 5;

  /** Radius of a bolt hole, mm. */
  static final double BOLT_RADIUS_MM = 7.5;

  /** Radius over the flanges: 17 in across, mm. */
  static final double FLANGE_RADIUS_MM = 17 * 25.4 / 2;

  private static final int BARREL_AROUND = 360;
  private static final double BARREL_STEP_MM = 2.4;
  private static final int HUB_AROUND = 200;
  private static final double HUB_STEP_MM = 1.9;
  private static final int SPOKE_RINGS = 36;
  private static final int BOLT_RINGS = 24;

  private RimMaker() {}

  /** Outline of the barrel: round the tyre side, over the front edge and back along the inside. */
  static Profile barrel() {
    double edge = FLANGE_RADIUS_MM - 1.9;
    return Profile.from(196, -95)
        .lineTo(edge, -95)
        .arcTo(edge, -93.1, 0)
        .lineTo(FLANGE_RADIUS_MM, -90)
        .arcTo(edge, -90, 90)
        .lineTo(203, -84)
        .lineTo(200, -60)
        .lineTo(180, -45)
        .lineTo(180, -5)
        .lineTo(200, 20)
        .lineTo(203, 84)
        .lineTo(edge, 88.1)
        .arcTo(edge, 90, 0)
        .lineTo(FLANGE_RADIUS_MM, 93.1)
        .arcTo(edge, 93.1, 90)
        .lineTo(196, 95)
        .lineTo(193, 62)
        .lineTo(193, 18)
        .lineTo(174, -6)
        .lineTo(174, -44)
        .lineTo(193, -59)
        .lineTo(196, -95);
  }

  /** Outline of the hub: back face, rim, chamfer, front face and bore. */
  static Profile hub() {
    return Profile.from(33, 12)
        .lineTo(72, 12)
        .lineTo(72, 52)
        .lineTo(66, 58)
        .lineTo(33, 58)
        .lineTo(33, 12);
  }

  /** A profile turned on its own: its area has a closed formula, {@link Profile#areaMm2}. */
  static Mesh turned(Profile profile, double stepMm, int around) {
    MeshBuilder builder = new MeshBuilder();
    new Lathe(builder, closedLoop(profile, stepMm), true, around).close();
    return builder.build();
  }

  /** The whole rim. */
  static Mesh rim() {
    MeshBuilder builder = new MeshBuilder();
    Lathe barrel = new Lathe(builder, closedLoop(barrel(), BARREL_STEP_MM), true, BARREL_AROUND);
    Lathe hub = new Lathe(builder, closedLoop(hub(), HUB_STEP_MM), true, HUB_AROUND);
    for (int i = 0; i < SPOKES; i++) {
      addSpoke(builder, hub, barrel, i);
    }
    for (int i = 0; i < BOLTS; i++) {
      addBoltHole(builder, hub, i);
    }
    barrel.close();
    hub.close();
    return builder.build();
  }

  private static double[][] closedLoop(Profile profile, double stepMm) {
    double[][] points = profile.sample(stepMm);
    return Arrays.copyOf(points, points.length - 1);
  }

  private static void addSpoke(MeshBuilder builder, Lathe hub, Lathe barrel, int i) {
    double angle = 2 * Math.PI * i / SPOKES;
    int hubRow = hub.nearestPoint(72, 18);
    int barrelRow = barrel.nearestPoint(193, 57);
    int[] from = hub.open(hubRow, 14, HUB_AROUND / SPOKES * i - 4, 8);
    int[] to = barrel.open(barrelRow, 14, BARREL_AROUND / SPOKES * i - 4, 8);
    Tube.join(
        builder,
        from,
        to,
        Tube.straight(CupMaker.middle(builder, from), CupMaker.middle(builder, to)),
        Vector3D.of(-Math.sin(angle), Math.cos(angle), 0),
        9,
        13,
        SPOKE_RINGS,
        0.3);
  }

  private static void addBoltHole(MeshBuilder builder, Lathe hub, int i) {
    double angle = 2 * Math.PI * (i + 0.5) / BOLTS;
    int column = HUB_AROUND * (2 * i + 1) / (2 * BOLTS);
    int[] from = hub.open(hub.nearestPoint(59, 58), 8, column - 4, 8);
    int[] to = hub.open(hub.nearestPoint(44, 12), 8, column - 4, 8);
    rounded(builder, from);
    rounded(builder, to);
    Tube.join(
        builder,
        from,
        to,
        Tube.straight(CupMaker.middle(builder, from), CupMaker.middle(builder, to)),
        Vector3D.of(-Math.sin(angle), Math.cos(angle), 0),
        BOLT_RADIUS_MM,
        BOLT_RADIUS_MM,
        BOLT_RINGS,
        0.2);
  }

  /** Draws the outline of an opening in a level face onto a circle about its middle. */
  private static void rounded(MeshBuilder builder, int[] outline) {
    Vector3D middle = CupMaker.middle(builder, outline);
    for (int v : outline) {
      double x = builder.at(v, 0) - middle.getX();
      double y = builder.at(v, 1) - middle.getY();
      double scale = BOLT_RADIUS_MM / Math.hypot(x, y);
      builder.move(v, middle.getX() + scale * x, middle.getY() + scale * y, middle.getZ());
    }
  }
}
