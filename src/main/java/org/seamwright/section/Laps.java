package org.seamwright.section;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.FieldCut;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.region.SubMesh;

/**
 * The laps of a piece split into sections whose numbers are their working order.
 *
 * <p>The lap of section s is every place of sections worked earlier that lies within the lap width
 * of a seam of s with an earlier section, measured over the plated surface; it may run on into a
 * third section. A seam is given the lap area that lies on its earlier section; area on a section
 * that s has no seam with goes to the seam of s that lies nearest in space. The mesh is cut along
 * the edges of all laps, so areas are sums of faces.
 *
 * <p>Error: that of the distance (below 0.5% of a band that is two edges wide or more, checked
 * against plane, cylinder, sphere and cone). Cost: O(n), and two cuts per field of {@link Bands} of
 * the faces near seams.
 *
 * @param cut the mesh after all cuts
 * @param section one entry per face of the cut mesh: id from 1, 0 for none
 * @param activations one entry per face: how often it is activated; 0 where nothing is plated
 * @param flashes one entry per face: how often it is flashed; 0 where nothing is plated
 * @param sections by id
 * @param seams by earlier, then later id
 */
record Laps(
    CutMesh cut,
    int[] section,
    byte[] activations,
    byte[] flashes,
    List<Section> sections,
    List<Seam> seams) {

  /**
   * Lays the laps.
   *
   * @param mesh the piece with seams along edges
   * @param section one entry per face: id in working order from 1, 0 where nothing is plated
   * @param sections number of sections
   * @param activationMm width of the activation lap
   * @param flashMm width of the flash lap
   */
  static Laps of(
      Mesh mesh,
      int[] section,
      int sections,
      double activationMm,
      double flashMm,
      Progress progress) {
    Topology topology = Topology.of(mesh);
    SeamLines seams = SeamLines.of(mesh, EdgeRings.of(mesh, topology), section, 1);
    SeamDistance distance = SeamDistance.of(mesh, topology, section, 1);
    Bands bands =
        Bands.of(
            distance, seams, sections, Math.max(activationMm, flashMm), progress.between(0, 0.5));
    return of(
        mesh, section, sections, seams, bands, activationMm, flashMm, progress.between(0.5, 1));
  }

  /** Lays the laps of bands that are measured already. */
  static Laps of(
      Mesh mesh,
      int[] section,
      int sections,
      SeamLines seams,
      Bands bands,
      double activationMm,
      double flashMm,
      Progress progress) {
    SubMesh near = near(mesh, bands);
    Cutter cutter = new Cutter(near, section, bands);
    cutter.along(Math.min(activationMm, flashMm), progress.between(0, 0.5));
    if (activationMm != flashMm) {
      cutter.along(Math.max(activationMm, flashMm), progress.between(0.5, 1));
    }
    NearestSeam nearest = new NearestSeam(mesh, seams);
    Count activation = new Count(cutter, sections, seams, nearest, activationMm);
    Count flash = new Count(cutter, sections, seams, nearest, flashMm);
    Splice whole = new Splice(mesh, near, cutter.cut);
    int[] sectionOf = whole.cut().carryFaces(section);
    return new Laps(
        whole.cut(),
        sectionOf,
        times(whole, sectionOf, activation),
        times(whole, sectionOf, flash),
        sections(whole.cut().mesh(), sectionOf, sections, activation, flash),
        seams(seams.pairs(), activation, flash));
  }

  /** The faces that laps may cut or cover; all others stay as they are. */
  private static SubMesh near(Mesh mesh, Bands bands) {
    int[] faces = new int[mesh.faceCount()];
    int count = 0;
    for (int f = 0; f < faces.length; f++) {
      if (bands.mayCut(mesh, f)) {
        faces[count++] = f;
      }
    }
    return SubMesh.of(mesh, Arrays.copyOf(faces, count));
  }

  private static byte[] times(Splice whole, int[] sectionOf, Count count) {
    byte[] times = new byte[sectionOf.length];
    for (int f = 0; f < times.length; f++) {
      int piece = whole.piece()[f];
      times[f] = piece >= 0 ? count.times[piece] : (byte) (sectionOf[f] > 0 ? 1 : 0);
    }
    return times;
  }

  private static List<Section> sections(
      Mesh mesh, int[] section, int sections, Count activation, Count flash) {
    Sum[] net = sums(sections + 1);
    for (int f = 0; f < section.length; f++) {
      net[section[f]].add(Faces.area(mesh, f));
    }
    List<Section> list = new ArrayList<>();
    for (int id = 1; id <= sections; id++) {
      list.add(
          new Section(
              id, net[id].value(), activation.bySection[id].value(), flash.bySection[id].value()));
    }
    return list;
  }

  private static List<Seam> seams(Borders pairs, Count activation, Count flash) {
    List<Seam> list = new ArrayList<>();
    for (int i = 0; i < pairs.count(); i++) {
      list.add(
          new Seam(
              pairs.low()[i],
              pairs.high()[i],
              pairs.lengthMm()[i],
              activation.bySeam[i].value(),
              flash.bySeam[i].value()));
    }
    return list;
  }

  private static Sum[] sums(int count) {
    Sum[] sums = new Sum[count];
    Arrays.setAll(sums, i -> new Sum());
    return sums;
  }

  /** Cuts along lap edges, field by field, carrying labels and distances over. */
  private static final class Cutter {
    CutMesh cut;
    int[] section;
    Bands bands;

    Cutter(SubMesh near, int[] section, Bands bands) {
      this.cut = CutMesh.none(near.mesh());
      this.section = Arrays.stream(near.faces()).map(f -> section[f]).toArray();
      this.bands = bands.on(near.vertices());
    }

    void along(double widthMm, Progress progress) {
      if (widthMm == 0) {
        return;
      }
      for (int field = 0; field < bands.fields(); field++) {
        progress.at((double) field / bands.fields());
        Mesh mesh = cut.mesh();
        int one = field;
        CutMesh next =
            FieldCut.along(
                mesh,
                bands.distance(field),
                widthMm,
                f -> section[f] > 0 && bands.ownerNear(mesh, f, one, widthMm) > section[f]);
        section = next.carryFaces(section);
        bands = bands.carried(next);
        cut = cut.then(next);
      }
    }
  }

  /** What one kind of lap covers. */
  private static final class Count {
    final byte[] times;
    final Sum[] bySection;
    final Sum[] bySeam;

    Count(Cutter cutter, int sections, SeamLines seams, NearestSeam nearest, double widthMm) {
      int[] section = cutter.section;
      times = new byte[section.length];
      bySection = sums(sections + 1);
      bySeam = sums(seams.pairs().count());
      Mesh mesh = cutter.cut.mesh();
      for (int f = 0; f < section.length; f++) {
        times[f] = (byte) (section[f] > 0 ? 1 : 0);
      }
      for (int field = 0; field < cutter.bands.fields(); field++) {
        for (int f = 0; f < section.length; f++) {
          int id = section[f] > 0 ? cutter.bands.ownerNear(mesh, f, field, widthMm) : 0;
          if (id > section[f] && cutter.bands.covers(mesh, f, field, widthMm)) {
            double area = Faces.area(mesh, f);
            times[f] = (byte) Math.min(Byte.MAX_VALUE, times[f] + 1);
            bySection[id].add(area);
            int pair = seams.pairs().indexOf(section[f], id);
            bySeam[pair >= 0 ? pair : nearest.of(mesh, f, id)].add(area);
          }
        }
      }
    }
  }
}
