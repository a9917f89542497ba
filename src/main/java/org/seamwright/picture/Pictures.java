package org.seamwright.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;
import org.seamwright.section.Junction;
import org.seamwright.section.SectionPlan;

/**
 * The pictures of a planned piece. Each subject is dressed once as a {@link Scene} and can then be
 * seen from any side. The z axis of the piece points up.
 */
public final class Pictures {
  /** Radius of a number's circle over the height of the picture. Choice of this program. */
  private static final double LABEL_RADIUS = 0.04;

  /** Room left around the piece over the height of the picture. */
  private static final double MARGIN = 0.03;

  /** Room for a column of labels, in radii. */
  static final double COLUMN = 3.4;

  /** How far behind the nearest surface a point may lie and count as seen, over the diagonal. */
  private static final double HIDDEN = 4e-3;

  private Pictures() {}

  /**
   * A picture with numbers on it.
   *
   * @param image the picture
   * @param labelled regions whose number is in it
   * @param unlabelled regions in view that there was no room for
   */
  public record Labelled(Image image, List<Integer> labelled, List<Integer> unlabelled) {
    /** Copies the lists. */
    public Labelled {
      labelled = List.copyOf(labelled);
      unlabelled = List.copyOf(unlabelled);
    }
  }

  /**
   * Dresses a plan: each section in a colour and pattern of its own, lap bands darker, the more
   * often activated the darker; bare metal grey; what is out of scope pale.
   *
   * @param plan sections
   * @param map the surface map the plan was made from
   */
  public static Scene sectionScene(SectionPlan plan, SurfaceMap map) {
    int faces = plan.mesh().faceCount();
    byte[] finish = new byte[faces];
    byte[] lap = new byte[faces];
    for (int f = 0; f < faces; f++) {
      boolean plated = plan.sectionOf()[f] > 0;
      finish[f] =
          (plated
                  ? Finish.SECTION
                  : map.of(plan.parentFace()[f]) == Treatment.OUT_OF_SCOPE
                      ? Finish.GHOST
                      : Finish.BARE)
              .code();
      lap[f] = (byte) (plated ? lapLevel(plan.activations()[f], plan.flashes()[f]) : 0);
    }
    return Scene.of(plan.mesh(), finish, plan.sectionOf(), lap, Tones.of(plan));
  }

  /**
   * Dresses a plan by how often places are activated: gold once, blue and dotted twice, red and
   * crossed three times or more.
   *
   * @param plan sections
   * @param map the surface map the plan was made from
   */
  public static Scene lapScene(SectionPlan plan, SurfaceMap map) {
    int faces = plan.mesh().faceCount();
    byte[] finish = new byte[faces];
    int[] region = new int[faces];
    for (int f = 0; f < faces; f++) {
      region[f] = Math.min(3, plan.activations()[f]);
      finish[f] =
          (region[f] > 1
                  ? Finish.SECTION
                  : region[f] == 1
                      ? Finish.GOLD
                      : map.of(plan.parentFace()[f]) == Treatment.OUT_OF_SCOPE
                          ? Finish.GHOST
                          : Finish.BARE)
              .code();
    }
    return Scene.of(plan.mesh(), finish, region, new byte[faces], new int[] {0, 0, TWICE, MORE});
  }

  /** Classes of colour for places activated twice, and more often: blue dots, red crosses. */
  private static final int TWICE = 1;

  private static final int MORE = 5;

  /** Places where three sections meet, numbered from 1 as in plan.json. */
  public static List<Callout> junctions(SectionPlan plan) {
    List<Callout> callouts = new ArrayList<>();
    for (Junction j : plan.junctions().places()) {
      int number = callouts.size() + 1;
      callouts.add(
          new Callout(
              number, String.valueOf(number), List.of(Vector3D.of(j.xMm(), j.yMm(), j.zMm()))));
    }
    return callouts;
  }

  private static int lapLevel(byte activations, byte flashes) {
    if (activations >= 2) {
      return Math.min(3, activations);
    }
    return flashes >= 2 ? 1 : 0;
  }

  /**
   * Dresses a piece as the customer gets it: gold where it is plated, its own metal elsewhere, pale
   * where it is no part of the work.
   *
   * @param map treatments
   */
  public static Scene customerScene(SurfaceMap map) {
    return customerScene(map, Finish.GOLD, Finish.BARE);
  }

  /** The same with the look of the metal laid down and of the one that is not plated. */
  public static Scene customerScene(SurfaceMap map, Finish plated, Finish metal) {
    return mapScene(map, plated, metal);
  }

  /** Reflectance of a metal: linear red, green and blue. */
  public static float[] reflectance(Finish metal) {
    return Shader.reflectance(metal);
  }

  /** How a metal looks by its name in lower case, such as {@code silver}. */
  public static Finish look(String metal) {
    return switch (metal) {
      case "silver", "rhodium", "palladium" -> Finish.SILVER;
      case "nickel" -> Finish.NICKEL;
      case "copper" -> Finish.COPPER;
      default -> Finish.GOLD;
    };
  }

  /**
   * Dresses a piece as it comes: its own metal everywhere, pale where it is no part of the work.
   */
  public static Scene beforeScene(SurfaceMap map) {
    return beforeScene(map, Finish.BARE);
  }

  /** The same with the look of its metal. */
  public static Scene beforeScene(SurfaceMap map, Finish metal) {
    return mapScene(map, metal, metal);
  }

  /** Dresses a piece for masking: gold where it is plated, hatched where it stays covered. */
  public static Scene maskScene(SurfaceMap map) {
    return mapScene(map, Finish.GOLD, Finish.COVERED);
  }

  private static Scene mapScene(SurfaceMap map, Finish plated, Finish bare) {
    int faces = map.mesh().faceCount();
    byte[] finish = new byte[faces];
    int[] region = new int[faces];
    for (int f = 0; f < faces; f++) {
      Treatment treatment = map.of(f);
      finish[f] =
          switch (treatment) {
            case PLATE -> plated.code();
            case BARE -> bare.code();
            case OUT_OF_SCOPE -> Finish.GHOST.code();
          };
      region[f] = treatment == Treatment.PLATE && plated != bare ? 1 : 0;
    }
    return Scene.of(map.mesh(), finish, region, new byte[faces], new int[2]);
  }

  /**
   * Draws numbered regions of a scene, in parallel projection.
   *
   * @param scene for example {@link #sectionScene}
   * @param view side it is seen from
   * @param width pixels
   * @param height pixels
   * @param background behind the piece
   */
  public static Labelled numbered(
      Scene scene, View view, int width, int height, Background background) {
    double radius = LABEL_RADIUS * Math.min(height, width);
    int side = (int) Math.round(MARGIN * height);
    Camera camera =
        Camera.orthographic(view, scene.mesh(), width, height, Camera.Margins.all(side));
    LabelPlan plan = LabelPlan.of(regions(scene, camera), width, height, radius);
    boolean columns = plan.labels().stream().anyMatch(LabelPlan.Label::leader);
    if (columns) {
      int column = (int) Math.ceil(COLUMN * radius);
      Camera.Margins margins = new Camera.Margins(column, side, column, side);
      camera = Camera.orthographic(view, scene.mesh(), width, height, margins);
    }
    Image image = Renderer.render(scene, camera, background);
    if (columns || !plan.unplaced().isEmpty()) {
      plan = LabelPlan.of(image.region(), width, height, radius);
    }
    return inked(image, plan, Integer::toString);
  }

  /** A flat scene seen from above at a given scale, with room for columns of labels. */
  static Labelled flat(Scene scene, double pixelsPerMm, double radius) {
    Bounds box = scene.mesh().bounds();
    int column = (int) Math.ceil(COLUMN * radius);
    int side = (int) Math.ceil(radius / 2);
    int width = (int) Math.ceil(pixelsPerMm * box.sizeX()) + 2 * column;
    int height = (int) Math.ceil(pixelsPerMm * box.sizeY()) + 2 * side;
    Camera.Margins margins = new Camera.Margins(column, side, column, side);
    Camera camera = Camera.orthographic(View.TOP, scene.mesh(), width, height, margins);
    Image image = Renderer.render(scene, camera, Background.WHITE);
    return inked(image, LabelPlan.of(image.region(), width, height, radius), Integer::toString);
  }

  private static int[] regions(Scene scene, Camera camera) {
    FaceBuffer buffer = FaceBuffer.of(scene.mesh(), camera, 1);
    int[] region = new int[buffer.face.length];
    for (int i = 0; i < region.length; i++) {
      int f = buffer.face[i];
      region[i] = f == FaceBuffer.NOTHING ? Image.NOTHING : scene.region(f);
    }
    return region;
  }

  private static Labelled inked(Image image, LabelPlan plan, IntFunction<String> text) {
    List<Integer> labelled = plan.labels().stream().map(LabelPlan.Label::region).toList();
    return new Labelled(LabelInk.draw(image, plan.labels(), text), labelled, plan.unplaced());
  }

  /**
   * A place on the piece with a label.
   *
   * @param id distinct number
   * @param text short, such as "M1"
   * @param points places that may carry the label, mm; the first one in view does
   */
  public record Callout(int id, String text, List<Vector3D> points) {
    /** Copies the list. */
    public Callout {
      points = List.copyOf(points);
    }
  }

  /**
   * Draws a scene with labels on leaders to places on the piece, as far as they are in view.
   *
   * @param scene for example {@link #maskScene}
   * @param callouts places and their labels
   */
  public static Labelled withCallouts(
      Scene scene,
      List<Callout> callouts,
      View view,
      int width,
      int height,
      Background background) {
    double radius = LABEL_RADIUS * Math.min(height, width);
    int side = (int) Math.round(MARGIN * height);
    int column = (int) Math.ceil(COLUMN * radius);
    Camera camera =
        Camera.orthographic(
            view, scene.mesh(), width, height, new Camera.Margins(column, side, column, side));
    FaceBuffer buffer = FaceBuffer.of(scene.mesh(), camera, 1);
    double hiddenMm = HIDDEN * scene.mesh().bounds().diagonal();
    List<Leaders.Anchor> anchors = new ArrayList<>();
    for (Callout callout : callouts) {
      double[] at = new double[3];
      for (Vector3D p : callout.points()) {
        if (inView(buffer, camera, hiddenMm, p, at)) {
          anchors.add(new Leaders.Anchor(callout.id(), at[0], at[1]));
          break;
        }
      }
    }
    Image image = Renderer.render(scene, camera, background);
    LabelPlan plan = LabelPlan.of(anchors, image.region(), width, height, radius);
    return inked(
        image,
        plan,
        id -> callouts.stream().filter(c -> c.id() == id).findFirst().orElseThrow().text());
  }

  /**
   * How many points of each of several sets are in view from a side.
   *
   * @param mesh the piece
   * @param sets points on its surface, mm
   */
  public static int[] pointsInView(Mesh mesh, List<List<Vector3D>> sets, View view) {
    Camera camera = Camera.orthographic(view, mesh, SMALL, SMALL, Camera.Margins.all(2));
    FaceBuffer buffer = FaceBuffer.of(mesh, camera, 1);
    double hiddenMm = HIDDEN * mesh.bounds().diagonal();
    double[] at = new double[3];
    int[] count = new int[sets.size()];
    for (int i = 0; i < count.length; i++) {
      for (Vector3D p : sets.get(i)) {
        count[i] += inView(buffer, camera, hiddenMm, p, at) ? 1 : 0;
      }
    }
    return count;
  }

  /** Side of pictures that nobody looks at, pixels. */
  private static final int SMALL = 400;

  private static boolean inView(
      FaceBuffer buffer, Camera camera, double hiddenMm, Vector3D p, double[] at) {
    camera.project(p.getX(), p.getY(), p.getZ(), at);
    int x = (int) Math.floor(at[0]);
    int y = (int) Math.floor(at[1]);
    if (x < 0 || y < 0 || x >= buffer.width || y >= buffer.height) {
      return false;
    }
    double nearest = camera.distanceMm(buffer.depth[y * buffer.width + x]);
    return camera.distanceMm(at[2]) <= nearest + hiddenMm;
  }

  /**
   * The numbered sections of a plan from one side, on white.
   *
   * @param plan sections
   * @param map the surface map the plan was made from
   */
  public static Labelled sections(
      SectionPlan plan, SurfaceMap map, View view, int width, int height) {
    return numbered(sectionScene(plan, map), view, width, height, Background.WHITE);
  }

  /**
   * A scene in parallel projection, without numbers.
   *
   * @param scene what
   * @param background behind the piece
   */
  public static Image plain(Scene scene, View view, int width, int height, Background background) {
    int margin = (int) Math.round(MARGIN * Math.min(height, width));
    Camera camera =
        Camera.orthographic(view, scene.mesh(), width, height, Camera.Margins.all(margin));
    return Renderer.render(scene, camera, background);
  }

  /**
   * A scene as a photograph would show it, without numbers.
   *
   * @param scene for example {@link #customerScene}
   */
  public static Image photograph(
      Scene scene, View view, int width, int height, Background background) {
    int margin = (int) Math.round(MARGIN * Math.min(height, width));
    Camera camera =
        Camera.perspective(
            view, scene.mesh(), width, height, Camera.Margins.all(margin), FIELD_OF_VIEW_DEGREES);
    return Renderer.onTable(scene, camera, background);
  }

  /** Narrow, as of a portrait lens, so that sides keep their shape. */
  private static final double FIELD_OF_VIEW_DEGREES = 24;

  /**
   * The side among {@link View#around} from which most of a section's area shows.
   *
   * @param plan sections
   * @param section id
   */
  public static View bestView(SectionPlan plan, int section) {
    Exposure exposure = Exposure.of(plan.mesh(), plan.sectionOf(), View.around());
    return exposure.views().get(exposure.best(section));
  }

  /**
   * Sets pictures of the same size side by side, in rows.
   *
   * @param images one or more
   * @param columns pictures in a row
   */
  public static Image sheet(List<Image> images, int columns) {
    int w = images.get(0).width();
    int h = images.get(0).height();
    int rows = (images.size() + columns - 1) / columns;
    int width = w * columns;
    int[] argb = new int[width * h * rows];
    int[] region = new int[argb.length];
    Arrays.fill(argb, 0xFFFFFFFF);
    Arrays.fill(region, Image.NOTHING);
    for (int i = 0; i < images.size(); i++) {
      int left = i % columns * w;
      int top = i / columns * h;
      for (int y = 0; y < h; y++) {
        int to = (top + y) * width + left;
        System.arraycopy(images.get(i).argb(), y * w, argb, to, w);
        System.arraycopy(images.get(i).region(), y * w, region, to, w);
      }
    }
    return new Image(width, h * rows, argb, region);
  }
}
