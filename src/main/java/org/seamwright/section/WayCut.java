package org.seamwright.section;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Notice;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.Refinement;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.region.SurfaceCuts;

/**
 * Cuts the plated faces the way the user asks for: planes and half planes exactly, cylinders to
 * {@value #TOLERANCE_SHARE} of the piece's diagonal, natural faces along edges. Every piece is one;
 * those smaller than {@value #SMALL_SHARE} of the limit, or of the largest where that is smaller,
 * are joined to a neighbour.
 *
 * <p>Cost: O(n) per cut.
 *
 * @param mesh the piece after the cuts
 * @param parentFace one entry per face: its face before them
 * @param label one entry per face: number of its piece from 0, or -1 where nothing is plated
 */
record WayCut(Mesh mesh, int[] parentFace, int[] label) {
  /** Part of the limit or largest piece below which a piece is not worth a section of its own. */
  static final double SMALL_SHARE = 0.05;

  private static final double TOLERANCE_SHARE = 1e-5;

  /** Edges per side of a section where a field is not linear in space. */
  private static final double EDGES_PER_SIDE = 20;

  /**
   * Cuts.
   *
   * @param mesh the piece
   * @param plated one entry per face: 0 where plated, -1 elsewhere
   * @param settings the limit
   * @param notices receives what was found
   */
  static WayCut of(
      Mesh mesh, int[] plated, SectionWay way, SectionSettings settings, List<Notice> notices)
      throws SectionException {
    Cutter cutter = new Cutter(mesh, plated, settings);
    if (way instanceof SectionWay.Rings rings) {
      cutter.rings(rings, Axis.of(rings.axis(), mesh, "sections.way", notices));
    } else if (way instanceof SectionWay.Sectors sectors) {
      cutter.sectors(Axis.of(sectors.axis(), mesh, "sections.way", notices), sectors.count());
    } else if (way instanceof SectionWay.RingsAndSectors both) {
      Axis axis = Axis.of(both.rings().axis(), mesh, "sections.way", notices);
      cutter.rings(both.rings(), axis);
      cutter.sectors(axis, both.sectors());
    } else if (way instanceof SectionWay.Strips strips) {
      cutter.strips(strips);
    } else if (way instanceof SectionWay.NaturalFaces faces) {
      cutter.naturalFaces(faces);
    }
    return cutter.joined();
  }

  /** Cuts sectors alone, and joins nothing. */
  static WayCut sectors(Mesh mesh, int[] plated, Axis axis, int count) {
    Cutter cutter = new Cutter(mesh, plated, null);
    cutter.sectors(axis, count);
    return new WayCut(cutter.mesh, cutter.parent, cutter.label);
  }

  /** The piece so far: each cut refines the labels of the one before. */
  private static final class Cutter {
    Mesh mesh;
    int[] parent;

    /** One entry per face: what the cuts so far tell apart, -1 where nothing is plated. */
    int[] label;

    private final SectionSettings settings;

    Cutter(Mesh mesh, int[] plated, SectionSettings settings) {
      this.mesh = mesh;
      this.settings = settings;
      label = plated.clone();
      parent = new int[label.length];
      Arrays.setAll(parent, f -> f);
    }

    private double platedMm2() {
      double sum = 0;
      for (int f = 0; f < label.length; f++) {
        sum += label[f] >= 0 ? Faces.area(mesh, f) : 0;
      }
      return sum;
    }

    private int wanted(int count) {
      double area = platedMm2();
      return count > 0
          ? count
          : (int) Math.max(1, Math.min(Division.MOST_CELLS, Math.ceil(area / settings.limitMm2())));
    }

    void strips(SectionWay.Strips strips) {
      Vector3D unit = strips.direction().normalize();
      Axis axis = new Axis(Vector3D.ZERO, unit, unit.orthogonal(), unit.cross(unit.orthogonal()));
      slices(axis, levels(v -> height(axis, v), wanted(strips.count())));
    }

    void rings(SectionWay.Rings rings, Axis axis) {
      if (rings.by() == SectionWay.By.HEIGHT) {
        slices(
            axis,
            rings.atMm().isEmpty()
                ? levels(v -> height(axis, v), wanted(rings.count()))
                : rings.atMm().stream().mapToDouble(d -> d).toArray());
        return;
      }
      double side = Math.sqrt(Math.min(settings.limitMm2(), platedMm2()));
      IntPredicate plated = f -> label[f] >= 0;
      if (rings.atMm().isEmpty()) {
        // Distance from the axis is not linear in a face: small ones make its areas true.
        CutMesh fine = Refinement.edges(mesh, side / EDGES_PER_SIDE, plated);
        take(fine.mesh(), fine.parentFace());
      }
      double[] at =
          rings.atMm().isEmpty()
              ? levels(v -> radius(axis, v), wanted(rings.count()))
              : rings.atMm().stream().mapToDouble(d -> d).toArray();
      SurfaceCuts cuts = SurfaceCuts.of(mesh);
      double tolerance = TOLERANCE_SHARE * cuts.diagonalMm();
      for (double radius : at) {
        cuts.alongLevel(
            (x, y, z) -> axis.radius(x, y, z) - radius, tolerance, f -> isPlated(cuts, f));
      }
      take(cuts.toMesh(), cuts.parents());
      tell(at.length + 1, (x, y, z) -> above(at, axis.radius(x, y, z)));
    }

    private double height(Axis axis, int v) {
      return axis.height(mesh.x(v), mesh.y(v), mesh.z(v));
    }

    private double radius(Axis axis, int v) {
      return axis.radius(mesh.x(v), mesh.y(v), mesh.z(v));
    }

    private double[] levels(IntToDoubleFunction value, int count) {
      double[] field = new double[mesh.vertexCount()];
      Arrays.setAll(field, value);
      return EqualAreas.levels(mesh, field, f -> label[f] >= 0, count);
    }

    private void slices(Axis axis, double[] at) {
      SurfaceCuts cuts = SurfaceCuts.of(mesh);
      for (double height : at) {
        Vector3D point = axis.point().add(axis.direction().multiply(height));
        cuts.alongPlane(point, axis.direction(), f -> isPlated(cuts, f));
      }
      take(cuts.toMesh(), cuts.parents());
      tell(at.length + 1, (x, y, z) -> above(at, axis.height(x, y, z)));
    }

    void sectors(Axis axis, int count) {
      SurfaceCuts cuts = SurfaceCuts.of(mesh);
      for (int i = 0; i < count; i++) {
        double turns = (double) i / count;
        cuts.alongHalfPlane(
            axis.point(), axis.at(turns), axis.at(turns + 0.25), f -> isPlated(cuts, f));
      }
      take(cuts.toMesh(), cuts.parents());
      tell(count, (x, y, z) -> Math.min(count - 1, (int) (count * axis.turns(x, y, z))));
    }

    void naturalFaces(SectionWay.NaturalFaces way) {
      label = CreasePieces.of(mesh, Topology.of(mesh), label, way.angleDegrees());
    }

    private boolean isPlated(SurfaceCuts cuts, int face) {
      return label[cuts.parent(face)] >= 0;
    }

    private void take(Mesh finer, int[] finerParent) {
      int[] newLabel = new int[finerParent.length];
      int[] newParent = new int[finerParent.length];
      for (int f = 0; f < finerParent.length; f++) {
        newLabel[f] = label[finerParent[f]];
        newParent[f] = parent[finerParent[f]];
      }
      mesh = finer;
      label = newLabel;
      parent = newParent;
    }

    private interface Which {
      int of(double x, double y, double z);
    }

    /** Tells faces apart by where their centroid lies: cuts have left none across. */
    private void tell(int count, Which which) {
      double[] at = new double[3];
      for (int f = 0; f < label.length; f++) {
        if (label[f] >= 0) {
          Faces.centroid(mesh, f, at);
          label[f] = label[f] * count + which.of(at[0], at[1], at[2]);
        }
      }
    }

    private static int above(double[] levels, double value) {
      int found = Arrays.binarySearch(levels, value);
      return found >= 0 ? found : -found - 1;
    }

    WayCut joined() {
      EdgeRings rings = EdgeRings.of(mesh, Topology.of(mesh));
      Pieces pieces = Pieces.of(mesh, rings, label);
      double largest = Arrays.stream(pieces.areaMm2()).max().orElse(0);
      double leastMm2 = SMALL_SHARE * Math.min(settings.limitMm2(), largest);
      return new WayCut(mesh, parent, SmallPieces.join(mesh, rings, pieces, leastMm2));
    }
  }
}
