package org.seamwright.mend;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Carries out the steps of cleaning, in order, and keeps the books: for each step the area of every
 * face before is compared with that of its pieces after, so nothing comes or goes untold.
 *
 * <p>The same mesh and steps give the same result on any number of cores. Cost: each step is near
 * linear in faces; its own class says more.
 */
public final class Mender {
  /** Tolerance of welding and splitting as a share of the diagonal: five written digits. */
  public static final double USUAL_TOLERANCE = 1e-5;

  private Mender() {}

  /**
   * Cleans a mesh.
   *
   * @param raw the mesh in mm, any soup
   * @param repairs the steps
   * @param progress told the share done; may cancel
   * @throws MendException if a step cannot be carried out, or leaves nothing
   */
  public static Mended mend(Mesh raw, List<Repair> repairs, Progress progress)
      throws MendException {
    Change all = Change.none(raw, "");
    List<Mended.Done> done = new ArrayList<>();
    for (int i = 0; i < repairs.size(); i++) {
      Repair repair = repairs.get(i);
      Progress part = progress.between((double) i / repairs.size(), (i + 1.0) / repairs.size());
      part.at(0);
      Change change;
      try {
        change = carryOut(all.mesh(), repair, part);
      } catch (RepairRefused e) {
        throw new MendException(i, repair, e.getMessage(), e.remedy());
      }
      if (change.mesh().faceCount() == 0) {
        throw new MendException(
            i,
            repair,
            "The step leaves nothing of the piece",
            "Change its figures, or leave it out.");
      }
      done.add(entry(repair, all.mesh(), change));
      all = all.then(change);
    }
    progress.at(1);
    Mesh mesh = repairs.isEmpty() ? raw : withoutUnused(all.mesh());
    return new Mended(mesh, all.parent(), done);
  }

  private static Change carryOut(Mesh mesh, Repair repair, Progress progress) throws RepairRefused {
    Topology topology = Topology.of(mesh);
    progress.at(0.1);
    Progress rest = progress.between(0.1, 1);
    if (repair instanceof Repair.KeepParts near) {
      return PartChoice.near(mesh, topology, near.points());
    } else if (repair instanceof Repair.KeepLargest largest) {
      return PartChoice.largest(mesh, topology, largest.count());
    } else if (repair instanceof Repair.KeepAbove above) {
      return PartChoice.above(mesh, topology, above.share());
    } else if (repair instanceof Repair.CutTable table) {
      return BelowPlane.table(mesh, table, rest);
    } else if (repair instanceof Repair.CutBelow below) {
      return BelowPlane.given(mesh, below);
    } else if (repair instanceof Repair.DropFaulty) {
      return Faults.drop(mesh);
    } else if (repair instanceof Repair.TurnOutward) {
      return Turning.outward(mesh, topology, rest);
    } else if (repair instanceof Repair.FillHoles fill) {
      return Holes.fill(mesh, topology, fill.aroundMm(), rest);
    } else if (repair instanceof Repair.DropInner) {
      return InnerShells.drop(mesh, topology, rest);
    } else if (repair instanceof Repair.DropHidden) {
      return Hidden.drop(mesh, topology, rest);
    } else if (repair instanceof Repair.Weld weld) {
      return BorderWeld.weld(mesh, topology, toleranceMm(mesh, weld.toleranceMm()));
    } else if (repair instanceof Repair.SplitEdges split) {
      return EdgeSplit.split(mesh, topology, toleranceMm(mesh, split.toleranceMm()));
    }
    throw new IllegalStateException("No way to carry out " + repair);
  }

  private static double toleranceMm(Mesh mesh, OptionalDouble asked) {
    return asked.orElse(USUAL_TOLERANCE * mesh.bounds().diagonal());
  }

  /** Compares each face with what became of it. */
  private static Mended.Done entry(Repair repair, Mesh before, Change change) {
    Mesh after = change.mesh();
    double[] left = new double[before.faceCount()];
    Sum gained = new Sum();
    for (int f = 0; f < after.faceCount(); f++) {
      int parent = change.parent()[f];
      if (parent < 0) {
        gained.add(Faces.area(after, f));
      } else {
        left[parent] += Faces.area(after, f);
      }
    }
    Sum lost = new Sum();
    Sum area = new Sum();
    for (int f = 0; f < left.length; f++) {
      double was = Faces.area(before, f);
      area.add(was);
      if (left[f] < was) {
        lost.add(was - left[f]);
      } else {
        gained.add(left[f] - was);
      }
    }
    return new Mended.Done(
        repair.kind(),
        change.count(),
        area.value(),
        lost.value(),
        gained.value(),
        Sum.over(after.faceCount(), f -> Faces.area(after, f)),
        change.text());
  }

  /** Leaves out vertices that no face names; the others keep their order. */
  static Mesh withoutUnused(Mesh mesh) {
    int[] number = new int[mesh.vertexCount()];
    for (int v : mesh.corner()) {
      number[v] = 1;
    }
    double[] xyz = new double[mesh.xyz().length];
    int count = 0;
    for (int v = 0; v < number.length; v++) {
      if (number[v] == 1) {
        System.arraycopy(mesh.xyz(), 3 * v, xyz, 3 * count, 3);
        number[v] = count++;
      }
    }
    if (count == number.length) {
      return mesh;
    }
    int[] corner = new int[mesh.corner().length];
    for (int h = 0; h < corner.length; h++) {
      corner[h] = number[mesh.corner()[h]];
    }
    return Mesh.of(Arrays.copyOf(xyz, 3 * count), corner);
  }
}
