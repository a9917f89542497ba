package org.seamwright.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.flatten.Template;
import org.seamwright.flatten.Templates;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.picture.Background;
import org.seamwright.picture.Finish;
import org.seamwright.picture.Palette;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Scene;
import org.seamwright.picture.View;

/** Pictures of the piece with each template in its place, numbered as it is cut. */
final class TemplatePlaces {
  private static final double PICTURE_HEIGHT = 250;
  private static final int PIXELS_WIDE = 1400;
  private static final int MOST_VIEWS = 4;

  /** More numbers than these can't be read round a picture: the largest get theirs. */
  private static final int MOST_NUMBERS = 24;

  private final Templates templates;
  private double[] xyz = new double[0];
  private int[] corner = new int[0];
  private int[] region = new int[0];

  private TemplatePlaces(Templates templates) {
    this.templates = templates;
  }

  /**
   * Draws them.
   *
   * @param rest the faces of the piece that no film is for
   */
  static void draw(Sheet sheet, Templates templates, Mesh rest) throws IOException {
    new TemplatePlaces(templates).draw(sheet, rest);
  }

  private void draw(Sheet sheet, Mesh rest) throws IOException {
    List<Template> all = templates.templates();
    int byHand = all.size() + 1;
    add(rest, 0);
    for (int i = 0; i < all.size(); i++) {
      add(all.get(i).layout().mesh(), i + 1);
    }
    for (Templates.ByHand place : templates.byHand()) {
      add(place.faces(), byHand);
    }
    byte[] finish = new byte[region.length];
    for (int f = 0; f < finish.length; f++) {
      finish[f] =
          (region[f] == 0 ? Finish.GHOST : region[f] == byHand ? Finish.COVERED : Finish.SECTION)
              .code();
    }
    int[] tone = new int[byHand + 1];
    for (int i = 1; i < byHand; i++) {
      tone[i] = (i - 1) % Palette.SIZE;
    }
    Mesh mesh = Mesh.of(xyz, corner);
    Scene scene = Scene.of(mesh, finish, region, new byte[region.length], tone);
    List<Pictures.Callout> callouts = callouts(mesh);
    NumberedViews views = new NumberedViews(mesh, region, callouts);
    int high = (int) (PIXELS_WIDE * PICTURE_HEIGHT / sheet.width());
    for (View view : views.views(MOST_VIEWS)) {
      sheet.need(PICTURE_HEIGHT + 22);
      Pictures.Labelled picture =
          Pictures.withCallouts(
              scene, views.seenFrom(view), view, PIXELS_WIDE, high, Background.WHITE);
      sheet.picture(
          picture.image(),
          "Where templates go, seen from: " + view.name(),
          sheet.left(),
          sheet.y,
          sheet.width(),
          PICTURE_HEIGHT);
      sheet.y += PICTURE_HEIGHT + 2;
      sheet.paragraph(
          "Seen from: "
              + view.name()
              + (templates.byHand().isEmpty() ? "." : ". Hatched on white: by hand."),
          Style.LABEL.in(Style.INK));
      sheet.gap(8);
    }
  }

  private List<Pictures.Callout> callouts(Mesh mesh) {
    List<Template> all = templates.templates();
    List<Integer> largest = new ArrayList<>();
    List<List<Vector3D>> points = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      largest.add(i);
      points.add(new ArrayList<>());
    }
    largest.sort((a, b) -> Double.compare(all.get(b).areaMm2(), all.get(a).areaMm2()));
    double[] at = new double[3];
    for (int f = 0; f < region.length; f++) {
      if (region[f] > 0 && region[f] <= all.size()) {
        Faces.centroid(mesh, f, at);
        points.get(region[f] - 1).add(Vector3D.of(at));
      }
    }
    List<Pictures.Callout> callouts = new ArrayList<>();
    for (int i : largest.subList(0, Math.min(MOST_NUMBERS, largest.size()))) {
      callouts.add(new Pictures.Callout(i + 1, all.get(i).id(), NumberedViews.some(points.get(i))));
    }
    return callouts;
  }

  private void add(Mesh part, int number) {
    int vertices = xyz.length / 3;
    int corners = corner.length;
    xyz = Arrays.copyOf(xyz, xyz.length + part.xyz().length);
    System.arraycopy(part.xyz(), 0, xyz, 3 * vertices, part.xyz().length);
    corner = Arrays.copyOf(corner, corners + part.corner().length);
    for (int h = 0; h < part.corner().length; h++) {
      corner[corners + h] = vertices + part.corner()[h];
    }
    region = Arrays.copyOf(region, region.length + part.faceCount());
    Arrays.fill(region, region.length - part.faceCount(), region.length, number);
  }
}
