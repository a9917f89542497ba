package org.seamwright.picture;

/**
 * Draws a scene without display or graphics card: four samples per pixel, each with the nearest
 * face, smooth shading that keeps creases, and lines over it.
 *
 * <p>Same bytes on any number of cores. Cost: O(faces + pixels); about 45 bytes of working memory
 * per pixel.
 */
public final class Renderer {
  /** Samples per pixel along each axis. */
  private static final int SAMPLES = 2;

  private static final int BAND_ROWS = 32;

  /** Pitch of patterns, pixels of a picture 1200 high. Choice of this program. */
  private static final double PITCH = 13;

  private static final double REFERENCE_HEIGHT = 1200;

  private final Scene scene;
  private final Camera camera;
  private final Background background;
  private final FaceBuffer buffer;
  private final Shader shader;

  /** Null where the piece stands on nothing. */
  private final ContactShadow shadow;

  private Renderer(Scene scene, Camera camera, Background background, boolean onTable) {
    shadow = onTable ? ContactShadow.of(scene.mesh(), camera) : null;
    this.scene = scene;
    this.camera = camera;
    this.background = background;
    buffer = FaceBuffer.of(scene.mesh(), camera, SAMPLES);
    shader = new Shader(SAMPLES * Math.max(4, PITCH * camera.height() / REFERENCE_HEIGHT));
  }

  /**
   * Draws a scene.
   *
   * @param scene what
   * @param camera from where; also the size of the picture
   * @param background what is behind it
   */
  public static Image render(Scene scene, Camera camera, Background background) {
    return new Renderer(scene, camera, background, false).image();
  }

  /** Draws a scene with the soft shadow that it casts on the table below it. */
  static Image onTable(Scene scene, Camera camera, Background background) {
    return new Renderer(scene, camera, background, true).image();
  }

  private Image image() {
    int[] rgb = new int[buffer.face.length];
    int[] normal = new int[buffer.face.length];
    int bands = (buffer.height + BAND_ROWS - 1) / BAND_ROWS;
    Bands.each(bands, b -> shadeBand(b * BAND_ROWS, rgb, normal));
    Outlines.draw(buffer, scene, camera, normal, rgb);
    return gather(rgb);
  }

  private void shadeBand(int top, int[] rgb, int[] normal) {
    int bottom = Math.min(buffer.height, top + BAND_ROWS);
    double[] axes = camera.axes();
    float[] corner = scene.normal();
    float[] weight = new float[3];
    float[] n = new float[3];
    int[] corners = scene.mesh().corner();
    for (int y = top; y < bottom; y++) {
      int behind = background.row(y, buffer.height);
      float ey = (float) -camera.slantY((y + 0.5) / SAMPLES);
      for (int x = 0; x < buffer.width; x++) {
        int i = y * buffer.width + x;
        int f = buffer.face[i];
        if (f == FaceBuffer.NOTHING) {
          rgb[i] =
              shadow == null
                  ? behind
                  : shadow.over(behind, (x + 0.5) / SAMPLES, (y + 0.5) / SAMPLES);
          continue;
        }
        buffer.weights(corners, f, x, y, camera.isPerspective(), weight);
        viewNormal(corner, f, weight, axes, buffer.facesAway(corners, f), n);
        normal[i] = Outlines.pack(n[0], n[1], n[2]);
        float ex = (float) -camera.slantX((x + 0.5) / SAMPLES);
        float ez = 1 / (float) Math.sqrt(1 + ex * ex + ey * ey);
        rgb[i] =
            shader.shade(
                scene.finish(f),
                scene.tone(f),
                scene.lap(f),
                n[0],
                n[1],
                n[2],
                ex * ez,
                ey * ez,
                ez,
                x,
                y);
      }
    }
  }

  private static void viewNormal(
      float[] corner, int f, float[] weight, double[] axes, boolean away, float[] into) {
    int c = 9 * f;
    double x = weight[0] * corner[c] + weight[1] * corner[c + 3] + weight[2] * corner[c + 6];
    double y = weight[0] * corner[c + 1] + weight[1] * corner[c + 4] + weight[2] * corner[c + 7];
    double z = weight[0] * corner[c + 2] + weight[1] * corner[c + 5] + weight[2] * corner[c + 8];
    double length = Math.sqrt(x * x + y * y + z * z);
    double scale = length > 0 ? (away ? -1 : 1) / length : 0;
    double right = (x * axes[0] + y * axes[1] + z * axes[2]) * scale;
    double up = (x * axes[3] + y * axes[4] + z * axes[5]) * scale;
    double towards = (x * axes[6] + y * axes[7] + z * axes[8]) * scale;
    into[0] = (float) right;
    into[1] = (float) up;
    into[2] = (float) Math.max(0, towards);
  }

  /** Means of the samples of each pixel; the region is that of its first sample. */
  private Image gather(int[] rgb) {
    int width = camera.width();
    int height = camera.height();
    int[] argb = new int[width * height];
    int[] region = new int[width * height];
    Bands.ranges(
        height,
        BAND_ROWS,
        (from, to) -> {
          for (int y = from; y < to; y++) {
            for (int x = 0; x < width; x++) {
              int at = SAMPLES * y * buffer.width + SAMPLES * x;
              argb[y * width + x] = 0xFF000000 | mean(rgb, at);
              int f = buffer.face[at];
              region[y * width + x] = f == FaceBuffer.NOTHING ? Image.NOTHING : scene.region(f);
            }
          }
        });
    return new Image(width, height, argb, region);
  }

  private int mean(int[] rgb, int at) {
    // Two channels at a time: red and blue have room to spare between them.
    int redBlue = 0x00020002;
    int green = 0x00000200;
    for (int i : new int[] {at, at + 1, at + buffer.width, at + buffer.width + 1}) {
      redBlue += rgb[i] & 0x00FF00FF;
      green += rgb[i] & 0x0000FF00;
    }
    return ((redBlue >> 2) & 0x00FF00FF) | ((green >> 2) & 0x0000FF00);
  }
}
