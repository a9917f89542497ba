package org.seamwright.share;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.seamwright.basis.Progress;
import org.seamwright.job.JsonText;
import org.seamwright.job.PlannedJob;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Mesh;
import org.seamwright.picture.Background;
import org.seamwright.picture.Finish;
import org.seamwright.picture.Image;
import org.seamwright.picture.Letterhead;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Png;
import org.seamwright.picture.View;
import org.seamwright.region.Treatment;
import org.seamwright.units.UnitFormat;

/**
 * One HTML page that shows a planned piece: to turn, to tap, today's metal or gold. It loads
 * nothing from anywhere, and shows pictures where the browser has no WebGL 2.
 *
 * <p>Places are 16-bit shares of the piece's box, normals signed bytes: on a piece of a metre a
 * place is 0.008 mm off at most. The same job gives the same bytes.
 */
public final class SharePage {
  private static final String TEMPLATE = "page.html";
  private static final int PICTURE_WIDTH = 800;
  private static final int PICTURE_HEIGHT = 600;

  /** No eye sees less. */
  private static final double FINEST_MM = 0.01;

  private static final int BYTES_PER_PLACE = 10;
  private static final double PLACE_STEPS = 65_535;
  private static final float NORMAL_STEPS = 127;

  private SharePage() {}

  /** The page without the name of a shop; see below. */
  public static String of(PlannedJob planned, Progress progress) {
    return of(planned, Letterhead.NONE, progress);
  }

  /**
   * The page.
   *
   * @param planned the job
   * @param head the shop's name, address and logo
   * @param progress told of the share done; may cancel
   */
  public static String of(PlannedJob planned, Letterhead head, Progress progress) {
    progress.at(0);
    ShareModel model = ShareModel.of(planned);
    progress.at(0.5);
    Map<String, Object> data = new LinkedHashMap<>();
    UnitFormat format = new UnitFormat(planned.job().display(), Locale.ROOT);
    data.put("piece", planned.job().piece());
    data.put("regions", model.regions().stream().map(r -> region(r, format)).toList());
    String metal = planned.settings().deposit().metal();
    data.put("metal", metal);
    float[] rgb = Pictures.reflectance(Pictures.look(metal));
    data.put("look", List.of(rounded(rgb[0]), rounded(rgb[1]), rounded(rgb[2])));
    data.put("gold", format.area(planned.map().areaMm2(Treatment.PLATE)));
    data.put(
        "off",
        "The shape shown is "
            + (model.offMm() > 0 ? "simplified and " : "")
            + "within "
            + format.length(Math.max(FINEST_MM, model.offMm() + rounded(model)))
            + " of the model. Areas are those of the full model.");
    geometry(model, data);
    progress.at(0.7);
    String page = template();
    page = page.replace("%SHOP%", shop(head));
    page = page.replace("%TITLE%", html(planned.job().piece()));
    page = page.replace("%BEFORE%", picture(planned, false));
    progress.at(0.85);
    page = page.replace("%AFTER%", picture(planned, true));
    // A closing tag inside the data must not end the script.
    page = page.replace("%DATA%", JsonText.of(data).replace("</", "<\\/").strip());
    progress.at(1);
    return page;
  }

  private static Map<String, Object> region(ShareModel.Region region, UnitFormat format) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("name", region.name());
    tree.put("kind", kind(region.kind()));
    tree.put("area", format.area(region.areaMm2()));
    tree.put("rgb", region.rgb());
    return tree;
  }

  /** As the script tells them apart. */
  private static int kind(ShareModel.Kind kind) {
    return switch (kind) {
      case SECTION -> 0;
      case BARE -> 1;
      case OUTSIDE -> 2;
    };
  }

  private static void geometry(ShareModel model, Map<String, Object> data) {
    Corners corners = Corners.of(model.mesh(), model.region(), model.regions().size());
    Bounds box = model.mesh().bounds();
    double[] low = {box.minX(), box.minY(), box.minZ()};
    double[] size = {box.sizeX(), box.sizeY(), box.sizeZ()};
    int[] vertex = corners.vertex();
    ByteBuffer places = buffer(BYTES_PER_PLACE * vertex.length);
    for (int i = 0; i < vertex.length; i++) {
      for (int axis = 0; axis < 3; axis++) {
        places.putShort(step(model.mesh().xyz()[3 * vertex[i] + axis], low[axis], size[axis]));
      }
      for (int axis = 0; axis < 3; axis++) {
        places.put((byte) Math.round(NORMAL_STEPS * corners.normal()[3 * i + axis]));
      }
      places.put((byte) 0);
    }
    ByteBuffer index = buffer(4 * corners.index().length);
    for (int place : corners.index()) {
      index.putInt(place);
    }
    List<Double> extent = new ArrayList<>();
    for (double s : size) {
      extent.add(s);
    }
    List<Integer> begin = new ArrayList<>();
    for (int b : corners.begin()) {
      begin.add(b);
    }
    data.put("size", extent);
    data.put("begin", begin);
    data.put("places", base64(places));
    data.put("index", base64(index));
    data.put("lines", ends(Corners.lines(model.mesh(), model.region()), model.mesh(), low, size));
    data.put("creases", ends(Corners.creases(model.mesh()), model.mesh(), low, size));
  }

  private static String ends(int[] vertices, Mesh mesh, double[] low, double[] size) {
    ByteBuffer ends = buffer(6 * vertices.length);
    for (int v : vertices) {
      for (int axis = 0; axis < 3; axis++) {
        ends.putShort(step(mesh.xyz()[3 * v + axis], low[axis], size[axis]));
      }
    }
    return base64(ends);
  }

  /** How far a place can be off by its 16 bits an axis, mm. */
  private static double rounded(ShareModel model) {
    Bounds box = model.mesh().bounds();
    return Math.hypot(Math.hypot(box.sizeX(), box.sizeY()), box.sizeZ()) / PLACE_STEPS / 2;
  }

  private static ByteBuffer buffer(int bytes) {
    return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
  }

  private static short step(double at, double low, double size) {
    return (short) (size > 0 ? Math.round((at - low) / size * PLACE_STEPS) : 0);
  }

  private static String base64(ByteBuffer bytes) {
    byte[] all = new byte[bytes.capacity()];
    bytes.get(0, all);
    return Base64.getEncoder().encodeToString(all);
  }

  private static String picture(PlannedJob planned, boolean gilded) {
    var scene =
        gilded
            ? Pictures.customerScene(
                planned.map(), Pictures.look(planned.settings().deposit().metal()), Finish.BARE)
            : Pictures.beforeScene(planned.map());
    return png(
        Pictures.photograph(
            scene, View.THREE_QUARTER, PICTURE_WIDTH, PICTURE_HEIGHT, Background.WHITE));
  }

  /** The shop at the foot of the page, its logo first. */
  private static String shop(Letterhead head) {
    if (head.isEmpty()) {
      return "";
    }
    StringBuilder shop = new StringBuilder("<div id=\"shop\">");
    head.logo()
        .ifPresent(
            logo ->
                shop.append("<img alt=\"")
                    .append(html(head.name().isEmpty() ? "Logo" : "Logo of " + head.name()))
                    .append("\" src=\"")
                    .append(png(logo))
                    .append("\">"));
    if (!head.name().isEmpty()) {
      shop.append("<strong>").append(html(head.name())).append("</strong>");
    }
    head.address().forEach(line -> shop.append("<span>").append(html(line)).append("</span>"));
    return shop.append("</div>").toString();
  }

  private static String png(Image image) {
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    try {
      Png.write(image, png);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return "data:image/png;base64," + Base64.getEncoder().encodeToString(png.toByteArray());
  }

  private static String template() {
    try (InputStream in = SharePage.class.getResourceAsStream(TEMPLATE)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String html(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  /** Without the tail that a float gets as a double. */
  private static double rounded(float share) {
    return Math.round(1000.0 * share) / 1000.0;
  }
}
