package org.seamwright.share;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import org.seamwright.job.PlannedJob;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;
import org.seamwright.meshfile.ObjWriter;
import org.seamwright.meshfile.PlyWriter;
import org.seamwright.picture.Palette;
import org.seamwright.picture.Tones;
import org.seamwright.region.Treatment;
import org.seamwright.section.Section;

/**
 * The whole planned piece for other programs, cut along marks, seams and laps and not simplified:
 * PLY with a colour and a section number per face, or OBJ with a group for each section. mm, z up.
 */
public final class ModelFiles {
  private static final int BARE_RGB = 0x878F9C;
  private static final int OUTSIDE_RGB = 0xD3D7DC;

  private ModelFiles() {}

  /**
   * Writes coloured PLY: the face property "section" is a section's number, 0 where the piece stays
   * bare, and one more than the last number where it is no part of the work.
   *
   * @throws IOException if it can't be written
   */
  public static void ply(PlannedJob planned, OutputStream out) throws IOException {
    int[] tones = Tones.of(planned.sections());
    int sections = planned.sections().sections().size();
    int[] rgb = new int[sections + 2];
    rgb[0] = BARE_RGB;
    for (int id = 1; id <= sections; id++) {
      rgb[id] = Palette.light(tones[id]);
    }
    rgb[sections + 1] = OUTSIDE_RGB;
    PlyWriter.write(planned.sections().mesh(), regions(planned), rgb, "section", out);
  }

  /**
   * Writes OBJ: groups "Section 1", with its own name after it if it has one, "Bare" and "Out of
   * scope".
   *
   * @throws IOException if it can't be written
   */
  public static void obj(PlannedJob planned, OutputStream out) throws IOException {
    List<String> names = new ArrayList<>();
    names.add("");
    names.add("Bare");
    for (Section section : planned.sections().sections()) {
      names.add("Section " + section.id() + (section.name().isEmpty() ? "" : " " + section.name()));
    }
    names.add("Out of scope");
    int[] label = regions(planned);
    for (int f = 0; f < label.length; f++) {
      label[f]++;
    }
    ObjWriter.write(grouped(planned.sections().mesh(), label), sorted(names, label), out);
  }

  /** Faces group by group, so that each group stands in the file once. */
  private static Mesh grouped(Mesh mesh, int[] label) {
    int[] corner = new int[mesh.corner().length];
    int at = 0;
    for (int f : order(label)) {
      System.arraycopy(mesh.corner(), 3 * f, corner, 3 * at++, 3);
    }
    return Mesh.of(mesh.xyz(), corner);
  }

  private static Labels sorted(List<String> names, int[] label) {
    int[] of = new int[label.length];
    int at = 0;
    for (int f : order(label)) {
      of[at++] = label[f];
    }
    return new Labels(names, of);
  }

  private static int[] order(int[] label) {
    int most = 0;
    for (int l : label) {
      most = Math.max(most, l);
    }
    int[] begin = new int[most + 2];
    for (int l : label) {
      begin[l + 1]++;
    }
    for (int i = 0; i <= most; i++) {
      begin[i + 1] += begin[i];
    }
    int[] order = new int[label.length];
    for (int f = 0; f < label.length; f++) {
      order[begin[label[f]]++] = f;
    }
    return order;
  }

  private static int[] regions(PlannedJob planned) {
    int[] region = planned.sections().sectionOf().clone();
    int outside = planned.sections().sections().size() + 1;
    for (int f = 0; f < region.length; f++) {
      boolean out = planned.map().of(planned.sections().parentFace()[f]) == Treatment.OUT_OF_SCOPE;
      region[f] = out ? outside : region[f];
    }
    return region;
  }
}
